// The chart: what is seen, moved by pointer, key and button, and which mark is chosen.
import { draw, make } from '../dom.ts';
import { drawBackground, drawWorld } from './draw-world.ts';
import { atLeast, dateTicks, frameOf, wholeSpan, weekTicks, type ChartModel, type Span } from './frame.ts';
import type { Mark } from './marks.ts';
import { listen } from './listen.ts';
import { spotsOf, type State } from './state.ts';
import { markWords } from './table.ts';

export interface Chart {
  readonly element: HTMLElement;
  readonly show: (model: ChartModel) => void;
  /** Rings the marks of these facts and moves there when they are out of view. */
  readonly mark: (references: readonly string[], moveThere: boolean) => void;
  readonly showWhole: () => void;
}

/**
 * An empty chart.
 *
 * Given    onChoose   called with the mark a person chose
 */
export function createChart(onChoose: (mark: Mark) => void): Chart {
  const scene = draw('svg', { 'aria-hidden': 'true', class: 'scene' });
  const stage = make(
    'div',
    {
      class: 'stage',
      tabindex: 0,
      role: 'application',
      'aria-label': 'Chart of blood pressure, urine, laboratory values, symptoms and medicines',
      'aria-describedby': 'chart-keys',
    },
    scene,
  );
  const said = make('p', { class: 'said', role: 'status' }, 'Choose a mark to read it.');
  let state: State | undefined;

  const redraw = (): void => {
    if (state === undefined) return;
    const width = Math.max(300, stage.clientWidth);
    state.frame = frameOf(state.model, state.span, width);
    state.moved = 0;
    paint(scene, state);
  };
  const setSpan = (span: Span): void => {
    if (state === undefined) return;
    state.span = atLeast(span);
    redraw();
  };
  const pan = (pixels: number): void => {
    if (state === undefined || pixels === 0) return;
    const { x, left } = state.frame;
    const shift = x.invert(left).getTime() - x.invert(left + pixels).getTime();
    state.span = [state.span[0] + shift, state.span[1] + shift];
    state.frame = { ...state.frame, x: x.copy().domain([...state.span]) };
    state.moved += pixels;
    move(scene, state);
  };
  const zoom = (factor: number): void => {
    if (state === undefined) return;
    const [from, to] = state.span;
    const middle = (from + to) / 2;
    const half = ((to - from) / 2) * factor;
    setSpan([middle - half, middle + half]);
  };
  const choose = (index: number): void => {
    const mark = state?.model.marks[index];
    if (state === undefined || mark === undefined) return;
    state.chosen = index;
    said.textContent = markWords(mark);
    onChoose(mark);
  };
  const showWhole = (): void => {
    if (state !== undefined) setSpan(wholeSpan(state.model));
  };

  listen(stage, { pan, zoom, showWhole, choose, state: () => state });
  new ResizeObserver(redraw).observe(stage);
  const button = (label: string, name: string, onclick: () => void) =>
    make('button', { type: 'button', 'aria-label': name, onclick }, label);
  return {
    element: make(
      'div',
      { class: 'chart' },
      make(
        'div',
        { class: 'chart-tools', role: 'group', 'aria-label': 'Move the chart' },
        button('◀', 'Earlier', () => pan(120)),
        button('▶', 'Later', () => pan(-120)),
        button('+', 'Closer', () => zoom(0.5)),
        button('−', 'Wider', () => zoom(2)),
        button('Whole', 'Show the whole pregnancy', showWhole),
      ),
      stage,
      said,
      make(
        'p',
        { id: 'chart-keys', class: 'hint' },
        'Keys: left and right go from mark to mark, with Shift they move the chart; + and − zoom; 0 shows everything.',
      ),
    ),
    show: (model) => {
      const chosen = state?.model.marks[state.chosen]?.key;
      const span = state === undefined ? wholeSpan(model) : state.span;
      const found = model.marks.findIndex(({ key }) => key === chosen);
      state = {
        model,
        span,
        frame: frameOf(model, span, 300),
        moved: 0,
        marked: state?.marked ?? [],
        chosen: found,
      };
      redraw();
    },
    mark: (references, moveThere) => {
      if (state === undefined) return;
      state.marked = references;
      const at = state.model.marks.find((mark) => isMarked(mark, references))?.at;
      const [from, to] = state.span;
      if (moveThere && at !== undefined && (at < from || at > to)) {
        state.span = [at - (to - from) / 2, at + (to - from) / 2];
      }
      redraw();
    },
    showWhole,
  };
}

const isMarked = (mark: Mark, references: readonly string[]): boolean =>
  mark.references.some((reference) => references.includes(reference));

function paint(scene: SVGSVGElement, state: State): void {
  const { model, frame } = state;
  const { width, height, left, right } = frame;
  scene.setAttribute('viewBox', `0 0 ${width} ${height}`);
  scene.setAttribute('width', String(width));
  scene.setAttribute('height', String(height));
  const clip = draw('clipPath', { id: 'plot' }, draw('rect', { x: left, y: 0, width: right - left, height }));
  const world = draw('g', { class: 'world' }, ringsOf(state), drawWorld(model, frame));
  scene.replaceChildren(
    draw('defs', {}, clip),
    drawBackground(model, frame),
    draw('g', { 'clip-path': 'url(#plot)' }, world),
    draw('g', { class: 'ticks' }, ...ticks(state)),
  );
}

/** Panning: the drawn marks slide, only the ticks are made anew. */
function move(scene: SVGSVGElement, state: State): void {
  scene.querySelector('.world')?.setAttribute('transform', `translate(${state.moved} 0)`);
  scene.querySelector('.ticks')?.replaceChildren(...ticks(state));
}

function ticks({ model, frame }: State): readonly SVGElement[] {
  const inside = ({ x }: { x: number }): boolean => x >= frame.left && x <= frame.right;
  const weeks = weekTicks(model, frame).filter(inside);
  const dates = dateTicks(frame).filter(inside);
  const anchor = (x: number): string =>
    x > frame.right - 24 ? 'end' : x < frame.left + 24 ? 'start' : 'middle';
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

function ringsOf({ model, frame, marked, chosen }: State): SVGElement {
  const rings = model.marks.flatMap((mark, index) => {
    if (!isMarked(mark, marked) && index !== chosen) return [];
    const name = index === chosen ? 'halo chosen' : 'halo';
    return spotsOf(mark, frame).map(({ x, y }) => draw('circle', { class: name, cx: x, cy: y, r: 10 }));
  });
  return draw('g', { class: 'halos' }, ...rings);
}
