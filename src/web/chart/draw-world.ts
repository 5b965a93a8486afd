// The marks of one view as SVG: few paths, so that moving them costs nothing.
import type { Threshold } from '../../guidelines/guideline.ts';
import { draw } from '../dom.ts';
import { laneHeight, type ChartModel, type Frame } from './frame.ts';
import type { Mark, MarkKind } from './mark.ts';
import { caretDown, caretUp, cross, diamond, ring, square, stem, straight, type Spot } from './shapes.ts';

/** Contacts further apart than this are not joined: a gap is shown as a gap (a choice of display). */
const longestJoinMs = 29 * 86_400_000;

/** Limits and grid: they stay while the marks move. */
export function drawBackground(model: ChartModel, frame: Frame): SVGElement {
  const { left, right, y, lanes, floor } = frame;
  const grid = y
    .ticks(6)
    .map((value) =>
      draw(
        'g',
        {},
        draw('line', { class: 'grid', x1: left, x2: right, y1: y(value), y2: y(value) }),
        draw('text', { class: 'tick', x: left - 5, y: y(value) + 4, 'text-anchor': 'end' }, String(value)),
      ),
    );
  const rows = lanes.map(({ name, top }) =>
    draw(
      'g',
      {},
      draw('line', { class: 'lane', x1: 0, x2: right, y1: top, y2: top }),
      draw('text', { class: 'lane-name', x: 2, y: top + 12 }, name),
    ),
  );
  return draw(
    'g',
    {},
    ...grid,
    ...limitLines(model, frame),
    ...rows,
    draw('text', { class: 'lane-name', x: left + 4, y: frame.top + 12 }, 'mmHg'),
    draw('line', { class: 'axis', x1: left, x2: right, y1: floor, y2: floor }),
  );
}

/** Named at the right, where the chart keeps room: nothing is known there yet. */
function limitLines({ limits }: ChartModel, { left, right, y }: Frame): readonly SVGElement[] {
  const lines: readonly (readonly [Threshold, string, string])[] = [
    [limits.severe.systolic, 'severe', 'systolic'],
    [limits.hypertension.systolic, 'raised', 'systolic'],
    [limits.severe.diastolic, 'severe', 'diastolic'],
    [limits.hypertension.diastolic, 'raised', 'diastolic'],
  ];
  return lines.map(([threshold, level, half]) => {
    const at = y(threshold.value);
    const label = (place: number, text: string) =>
      draw('text', { x: right, y: place, 'text-anchor': 'end' }, text);
    return draw(
      'g',
      { class: `limit ${level}` },
      draw('line', { x1: left, x2: right, y1: at, y2: at }),
      label(at - 4, `${half} ${comparatorSigns[threshold.comparator]} ${threshold.value}`),
      label(at + 12, level),
    );
  });
}

const comparatorSigns = { '>=': '≥', '>': '>', '<=': '≤', '<': '<' } as const;

/** The marks themselves. */
export function drawWorld(model: ChartModel, frame: Frame): SVGElement {
  return draw(
    'g',
    {},
    ...eventLines(model, frame),
    draw('path', { class: 'join', d: joins(model.marks, frame) }),
    draw('path', { class: 'stem', d: stems(model.marks, frame) }),
    ...pressurePaths(model.marks, frame),
    ...frame.lanes.flatMap(({ name, top }) => laneMarks(name, top, model.marks, frame)),
  );
}

function eventLines({ now, pregnancy }: ChartModel, { x, top, height }: Frame): readonly SVGElement[] {
  const birth = pregnancy.birth?.at.localDay;
  const vertical = (time: number, name: string, label: string) =>
    draw(
      'g',
      { class: `event ${name}` },
      draw('line', { x1: x(time), x2: x(time), y1: top - 2, y2: height - 32 }),
      draw('text', { x: x(time) + 3, y: top + 10 }, label),
    );
  return [
    ...(birth === undefined ? [] : [vertical(birth * 86_400_000, 'birth', 'birth')]),
    vertical(now, 'now', 'as of'),
  ];
}

/** One straight line through the systolic values of contacts, one through the diastolic. */
function joins(marks: readonly Mark[], { x, y }: Frame): string {
  const averaged = new Set(
    marks.flatMap(({ kind, references }) => (kind === 'visit-average' ? references : [])),
  );
  const contacts = marks.filter(
    ({ kind, references }) =>
      kind === 'visit-average' || (kind === 'reading' && !references.some((each) => averaged.has(each))),
  );
  const half = (value: (mark: Mark) => number | undefined): string =>
    straight(
      contacts.flatMap((mark, index) => {
        const number = value(mark);
        const spot = number === undefined ? undefined : { x: x(mark.at), y: y(number) };
        const before = contacts[index - 1];
        return before !== undefined && mark.at - before.at > longestJoinMs ? [undefined, spot] : [spot];
      }),
    );
  return half(({ systolic }) => systolic) + half(({ diastolic }) => diastolic);
}

function stems(marks: readonly Mark[], { x, y }: Frame): string {
  return marks
    .flatMap(({ at, systolic, diastolic }) =>
      systolic === undefined || diastolic === undefined ? [] : [stem(x(at), y(systolic), y(diastolic))],
    )
    .join('');
}

const pressureShapes: Readonly<
  Partial<
    Record<
      MarkKind,
      { readonly systolic: (spot: Spot) => string; readonly diastolic: (spot: Spot) => string }
    >
  >
> = {
  // Averages lie under the readings they are made of.
  'visit-average': { systolic: diamond, diastolic: diamond },
  reading: { systolic: caretDown, diastolic: caretUp },
  'home-reading': { systolic: ring, diastolic: ring },
  'sent-average': { systolic: square, diastolic: square },
};

function pressurePaths(marks: readonly Mark[], { x, y }: Frame): readonly SVGElement[] {
  return Object.entries(pressureShapes).map(([kind, { systolic, diastolic }]) => {
    const paths = marks
      .filter((mark) => mark.kind === kind)
      .flatMap((mark) => [
        mark.systolic === undefined ? '' : systolic({ x: x(mark.at), y: y(mark.systolic) }),
        mark.diastolic === undefined ? '' : diastolic({ x: x(mark.at), y: y(mark.diastolic) }),
      ]);
    return draw('path', { class: `mark ${kind}`, d: paths.join('') });
  });
}

function laneMarks(name: string, top: number, marks: readonly Mark[], frame: Frame): readonly SVGElement[] {
  const own = marks.filter(({ lane }) => lane === name);
  const middle = top + laneHeight - 12;
  const spots = own.map((mark) => ({ mark, spot: { x: frame.x(mark.at), y: middle } }));
  const dots = (kind: MarkKind, shape: (spot: Spot) => string) =>
    draw('path', {
      class: `mark ${kind}`,
      d: spots.flatMap(({ mark, spot }) => (mark.kind === kind ? [shape(spot)] : [])).join(''),
    });
  const texts = groupsOf(spots).map((group) =>
    draw('text', { class: 'lane-text', x: group.x + 8, y: middle + 4 }, groupText(group)),
  );
  return [
    dots('unusable', cross),
    dots('urine', (spot) => square(spot, 3)),
    dots('laboratory', (spot) => ring(spot, 3)),
    dots('symptom', (spot) => ring(spot, 4)),
    dots('symptom-absent', (spot) => ring(spot, 3)),
    draw('path', { class: 'mark medicine', d: own.map((mark) => bar(mark, middle, frame)).join('') }),
    ...texts,
  ];
}

interface LaneGroup {
  /** Where the newest of them lies: its text stands to the right, up to the next group. */
  readonly x: number;
  readonly until: number;
  readonly marks: Mark[];
}

/** Marks too close to be named one by one; newest first, so that the newest value is the one that is read. */
function groupsOf(spots: readonly { readonly mark: Mark; readonly spot: Spot }[]): readonly LaneGroup[] {
  const groups: LaneGroup[] = [];
  for (const { mark, spot } of spots.toReversed()) {
    if (mark.short === '') continue;
    const last = groups.at(-1);
    if (last !== undefined && spot.x + widthOf(mark.short) > last.x) last.marks.push(mark);
    else groups.push({ x: spot.x, until: last?.x ?? Infinity, marks: [mark] });
  }
  return groups;
}

/** Pixels for a mark with its text. */
const widthOf = (text: string): number => text.length * 6.5 + 16;

/** The newest that was found, and how many more where there is room to say so: "headache +2". */
function groupText({ x, until, marks }: LaneGroup): string {
  const first = marks.find(({ kind }) => kind !== 'symptom-absent') ?? marks[0];
  const text = `${first?.short ?? ''}${marks.length > 1 ? ` +${marks.length - 1}` : ''}`;
  return x + widthOf(text) > until ? (first?.short ?? '') : text;
}

/** A medicine as a span; one dose as a short bar. */
function bar({ kind, at, until }: Mark, middle: number, { x }: Frame): string {
  if (kind !== 'medicine') return '';
  const from = x(at);
  const length = Math.max(4, x(until ?? at) - from);
  return `M${from},${middle - 5}h${length}v10h${-length}z`;
}
