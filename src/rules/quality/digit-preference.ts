// Rounding, avoided limits and copied values in a list of readings: for reports about a site or an observer.
import type { Outcome } from '../../findings/finding.ts';
import type { PressureLimits, Threshold } from '../../guidelines/guideline.ts';
import type { DigitExpectation, SiteQualityRules } from '../../guidelines/quality-rule.ts';
import type { PressureReading } from '../../timeline/timeline.ts';
import { satisfies } from '../compare.ts';
import type { Pressure } from '../visit-value.ts';

export interface DigitShare {
  /** met: alert; not-met: no alert; cannot-tell: too few readings. */
  readonly outcome: Outcome;
  readonly readings: number;
  readonly zeros: number;
  /** 0 to 1; 0 without readings. */
  readonly share: number;
  readonly expectedShare: number;
  /** Against the expected share, zero and not zero, one degree of freedom. */
  readonly chiSquare: number;
}

const terminalBase = 10;

/**
 * How many of the values end in zero, and is that more than honest measuring gives?
 *
 * Given    values       whole mm[Hg] of one half (systolic or diastolic); others are left out
 *          expectation  expected share and the share that alerts
 *          minimum      fewest readings that say anything
 * Returns  the share with its test statistic; cannot-tell below the minimum
 * Throws   never
 * Notes    1. Values converted from kPa have no terminal digit to judge: the caller leaves them out.
 */
export function terminalZeros(
  values: readonly number[],
  expectation: DigitExpectation,
  minimum: Threshold,
): DigitShare {
  const whole = values.filter(Number.isInteger);
  const readings = whole.length;
  const zeros = whole.filter((value) => value % terminalBase === 0).length;
  const share = readings === 0 ? 0 : zeros / readings;
  const expectedShare = expectation.expectedShare.value;
  return {
    outcome: outcomeOf(readings, minimum, satisfies({ value: share }, expectation.alertShare) === true),
    readings,
    zeros,
    share,
    expectedShare,
    chiSquare: chiSquare([
      [zeros, readings * expectedShare],
      [readings - zeros, readings * (1 - expectedShare)],
    ]),
  };
}

/** Sum of (observed - expected) squared over expected; 0 without readings. */
export function chiSquare(cells: readonly (readonly [observed: number, expected: number])[]): number {
  return cells.reduce(
    (sum, [observed, expected]) => (expected === 0 ? sum : sum + (observed - expected) ** 2 / expected),
    0,
  );
}

const outcomeOf = (readings: number, minimum: Threshold, isAlert: boolean): Outcome => {
  if (satisfies({ value: readings }, minimum) !== true) return 'cannot-tell';
  return isAlert ? 'met' : 'not-met';
};

export interface TerminalZeroReport {
  readonly method: 'automated' | 'manual';
  readonly half: 'systolic' | 'diastolic';
  readonly digits: DigitShare;
}

/**
 * Terminal zeros of a site or an observer, by method and half.
 *
 * Given    readings  as measured, in mm[Hg]
 *          rules     limits
 * Returns  four rows: automated and manual, systolic and diastolic
 * Throws   never
 * Notes    1. Only a recorded oscillometric method counts as automated; anything else is judged by the milder
 *             expectation of measuring by hand to the nearest 2 mm[Hg].
 */
export function terminalZeroReport(
  readings: readonly Pick<PressureReading, 'systolicMmHg' | 'diastolicMmHg' | 'technique'>[],
  rules: SiteQualityRules,
): readonly TerminalZeroReport[] {
  return (['automated', 'manual'] as const).flatMap((method) => {
    const own = readings.filter(
      ({ technique }) => (technique.method === 'oscillometry') === (method === 'automated'),
    );
    return (['systolic', 'diastolic'] as const).map((half) => ({
      method,
      half,
      digits: terminalZeros(halfOf(own, half), rules.terminalZero[method], rules.minimumReadings),
    }));
  });
}

const halfOf = (readings: readonly Pressure[], half: 'systolic' | 'diastolic'): readonly number[] =>
  readings.flatMap((reading) => (half === 'systolic' ? reading.systolicMmHg : reading.diastolicMmHg) ?? []);

export interface AvoidanceReport {
  readonly half: 'systolic' | 'diastolic';
  readonly outcome: Outcome;
  readonly readings: number;
  readonly justBelow: number;
  readonly justAtOrAbove: number;
  /** Against as many below as at the limit, one degree of freedom. */
  readonly chiSquare: number;
}

/**
 * Do readings pile up just below a limit?
 *
 * Given    readings  of a site or an observer, in mm[Hg]
 *          limits    the limits of hypertension
 *          rules     window, ratio and test statistic that alert
 * Returns  one row for each half; cannot-tell below the smallest number of readings
 * Throws   never
 * Notes    1. With a window of 2: 138 and 139 are set against 140 and 141.
 */
export function thresholdAvoidance(
  readings: readonly Pressure[],
  limits: PressureLimits,
  rules: SiteQualityRules,
): readonly AvoidanceReport[] {
  return (['systolic', 'diastolic'] as const).map((half) => {
    const values = halfOf(readings, half);
    const limit = limits[half].value;
    const window = rules.avoidance.window.value;
    const justBelow = values.filter((value) => value < limit && value >= limit - window).length;
    const justAtOrAbove = values.filter((value) => value >= limit && value < limit + window).length;
    const expected = (justBelow + justAtOrAbove) / 2;
    const statistic = chiSquare([
      [justBelow, expected],
      [justAtOrAbove, expected],
    ]);
    const isAlert =
      justBelow >= justAtOrAbove * rules.avoidance.alertRatio.value &&
      satisfies({ value: statistic }, rules.avoidance.alertChiSquare) === true;
    return {
      half,
      outcome: outcomeOf(values.length, rules.minimumReadings, isAlert),
      readings: values.length,
      justBelow,
      justAtOrAbove,
      chiSquare: statistic,
    };
  });
}

export interface RepeatedValue {
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
  readonly visits: number;
}

/**
 * Which pair of numbers stands in the record on most days?
 *
 * Given    readings  of one woman, with the day of each; half a pair is left out
 *          visits    from how many days on it is told
 * Returns  the pair seen on most days, the first of them when several are; undefined below the limit
 * Throws   never
 * Notes    1. Two equal readings of one day are one visit.
 */
export function repeatedValue(
  readings: readonly (Pressure & { readonly day: number })[],
  visits: Threshold,
): RepeatedValue | undefined {
  const days = new Map<string, RepeatedValue & { readonly on: Set<number> }>();
  for (const { systolicMmHg, diastolicMmHg, day } of readings) {
    if (systolicMmHg === undefined || diastolicMmHg === undefined) continue;
    const key = `${String(systolicMmHg)}/${String(diastolicMmHg)}`;
    const known = days.get(key) ?? { systolicMmHg, diastolicMmHg, visits: 0, on: new Set<number>() };
    known.on.add(day);
    days.set(key, known);
  }
  const [most] = [...days.values()].sort((a, b) => b.on.size - a.on.size);
  if (most === undefined || satisfies({ value: most.on.size }, visits) !== true) return undefined;
  const { systolicMmHg, diastolicMmHg } = most;
  return { systolicMmHg, diastolicMmHg, visits: most.on.size };
}

export interface CopyForwardReport {
  /** Women with readings of at least as many days as the limit asks for. */
  readonly women: number;
  /** Of them, with one value to the digit on that many days. */
  readonly withRepeatedValue: number;
}

/** How many women of a site have the same value to the digit at several visits? */
export function copyForwardReport(
  women: readonly (readonly (Pressure & { readonly day: number })[])[],
  rules: SiteQualityRules,
): CopyForwardReport {
  const { visits } = rules.copyForward;
  const judged = women.filter(
    (readings) => satisfies({ value: new Set(readings.map(({ day }) => day)).size }, visits) === true,
  );
  return {
    women: judged.length,
    withRepeatedValue: judged.filter((readings) => repeatedValue(readings, visits) !== undefined).length,
  };
}
