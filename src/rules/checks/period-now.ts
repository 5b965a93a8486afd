// Which part of the pregnancy is it now?
import type { QuestionCheck } from '../../guidelines/guideline.ts';
import type { Evidence } from '../../findings/finding.ts';
import { met, notApplicable, ofFact, type Answer } from '../answer.ts';
import type { View } from '../view.ts';

type Options = Extract<QuestionCheck, { check: 'period-now' }>;

/** Is `asOf` in the given part? Another part: not applicable, so that a rule about it is not applicable either. `unknown` means undated, and the dating is missing; more than six weeks after birth is in none. */
export function periodNow(view: View, options: Options): Answer {
  const { now } = view;
  const evidence = datingEvidence(view);
  const text = describe(view);
  return now.outside === undefined && now.period === options.period
    ? met(text, { evidence, ...(options.period === 'unknown' ? { missing: {} } : {}) })
    : notApplicable(text, { evidence });
}

/** Where in the pregnancy it is now, in words. */
export function describe(view: View): string {
  const { now } = view;
  if (now.outside === 'later') return 'More than six weeks after the birth, and no newer pregnancy is dated.';
  if (now.daysAfterBirth !== undefined) return `Day ${String(now.daysAfterBirth)} after birth.`;
  if (now.gestationalAgeDays === undefined)
    return view.timeline.pregnancy.assumedFrom20Weeks === undefined
      ? 'The pregnancy is not dated.'
      : 'Not dated; by the height of the fundus 20 weeks or more is assumed.';
  return `${weeksAndDays(now.gestationalAgeDays)} weeks.`;
}

/** 212 days as "30+2". */
export const weeksAndDays = (days: number): string => `${String(Math.floor(days / 7))}+${String(days % 7)}`;

export function datingEvidence(view: View): readonly Evidence[] {
  const { dating, birth, assumedFrom20Weeks } = view.timeline.pregnancy;
  return [
    ...(dating === undefined
      ? []
      : [
          ofFact(`dating, ${dating.method}`, dating),
          ...dating.others.map((other) => ofFact(`dating, ${other.method}`, other)),
        ]),
    ...(birth === undefined ? [] : [ofFact('birth', birth, birth.at)]),
    ...(assumedFrom20Weeks === undefined ? [] : [ofFact('fundal height', assumedFrom20Weeks)]),
  ];
}
