// The same marks as sentences and as a table.
import { make } from '../dom.ts';
import type { Mark } from './marks.ts';

/** "10 Mar 2025 09:00, 33+0 weeks: blood pressure 148/94 mmHg." */
export function markWords({ when, place, what, value, note }: Mark): string {
  const time = place === '' ? when : `${when}, ${place}`;
  return `${time}: ${what} ${value}${note === '' ? '' : ` (${note})`}.`;
}

/** All marks, newest first. */
export function markTable(marks: readonly Mark[]): HTMLElement {
  const heads = ['When', 'Gestation', 'What', 'Value', 'Remark'];
  const rows = marks
    .toReversed()
    .map(({ when, place, what, value, note }) =>
      make(
        'tr',
        {},
        ...[when, place, what, value, note].map((text, at) => make('td', { 'data-head': heads[at] }, text)),
      ),
    );
  return make(
    'div',
    { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': 'The chart as a table' },
    make(
      'table',
      {},
      make('caption', {}, 'The chart as a table, newest first'),
      make('thead', {}, make('tr', {}, ...heads.map((head) => make('th', { scope: 'col' }, head)))),
      make('tbody', {}, ...rows),
    ),
  );
}
