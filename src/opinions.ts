// What guidelines say about one timeline: each by itself, then lifted to the urgency floor. Pure.
import type { GuidelineStamp, Opinion } from './evaluation.ts';
import { fingerprint } from './fingerprint.ts';
import type { Guideline } from './guidelines/guideline.ts';
import { defaultGuidelineId, guidelineIds, guidelineOf, timelineValues } from './guidelines/registry.ts';
import { applyRules, type Applied } from './rules/apply-rules.ts';
import type { Site } from './rules/site.ts';
import { liftToFloor } from './rules/urgency-floor.ts';
import type { View } from './rules/view.ts';
import type { Timeline } from './timeline/timeline.ts';

/** An opinion with the view it was made from. */
export interface ViewedOpinion extends Opinion {
  readonly view: View;
}

/**
 * What one guideline says.
 *
 * Given    timeline   facts of one woman up to `asOf`
 *          guideline  any, registered or not
 *          site       what can be done where she is; default a first-level site
 * Returns  its own assessment, and the same lifted to the urgency of the default guideline
 * Throws   only when the guideline data names a question that does not exist
 */
export function opinionOf(timeline: Timeline, guideline: Guideline, site?: Site): ViewedOpinion {
  const own = applied(timeline, guideline, site);
  const floor = guidelineOf(defaultGuidelineId);
  if (floor === undefined || guideline.id === floor.id) return opinion(guideline, own, own);
  return opinion(guideline, own, applied(timeline, floor, site));
}

/** What every registered guideline says, in the order of the registry. */
export function opinionsOf(timeline: Timeline, site?: Site): readonly ViewedOpinion[] {
  const all = guidelineIds
    .flatMap((id) => guidelineOf(id) ?? [])
    .map((guideline) => ({ guideline, own: applied(timeline, guideline, site) }));
  const floor = all.find(({ guideline }) => guideline.id === defaultGuidelineId);
  return all.map(({ guideline, own }) => opinion(guideline, own, floor?.own ?? own));
}

const applied = (timeline: Timeline, guideline: Guideline, site?: Site): Applied =>
  applyRules(timeline, guideline, timelineValues, site);

function opinion(guideline: Guideline, own: Applied, floor: Applied): ViewedOpinion {
  return {
    guideline,
    stamp: stampOf(guideline),
    own: own.assessment,
    assessment: own === floor ? own.assessment : liftToFloor(own.assessment, floor.assessment),
    view: own.view,
  };
}

const stamps = new WeakMap<Guideline, GuidelineStamp>();

/** Id, version and fingerprint; the fingerprint of a guideline is computed once. */
export function stampOf(guideline: Guideline): GuidelineStamp {
  const known = stamps.get(guideline);
  if (known !== undefined) return known;
  const { id, title, version } = guideline;
  const stamp = { id, title, version, fingerprint: fingerprint(guideline) };
  stamps.set(guideline, stamp);
  return stamp;
}
