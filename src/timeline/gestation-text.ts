// Gestational age between days and words. Hands on "31+4" and days.
import { daysPerWeek } from './calendar.ts';

/** Gestational age in weeks and days: 220 days are `31+3`. */
export function formatGestation(days: number): string {
  return `${String(Math.floor(days / daysPerWeek))}+${String(days % daysPerWeek)}`;
}

const shapes: readonly RegExp[] = [
  /^(\d{1,2})\s*\+\s*([0-6])(?:\s*(?:w|wk|wks|weeks?))?$/,
  /^(\d{1,2})\s*(?:w|wk|wks|weeks?)\.?[\s,+&]*(?:and\s+)?(?:([0-6])\s*(?:d|days?)?\.?)?$/,
];

/**
 * How many days are these weeks and days?
 *
 * Given    text  such as `31w4d`, `31+4`, `31 weeks 4 days`, `31 wk`
 * Returns  days; undefined for any other shape, a bare number included
 * Throws   never
 * Notes    1. `31.4 weeks` is refused: it may be 31 weeks 4 days.
 * Source   terminology.md section 3.
 */
export function daysInText(text: string): number | undefined {
  const plain = text.trim().toLowerCase();
  const found = shapes.map((shape) => shape.exec(plain)).find((match) => match !== null);
  if (!found) return undefined;
  return Number(found[1]) * daysPerWeek + Number(found[2] ?? 0);
}
