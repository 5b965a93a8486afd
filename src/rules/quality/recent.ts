// Which measurements a rule about measuring looks at: those of this pregnancy that still say something.
import type { Evidence } from '../../findings/finding.ts';
import type { Threshold } from '../../guidelines/guideline.ts';
import type { Moment, PressureReading } from '../../timeline/timeline.ts';
import { milliseconds } from '../compare.ts';
import type { Occasion, View } from '../view.ts';

/** What is doubtful, and words to add to the sentence of the rule. */
export interface Doubt {
  readonly evidence: readonly Evidence[];
  readonly detail?: string;
}

/** Of this pregnancy or the weeks after it, and not older than the limit. */
export function isRecent(view: View, at: Moment, freshWithin: Threshold): boolean {
  if (view.place(at).outside === 'earlier') return false;
  return at.latest >= view.timeline.asOf - milliseconds(freshWithin);
}

/** Single readings, in the clinic and at home. */
export function recentReadings(view: View, freshWithin: Threshold): readonly PressureReading[] {
  return [...view.timeline.pressures, ...view.timeline.homePressures].filter(({ at }) =>
    isRecent(view, at, freshWithin),
  );
}

export function recentOccasions(view: View, freshWithin: Threshold): readonly Occasion[] {
  return view.occasions.filter(({ at }) => isRecent(view, at, freshWithin));
}

/** A doubt about these facts; none when there are none. */
export function doubtAbout(evidence: readonly Evidence[], detail?: string): Doubt | undefined {
  if (evidence.length === 0) return undefined;
  return detail === undefined ? { evidence } : { evidence, detail };
}
