// Limits in words, with the units people write. No decision here.
import type { Comparator, Threshold } from '../guidelines/guideline.ts';

const comparatorWords: Readonly<Record<Comparator, string>> = {
  '>=': 'at least',
  '>': 'more than',
  '<=': 'at most',
  '<': 'below',
};

/** UCUM units as people write them; a unit not listed stands as it is. */
const unitWords: Readonly<Record<string, string>> = {
  'mm[Hg]': 'mmHg',
  '10*9/L': '× 10⁹/L',
  '10*3/uL': '× 10³/µL',
  'umol/L': 'µmol/L',
  'mg/(24.h)': 'mg in 24 hours',
  '{beats}/min': 'per minute',
  '/min': 'per minute',
};

const countedUnits: Readonly<Record<string, string>> = {
  min: 'minute',
  h: 'hour',
  d: 'day',
  wk: 'week',
  mo: 'month',
  a: 'year',
};

/** A number with its unit: "140 mmHg", "2+", "trace", "4 hours", "0.3 mg/mg"; beyond 72 hours whole days. */
export function quantityWords(value: number, unit: string): string {
  if (unit === '{grade}') return gradeWords(value);
  if (unit === '1') return String(value);
  if (unit === 'h' && value > 72 && value % 24 === 0) return quantityWords(value / 24, 'd');
  const counted = countedUnits[unit];
  if (counted !== undefined) return `${String(value)} ${counted}${value === 1 ? '' : 's'}`;
  return `${String(value)} ${unitWords[unit] ?? unit}`;
}

function gradeWords(grade: number): string {
  if (grade === 0) return 'negative';
  return Number.isInteger(grade) ? `${String(grade)}+` : 'trace';
}

/** "at least 140 mmHg", with the same limit as printed in other units. */
export function limitWords({ comparator, value, unit, alsoPrintedAs }: Threshold): string {
  const also = (alsoPrintedAs ?? []).map((other) => quantityWords(other.value, other.unit));
  const printed = also.length === 0 ? '' : ` (also printed as ${also.join(', ')})`;
  return `${comparatorWords[comparator]} ${quantityWords(value, unit)}${printed}`;
}

/** Text with units as people write them: "132 10*9/L" becomes "132 × 10⁹/L". */
export function spokenUnits(text: string): string {
  return ['mm[Hg]', '10*9/L', '10*3/uL', 'umol/L', 'mg/(24.h)'].reduce(
    (spoken, unit) => spoken.replaceAll(unit, unitWords[unit] ?? unit),
    text,
  );
}
