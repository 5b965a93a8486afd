// The two sheets of the chart: one that stays, with limits and ticks, and one that slides, with the marks.
import { draw, make } from '../dom.ts';
import { drawBackground, drawWorld } from './draw-world.ts';
import { dateTicks, weekTicks, type ChartModel, type Frame, type Tick } from './frame.ts';
import { isMarked, spotsOf, type State } from './state.ts';

export interface Surface {
  readonly elements: readonly Element[];
  readonly paint: (state: State) => void;
  /** Slides the marks and makes the ticks anew; false when so much was moved that it must be painted again. */
  readonly slide: (state: State) => boolean;
}

/** Marks are drawn this many widths to either side of what is seen. */
const margin = 1;

/**
 * Empty sheets.
 *
 * Notes    1. Sliding moves one layer and paints nothing, however many readings there are.
 */
export function createSurface(): Surface {
  const still = draw('svg', { 'aria-hidden': 'true', class: 'scene' });
  const sliding = draw('svg', { 'aria-hidden': 'true', class: 'scene sliding' });
  const glass = make('div', { class: 'glass' }, sliding);
  const ticks = draw('g', {});
  return {
    elements: [still, glass],
    paint: (state) => {
      const { model, frame } = state;
      const { width, height, left, right } = frame;
      const seen = right - left;
      size(still, [0, width], height);
      size(sliding, [left - margin * seen, seen * (1 + 2 * margin)], height);
      Object.assign(glass.style, { left: `${left}px`, width: `${seen}px`, height: `${height}px` });
      Object.assign(sliding.style, { left: `${-margin * seen}px`, transform: '' });
      ticks.replaceChildren(...ticksOf(state));
      still.replaceChildren(drawBackground(model, frame), ticks);
      const near = { ...model, marks: marksNear(model, frame) };
      sliding.replaceChildren(ringsOf({ ...state, model: near }, model), drawWorld(near, frame));
    },
    slide: (state) => {
      const { left, right } = state.frame;
      if (Math.abs(state.moved) > (right - left) * margin * 0.9) return false;
      sliding.style.transform = `translateX(${state.moved}px)`;
      ticks.replaceChildren(...ticksOf(state));
      return true;
    },
  };
}

function size(sheet: SVGSVGElement, [from, width]: readonly [number, number], height: number): void {
  sheet.setAttribute('viewBox', `${from} 0 ${width} ${height}`);
  sheet.setAttribute('width', String(width));
  sheet.setAttribute('height', String(height));
}

/** What lies within the margin, and the nearest contact on either side, so that joins reach in from outside. */
function marksNear({ marks }: ChartModel, { x, left, right }: Frame): ChartModel['marks'] {
  const seen = right - left;
  const from = x.invert(left - margin * seen).getTime();
  const to = x.invert(right + margin * seen).getTime();
  const before = marks.findLastIndex(({ at, lane }) => lane === undefined && at < from);
  const after = marks.findIndex(({ at, lane }) => lane === undefined && at > to);
  return marks.filter(
    ({ at, until }, index) => ((until ?? at) >= from && at <= to) || index === before || index === after,
  );
}

function ticksOf({ model, frame }: State): readonly SVGElement[] {
  const inside = ({ x }: { x: number }): boolean => x >= frame.left && x <= frame.right;
  const anchor = (x: number): 'start' | 'middle' | 'end' =>
    x > frame.right - 24 ? 'end' : x < frame.left + 24 ? 'start' : 'middle';
  const weeks = apart(weekTicks(model, frame).filter(inside), anchor);
  const dates = apart(dateTicks(frame).filter(inside), anchor);
  const tick = (x: number, y: number, label: string, name: string) =>
    draw(
      'g',
      {},
      draw('line', {
        class: 'tick-line',
        x1: x,
        x2: x,
        y1: name === 'weeks' ? 22 : y - 20,
        y2: name === 'weeks' ? 30 : y - 14,
      }),
      draw('text', { class: `tick ${name}`, x, y, 'text-anchor': anchor(x) }, label),
    );
  return [
    ...weeks.map(({ x, label }) => tick(x, 18, label, 'weeks')),
    ...dates.map(({ x, label }) => tick(x, frame.height - 10, label, 'dates')),
    draw('text', { class: 'lane-name', x: 2, y: 18 }, 'weeks'),
    draw('text', { class: 'lane-name', x: 2, y: frame.height - 10 }, 'date'),
  ];
}

/** The ticks whose labels do not run into the one before. */
function apart(ticks: readonly Tick[], anchor: (x: number) => 'start' | 'middle' | 'end'): readonly Tick[] {
  let end = -Infinity;
  return ticks.filter(({ x, label }) => {
    const width = label.length * 6.2;
    const from = x - { start: 0, middle: width / 2, end: width }[anchor(x)];
    if (from < end) return false;
    end = from + width + 6;
    return true;
  });
}

function ringsOf({ model, frame, marked, chosen }: State, whole: ChartModel): SVGElement {
  const one = whole.marks[chosen];
  const rings = model.marks.flatMap((mark) => {
    if (!isMarked(mark, marked) && mark !== one) return [];
    const name = mark === one ? 'halo chosen' : 'halo';
    return spotsOf(mark, frame).map(({ x, y }) => draw('circle', { class: name, cx: x, cy: y, r: 10 }));
  });
  return draw('g', { class: 'halos' }, ...rings);
}
