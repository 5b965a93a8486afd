// How a pressure was taken, told by observations of their own: position, cuff and arm beside it.
import type { Received } from '../bundle/read-bundle-types.ts';
import type { TimelineContext } from './context.ts';
import { effectiveSpan } from './effective-moment.ts';
import { fieldsOf } from './fields.ts';
import type { PressureCandidate } from './pressure-candidate.ts';
import { techniqueBeside } from './pressure-technique.ts';
import type { Technique } from './timeline.ts';
import { isUnusable } from './unusable.ts';

/**
 * Pressures with what was observed beside them.
 *
 * Given    candidates  one taking of the pressure each
 *          beside      observations of position, cuff, arm circumference, site or device
 *          context     time of the evaluation, and where to say that they were read
 * Returns  the candidates; each takes what it does not say itself from the observations of the same instant
 * Throws   never
 * Notes    1. A time without clock is no instant. Observations of one instant that differ tell nothing.
 */
export function withTechniqueBeside(
  candidates: readonly PressureCandidate[],
  beside: readonly Received[],
  context: TimelineContext,
): readonly PressureCandidate[] {
  const byInstant = new Map<number, Technique[]>();
  for (const received of beside) {
    const technique = techniqueBeside(fieldsOf(received.resource));
    const instant = instantOf(effectiveSpan(received, context));
    context.notNeeded(received, 'read for how a pressure was taken');
    if (technique === undefined || instant === undefined) continue;
    byInstant.set(instant, [...(byInstant.get(instant) ?? []), technique]);
  }
  if (byInstant.size === 0) return candidates;
  return candidates.map((candidate) => {
    const instant = instantOf(candidate.time);
    const told = instant === undefined ? undefined : byInstant.get(instant);
    if (told === undefined || told.some((one) => told.some((other) => differ(one, other)))) return candidate;
    const technique = [...told, candidate.technique].reduce((all, each) => ({ ...all, ...each }), {});
    return { ...candidate, technique };
  });
}

function instantOf(time: PressureCandidate['time']): number | undefined {
  return isUnusable(time) || time.from.precision !== 'minute' ? undefined : time.from.earliest;
}

const members = ['position', 'cuff', 'cuffCm', 'armCircumferenceCm', 'site', 'device'] as const;

const differ = (one: Technique, other: Technique): boolean =>
  members.some((name) => one[name] !== undefined && other[name] !== undefined && one[name] !== other[name]);
