// How fast, and where to: the most cautious rule that holds.
import type { Assessment, Outcome, Referral } from '../findings/finding.ts';
import { urgencies, type ReferralRule, type Urgency, type UrgencyRule } from '../guidelines/guideline.ts';
import { combine, lookUp } from './combine.ts';

export interface DecidedUrgency {
  readonly urgency: Urgency;
  readonly because: Assessment['urgencyBecause'];
}

/** Is `a` more urgent than `b`? */
export const isMoreUrgent = (a: Urgency, b: Urgency): boolean => urgencies.indexOf(a) < urgencies.indexOf(b);

/** The most urgent rule that holds decides; `routine` when none does. Outcomes are added as `urgency:<id>`. */
export function decideUrgency(rules: readonly UrgencyRule[], outcomes: Map<string, Outcome>): DecidedUrgency {
  const outcomeOf = lookUp(outcomes);
  const held = rules.filter((rule) => {
    const outcome = combine(rule.when, outcomeOf);
    outcomes.set(`urgency:${rule.id}`, outcome);
    return outcome === 'met';
  });
  const because = held
    .map((rule) => ({ rule: rule.id, urgency: rule.urgency, sentence: rule.sentence, source: rule.citation }))
    .sort((a, b) => urgencies.indexOf(a.urgency) - urgencies.indexOf(b.urgency));
  return { urgency: because[0]?.urgency ?? 'routine', because };
}

/** The first referral rule that holds. Every level is added to the outcomes as `referral:<level>`. */
export function chooseReferral(
  rules: readonly ReferralRule[],
  outcomes: Map<string, Outcome>,
  urgency: Urgency,
): Referral | undefined {
  const outcomeOf = lookUp(outcomes);
  const chosen = rules.find((rule) => combine(rule.when, outcomeOf) === 'met');
  for (const rule of rules) outcomes.set(`referral:${rule.level}`, rule === chosen ? 'met' : 'not-met');
  if (chosen === undefined) return undefined;
  const isSettled = isMoreUrgent('same-day', urgency);
  const sentence = isSettled ? (chosen.whenSettled ?? chosen.sentence) : chosen.sentence;
  return { level: chosen.level, urgency, sentence, source: chosen.citation };
}
