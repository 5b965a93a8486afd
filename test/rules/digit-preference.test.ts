// Rounding, avoided limits and copied values over lists of readings: Q9, Q10 and Q11 of the clinical rules, section 3.
import { describe, expect, it } from 'vitest';
import { siteQualityRules } from '../../src/guidelines/quality-rules.ts';
import { guidelineOf } from '../../src/guidelines/registry.ts';
import {
  chiSquare,
  copyForwardReport,
  repeatedValue,
  terminalZeroReport,
  terminalZeros,
  thresholdAvoidance,
} from '../../src/rules/quality/digit-preference.ts';

const manual = (value: number) => ({ systolicMmHg: value, technique: {} });
const automated = (value: number) => ({
  systolicMmHg: value,
  technique: { method: 'oscillometry' as const },
});
const mixed = (zeros: number, others: number): number[] => [
  ...Array.from({ length: zeros }, () => 120),
  ...Array.from({ length: others }, () => 124),
];

describe('Q9: share of terminal zeros (expected 10 % automated, 20 % by hand; alert from 25 % and 40 %)', () => {
  const { terminalZero, minimumReadings } = siteQualityRules;
  it.each([
    [11, 19, 'not-met'],
    [12, 18, 'met'],
    [12, 17, 'cannot-tell'],
  ] as const)('by hand %i zeros and %i others: %s', (zeros, others, outcome) => {
    expect(terminalZeros(mixed(zeros, others), terminalZero.manual, minimumReadings).outcome).toBe(outcome);
  });
  it.each([
    [9, 31, 'not-met'],
    [10, 30, 'met'],
  ] as const)('automated %i zeros and %i others: %s', (zeros, others, outcome) => {
    expect(terminalZeros(mixed(zeros, others), terminalZero.automated, minimumReadings).outcome).toBe(
      outcome,
    );
  });
  it('gives chi-square: 12 zeros of 30 against 6 expected is 36/6 + 36/24 = 7.5', () => {
    const found = terminalZeros(mixed(12, 18), terminalZero.manual, minimumReadings);
    expect(found.chiSquare).toBeCloseTo(7.5, 12);
    expect(found).toMatchObject({ readings: 30, zeros: 12, share: 0.4 });
  });
  it('leaves fractions out, and tells methods and halves apart', () => {
    expect(terminalZeros([120.5, 120], terminalZero.manual, minimumReadings).readings).toBe(1);
    const report = terminalZeroReport(
      [...mixed(12, 18).map(manual), ...mixed(0, 30).map(automated)],
      siteQualityRules,
    );
    expect(report.map(({ method, half, digits }) => [method, half, digits.outcome])).toEqual([
      ['automated', 'systolic', 'not-met'],
      ['automated', 'diastolic', 'cannot-tell'],
      ['manual', 'systolic', 'met'],
      ['manual', 'diastolic', 'cannot-tell'],
    ]);
  });
  it('is nought without readings', () => {
    expect(terminalZeros([], terminalZero.manual, minimumReadings)).toMatchObject({ share: 0, chiSquare: 0 });
    expect(chiSquare([[0, 0]])).toBe(0);
  });
});

describe('Q10: readings piled up just below the limit', () => {
  const limits = guidelineOf('frontline')?.chartLimits.hypertension;
  const outcomeOf = (below: number, at: number, elsewhere: number) => {
    if (limits === undefined) throw new Error('no limits');
    const values = [
      ...Array.from({ length: below }, (_, index) => 138 + (index % 2)),
      ...Array.from({ length: at }, (_, index) => 140 + (index % 2)),
      ...Array.from({ length: elsewhere }, () => 120),
    ];
    return thresholdAvoidance(
      values.map((systolicMmHg) => ({ systolicMmHg })),
      limits,
      siteQualityRules,
    )[0];
  };
  it('nine at 138 or 139 against three at 140 or 141: no alert, chi-square 3', () => {
    expect(outcomeOf(9, 3, 30)).toMatchObject({ outcome: 'not-met', chiSquare: 3 });
  });
  it('twelve against four: alert, chi-square 4', () => {
    expect(outcomeOf(12, 4, 30)).toMatchObject({
      outcome: 'met',
      chiSquare: 4,
      justBelow: 12,
      justAtOrAbove: 4,
    });
  });
  it('twelve against five: no alert, the ratio is too small', () => {
    expect(outcomeOf(12, 5, 30)?.outcome).toBe('not-met');
  });
  it('cannot tell from fewer than thirty', () => {
    expect(outcomeOf(12, 4, 13)?.outcome).toBe('cannot-tell');
  });
});

describe('Q11: the same value at several visits, over a list', () => {
  it('three times on one day is one visit', () => {
    const visits = siteQualityRules.copyForward.visits;
    const day = { systolicMmHg: 124, diastolicMmHg: 78, day: 1 };
    expect(repeatedValue([day, day, day], visits)).toBeUndefined();
    expect(repeatedValue([day, { ...day, day: 2 }, { ...day, day: 3 }], visits)?.visits).toBe(3);
  });
  it('is counted over the women of a site', () => {
    const visit = (day: number, systolicMmHg: number) => ({ systolicMmHg, diastolicMmHg: 78, day });
    const women = [
      [visit(1, 124), visit(2, 124), visit(3, 124)],
      [visit(1, 124), visit(2, 126), visit(3, 124)],
      [visit(1, 124), visit(2, 124)],
    ];
    expect(copyForwardReport(women, siteQualityRules)).toEqual({ women: 2, withRepeatedValue: 1 });
  });
});
