// From the readings of one contact to its value.
import type { VisitValues } from '../guidelines/guideline.ts';
import type { LowerBounds, PressureReading } from '../timeline/timeline.ts';
import { satisfies } from './compare.ts';

/** Values in mm[Hg], unrounded; a half is absent when no reading had it. */
export interface Pressure {
  readonly systolicMmHg?: number;
  readonly diastolicMmHg?: number;
  /** Halves that hold a reading sent as "at least". */
  readonly lowerBounds?: LowerBounds;
  /** No diastolic was heard: every one was sent beside a systolic that was felt. */
  readonly isDiastolicUnheard?: true;
}

/**
 * The value of one contact.
 *
 * Given    readings  of one occasion, oldest first, at least one, in mm[Hg]
 *          visit     difference above which the first reading is left out
 * Returns  value          average of the arm with the higher pressure, each half by itself; with three or more
 *                         readings of which the first two differ too much, the average of the second and third
 *          cautiousValue  the higher of that and the average of all: for urgency only
 * Throws   never
 * Notes    1. Arms are compared half by half, so that raising one reading never lowers the value.
 * Source   clinical practice of averaging as cited at the threshold; the cautious value is ours
 */
export function visitValue(
  readings: readonly PressureReading[],
  visit: VisitValues,
): { readonly value: Pressure; readonly cautiousValue: Pressure } {
  const [only, ...more] = readings;
  if (only !== undefined && more.length === 0) {
    const value = { ...pressure(only.systolicMmHg, only.diastolicMmHg), ...leftOpenBy(readings) };
    return { value, cautiousValue: value };
  }
  const arms = [...new Set(readings.map((reading) => reading.arm))];
  const perArm = arms.map((arm) => readings.filter((reading) => reading.arm === arm));
  const open = leftOpenBy(readings);
  return {
    value: { ...highest(perArm.map((group) => mean(settled(group, visit)))), ...open },
    cautiousValue: {
      ...highest(perArm.flatMap((group) => [mean(group), mean(settled(group, visit))])),
      ...open,
    },
  };
}

/** What readings taken together leave open: they may be higher, or hold no diastolic that was heard. */
export function leftOpenBy(
  readings: readonly Pressure[],
): Pick<Pressure, 'lowerBounds' | 'isDiastolicUnheard'> {
  const bounds = readings.flatMap(({ lowerBounds }) => lowerBounds ?? []);
  const diastolics = readings.filter(({ diastolicMmHg }) => diastolicMmHg !== undefined);
  const isUnheard =
    diastolics.length > 0 && diastolics.every(({ isDiastolicUnheard }) => isDiastolicUnheard === true);
  return {
    ...(bounds.length === 0
      ? {}
      : { lowerBounds: bounds.reduce<LowerBounds>((all, each) => ({ ...all, ...each }), {}) }),
    ...(isUnheard ? { isDiastolicUnheard: true } : {}),
  };
}

function settled(readings: readonly PressureReading[], visit: VisitValues): readonly PressureReading[] {
  const [first, second, third] = readings;
  if (first === undefined || second === undefined || third === undefined) return readings;
  return differTooMuch(first, second, visit) ? [second, third] : readings;
}

/** Do two readings differ so much, in either half, that a third is wanted? */
export function differTooMuch(a: Pressure, b: Pressure, visit: VisitValues): boolean {
  return [
    [a.systolicMmHg, b.systolicMmHg],
    [a.diastolicMmHg, b.diastolicMmHg],
  ].some(
    ([left, right]) =>
      left !== undefined &&
      right !== undefined &&
      satisfies({ value: Math.abs(left - right) }, visit.thirdReadingWhenDifferenceOver) === true,
  );
}

function mean(readings: readonly Pressure[]): Pressure {
  return pressure(
    average(readings.map((reading) => reading.systolicMmHg)),
    average(readings.map((reading) => reading.diastolicMmHg)),
  );
}

function highest(pressures: readonly Pressure[]): Pressure {
  return pressure(
    maximum(pressures.map((item) => item.systolicMmHg)),
    maximum(pressures.map((item) => item.diastolicMmHg)),
  );
}

function pressure(systolicMmHg: number | undefined, diastolicMmHg: number | undefined): Pressure {
  if (systolicMmHg === undefined) return diastolicMmHg === undefined ? {} : { diastolicMmHg };
  return diastolicMmHg === undefined ? { systolicMmHg } : { systolicMmHg, diastolicMmHg };
}

const known = (values: readonly (number | undefined)[]): number[] =>
  values.filter((value): value is number => value !== undefined);

function average(values: readonly (number | undefined)[]): number | undefined {
  const numbers = known(values);
  return numbers.length === 0 ? undefined : numbers.reduce((sum, value) => sum + value, 0) / numbers.length;
}

function maximum(values: readonly (number | undefined)[]): number | undefined {
  const numbers = known(values);
  return numbers.length === 0 ? undefined : Math.max(...numbers);
}
