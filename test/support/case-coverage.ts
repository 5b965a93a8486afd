// What the case files do not yet cover, by rule and group, and by pressure limit.
import type { Outcome } from '../../src/findings/finding.ts';
import type { Guideline, Threshold } from '../../src/guidelines/guideline.ts';
import type { RuleCase } from '../../src/presenters/rule-cases.ts';
import type { CaseRow } from './case-schema.ts';

const groups: readonly Outcome[] = ['met', 'not-met', 'cannot-tell', 'not-applicable'];

/** "hellp: met" for each class rule of a guideline without a case in a group. */
export function absentGroups(
  guideline: Guideline | undefined,
  cases: readonly RuleCase[],
): readonly string[] {
  if (guideline === undefined) return [];
  return guideline.classRules.flatMap(({ id }) => {
    const outcomes = new Set(cases.map((each) => each.outcomes[guideline.id]?.[`class:${id}`]));
    return groups.filter((group) => !outcomes.has(group)).map((group) => `${id}: ${group}`);
  });
}

/** mm[Hg] for a field of a pressure line, as the conversion of the clinical rules rounds it. */
const mmHgPerKPa = 7.50062;

function valuesOf(row: CaseRow, half: 'systolic' | 'diastolic'): readonly number[] {
  return row.given.flatMap((line) => {
    if (line.kind !== 'pressure') return [];
    const mmHg = half === 'systolic' ? line.systolicMmHg : line.diastolicMmHg;
    const kPa = half === 'systolic' ? line.systolicKPa : line.diastolicKPa;
    return [
      ...(mmHg === undefined ? [] : [mmHg]),
      ...(kPa === undefined ? [] : [Math.round(kPa * mmHgPerKPa)]),
    ];
  });
}

/** "nice-2023 nice-severe-systolic: above" for each pressure limit without a row just below, equal, just above. */
export function absentRows(guidelines: readonly Guideline[], rows: readonly CaseRow[]): readonly string[] {
  return guidelines.flatMap((guideline) => {
    const named = rows.filter((row) => row.expect[guideline.id] !== undefined);
    const { hypertension, severe } = guideline.chartLimits;
    const limits: readonly (readonly [Threshold, 'systolic' | 'diastolic'])[] = [
      [hypertension.systolic, 'systolic'],
      [hypertension.diastolic, 'diastolic'],
      [severe.systolic, 'systolic'],
      [severe.diastolic, 'diastolic'],
    ];
    return limits.flatMap(([limit, half]) => {
      const values = new Set(named.flatMap((row) => valuesOf(row, half)));
      const places = { below: limit.value - 1, equal: limit.value, above: limit.value + 1 };
      return Object.entries(places)
        .filter(([, value]) => !values.has(value))
        .map(([place]) => `${guideline.id} ${limit.id}: ${place}`);
    });
  });
}

/** Groups in which no case can exist, each with its reason in `noRows` of the rule's case file; and limits still without rows. */
export const knownGaps: { readonly groups: readonly string[]; readonly rows: readonly string[] } = {
  groups: [
    'eclampsia: cannot-tell',
    'seizure-not-explained: cannot-tell',
    ...[
      'eclampsia',
      'hellp',
      'pre-eclampsia-severe-features',
      'superimposed-pre-eclampsia',
      'severe-unconfirmed',
      'pre-eclampsia',
      'gestational-hypertension-severe-range',
      'seizure-not-explained',
      'masked-hypertension',
      'chronic-hypertension',
      'raised-after-the-window',
      'raised-unconfirmed',
      'isolated-proteinuria',
      'transient-hypertension',
      'normotensive',
    ].map((rule) => `${rule}: not-applicable`),
  ],
  rows: [],
};
