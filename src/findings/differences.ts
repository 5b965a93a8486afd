// Guidelines that answer differently from the chosen one, each with the reading on which they part.
import type { Difference, Opinion } from '../evaluation.ts';
import type { Question } from '../guidelines/guideline.ts';
import type { Evidence, Finding } from './finding.ts';
import { limitWords, spokenUnits } from './limit-words.ts';
import { measuresOf, type Measure } from './measures.ts';

/**
 * The guidelines that differ.
 *
 * Given    chosen  the opinion that is shown
 *          all     opinions on the same timeline, the chosen one among them or not
 * Returns  those with other classes or another urgency (after the floor), in the order given; empty: none
 * Throws   never
 * Notes    1. A class that only stands beside the leading one counts as a difference too.
 *          2. `because` names the reading that one of the two counts and the other does not; where no reading
 *             parts them, what the other publication lacks.
 */
export function differencesFrom(chosen: Opinion, all: readonly Opinion[]): readonly Difference[] {
  return all.flatMap((other) => {
    if (other.stamp.id === chosen.stamp.id || isSame(chosen, other)) return [];
    const { classification, urgency } = other.assessment;
    return [{ id: other.stamp.id, classification, urgency, because: reasonOf(chosen, other) }];
  });
}

function isSame(a: Opinion, b: Opinion): boolean {
  return (
    a.assessment.urgency === b.assessment.urgency &&
    a.assessment.classification.join() === b.assessment.classification.join()
  );
}

function reasonOf(chosen: Opinion, other: Opinion): string {
  const [leading] = chosen.assessment.classification;
  const lacking = lackedClass(chosen, other);
  if (lacking !== undefined && lacking === leading) return `it has no class ${lacking}`;
  const parted = partedQuestions(chosen, other);
  for (const id of parted) {
    const reason = readingReason(chosen, other, id);
    if (reason !== undefined) return reason;
  }
  if (lacking !== undefined) return `it has no class ${lacking}`;
  const [first] = parted;
  const because = first === undefined ? undefined : findingOf(other, first)?.because;
  return because ?? other.assessment.urgencyBecause[0]?.sentence ?? 'its rules are put together otherwise';
}

/** Questions under the classes that only one of the two gives, answered differently. */
function partedQuestions(chosen: Opinion, other: Opinion): readonly string[] {
  const only = (a: Opinion, b: Opinion): readonly string[] => {
    const classes = a.assessment.classification.filter((item) => !b.assessment.classification.includes(item));
    return [a, b].flatMap(({ guideline }) =>
      guideline.classRules.filter((rule) => classes.includes(rule.classification)).map((rule) => rule.id),
    );
  };
  const rules = [...new Set([...only(chosen, other), ...only(other, chosen)])];
  const ids = rules.flatMap((id) =>
    [chosen, other].flatMap((opinion) => findingOf(opinion, `class:${id}`)?.restsOn ?? []),
  );
  return [...new Set(ids)].filter((id) => {
    const [a, b] = [findingOf(chosen, id), findingOf(other, id)];
    return a !== undefined && b !== undefined && (a.outcome === 'met') !== (b.outcome === 'met');
  });
}

function lackedClass(chosen: Opinion, other: Opinion): string | undefined {
  return chosen.assessment.classification.find(
    (item) => !other.guideline.classRules.some((rule) => rule.classification === item),
  );
}

/** "platelets 132 10*9/L is not below 100 10*9/L". */
function readingReason(chosen: Opinion, other: Opinion, id: string): string | undefined {
  const [a, b] = [findingOf(chosen, id), findingOf(other, id)];
  const question = questionOf(other, id);
  if (a === undefined || b === undefined || question === undefined) return undefined;
  const counts = b.outcome === 'met';
  if (question.check === 'pressure-confirmed') return intervalReason(question, counts);
  const evidence = (counts ? b : a).evidence[0];
  if (evidence === undefined) return undefined;
  return readingWords(evidence, question, counts, b);
}

function readingWords(evidence: Evidence, question: Question, counts: boolean, finding: Finding): string {
  const reading = evidenceWords(evidence);
  const measures = measuresOf(question).filter((measure) => measure.evidence.includes(evidence.what));
  const used = measures.filter(({ threshold }) => finding.thresholds.some(({ id }) => id === threshold.id));
  const limits = (used.length > 0 && counts ? used : measures).map(measureWords);
  if (limits.length === 0)
    return counts ? `${reading} counts there` : `${reading} does not count there by itself`;
  if (counts) return `${reading} is ${limits.join(' or ')}`;
  const asked = question.check === 'proteinuria' ? finding.missing?.what : undefined;
  return `${reading} is not ${limits.join(', nor ')}${asked === undefined ? '' : `, and asks for a ${asked}`}`;
}

/** A symptom or a recorded condition is named; a measurement is named with its value. */
function evidenceWords({ what, asSent, asCompared }: Evidence): string {
  const fact = /^(?:symptom|condition), (.+)$/.exec(what)?.[1];
  return fact ?? spokenUnits(`${what} ${asCompared ?? asSent}`);
}

const measureWords = ({ threshold, multipleOf }: Measure): string =>
  multipleOf === undefined ? limitWords(threshold) : `${limitWords(threshold)} times ${multipleOf}`;

/** Undefined when it is not the time between the readings that parts them. */
function intervalReason(
  { confirmation }: Extract<Question, { check: 'pressure-confirmed' }>,
  counts: boolean,
): string | undefined {
  const pair = confirmation.between === 'occasions' ? 'two raised contacts' : 'two raised readings';
  if (confirmation.minimumInterval !== undefined)
    return `${pair} confirm when ${limitWords(confirmation.minimumInterval)} apart`;
  return counts ? `${pair} confirm; it names no time between them` : undefined;
}

const findingOf = ({ assessment }: Opinion, id: string): Finding | undefined =>
  assessment.findings.find((finding) => finding.question === id);

const questionOf = ({ guideline }: Opinion, id: string): Question | undefined =>
  guideline.questions.find((question) => question.id === id);
