// Comparing a measured number with a limit: true, false, or cannot be known.
import type { PressureLimits, Threshold } from '../guidelines/guideline.ts';
import type { ByUnit, LowerBounds, Measured } from '../timeline/timeline.ts';

/**
 * Does a number satisfy a limit?
 *
 * Given    measured   number in the unit of the limit; may be only a bound ("<100")
 *          threshold  limit with its comparator
 * Returns  true, false, or undefined when a bound leaves it open
 * Throws   never
 * Source   FHIR R4 Quantity.comparator; the bound is an interval
 */
export function satisfies(measured: Measured, threshold: Threshold): boolean | undefined {
  const { value, comparator } = measured;
  const limit = threshold.value;
  const isUpward = threshold.comparator === '>=' || threshold.comparator === '>';
  const isStrict = threshold.comparator === '>' || threshold.comparator === '<';
  if (comparator === undefined) {
    if (isUpward) return isStrict ? value > limit : value >= limit;
    return isStrict ? value < limit : value <= limit;
  }
  const isAtLeast = comparator === '>' || comparator === '>=';
  const reachesBeyond = isAtLeast === isUpward;
  // The open end of the interval excludes the bound itself.
  const isOpen = comparator === '>' || comparator === '<';
  const distance = isUpward ? value - limit : limit - value;
  if (reachesBeyond) {
    if (distance > 0 || (distance === 0 && (isOpen || !isStrict))) return true;
    return undefined;
  }
  if (distance < 0 || (distance === 0 && (isOpen || isStrict))) return false;
  return undefined;
}

/** The number in the unit of the limit, and that limit: the figure printed in the unit sent is preferred to conversion. */
export function inUnitOf(
  measured: Measured,
  byUnit: ByUnit,
  threshold: Threshold,
): { readonly measured: Measured; readonly threshold: Threshold } | undefined {
  const printed = threshold.alsoPrintedAs?.find((also) => also.unit === byUnit.sentUnit);
  const chosen =
    printed === undefined ? threshold : { ...threshold, value: printed.value, unit: printed.unit };
  const value = byUnit.values[chosen.unit];
  if (value === undefined) return undefined;
  return {
    measured: measured.comparator === undefined ? { value } : { value, comparator: measured.comparator },
    threshold: chosen,
  };
}

/** Which halves of a pressure reach their limit. A missing half reaches nothing. */
export function reaches(
  pressure: { readonly systolicMmHg?: number; readonly diastolicMmHg?: number },
  limits: PressureLimits,
): boolean {
  return (
    halfReaches(pressure.systolicMmHg, limits.systolic) ||
    halfReaches(pressure.diastolicMmHg, limits.diastolic)
  );
}

/** Both halves known, heard and not only "at least" this, and neither reaches its limit. */
export function isBelow(
  pressure: {
    readonly systolicMmHg?: number;
    readonly diastolicMmHg?: number;
    readonly lowerBounds?: LowerBounds;
    readonly isDiastolicUnheard?: true;
  },
  limits: PressureLimits,
): boolean {
  if (pressure.systolicMmHg === undefined || pressure.diastolicMmHg === undefined) return false;
  if (pressure.lowerBounds !== undefined || pressure.isDiastolicUnheard === true) return false;
  return !reaches(pressure, limits);
}

const halfReaches = (value: number | undefined, limit: Threshold): boolean =>
  value !== undefined && satisfies({ value }, limit) === true;

const minutesPer: Readonly<Record<string, number>> = { min: 1, h: 60, d: 1440, wk: 10080 };

/** A duration limit in milliseconds. */
export function milliseconds(threshold: Threshold): number {
  const minutes = minutesPer[threshold.unit];
  if (minutes === undefined) throw new Error(`Not a duration: ${threshold.id} in ${threshold.unit}`);
  return threshold.value * minutes * 60_000;
}
