// A guideline may name the class; it never lowers the urgency below that of the first level.
import type { Action, Assessment } from '../findings/finding.ts';
import { isMoreUrgent } from './decide-urgency.ts';

/**
 * Lifts an assessment to the floor.
 *
 * Given    own    of the chosen guideline
 *          floor  of `frontline`, on the same timeline
 * Returns  own, or own with the floor's urgency, its reasons, its referral and the steps and drugs own lacks
 * Throws   never
 * Source   ours: the most cautious urgency wins
 */
export function liftToFloor(own: Assessment, floor: Assessment): Assessment {
  if (!isMoreUrgent(floor.urgency, own.urgency)) return own;
  const known = new Set(own.actions.map((action) => action.id));
  const added = floor.actions.filter((action: Action) => !known.has(action.id));
  const referral = floor.referral ?? own.referral;
  return {
    ...own,
    urgency: floor.urgency,
    urgencyBecause: [
      ...floor.urgencyBecause,
      ...own.urgencyBecause.filter((item) => !floor.urgencyBecause.some((other) => other.rule === item.rule)),
    ],
    actions: [...own.actions, ...added].sort((a, b) => a.order - b.order),
    treatment: [
      ...own.treatment,
      ...floor.treatment.filter((option) => !own.treatment.some((known) => known.id === option.id)),
    ],
    ...(referral === undefined ? {} : { referral }),
  };
}
