import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Comparator, Threshold } from '../../src/guidelines/guideline.ts';
import { inUnitOf, milliseconds, satisfies } from '../../src/rules/compare.ts';

const limit = (comparator: Comparator, value: number, unit = '10*9/L'): Threshold => ({
  id: 'a-limit',
  comparator,
  value,
  unit,
  citation: { publication: 'test', section: 'test', year: 2026, known: 'ours' },
});

describe('F-V04: a bound is an interval, compared in three values', () => {
  it.each([
    ['<', 100, '<', 150, true],
    ['<', 300, '<', 150, undefined],
    ['>', 300, '>=', 150, true],
    ['>', 100, '>=', 150, undefined],
    ['<', 150, '>=', 150, false],
    ['<=', 150, '>=', 150, undefined],
    ['>', 150, '>', 150, true],
    ['>=', 150, '>', 150, undefined],
    ['>=', 150, '>=', 150, true],
    ['>', 150, '<', 150, false],
    ['>=', 150, '<', 150, false],
    ['>=', 150, '<=', 150, undefined],
    ['<', 150, '<', 150, true],
    ['<=', 150, '<', 150, undefined],
    ['<=', 150, '>', 150, false],
  ] as const)('%s%d against %s%d is %s', (bound, value, comparator, at, expected) => {
    expect(satisfies({ value, comparator: bound }, limit(comparator, at))).toBe(expected);
  });

  it('agrees with every number the interval holds', () => {
    const comparators = fc.constantFrom<Comparator>('<', '<=', '>', '>=');
    const small = fc.integer({ min: 0, max: 20 });
    fc.assert(
      fc.property(comparators, small, comparators, small, small, (bound, value, comparator, at, tenths) => {
        const verdict = satisfies({ value, comparator: bound }, limit(comparator, at));
        const member = bound.startsWith('<') ? value - tenths / 10 : value + tenths / 10;
        const isInside = bound.length === 2 || member !== value;
        if (verdict === undefined || !isInside) return true;
        return satisfies({ value: member }, limit(comparator, at)) === verdict;
      }),
    );
  });
});

describe('the figure printed in the unit that was sent is preferred to conversion (decision 22)', () => {
  const creatinine: Threshold = {
    ...limit('>', 1.1, 'mg/dL'),
    alsoPrintedAs: [{ value: 97, unit: 'umol/L' }],
  };
  it('compares micromoles with 97, not with 1.1 x 88.4', () => {
    const byUnit = { sentUnit: 'umol/L', values: { 'umol/L': 97.2, 'mg/dL': 1.0995 } };
    const compared = inUnitOf({ value: 97.2 }, byUnit, creatinine);
    expect(compared).toMatchObject({ measured: { value: 97.2 }, threshold: { value: 97, unit: 'umol/L' } });
  });
  it('and is passed over where another unit was sent', () => {
    const byUnit = { sentUnit: 'mg/dL', values: { 'umol/L': 97.2, 'mg/dL': 1.0995 } };
    expect(inUnitOf({ value: 1.0995 }, byUnit, creatinine)).toMatchObject({
      measured: { value: 1.0995 },
      threshold: { value: 1.1, unit: 'mg/dL' },
    });
  });
  it('says nothing about a unit it was not given', () => {
    expect(inUnitOf({ value: 1 }, { sentUnit: 'g/L', values: { 'g/L': 1 } }, creatinine)).toBeUndefined();
  });
});

describe('durations', () => {
  it.each([
    [4, 'h', 14_400_000],
    [15, 'min', 900_000],
    [42, 'd', 3_628_800_000],
  ])('%d %s is %d ms', (value, unit, expected) => {
    expect(milliseconds(limit('>=', value, unit))).toBe(expected);
  });
  it('refuses what is not a duration', () => {
    expect(() => milliseconds(limit('>=', 4, 'mm[Hg]'))).toThrow('a-limit');
  });
});
