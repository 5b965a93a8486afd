// Questions that guidelines answer differently about one woman, with the limit of each.
import type { Opinion, Parting } from '../evaluation.ts';
import type { Question, Threshold } from '../guidelines/guideline.ts';
import type { Evidence, Finding } from './finding.ts';
import { measuresOf } from './measures.ts';

/**
 * The questions on which guidelines part.
 *
 * Given    opinions  on one timeline, two or more
 * Returns  each question with evidence whose outcome is not the same in all, in the order of the first guideline that has it;
 *          a guideline that does not ask it is left out of its answers
 * Throws   never
 * Notes    1. Limits shown are those on what decided: where one guideline counted a platelet value, the platelet
 *             limit of each.
 */
export function partingsOf(opinions: readonly Opinion[]): readonly Parting[] {
  const questions = new Map<string, Question>();
  for (const { guideline } of opinions)
    for (const question of guideline.questions)
      if (!questions.has(question.id)) questions.set(question.id, question);
  return [...questions.values()].flatMap((question) => partingOf(question, opinions));
}

interface Answered {
  readonly opinion: Opinion;
  readonly question: Question;
  readonly finding: Finding;
}

function partingOf({ id, asks }: Question, opinions: readonly Opinion[]): readonly Parting[] {
  const answered = opinions.flatMap((opinion): readonly Answered[] => {
    const question = opinion.guideline.questions.find((item) => item.id === id);
    const finding = opinion.assessment.findings.find((item) => item.question === id);
    return question === undefined || finding === undefined ? [] : [{ opinion, question, finding }];
  });
  const decisive = decisiveEvidence(answered);
  if (decisive.length === 0 || !isParted(answered)) return [];
  return [
    {
      question: id,
      asks,
      answers: answered.map(({ opinion, question, finding }) => ({
        guideline: opinion.stamp.id,
        outcome: finding.outcome,
        because: finding.because,
        thresholds: limitsOn(question, finding, decisive),
        evidence: evidenceOf(finding, decisive),
      })),
    },
  ];
}

/** "Not applicable" beside "not met" or "cannot tell" parts nobody. */
function isParted(answered: readonly Answered[]): boolean {
  const outcomes = new Set(answered.map(({ finding }) => finding.outcome));
  return (
    outcomes.size > 1 && (outcomes.has('met') || (outcomes.has('not-met') && outcomes.has('cannot-tell')))
  );
}

/** What was measured, as counted by those who count it; where none does, whatever was looked at. */
function decisiveEvidence(answered: readonly Answered[]): readonly Evidence[] {
  const met = answered.filter(({ finding }) => finding.outcome === 'met');
  return (met.length > 0 ? met : answered).flatMap(({ finding }) => finding.evidence);
}

function limitsOn(question: Question, finding: Finding, decisive: readonly Evidence[]): readonly Threshold[] {
  const what = new Set(decisive.map((item) => item.what));
  const measured = measuresOf(question)
    .filter((measure) => measure.evidence.some((name) => what.has(name)))
    .map(({ threshold }) => threshold);
  const used = finding.outcome === 'met' ? finding.thresholds : [];
  const all = [...used, ...measured];
  return all.filter((threshold, index) => all.findIndex(({ id }) => id === threshold.id) === index);
}

function evidenceOf(finding: Finding, decisive: readonly Evidence[]): readonly Evidence[] {
  const what = new Set(decisive.map((item) => item.what));
  const own = finding.evidence.filter((item) => what.has(item.what));
  if (own.length > 0) return own;
  // Not looked at by this publication: shown as it was sent.
  return decisive.map(({ reference, what: name, at, asSent }) => ({
    reference,
    what: name,
    asSent,
    ...(at === undefined ? {} : { at }),
  }));
}
