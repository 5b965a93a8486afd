// The chart: what is seen, moved by pointer, key and button, and which mark is chosen.
import { make } from '../dom.ts';
import { atLeast, frameOf, wholeSpan, type ChartModel, type Span } from './frame.ts';
import type { Mark } from './mark.ts';
import { listen } from './listen.ts';
import { isMarked, type State } from './state.ts';
import { createSurface } from './surface.ts';
import { markWords } from './table.ts';

export interface Chart {
  readonly element: HTMLElement;
  readonly show: (model: ChartModel) => void;
  /** Rings the marks of these facts and moves there when they are out of view. */
  readonly mark: (references: readonly string[], moveThere: boolean) => void;
  readonly showWhole: () => void;
}

function bringIntoView(state: State, at: number): void {
  const [from, to] = state.span;
  const half = (to - from) / 2;
  if (at < from || at > to) state.span = [at - half, at + half];
}

const widthOf = (stage: HTMLElement): number => Math.max(300, stage.clientWidth);

/**
 * An empty chart.
 *
 * Given    onChoose   called with the mark a person chose; what it returns is read out after the mark
 */
export function createChart(onChoose: (mark: Mark) => string): Chart {
  const surface = createSurface();
  const stage = make(
    'div',
    {
      class: 'stage',
      tabindex: 0,
      role: 'application',
      'aria-label': 'Chart of blood pressure, urine, laboratory values, symptoms and medicines',
      'aria-describedby': 'chart-keys',
    },
    ...surface.elements,
  );
  const said = make('p', { class: 'said', role: 'status' }, 'Choose a mark to read it.');
  let state: State | undefined;

  const redraw = (): void => {
    if (state === undefined) return;
    state.frame = frameOf(state.model, state.span, widthOf(stage));
    state.moved = 0;
    surface.paint(state);
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
    if (!surface.slide(state)) redraw();
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
    bringIntoView(state, mark.at);
    said.textContent = `${markWords(mark)} ${onChoose(mark)}`;
  };
  const goTo = (now: State, references: readonly string[]): void => {
    // The single reading rather than an average that it is part of.
    const [found] = now.model.marks
      .filter((mark) => isMarked(mark, references))
      .sort((a, b) => a.references.length - b.references.length);
    if (found !== undefined) bringIntoView(now, found.at);
    said.textContent =
      found === undefined ? 'This has no point on the chart.' : `Marked: ${markWords(found)}`;
    stage.scrollIntoView({ block: 'nearest' });
  };
  const showWhole = (): void => {
    if (state !== undefined) setSpan(wholeSpan(state.model, widthOf(stage)));
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
        make(
          'span',
          { class: 'for-keys' },
          'Keys: left and right go from mark to mark, with Shift they move the chart; + and − zoom; 0 shows everything.',
        ),
        make('span', { class: 'for-touch' }, 'Touch a mark to read it; draw sideways to move the chart.'),
      ),
    ),
    show: (model) => {
      const chosen = state?.model.marks[state.chosen]?.key;
      const span = state === undefined ? wholeSpan(model, widthOf(stage)) : state.span;
      const found = model.marks.findIndex(({ key }) => key === chosen);
      state = {
        model,
        span,
        frame: frameOf(model, span, widthOf(stage)),
        moved: 0,
        marked: state?.marked ?? [],
        chosen: found,
      };
      redraw();
    },
    mark: (references, moveThere) => {
      if (state === undefined) return;
      state.marked = references;
      if (moveThere) goTo(state, references);
      redraw();
    },
    showWhole,
  };
}
