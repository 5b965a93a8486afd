// Liver and kidney against what is usual: the upper limit of the laboratory, and her own earlier value. Clinical rules 1.3.
import { describe, expect, it } from 'vitest';
import type { OrganCriterion } from '../../../src/guidelines/guideline.ts';
import type { LaboratoryResult, Timeline } from '../../../src/timeline/timeline.ts';
import { condition, lab } from '../facts.ts';
import { ask, limit, told } from './ask.ts';

const question = {
  check: 'organ-involvement',
  periods: ['from-20-weeks'],
  newOnset: true,
  symptomsFreshWithin: limit('<=', 1, 'd'),
} as const;
const answer = (criterion: OrganCriterion, facts: Partial<Timeline>, more: object = {}) =>
  told(ask({ ...question, criteria: [criterion], ...more }, facts));

describe('a multiple of the upper limit', () => {
  const twice: OrganCriterion = {
    id: 'liver',
    kind: 'multiple-of-upper-limit',
    organ: 'liver',
    analytes: ['alt'],
    limit: limit('>=', 2, '1'),
    assumedUpperLimit: limit('<=', 40, 'U/L'),
    plausibleUpperLimit: { low: limit('>=', 20, 'U/L'), high: limit('<=', 60, 'U/L') },
  };
  const alt = (value: number, more: Partial<LaboratoryResult> = {}) => ({
    ...lab('09:00', 'alt', value, 'U/L'),
    ...more,
  });
  const of = (...laboratory: Timeline['laboratory']) => answer(twice, { laboratory });

  it.each([
    [79, undefined, 'not-met'],
    [80, undefined, 'met'],
    [59, 30, 'not-met'],
    [60, 30, 'met'],
    [119, 60, 'not-met'],
    [120, 60, 'met'],
    [39, 20, 'not-met'],
    [40, 20, 'met'],
    // Implausible ones give way to the assumed one.
    [79, 61, 'not-met'],
    [80, 61, 'met'],
    [79, 19, 'not-met'],
  ] as const)('%i with the stated limit %s: %s', (value, upperReference, outcome) => {
    const stated = upperReference === undefined ? {} : { upperReference };
    expect(of(alt(value, stated))).toEqual({
      outcome,
      cited: [`${String(value)} U/L`],
      limits: ['>= 2 1'],
    });
  });

  it('of a bound is open where the bound leaves it open, and is then measured again', () => {
    const bound = (comparator: '>' | '<', value: number) =>
      of(alt(value, { measured: { value, comparator } }));
    expect(bound('>', 100).outcome).toBe('met');
    expect(bound('<', 80).outcome).toBe('not-met');
    expect(bound('>', 50)).toEqual({ outcome: 'cannot-tell', cited: ['50 U/L'], limits: [] });
  });

  it('beside a limit of its own tells the same result twice, each time as it was compared', () => {
    const limited: OrganCriterion = {
      id: 'alt',
      kind: 'laboratory',
      organ: 'liver',
      analytes: ['alt'],
      limit: limit('>', 40, 'U/L'),
    };
    const { evidence } = ask({ ...question, criteria: [limited, twice] }, { laboratory: [alt(80)] });
    expect(evidence?.map(({ asCompared }) => asCompared)).toEqual([
      '80 U/L',
      '2 times the upper limit of 40 U/L',
    ]);
  });

  it('cannot be told without a result, or in another unit', () => {
    expect(of()).toEqual({ outcome: 'cannot-tell', cited: [], limits: [] });
    expect(of(lab('09:00', 'alt', 100, 'ukat/L'))).toEqual({ outcome: 'cannot-tell', cited: [], limits: [] });
  });

  it('a low one that is no longer fresh is measured again', () => {
    const old = { laboratory: [lab('2025-03-08T09:00:00Z', 'alt', 20, 'U/L')] };
    const fresh = { negativeFreshWithin: limit('<=', 1, 'd') };
    expect(answer(twice, old, fresh)).toEqual({ outcome: 'cannot-tell', cited: ['20 U/L'], limits: [] });
    expect(answer(twice, old).outcome).toBe('not-met');
  });
});

describe('a multiple of her own earlier value', () => {
  const doubled: OrganCriterion = {
    id: 'kidney',
    kind: 'multiple-of-baseline',
    organ: 'kidney',
    analytes: ['creatinine'],
    limit: limit('>=', 2, '1'),
    unlessRecorded: ['chronic-kidney-disease'],
  };
  const creatinine = (when: string, value: number, unit = 'umol/L') => lab(when, 'creatinine', value, unit);
  const of = (...laboratory: Timeline['laboratory']) => answer(doubled, { laboratory });
  const now = (value: number) => creatinine('09:00', value);
  const october = '2024-10-01T09:00:00Z';

  it('is reckoned from the lowest of what came before, this pregnancy or earlier', () => {
    const cited = (...values: readonly number[]) => values.map((value) => `${String(value)} umol/L`);
    expect(of(creatinine(october, 45), now(90))).toEqual({
      outcome: 'met',
      cited: cited(45, 90),
      limits: ['>= 2 1'],
    });
    expect(of(creatinine(october, 45), now(89))).toEqual({
      outcome: 'not-met',
      cited: cited(45, 89),
      limits: ['>= 2 1'],
    });
    const three = [creatinine('2023-01-01T09:00:00Z', 40), creatinine('2025-01-01T09:00:00Z', 50)];
    expect(of(...three, now(80)).cited).toEqual(cited(40, 80));
    const lowest = [creatinine(october, 50), creatinine('2025-02-01T09:00:00Z', 40)];
    expect(of(...lowest, now(80)).cited).toEqual(cited(40, 80));
    expect(of(creatinine(october, 40), creatinine('2025-02-01T09:00:00Z', 50), now(80)).cited).toEqual(
      cited(40, 80),
    );
  });

  it('is not met without an earlier value above zero in the unit of the newest', () => {
    const alone = { outcome: 'not-met', cited: ['90 umol/L'], limits: [] };
    expect(of(now(90))).toEqual(alone);
    expect(of(creatinine(october, 0), now(90))).toEqual(alone);
    expect(of(creatinine(october, 0.5, 'mg/dL'), now(90))).toEqual(alone);
    expect(of(creatinine('09:00', 40), now(90))).toEqual(alone);
    expect(of().outcome).toBe('cannot-tell');
  });

  it('is explained by a disease on record and active', () => {
    const laboratory = [creatinine(october, 40), now(90)];
    const beside = (item: ReturnType<typeof condition>) =>
      answer(doubled, { laboratory, conditions: [item] });
    const kidney = condition('chronic-kidney-disease');
    expect(beside(kidney)).toEqual({ outcome: 'not-met', cited: ['90 umol/L'], limits: [] });
    expect(beside({ ...kidney, state: 'inactive' }).outcome).toBe('met');
    expect(beside(condition('asthma')).outcome).toBe('met');
  });
});
