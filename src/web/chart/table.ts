// The same marks as sentences and as a table.
import { dataTable } from '../data-table.ts';
import type { Mark } from './mark.ts';

/** "10 Mar 2025 09:00, 33+0 weeks: blood pressure 148/94 mmHg." */
export function markWords({ when, place, what, value, note }: Mark): string {
  const time = place === '' ? when : `${when}, ${place}`;
  return `${time}: ${what} ${value}${note === '' ? '' : ` (${note})`}.`;
}

/** All marks, newest first. */
export const markTable = (marks: readonly Mark[]): HTMLElement =>
  dataTable(
    'The chart as a table, newest first',
    ['When', 'Gestation', 'What', 'Value', 'Remark'],
    marks.toReversed().map(({ when, place, what, value, note }) => [when, place, what, value, note]),
  );
