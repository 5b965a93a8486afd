// The report as one page in the look of the page at `/`: no script, no other file, made to be printed too.
import { readFileSync } from 'node:fs';
import { barChart, escaped, hatching } from './bar-chart.ts';
import type { Section, Table } from './section.ts';

export interface Page {
  readonly title: string;
  readonly lead: readonly string[];
  readonly sections: readonly Section[];
  readonly caution: readonly string[];
}

/** The file lies at the same place seen from src/replay/report and from dist/replay/report. */
const look = readFileSync(new URL('../../look/look.css', import.meta.url), 'utf8');

/** What only the report has: a plot and its table side by side, bars. */
const style = `.beside{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,32rem),1fr));gap:.5rem 2rem;align-items:start}
section{border-top:1px solid var(--line);margin-top:1.5rem}figure{margin:0}figcaption{font-weight:bold;padding:.4rem 0}
.wide{grid-column:1/-1}.beside>:only-child:not(.wide){max-width:44rem}.lead{max-width:70ch;color:var(--soft)}.bar{fill:var(--mark)}.bar.marked{fill:url(#marked);stroke:var(--severe)}
.hatching{position:absolute}.under{fill:var(--sheet)}.stripe{fill:var(--severe)}
@media print{.beside{grid-template-columns:1fr 1fr;break-inside:avoid}section>p{break-after:avoid}}`;

/** The whole page. */
export function toHtml({ title, lead, sections, caution }: Page): string {
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    `<title>${escaped(title)}</title><style>${look}${style}</style></head><body>`,
    `<header><h1>${escaped(title)}</h1></header>`,
    `<aside id="caution" aria-label="Caution"><p><b>Caution</b></p><ul>${caution.map(item).join('')}</ul></aside>`,
    `<main>${hatching}<div class="lead">${lead.map(paragraph).join('')}</div>`,
    ...sections.map(sectionHtml),
    '</main></body></html>',
    '',
  ].join('\n');
}

const paragraph = (text: string): string => `<p>${escaped(text)}</p>`;
const item = (text: string): string => `<li>${escaped(text)}</li>`;

/** Each plot with its table beside it; the tables without a plot after them. */
function sectionHtml({ id, title, sentences, tables, charts }: Section): string {
  const plotted = charts.map((chart) => ({ chart, table: tables.find((table) => table.id === chart.table) }));
  const rest = tables.filter((table) => !plotted.some((each) => each.table === table));
  return [
    `<section id="${escaped(id)}"><h2>${escaped(title)}</h2>`,
    ...sentences.map(paragraph),
    ...plotted.map(({ chart, table }) =>
      beside([barChart(chart), ...(table === undefined ? [] : [tableHtml(table)])]),
    ),
    ...(rest.length === 0 ? [] : [beside(rest.map(tableHtml))]),
    '</section>',
  ].join('\n');
}

const beside = (parts: readonly string[]): string => `<div class="beside">${parts.join('\n')}</div>`;

/** So many columns stand beside something else; more need the width of the page. */
const widest = 7;

function tableHtml({ title, columns, rows }: Table): string {
  const head = columns.map((column) => `<th scope="col">${escaped(column)}</th>`).join('');
  const cell = (value: string | number, at: number): string =>
    `<td data-head="${escaped(columns[at] ?? '')}"${typeof value === 'number' ? ' class="number"' : ''}>${escaped(String(value))}</td>`;
  const body = rows.map((row) => `<tr>${row.map(cell).join('')}</tr>`);
  const none = rows.length === 0 ? [`<tr><td colspan="${columns.length}">nothing to show</td></tr>`] : [];
  return `<div class="scroll${columns.length > widest ? ' wide' : ''}" tabindex="0" role="region" aria-label="${escaped(title)}"><table><caption>${escaped(title)}</caption><thead><tr>${head}</tr></thead><tbody>${[...body, ...none].join('\n')}</tbody></table></div>`;
}
