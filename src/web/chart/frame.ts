// Where things lie on the chart: scales, rows, ticks. Arithmetic only.
import { scaleLinear, scaleUtc, type ScaleLinear, type ScaleTime } from 'd3-scale';
import type { PressureLimits } from '../../guidelines/guideline.ts';
import type { Pregnancy } from '../../timeline/timeline.ts';
import type { Mark } from './mark.ts';

export const dayMs = 86_400_000;

/** What the chart shows. Times are local times of the clinic as if they were UTC. */
export interface ChartModel {
  readonly marks: readonly Mark[];
  readonly limits: { readonly hypertension: PressureLimits; readonly severe: PressureLimits };
  readonly pregnancy: Pregnancy;
  /** The moment of the answer. */
  readonly now: number;
}

export type Span = readonly [from: number, to: number];

export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Lower edge of the pressures. */
  readonly floor: number;
  readonly x: ScaleTime<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly lanes: readonly { readonly name: string; readonly top: number }[];
}

export const laneHeight = 38;
const top = 40;
const dateRow = 34;
const shortestSpan = dayMs / 2;

/** The span that holds every mark, with room for labels to the right of the newest. */
export function wholeSpan({ marks, now }: ChartModel, width: number): Span {
  const times = [now, ...marks.flatMap(({ at, until }) => (until === undefined ? [at] : [at, until]))];
  const placed = marks.filter(({ kind }) => kind !== 'medicine').map(({ at }) => at);
  const first = Math.min(...(placed.length > 0 ? placed : times));
  const last = Math.max(now, ...placed);
  const pad = Math.max((last - first) * 0.06, shortestSpan / 8);
  const [from, to] = atLeast([first - pad, last + pad / 4]);
  const seen = width - left - marginRight;
  return [from, from + (to - from) / (1 - labelRoom / seen)];
}

/** Pixels in which the limits and the newest values are named. */
const labelRoom = 84;
const left = 40;
const marginRight = 12;

/** A span no shorter than half a day, around its middle. */
export function atLeast([from, to]: Span): Span {
  if (to - from >= shortestSpan) return [from, to];
  const middle = (from + to) / 2;
  return [middle - shortestSpan / 2, middle + shortestSpan / 2];
}

export function frameOf(model: ChartModel, span: Span, width: number): Frame {
  const pressureHeight = width < 500 ? 230 : 300;
  const floor = top + pressureHeight;
  const right = width - marginRight;
  const lanes = laneNames(model.marks).map((name, at) => ({ name, top: floor + 8 + at * laneHeight }));
  const height = floor + 8 + lanes.length * laneHeight + dateRow;
  return {
    width,
    height,
    left,
    right,
    top,
    floor,
    lanes,
    x: scaleUtc([...span], [left, right]),
    y: scaleLinear(pressureRange(model), [floor, top]),
  };
}

/** Unusable readings first, then urine, symptoms, laboratory, medicines. */
function laneNames(marks: readonly Mark[]): readonly string[] {
  const names = [...new Set(marks.flatMap(({ lane }) => lane ?? []))];
  const rank = (name: string): number => {
    const at = laneOrder.indexOf(name);
    if (at >= 0) return at;
    return name.startsWith('Medicine: ') ? laneOrder.length + 1 : laneOrder.length;
  };
  return names.sort((a, b) => rank(a) - rank(b) || a.localeCompare(b));
}

const laneOrder = ['Not usable', 'Urine protein', 'Symptoms'];

function pressureRange({ marks, limits }: ChartModel): [number, number] {
  const values = marks.flatMap(({ systolic, diastolic }) => [systolic ?? [], diastolic ?? []].flat());
  const least = Math.min(limits.hypertension.diastolic.value - 25, ...values.map((value) => value - 8));
  const most = Math.max(limits.severe.systolic.value + 12, ...values.map((value) => value + 8));
  return [Math.floor(least / 10) * 10, Math.ceil(most / 10) * 10];
}

export interface Tick {
  readonly x: number;
  readonly label: string;
}

/** Weeks of gestation up to the birth, then weeks after it; as dense as there is room. */
export function weekTicks({ pregnancy }: ChartModel, { x, left, right }: Frame): readonly Tick[] {
  const [from, to] = [x.invert(left).getTime(), x.invert(right).getTime()];
  const startDay = pregnancy.dating?.startDay;
  const birth = pregnancy.birth?.at.localDay;
  const lastGestation = birth === undefined ? to : Math.min(to, birth * dayMs);
  const every = weekStep(((right - left) / (to - from)) * 7 * dayMs);
  const gestation =
    startDay === undefined
      ? []
      : ticksFrom(startDay * dayMs, [from, lastGestation], every, (days) => gestationLabel(days));
  const after =
    birth === undefined ? [] : ticksFrom(birth * dayMs, [from, to], every, (days) => afterLabel(days));
  const found = [...gestation, ...after].map(({ time, label }) => ({ x: x(time), label }));
  const edge = edgeLabel(startDay, birth, from);
  return edge === undefined || found.some((tick) => tick.x - left < roomForTick)
    ? found
    : [{ x: left, label: edge }, ...found];
}

/** Where the left edge lies, so that a day by itself has a label too. */
function edgeLabel(
  startDay: number | undefined,
  birth: number | undefined,
  from: number,
): string | undefined {
  const day = Math.floor(from / dayMs);
  if (birth !== undefined && day >= birth) return afterLabel(day - birth);
  return startDay === undefined || day < startDay ? undefined : gestationLabel(day - startDay);
}

const roomForTick = 46;
const longestWeek = 45;

/** Days between ticks. */
function weekStep(pixelsPerWeek: number): number {
  if (pixelsPerWeek / 7 >= roomForTick) return 1;
  return ([1, 2, 4, 8, 13, 26].find((weeks) => weeks * pixelsPerWeek >= roomForTick) ?? 52) * 7;
}

function ticksFrom(
  start: number,
  [from, to]: Span,
  every: number,
  label: (days: number) => string | undefined,
) {
  const step = every * dayMs;
  const first = Math.max(0, Math.ceil((from - start) / step));
  const last = Math.floor((to - start) / step);
  return Array.from({ length: Math.max(0, Math.min(last - first + 1, 200)) }, (_, index) => {
    const days = (first + index) * every;
    return { time: start + days * dayMs, label: label(days) };
  }).flatMap(({ time, label: text }) => (text === undefined ? [] : [{ time, label: text }]));
}

function gestationLabel(days: number): string | undefined {
  const [weeks, rest] = [Math.floor(days / 7), days % 7];
  return weeks > longestWeek ? undefined : `${weeks}+${rest}`;
}

function afterLabel(days: number): string {
  if (days === 0) return 'birth';
  return `day ${days}`;
}

const dateForm = (options: Intl.DateTimeFormatOptions) => {
  const format = new Intl.DateTimeFormat('en-GB', { ...options, timeZone: 'UTC' });
  return (time: Date) => format.format(time);
};
const asHour = dateForm({ hour: '2-digit', minute: '2-digit' });
const asDay = dateForm({ day: 'numeric', month: 'short' });
const asMonth = dateForm({ month: 'short', year: 'numeric' });

/** Dates, or hours within a day; the first tick and every midnight carry the date. */
export function dateTicks({ x, left, right }: Frame): readonly Tick[] {
  const times = x.ticks(Math.max(2, Math.floor((right - left) / 80)));
  const [first, second] = times;
  const step = first === undefined || second === undefined ? dayMs : second.getTime() - first.getTime();
  return times.map((time, index) => ({ x: x(time), label: dateLabel(time, step, index === 0) }));
}

function dateLabel(time: Date, step: number, isFirst: boolean): string {
  if (step >= 27 * dayMs) return asMonth(time);
  if (step >= dayMs) return asDay(time);
  return isFirst || time.getTime() % dayMs === 0 ? `${asDay(time)} ${asHour(time)}` : asHour(time);
}
