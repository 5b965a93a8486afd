// The answer as CDS Hooks cards: at most three, one for each decision a clinician has to take.
import type { Evaluation } from '../evaluation.ts';
import { fill } from '../messages/say.ts';
import { assessmentSections } from './assessment-sections.ts';
import { toTelling, type CardContext, type Telling } from './card-context.ts';
import { cardExtension, cardSource, cardUuid, closingLines, indicatorOf } from './card-parts.ts';
import { cardSuggestions } from './card-suggestions.ts';
import type { Card, CardsResponse } from './card-types.ts';
import { classFindings, evidenceMet } from './class-findings.ts';
import { dataQualityCard } from './data-quality-card.ts';
import { isDone } from './held-in-chart.ts';
import { fitSummary } from './markdown.ts';
import { missingCard } from './missing-card.ts';
import { newestPressureWords } from './newest-data.ts';
import { offeredReasons } from './override-reasons.ts';
import { rankedCards } from './rank-cards.ts';
import { stepsOf } from './reasons.ts';
import { toSuggestions } from './suggestions.ts';
import { trendLines } from './trend-lines.ts';
import { sentenceCase } from './words.ts';

/**
 * The cards for one woman.
 *
 * Given    evaluation   the answer
 *          context      to whom, in which language, and what of the chart could not be had; absent: English, no gaps
 * Returns  at most three cards, critical before warning before info: the assessment with its actions; what to
 *          measure or ask now; pressures and urine results that could not be used. Empty when nothing is raised,
 *          nothing urgent is missing and nothing was lost that can be mended.
 * Throws   never
 * Notes    1. The full current set each time, never a difference (checklist X-01).
 *          2. The same advice on the same evidence has the same uuid, whenever it is asked for.
 *          3. An open question that is not urgent makes no card of its own; it is listed in the first.
 *          4. Quiet when the chart shows the action: see `isDone`.
 *          5. Data that could not be had make no card of their own; every card that is shown names them.
 */
export function toCards(evaluation: Evaluation, context: CardContext = {}): CardsResponse {
  if (evaluation.timeline.woman.hasDied === true) return { cards: [] };
  const telling = toTelling(evaluation, context);
  return rankedCards([assessmentCard(telling), missingCard(telling), dataQualityCard(telling)]);
}

function isSilent(evaluation: Evaluation): boolean {
  const { assessment } = evaluation;
  const isNormal =
    assessment.urgency === 'routine' && assessment.classification.every((each) => each === 'normotensive');
  return isNormal || isDone(evaluation, toSuggestions(evaluation));
}

function assessmentCard(telling: Telling): Card | undefined {
  const { evaluation, messages } = telling;
  if (isSilent(evaluation)) return undefined;
  const { assessment } = evaluation;
  const [leading = 'cannot-classify'] = assessment.classification;
  const rules = [
    ...classFindings(evaluation).map((finding) => finding.question),
    ...assessment.urgencyBecause.map((reason) => reason.rule),
  ];
  const parts = [...rules, ...assessment.actions.map((action) => action.id)];
  const suggestions = cardSuggestions(telling, `class:${leading}`);
  return {
    uuid: cardUuid(telling, `class:${leading}`, [parts, evidenceMet(evaluation)]),
    summary: summaryOf(telling, leading),
    detail: [
      ...assessmentSections({ ...telling, trend: trendLines(telling) }),
      ...closingLines(telling),
    ].join('\n'),
    indicator: indicatorOf(assessment.urgency),
    source: cardSource(telling, 'assessment'),
    ...(suggestions.length === 0 ? {} : { suggestions, selectionBehavior: 'at-most-one' }),
    overrideReasons: offeredReasons(messages),
    extension: cardExtension(telling, rules),
  };
}

function summaryOf(
  { evaluation, messages }: Telling,
  leading: keyof Telling['messages']['classWords'],
): string {
  const { classWords, urgencyWords, phrases } = messages;
  const urgency = sentenceCase(urgencyWords[evaluation.assessment.urgency]);
  const pressure = newestPressureWords(evaluation, messages);
  const [step = ''] = stepsOf(evaluation, messages);
  return fitSummary([
    fill(phrases.summary, { urgency, name: classWords[leading] }),
    pressure === '' ? '' : `${pressure}.`,
    step,
  ]);
}
