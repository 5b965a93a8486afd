// Blood pressures that were set aside as a whole for their form: their numbers, for urgency only.
import type { Faulty, Received } from '../bundle/read-bundle-types.ts';
import type { TimelineContext } from './context.ts';
import { effectiveSpan } from './effective-moment.ts';
import { fieldsOf } from './fields.ts';
import { candidatesOf } from './pressure-candidate.ts';
import type { PressureCandidate } from './pressure-candidate.ts';
import { setAsidePressure } from './pressure-judgement.ts';
import { isPressure, readPressureParts } from './pressure-panel.ts';
import type { UnusablePressure } from './timeline.ts';
import { isUnusable } from './unusable.ts';

/**
 * Which pressures were set aside for their form?
 *
 * Given    faulty   observations of the woman that nothing may rest on
 *          context  time of the evaluation and units; what became of them has been said already
 * Returns  the numbers of each, with the reason; nothing of one that lies after the moment asked for, unless that is now
 * Throws   never
 * Notes    1. Where two times were sent, the later one that does not lie in the future counts.
 * Source   decision 5
 */
export function readFaultyPressures(
  faulty: readonly Faulty[],
  context: TimelineContext,
): readonly UnusablePressure[] {
  const silent: TimelineContext = { ...context, issue: nothing, setAside: nothing, notNeeded: nothing };
  return faulty
    .filter(({ received }) => isPressure(fieldsOf(received.resource)))
    .flatMap((each) => {
      const time = timeOf(each.received, silent);
      return candidatesOf(readPressureParts(each.received, silent), silent).flatMap(
        (candidate) => setAsidePressure({ ...candidate, time }, each, context) ?? [],
      );
    });
}

const nothing = (): void => undefined;

function timeOf(received: Received, context: TimelineContext): PressureCandidate['time'] {
  const fields = fieldsOf(received.resource);
  const names = Object.keys(fields).filter((name) => /^effective[A-Z]/.test(name));
  if (names.length < 2) return effectiveSpan(received, context);
  const spans = names.map((name) => {
    const others = names.filter((other) => other !== name).map((other) => [other, undefined] as const);
    const resource = { ...received.resource, ...Object.fromEntries(others) };
    return effectiveSpan({ ...received, resource }, context);
  });
  const known = spans.flatMap((span) => (isUnusable(span) ? [] : [span]));
  const [latest] = known.sort((one, other) => other.from.latest - one.from.latest);
  return latest ?? spans[0] ?? effectiveSpan(received, context);
}
