// A threshold of time as milliseconds or days. Hands on numbers.
import type { Threshold } from '../guidelines/guideline.ts';
import { daysPerWeek, millisecondsPerDay, millisecondsPerMinute } from './calendar.ts';

const millisecondsPerUnit: Readonly<Record<string, number>> = {
  s: 1000,
  min: millisecondsPerMinute,
  h: 60 * millisecondsPerMinute,
  d: millisecondsPerDay,
  wk: daysPerWeek * millisecondsPerDay,
};

/**
 * How long is this threshold, in milliseconds?
 *
 * Given    threshold  its unit one of `s`, `min`, `h`, `d`, `wk` (UCUM)
 * Returns  milliseconds
 * Throws   for a threshold in any other unit: the guideline data is wrong
 */
export function millisecondsOf(threshold: Threshold): number {
  const factor = millisecondsPerUnit[threshold.unit];
  if (factor === undefined) throw new Error(`threshold ${threshold.id} is not a time: ${threshold.unit}`);
  return threshold.value * factor;
}

/** How long is this threshold, in days? Throws as `millisecondsOf`. */
export function daysOf(threshold: Threshold): number {
  return millisecondsOf(threshold) / millisecondsPerDay;
}
