// Horizontal bars as SVG that fits any width: lengths in per cent, text in pixels, the value written beside each bar.
import { scaleBand, scaleLinear } from 'd3-scale';
import type { Chart } from './section.ts';

/** The hatching of marked bars, once for the whole page: no colour is needed to tell them. */
export const hatching =
  '<svg width="0" height="0" aria-hidden="true" class="hatching"><defs><pattern id="marked" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect class="under" width="6" height="6"/><rect class="stripe" width="3" height="6"/></pattern></defs></svg>';

const lineHeight = 15;
const barHeight = 14;
const gap = 10;
const tickRow = 20;
/** Room for the number to the right of the longest bar, in per cent. */
const longestBar = 84;

/**
 * Given    chart   its bars, in reading order
 * Returns  a figure; the same text for the same chart
 */
export function barChart({ title, unit, bars, reference }: Chart): string {
  const labels = bars.map(({ label }) => linesOf(label));
  const rowHeight = Math.max(1, ...labels.map((lines) => lines.length)) * lineHeight + barHeight + gap;
  const floor = bars.length * rowHeight;
  const row = scaleBand<number>(
    bars.map((_bar, at) => at),
    [0, floor],
  );
  const largest = Math.max(...bars.map(({ value }) => value ?? 0), reference?.value ?? 0, 0);
  const x = scaleLinear([0, largest === 0 ? 1 : largest], [0, longestBar]).nice(4);
  const foot = reference === undefined ? tickRow : tickRow + lineHeight;
  const grid = x.ticks(4).map((value) => gridLine(x(value), floor, value));
  const drawn = bars.map(({ value, isMarked }, at) => {
    const top = row(at) ?? 0;
    const under = top + (labels[at]?.length ?? 1) * lineHeight + 2;
    const length = x(Math.max(0, value ?? 0));
    return [
      ...(labels[at] ?? []).map(
        (line, index) => `<text x="0" y="${top + (index + 1) * lineHeight - 2}">${line}</text>`,
      ),
      `<rect class="${isMarked === true ? 'bar marked' : 'bar'}" x="0" y="${under}" width="${percent(length)}" height="${barHeight}"/>`,
      `<text x="${percent(length)}" dx="6" y="${under + barHeight - 3}">${value === undefined ? 'nothing to count' : written(value)}</text>`,
    ].join('');
  });
  const line = reference === undefined ? '' : referenceLine(x(reference.value), floor, reference);
  return `<figure><figcaption>${escaped(title)} (${escaped(unit)})</figcaption><svg class="scene" role="img" aria-label="${escaped(title)}; the values stand in the table" width="100%" height="${floor + foot}">${grid.join('')}${drawn.join('')}${line}</svg></figure>`;
}

function gridLine(at: number, floor: number, value: number): string {
  const anchor = at === 0 ? 'start' : 'middle';
  return `<line class="grid" x1="${percent(at)}" x2="${percent(at)}" y1="0" y2="${floor}"/><text class="tick" x="${percent(at)}" y="${floor + 13}" text-anchor="${anchor}">${written(value)}</text>`;
}

function referenceLine(at: number, floor: number, { label, value }: NonNullable<Chart['reference']>): string {
  return `<g class="limit raised"><line x1="${percent(at)}" x2="${percent(at)}" y1="0" y2="${floor}"/><text x="${percent(at)}" y="${floor + tickRow + 10}">${escaped(label)}: ${written(value)}</text></g>`;
}

/** Characters of a label that fit beside one another on a phone. */
const longestLine = 52;

/** A label broken between words, escaped. */
function linesOf(label: string): readonly string[] {
  const lines: string[] = [];
  for (const word of label.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < longestLine)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.map(escaped);
}

export const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const percent = (value: number): string => `${Math.round(value * 10) / 10}%`;
const written = (value: number): string => (Number.isInteger(value) ? String(value) : value.toFixed(1));
