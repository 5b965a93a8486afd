// The report as one page: no script, no other file, black on white when printed.
import type { Chart, Section, Table } from './section.ts';

export interface Page {
  readonly title: string;
  readonly lead: readonly string[];
  readonly sections: readonly Section[];
  readonly caution: readonly string[];
}

export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const style = `body{font:15px/1.45 system-ui,sans-serif;max-width:60rem;margin:2rem auto;padding:0 1rem;color:#111}
h1{font-size:1.6rem}h2{font-size:1.25rem;margin-top:2.2rem;border-top:1px solid #999;padding-top:.8rem}
table{border-collapse:collapse;margin:.8rem 0;font-size:.9rem}caption{text-align:left;font-weight:600;padding:.3rem 0}
th,td{border:1px solid #bbb;padding:.2rem .5rem;text-align:left;vertical-align:top}td.n{text-align:right}
figure{margin:1rem 0}figcaption{font-weight:600}svg{max-width:100%;height:auto}.caution{border:2px solid #111;padding:.5rem 1rem}
@media print{body{margin:0;max-width:none;font-size:11px}section{break-inside:avoid}}`;

/** The whole page. */
export function toHtml({ title, lead, sections, caution }: Page): string {
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">',
    `<title>${escaped(title)}</title><style>${style}</style></head><body>`,
    `<h1>${escaped(title)}</h1>`,
    ...lead.map(paragraph),
    `<div class="caution">${caution.map(paragraph).join('')}</div>`,
    ...sections.map(sectionHtml),
    '</body></html>',
    '',
  ].join('\n');
}

const paragraph = (text: string): string => `<p>${escaped(text)}</p>`;

function sectionHtml({ id, title, sentences, tables, charts }: Section): string {
  return [
    `<section id="${escaped(id)}"><h2>${escaped(title)}</h2>`,
    ...sentences.map(paragraph),
    ...charts.map(chartSvg),
    ...tables.map(tableHtml),
    '</section>',
  ].join('\n');
}

function tableHtml({ title, columns, rows }: Table): string {
  const head = columns.map((column) => `<th scope="col">${escaped(column)}</th>`).join('');
  const body = rows.map(
    (row) =>
      `<tr>${row.map((cell) => (typeof cell === 'number' ? `<td class="n">${cell}</td>` : `<td>${escaped(cell)}</td>`)).join('')}</tr>`,
  );
  const none = rows.length === 0 ? [`<tr><td colspan="${columns.length}">nothing to show</td></tr>`] : [];
  return `<table><caption>${escaped(title)}</caption><thead><tr>${head}</tr></thead><tbody>${[...body, ...none].join('\n')}</tbody></table>`;
}

const labelWidth = 250;
const barWidth = 380;
const valueWidth = 70;
const rowHeight = 24;
const barHeight = 16;

/** Horizontal bars, the value written beside each; marked ones are hatched, so that no colour is needed. */
export function chartSvg({ title, unit, bars, reference }: Chart): string {
  const largest = Math.max(...bars.map(({ value }) => value), reference?.value ?? 0, 0);
  const scale = largest === 0 ? 0 : barWidth / largest;
  const foot = reference === undefined ? 0 : rowHeight;
  const height = bars.length * rowHeight + foot;
  const rows = bars.map(({ label, value, isMarked }, at) => {
    const top = at * rowHeight + (rowHeight - barHeight) / 2;
    const middle = top + barHeight - 4;
    const length = Math.max(0, value) * scale;
    return [
      `<text x="${labelWidth - 8}" y="${middle}" text-anchor="end">${escaped(shortened(label))}</text>`,
      `<rect x="${labelWidth}" y="${top}" width="${length.toFixed(1)}" height="${barHeight}" fill="${isMarked === true ? 'url(#marked)' : '#4a6785'}" stroke="#222"/>`,
      `<text x="${(labelWidth + length + 6).toFixed(1)}" y="${middle}">${written(value)}</text>`,
    ].join('');
  });
  const line =
    reference === undefined
      ? ''
      : `<line x1="${(labelWidth + reference.value * scale).toFixed(1)}" x2="${(labelWidth + reference.value * scale).toFixed(1)}" y1="0" y2="${height - foot}" stroke="#000" stroke-dasharray="4 3"/><text x="${(labelWidth + reference.value * scale).toFixed(1)}" y="${height - 6}">${escaped(reference.label)}: ${written(reference.value)}</text>`;
  const width = labelWidth + barWidth + valueWidth;
  return `<figure><figcaption>${escaped(title)} (${escaped(unit)})</figcaption><svg role="img" aria-label="${escaped(title)}; the values stand in the table" viewBox="0 0 ${width} ${height}" width="${width}" font-size="13" font-family="system-ui,sans-serif"><defs><pattern id="marked" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="#fff"/><rect width="3" height="6" fill="#8a2b06"/></pattern></defs>${rows.join('')}${line}</svg></figure>`;
}

const longestLabel = 36;
const shortened = (text: string): string =>
  text.length > longestLabel ? `${text.slice(0, longestLabel - 1)}…` : text;
const written = (value: number): string => (Number.isInteger(value) ? String(value) : value.toFixed(1));
