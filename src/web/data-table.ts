// A table that stays one for a screen reader where a phone shows its rows as blocks.
import { make } from './dom.ts';

export function dataTable(
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): HTMLElement {
  const body = rows.map((cells) =>
    row(cells.map((text, at) => make('td', { role: 'cell', 'data-head': heads[at] }, text))),
  );
  return make(
    'div',
    { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': caption },
    make(
      'table',
      { role: 'table' },
      make('caption', {}, caption),
      make(
        'thead',
        { role: 'rowgroup' },
        row(heads.map((head) => make('th', { scope: 'col', role: 'columnheader' }, head))),
      ),
      make('tbody', { role: 'rowgroup' }, ...body),
    ),
  );
}

const row = (cells: readonly HTMLElement[]): HTMLElement => make('tr', { role: 'row' }, ...cells);
