// Pointer and keys on the chart, as what a person wants.
import { spotsOf, type State } from './state.ts';

export interface Deeds {
  readonly pan: (pixels: number) => void;
  readonly zoom: (factor: number) => void;
  readonly showWhole: () => void;
  readonly choose: (index: number) => void;
  readonly state: () => State | undefined;
}

const keyStep = 60;
const near = 24;

export function listen(stage: HTMLElement, deeds: Deeds): void {
  stage.addEventListener('keydown', (event) => {
    if (onKey(event, deeds)) event.preventDefault();
  });
  let from: { readonly x: number; readonly start: number } | undefined;
  stage.addEventListener('pointerdown', ({ clientX, pointerId }) => {
    from = { x: clientX, start: clientX };
    stage.setPointerCapture(pointerId);
  });
  let wanted = 0;
  const panNow = (): void => {
    deeds.pan(wanted);
    wanted = 0;
  };
  stage.addEventListener('pointermove', ({ clientX }) => {
    if (from === undefined) return;
    if (wanted === 0) requestAnimationFrame(panNow);
    wanted += clientX - from.x;
    from = { ...from, x: clientX };
  });
  stage.addEventListener('pointercancel', () => (from = undefined));
  stage.addEventListener('pointerup', (event) => {
    const isClick = from !== undefined && Math.abs(event.clientX - from.start) < 5;
    from = undefined;
    const box = stage.getBoundingClientRect();
    if (isClick) deeds.choose(nearest(deeds.state(), event.clientX - box.left, event.clientY - box.top));
  });
}

function onKey(event: KeyboardEvent, { pan, zoom, showWhole, choose, state }: Deeds): boolean {
  const now = state();
  const count = now?.model.marks.length ?? 0;
  const chosen = now?.chosen ?? -1;
  switch (event.key) {
    case 'ArrowLeft':
    case 'ArrowRight': {
      const step = event.key === 'ArrowLeft' ? -1 : 1;
      if (event.shiftKey) pan(-step * keyStep);
      else choose(chosen < 0 ? (step > 0 ? 0 : count - 1) : Math.min(count - 1, Math.max(0, chosen + step)));
      return true;
    }
    case 'Home':
      choose(0);
      return true;
    case 'End':
      choose(count - 1);
      return true;
    case '+':
    case '=':
      zoom(0.5);
      return true;
    case '-':
      zoom(2);
      return true;
    case '0':
      showWhole();
      return true;
    default:
      return false;
  }
}

function nearest(state: State | undefined, x: number, y: number): number {
  let best = { index: -1, distance: near };
  state?.model.marks.forEach((mark, index) => {
    for (const spot of spotsOf(mark, state.frame)) {
      const distance = Math.hypot(spot.x - x, spot.y - y);
      if (distance < best.distance) best = { index, distance };
    }
  });
  return best.index;
}
