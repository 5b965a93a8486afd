// The answer as CDS Hooks cards: at most three, one for each decision a clinician has to take.
import type { Evaluation } from '../evaluation.ts';
import type { Missing } from '../findings/finding.ts';
import {
  cardExtension,
  cardSource,
  closingLines,
  indicatorOf,
  missingLine,
  newestLines,
  section,
} from './card-parts.ts';
import { cardSuggestions } from './card-suggestions.ts';
import type { Card, CardsResponse, ChartGap, Indicator } from './card-types.ts';
import { differsLine } from './comparison.ts';
import { dataQualityCard } from './data-quality-card.ts';
import { escapeMarkdown, fitSummary } from './markdown.ts';
import { classFindings } from './class-findings.ts';
import { reasonsOf, stepsOf } from './reasons.ts';
import { newestPressureWords, spokenValue } from './newest-data.ts';
import { overrideReasons } from './override-reasons.ts';
import { stableUuid } from './stable-uuid.ts';
import { toSuggestions } from './suggestions.ts';
import { classWords, neededByWords, urgencyWords } from './vocabulary.ts';
import { ageWords, sentenceCase } from './words.ts';

const rank: Readonly<Record<Indicator, number>> = { critical: 0, warning: 1, info: 2 };

/**
 * The cards for one woman.
 *
 * Given    evaluation   the answer
 *          gaps         data the client could not give; absent: none
 * Returns  at most three cards, critical before warning before info: the assessment with its actions; what to
 *          measure or ask now; data that could not be used. Empty when nothing is raised, nothing urgent is
 *          missing and nothing was lost.
 * Throws   never
 * Notes    1. The full current set each time, never a difference (checklist X-01).
 *          2. The same advice on the same evidence has the same uuid, whenever it is asked for.
 *          3. An open question that is not urgent makes no card of its own; it is listed in the first.
 */
export function toCards(evaluation: Evaluation, gaps: readonly ChartGap[] = []): CardsResponse {
  if (evaluation.timeline.woman.hasDied === true) return { cards: [] };
  const cards = [assessmentCard(evaluation), missingCard(evaluation), dataQualityCard(evaluation, gaps)];
  return {
    cards: cards.filter((card) => card !== undefined).sort((a, b) => rank[a.indicator] - rank[b.indicator]),
  };
}

function isSilent({ assessment }: Evaluation): boolean {
  return (
    assessment.urgency === 'routine' && assessment.classification.every((each) => each === 'normotensive')
  );
}

function assessmentCard(evaluation: Evaluation): Card | undefined {
  if (isSilent(evaluation)) return undefined;
  const { assessment } = evaluation;
  const rules = [
    ...classFindings(evaluation).map((finding) => finding.question),
    ...assessment.urgencyBecause.map((reason) => reason.rule),
  ];
  const suggestions = cardSuggestions(evaluation);
  return {
    uuid: cardUuid(evaluation, 'assessment', [...rules, ...assessment.actions.map((action) => action.id)]),
    summary: assessmentSummary(evaluation),
    detail: assessmentDetail(evaluation),
    indicator: indicatorOf(assessment.urgency),
    source: cardSource(evaluation, 'assessment'),
    ...(suggestions.length === 0 ? {} : { suggestions, selectionBehavior: 'at-most-one' }),
    overrideReasons,
    extension: cardExtension(evaluation, rules),
  };
}

function cardUuid(evaluation: Evaluation, kind: string, rules: readonly string[]): string {
  const evidence = evaluation.assessment.findings
    .filter((finding) => finding.outcome === 'met')
    .flatMap((finding) => finding.evidence.map((each) => each.reference));
  return stableUuid([
    kind,
    rules,
    evaluation.stamp.fingerprint,
    evaluation.subject ?? '',
    [...new Set(evidence)],
  ]);
}

function assessmentSummary(evaluation: Evaluation): string {
  const { assessment } = evaluation;
  const [leading = 'cannot-classify'] = assessment.classification;
  const pressure = newestPressureWords(evaluation);
  return fitSummary([
    `${sentenceCase(urgencyWords[assessment.urgency])}: ${classWords[leading]}.`,
    pressure === '' ? '' : `${pressure}.`,
    spokenValue(assessment.referral?.sentence ?? assessment.actions[0]?.sentence ?? ''),
  ]);
}

function assessmentDetail(evaluation: Evaluation): string {
  const { assessment } = evaluation;
  const later = assessment.missing.filter((missing) => !isUrgent(missing));
  const others = assessment.classification.slice(1).map((each) => classWords[each]);
  return [
    ...section('Do now', stepsOf(evaluation).map(escapeMarkdown), true),
    ...section('Newest data', [
      ...newestLines(evaluation),
      `gestational age: ${escapeMarkdown(ageWords(evaluation.gestationalAge))}`,
    ]),
    ...section('Why', [...whyLines(evaluation), ...others.map((words) => `also: ${words}`)]),
    ...section('Already in the chart', heldLines(evaluation)),
    ...section('Still open', later.map(missingLine)),
    ...section('Other guidelines', differsLines(evaluation)),
    ...closingLines(evaluation),
  ].join('\n');
}

function whyLines(evaluation: Evaluation): readonly string[] {
  return reasonsOf(evaluation).map(escapeMarkdown);
}

function differsLines({ differs }: Evaluation): readonly string[] {
  const line = differsLine(differs);
  return line === undefined ? [] : [escapeMarkdown(line)];
}

function heldLines(evaluation: Evaluation): readonly string[] {
  const { heldConditions, heldReferral } = toSuggestions(evaluation);
  const conditions = heldConditions.map((reference) => `diagnosis, active: ${reference}`);
  const referral =
    heldReferral === undefined
      ? []
      : [`open referral: ${heldReferral}. Check that it is timed for what is said here.`];
  return [...conditions, ...referral].map(escapeMarkdown);
}

/** Something whose absence cannot wait for the next visit. */
function isUrgent(missing: Missing): boolean {
  return indicatorOf(missing.by) !== 'info';
}

function missingCard(evaluation: Evaluation): Card | undefined {
  const urgent = evaluation.assessment.missing.filter(isUrgent);
  const [first] = urgent;
  if (first === undefined) return undefined;
  const indicators = urgent.map((missing) => indicatorOf(missing.by));
  const ids = urgent.map((missing) => missing.id);
  return {
    uuid: cardUuid(evaluation, 'missing-data', ids),
    summary: missingSummary(evaluation, first, urgent),
    detail: [
      ...section('Measure or ask', urgent.map(missingLine)),
      ...section('It could change', changeLines(urgent)),
      ...section('Newest data', newestLines(evaluation)),
      ...closingLines(evaluation),
    ].join('\n'),
    indicator: indicators.includes('critical') ? 'critical' : 'warning',
    source: cardSource(evaluation, 'missing-data'),
    overrideReasons,
    extension: cardExtension(evaluation, ids),
  };
}

function missingSummary(evaluation: Evaluation, first: Missing, urgent: readonly Missing[]): string {
  const rest = urgent.slice(1).map((missing) => missing.what);
  const pressure = newestPressureWords(evaluation);
  return fitSummary([
    `Needed ${neededByWords[first.by]}: ${first.what}.`,
    pressure === '' ? '' : `${pressure}.`,
    rest.length === 0 ? '' : `Also: ${rest.join(', ')}.`,
  ]);
}

function changeLines(urgent: readonly Missing[]): readonly string[] {
  const classes = Object.entries(classWords);
  return [...new Set(urgent.flatMap((missing) => missing.couldChange))].map((change) =>
    escapeMarkdown(classes.find(([code]) => code === change)?.[1] ?? change),
  );
}
