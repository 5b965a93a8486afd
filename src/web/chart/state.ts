// What the chart shows now, and where its marks lie.
import { laneHeight, type ChartModel, type Frame, type Span } from './frame.ts';
import type { Mark } from './mark.ts';
import type { Spot } from './shapes.ts';

export interface State {
  model: ChartModel;
  span: Span;
  frame: Frame;
  /** Pixels the marks were moved since they were drawn. */
  moved: number;
  marked: readonly string[];
  chosen: number;
}

/** Where a mark is drawn: once in a lane, or once for each half of a pressure. */
export function spotsOf({ at, systolic, diastolic, lane }: Mark, { x, y, lanes }: Frame): readonly Spot[] {
  if (lane !== undefined) {
    const top = lanes.find(({ name }) => name === lane)?.top ?? 0;
    return [{ x: x(at), y: top + laneHeight - 12 }];
  }
  return [systolic ?? [], diastolic ?? []].flat().map((value) => ({ x: x(at), y: y(value) }));
}

export const isMarked = (mark: Mark, references: readonly string[]): boolean =>
  mark.references.some((reference) => references.includes(reference));
