// How long ago was the birth?
import type { QuestionCheck, Threshold } from '../../guidelines/guideline.ts';
import { met, notApplicable, notMet, type Answer } from '../answer.ts';
import { satisfies } from '../compare.ts';
import { lastLocalDay } from '../../timeline/moment.ts';
import { momentOf, type View } from '../view.ts';
import { datingEvidence, describe } from './period-now.ts';

type Options = Extract<QuestionCheck, { check: 'days-after-birth' }>;

/**
 * Does today lie so many days after the birth?
 *
 * Given    options.from, options.until  limits in days; either may be left out
 * Returns  met; not-met on another day; not-applicable without a birth
 * Throws   never
 * Notes    1. The day of birth is day 0.
 *          2. Of a birth known only by its month the last day counts: she may be so early.
 * Source   clinical-rules 2.2 rule 12; note 2 ours
 */
export function daysAfterBirth(view: View, { from, until }: Options): Answer {
  const text = describe(view);
  const rest = {
    evidence: datingEvidence(view),
    thresholds: [from, until].filter((limit) => limit !== undefined),
  };
  const days = fewestDays(view);
  if (days === undefined) return notApplicable(text, rest);
  const holds = (limit: Threshold | undefined): boolean =>
    limit === undefined || satisfies({ value: days }, limit) === true;
  return holds(from) && holds(until) ? met(text, rest) : notMet(text, rest);
}

function fewestDays({ now, timeline }: View): number | undefined {
  const { birth } = timeline.pregnancy;
  if (now.daysAfterBirth !== undefined || birth === undefined || now.period !== 'after-birth')
    return now.daysAfterBirth;
  return Math.max(0, momentOf(timeline.asOf).localDay - lastLocalDay(birth.at));
}
