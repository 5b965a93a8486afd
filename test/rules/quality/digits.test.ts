// Digits of a site, with limits of their own: Q9, Q10 and Q11 of the clinical rules, section 3.
import { describe, expect, it } from 'vitest';
import type { SiteQualityRules } from '../../../src/guidelines/quality-rule.ts';
import {
  chiSquare,
  copyForwardReport,
  repeatedValue,
  terminalZeroReport,
  thresholdAvoidance,
} from '../../../src/rules/quality/digit-preference.ts';
import { limit, raisedLimits } from '../checks/ask.ts';

describe('digits of a site', () => {
  const rules: SiteQualityRules = {
    minimumReadings: limit('>=', 4, '1'),
    terminalZero: {
      number: 'Q9',
      automated: { expectedShare: limit('<=', 0.1, '1'), alertShare: limit('>=', 0.25, '1') },
      manual: { expectedShare: limit('<=', 0.2, '1'), alertShare: limit('>=', 0.5, '1') },
      sentence: '',
    },
    avoidance: {
      number: 'Q10',
      window: limit('<=', 2, 'mm[Hg]'),
      alertRatio: limit('>=', 2, '1'),
      alertChiSquare: limit('>=', 3, '1'),
      sentence: '',
    },
    copyForward: { number: 'Q11', visits: limit('>=', 3, '1'), sentence: '' },
  };
  const pairs = (...values: readonly number[]) =>
    values.map((systolicMmHg) => ({ systolicMmHg, diastolicMmHg: systolicMmHg - 50, technique: {} }));

  it('zeros are counted by method and half', () => {
    const automated = pairs(120, 122).map((pair) => ({
      ...pair,
      technique: { method: 'oscillometry' as const },
    }));
    const report = terminalZeroReport([...pairs(120, 130, 141, 153), ...automated], rules);
    expect(
      report.map(({ method, half, digits }) => [method, half, digits.readings, digits.zeros, digits.outcome]),
    ).toEqual([
      ['automated', 'systolic', 2, 1, 'cannot-tell'],
      ['automated', 'diastolic', 2, 1, 'cannot-tell'],
      ['manual', 'systolic', 4, 2, 'met'],
      ['manual', 'diastolic', 4, 2, 'met'],
    ]);
    expect(report[2]?.digits).toMatchObject({ share: 0.5, expectedShare: 0.2 });
    // 2 against 0.8 expected, and 2 against 3.2.
    expect(report[2]?.digits.chiSquare).toBeCloseTo(1.44 / 0.8 + 1.44 / 3.2, 12);
    expect(
      chiSquare([
        [5, 0],
        [3, 2],
      ]),
    ).toBe(0.5);
  });

  const avoided = (...values: readonly number[]) => thresholdAvoidance(pairs(...values), raisedLimits, rules);

  it('readings just below a limit are set against those at it, each half by itself', () => {
    const [systolic, diastolic] = avoided(137, 138, 139, 139, 140, 141, 142);
    expect(systolic).toMatchObject({
      half: 'systolic',
      readings: 7,
      justBelow: 3,
      justAtOrAbove: 2,
      outcome: 'not-met',
    });
    // 87 to 92: 88, 89 and 89 below 90; 90 and 91 at it.
    expect(diastolic).toMatchObject({ half: 'diastolic', justBelow: 3, justAtOrAbove: 2 });
  });

  it('a half that a reading does not have is not among them', () => {
    const counts = thresholdAvoidance(
      [{ systolicMmHg: 138 }, { diastolicMmHg: 88 }, {}],
      raisedLimits,
      rules,
    );
    expect(counts.map(({ readings }) => readings)).toEqual([1, 1]);
  });

  it('alert by their ratio and their statistic together, from enough readings on', () => {
    const outcome = (...values: readonly number[]) => avoided(...values)[0]?.outcome;
    expect(outcome(138, 138, 138, 138, 139, 139, 140)).toBe('met');
    expect(outcome(138, 138, 138)).toBe('cannot-tell');
    // Three times as many, but a statistic of 1; and a statistic of 3.6 with twice as many less one.
    expect(outcome(138, 138, 138, 140)).toBe('not-met');
    expect(outcome(138, 138, 139, 139, 138, 138, 140, 141, 140)).toBe('not-met');
    const many = Array.from({ length: 40 }, (_, index) => (index < 26 ? 138 : 140));
    expect(outcome(...many)).toBe('not-met');
    expect(outcome(...many, 138, 138)).toBe('met');
    expect(outcome(150, 150, 150, 150)).toBe('not-met');
  });

  const on = (day: number, systolicMmHg?: number, diastolicMmHg?: number) => ({
    day,
    ...(systolicMmHg === undefined ? {} : { systolicMmHg }),
    ...(diastolicMmHg === undefined ? {} : { diastolicMmHg }),
  });
  const same = [on(1, 120, 70), on(2, 120, 70), on(3, 120, 70)];

  it('one pair on most days is told, from the limit on', () => {
    const { visits } = rules.copyForward;
    expect(repeatedValue(same, visits)).toEqual({ systolicMmHg: 120, diastolicMmHg: 70, visits: 3 });
    expect(repeatedValue(same.slice(1), visits)).toBeUndefined();
    expect(repeatedValue([on(1, 120, 70), on(1, 120, 70), on(2, 120, 70)], visits)).toBeUndefined();
    const more = [on(4, 130, 80), on(5, 130, 80), on(6, 130, 80), on(7, 130, 80)];
    expect(repeatedValue([...same, ...more], visits)).toEqual({
      systolicMmHg: 130,
      diastolicMmHg: 80,
      visits: 4,
    });
    expect(repeatedValue([...same, ...more.slice(1)], visits)?.systolicMmHg).toBe(120);
    expect(repeatedValue([on(1, 120), on(2, 120), on(3, 120)], visits)).toBeUndefined();
    expect(
      repeatedValue([on(1, undefined, 70), on(2, undefined, 70), on(3, undefined, 70)], visits),
    ).toBeUndefined();
    expect(repeatedValue([], visits)).toBeUndefined();
  });

  it('women are judged from as many days as the limit, and counted when one value fills them', () => {
    const other = [on(1, 120, 70), on(2, 122, 70), on(3, 124, 70)];
    expect(copyForwardReport([same, other, same, same.slice(1), []], rules)).toEqual({
      women: 3,
      withRepeatedValue: 2,
    });
    expect(copyForwardReport([[on(1, 120, 70), on(1, 121, 70), on(1, 122, 70)]], rules)).toEqual({
      women: 0,
      withRepeatedValue: 0,
    });
  });
});
