// The question about protein with limits of its own, and urine results of each kind.
import type { ProteinuriaCriteria, QuestionCheck } from '../../../src/guidelines/guideline.ts';
import type { UrineProtein } from '../../../src/timeline/timeline.ts';
import { ratio } from '../facts.ts';
import { limit, raisedLimits } from './ask.ts';

type Question = Extract<QuestionCheck, { check: 'proteinuria' }>;
export type More = Partial<Question>;

/** "At least so much." */
export const atLeast = (value: number, unit: string) => limit('>=', value, unit);

export const criteria: ProteinuriaCriteria = {
  strip: atLeast(1, '{grade}'),
  ungradedPositive: 'cannot-tell',
  proteinCreatinineRatio: [atLeast(30, 'mg/mmol')],
  albuminCreatinineRatio: [atLeast(8, 'mg/mmol')],
  excretion24h: [atLeast(300, 'mg/(24.h)')],
};
export const question: Question = {
  check: 'proteinuria',
  criteria,
  span: 'current',
  periods: ['from-20-weeks'],
  limits: raisedLimits,
  lookBack: atLeast(3, 'd'),
  correctedWithin: atLeast(1, 'd'),
};

/** Before 20 weeks of the woman of `facts.ts`. */
export const early = '2024-10-01T09:00:00Z';

const units = {
  'protein-creatinine-ratio': 'mg/mmol',
  'albumin-creatinine-ratio': 'mg/mmol',
  'excretion-24h': 'mg/(24.h)',
  concentration: 'g/L',
} as const;

/** A result of another kind, in the unit of its limit. */
export function quantity(
  kind: keyof typeof units,
  at: string,
  value: number,
): Exclude<UrineProtein, { kind: 'strip' }> {
  const unit = units[kind];
  const { source, at: when } = ratio(at, value);
  return {
    kind,
    measured: { value },
    byUnit: { sentUnit: unit, values: { [unit]: value } },
    at: when,
    asSent: `${String(value)} ${unit}`,
    source,
    remarks: [],
  };
}

/** A ratio in a unit of its own. */
export const sent = (at: string, value: number, unit: string): UrineProtein => ({
  ...quantity('protein-creatinine-ratio', at, value),
  byUnit: { sentUnit: unit, values: { [unit]: value } },
  asSent: `${String(value)} ${unit}`,
});
