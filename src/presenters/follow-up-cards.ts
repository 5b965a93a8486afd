// Cards for discharge and for booking: is the next contact in time, and what is the plan.
import type { Evaluation } from '../evaluation.ts';
import type { ActionKind } from '../guidelines/guideline.ts';
import { fill } from '../messages/say.ts';
import {
  cardExtension,
  cardSource,
  cardUuid,
  closingLines,
  gapLines,
  indicatorOf,
  missingLine,
  newestLines,
  section,
} from './card-parts.ts';
import { medicineLines } from './care-lines.ts';
import { toTelling, type CardContext, type Proposed, type Telling } from './card-context.ts';
import type { Card, CardsResponse } from './card-types.ts';
import { evidenceMet } from './class-findings.ts';
import { clinicOffset, dueInstant, localInstant, spokenTime } from './clock.ts';
import { escapeMarkdown, fitSummary } from './markdown.ts';
import { newestPressureWords } from './newest-data.ts';
import { offeredReasons } from './override-reasons.ts';
import { rankedCards } from './rank-cards.ts';
import { reasonsOf, spoken, stepsOf } from './reasons.ts';
import { trendLines } from './trend-lines.ts';
import { sentenceCase } from './words.ts';

const planKinds: readonly ActionKind[] = [
  'follow-up',
  'after-birth',
  'long-term',
  'prevention',
  'tell-the-woman',
];
const planDecides: readonly ActionKind[] = ['follow-up', 'after-birth'];

/**
 * The cards about what comes after this contact.
 *
 * Given    evaluation   the answer
 *          context      `proposed`: the appointments being booked; absent: she is about to leave
 * Returns  at most two cards: the next contact is too late, or something is open before she leaves; and the plan.
 *          Empty when there is no plan and nothing presses.
 * Throws   never
 * Notes    1. Too late means: the earliest appointment begins after the time that the urgency itself names.
 *          2. No plan in an emergency: first things first.
 */
export function toFollowUpCards(evaluation: Evaluation, context: CardContext = {}): CardsResponse {
  if (evaluation.timeline.woman.hasDied === true) return { cards: [] };
  const telling = toTelling(evaluation, context);
  return rankedCards([contactCard(telling), planCard(telling)]);
}

function contactCard(telling: Telling): Card | undefined {
  const opening = openingOf(telling);
  if (opening === undefined) return undefined;
  const { evaluation, messages } = telling;
  const { assessment } = evaluation;
  const rules = assessment.urgencyBecause.map(({ rule }) => rule);
  const pressure = newestPressureWords(evaluation, messages);
  const [step = ''] = stepsOf(evaluation, messages);
  return {
    uuid: cardUuid(telling, 'contact', [rules, opening, evidenceMet(evaluation)]),
    summary: fitSummary([opening, pressure === '' ? '' : `${pressure}.`, step]),
    detail: [
      ...section(telling, 'contact', neededBy(telling)),
      ...section(telling, 'do-now', stepsOf(evaluation, messages).map(escapeMarkdown), true),
      ...section(telling, 'newest', newestLines(telling)),
      ...section(telling, 'trend', trendLines(telling)),
      ...section(telling, 'why', reasonsOf(evaluation, messages).map(escapeMarkdown)),
      ...section(telling, 'not-seen', gapLines(telling)),
      ...closingLines(telling),
    ].join('\n'),
    indicator: indicatorOf(assessment.urgency) === 'critical' ? 'critical' : 'warning',
    source: cardSource(telling, 'contact'),
    overrideReasons: offeredReasons(messages),
    extension: cardExtension(telling, rules),
  };
}

/** The first sentence of the contact card; undefined when the contact is in time. */
function openingOf({ evaluation, messages, context }: Telling): string | undefined {
  const { urgency, classification } = evaluation.assessment;
  const { phrases, urgencyWords, classWords, months } = messages;
  if (context.proposed === undefined) {
    const isOpen = urgency === 'emergency' || urgency === 'same-day';
    const name = classWords[classification[0] ?? 'cannot-classify'];
    return isOpen ? fill(phrases['before-she-leaves'], { urgency: urgencyWords[urgency], name }) : undefined;
  }
  const due = dueOf(evaluation);
  const first = context.proposed.flatMap(startOf).toSorted((a, b) => Date.parse(a) - Date.parse(b))[0];
  if (due === undefined || first === undefined || Date.parse(first) <= due) return undefined;
  return fill(phrases['too-late'], { time: spokenTime(first, months), urgency: urgencyWords[urgency] });
}

function startOf({ resource }: Proposed): readonly string[] {
  const { start, resourceType } = resource;
  const isReadable = typeof start === 'string' && !Number.isNaN(Date.parse(start));
  return resourceType === 'Appointment' && isReadable ? [start] : [];
}

function dueOf({ assessment, timeline }: Evaluation): number | undefined {
  return dueInstant(assessment.urgency, timeline.asOf, clinicOffset(timeline));
}

function neededBy({ evaluation, messages }: Telling): readonly string[] {
  const due = dueOf(evaluation);
  if (due === undefined) return [];
  const time = spokenTime(localInstant(due, clinicOffset(evaluation.timeline)), messages.months);
  return [escapeMarkdown(fill(messages.phrases['needed-by'], { time }))];
}

function planCard(telling: Telling): Card | undefined {
  const { evaluation, messages } = telling;
  const { assessment } = evaluation;
  const plan = assessment.actions.filter(({ kind }) => planKinds.includes(kind));
  const decides = plan.filter(({ kind }) => planDecides.includes(kind));
  if (assessment.urgency === 'emergency' || decides.length === 0) return undefined;
  const sentences = (actions: typeof plan) =>
    spoken(
      actions.map(({ sentence }) => sentence),
      messages,
    );
  const name = messages.classWords[assessment.classification[0] ?? 'cannot-classify'];
  const ids = plan.map(({ id }) => id);
  return {
    uuid: cardUuid(telling, 'follow-up', [ids, evidenceMet(evaluation)]),
    summary: fitSummary([sentenceCase(fill(messages.phrases.plan, { name })), ...sentences(decides)]),
    detail: [
      ...section(telling, 'plan', sentences(plan).map(escapeMarkdown), true),
      ...section(telling, 'contact', neededBy(telling)),
      ...section(telling, 'medicines', medicineLines(telling).map(escapeMarkdown)),
      ...section(
        telling,
        'open',
        assessment.missing.map((missing) => missingLine(telling, missing)),
      ),
      ...section(telling, 'newest', newestLines(telling)),
      ...section(telling, 'not-seen', gapLines(telling)),
      ...closingLines(telling),
    ].join('\n'),
    indicator: 'info',
    source: cardSource(telling, 'follow-up'),
    overrideReasons: offeredReasons(messages),
    extension: cardExtension(telling, ids),
  };
}
