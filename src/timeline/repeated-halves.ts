// One half of a pressure told twice in one observation: which number stands, and when nobody can tell.
import type { Received } from '../bundle/read-bundle-types.ts';
import type { TimelineContext, Unusable } from './context.ts';
import type { PressureValue } from './pressure-value.ts';
import { isUnusable, unusable } from './unusable.ts';

export type Read = PressureValue | Unusable;

export const isValue = (read: Read): read is PressureValue => !isUnusable(read);
export const faultIn = (read: Read): Unusable | undefined => (isUnusable(read) ? read : read.fault);
export const isSound = (read: Read): read is PressureValue => faultIn(read) === undefined;

/** obs-7: a component must not repeat the code and value of its observation. */
export function withoutRepetition(
  received: Received,
  root: readonly Read[],
  inComponents: readonly Read[],
  context: TimelineContext,
): readonly Read[] {
  const own = root.find(isSound);
  if (own === undefined)
    return inComponents.some(isSound) ? withFaulty(root, inComponents) : [...root, ...inComponents];
  const others = inComponents.filter(
    (read) => isUnusable(read) || read.half !== own.half || read.isMean !== own.isMean,
  );
  if (others.length < inComponents.length)
    context.issue(received, {
      severity: 'warning',
      code: 'component-repeats-value',
      type: 'invariant',
      element: 'component',
      message: 'A component repeats the code of the observation; the value of the observation was used.',
    });
  return [own, ...others];
}

/** A number with a fault stays for urgency, unless a sound one of the same half stands in a component. */
function withFaulty(root: readonly Read[], inComponents: readonly Read[]): readonly Read[] {
  const kept = root
    .filter(isValue)
    .filter((own) => !inComponents.some((read) => isSound(read) && isTwin(read, own)));
  return [...kept, ...inComponents];
}

export function withoutAmbiguity(reads: readonly Read[]): readonly Read[] {
  const values = reads.filter(isValue);
  if (!values.some((value, index) => values.some((other, at) => at < index && isTwin(value, other))))
    return reads;
  const settled = values.map((value, index): Read | undefined => {
    const twins = values.filter((other) => isTwin(value, other));
    if (values.indexOf(twins[0] ?? value) !== index) return undefined;
    if (twins.every((twin) => twin.mmHg === value.mmHg)) return twins.find(isSound) ?? value;
    return higherOf(twins, value);
  });
  return [...settled.flatMap((read) => (read === undefined ? [] : [read])), ...reads.filter(isUnusable)];
}

const isTwin = (one: PressureValue, other: PressureValue): boolean =>
  one.half === other.half && one.isMean === other.isMean;

/** Two readings in one: nobody can tell which is meant, and the higher may be. */
function higherOf(twins: readonly PressureValue[], { half, isMean }: PressureValue): PressureValue {
  const higher = twins.reduce((one, other) => (other.mmHg > one.mmHg ? other : one));
  const fault = unusable(
    'value-ambiguous',
    'component',
    `Two different ${half} pressures in one observation: send one observation for each reading.`,
  );
  return {
    half,
    isMean,
    mmHg: higher.mmHg,
    ...(higher.unit === undefined ? {} : { unit: higher.unit }),
    sent: [...new Set(twins.map(({ sent }) => sent))].join(' or '),
    remarks: [],
    fault,
  };
}
