// What one guideline says about a plain timeline, by itself.
import type { Assessment } from '../../src/findings/finding.ts';
import type { Guideline } from '../../src/guidelines/guideline.ts';
import { defaultGuidelineId, guidelineOf, timelineValues } from '../../src/guidelines/registry.ts';
import { applyRules } from '../../src/rules/apply-rules.ts';
import type { Site } from '../../src/rules/site.ts';
import { prepareView, type View } from '../../src/rules/view.ts';
import { timeline, type PlainTimeline } from './timeline-builder.ts';

/** The registered guideline of an id. */
export function guideline(id: string = defaultGuidelineId): Guideline {
  const known = guidelineOf(id);
  if (known === undefined) throw new Error(`No such guideline: ${id}`);
  return known;
}

/** The assessment of one guideline, not lifted to the floor. */
export const assess = (plain: PlainTimeline, id?: string, site?: Site): Assessment =>
  applyRules(timeline(plain), guideline(id), timelineValues, site).assessment;

export const viewOf = (plain: PlainTimeline): View =>
  prepareView(timeline(plain), timelineValues, guideline().visit);
