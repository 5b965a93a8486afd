// Which pressures belong together: copies, stand-alone halves, members of a panel. Hands on fewer candidates.
import type { TimelineValues } from './timeline.ts';
import { millisecondsOf } from './duration.ts';
import { gapAtMost } from './moment.ts';
import type { PressureCandidate } from './pressure-candidate.ts';
import { compareCandidates, deviceOf, joined } from './pressure-candidate.ts';
import { isUnusable } from './unusable.ts';

/**
 * Candidates after joining what is one taking of the pressure.
 *
 * Given    candidates  from all observations, in any order
 *          values      how far apart two halves of one reading may lie, in minutes
 * Returns  candidates in time order: equal ones joined, a half that copies part of a full reading joined to
 *          it, and each stand-alone systolic paired with its only diastolic
 * Throws   never
 * Notes    1. Equal: same instant, same values, same arm, same setting.
 *          2. Halves pair at the same time first; then within the tolerance. Encounter, arm and device must
 *             not differ. A half that has two possible partners stays alone.
 *          3. Halves with only a date pair only with the same date.
 *          4. A panel that holds one half takes the other from a stand-alone observation of the same time.
 * Source   fhir checklist F-P03, F-P04, F-M07; the tolerance is ours.
 */
export function pairPressures(
  candidates: readonly PressureCandidate[],
  values: TimelineValues,
): readonly PressureCandidate[] {
  const distinct = joinEqual([...candidates].sort(compareCandidates));
  const [halves, full] = partition(distinct, (candidate) => candidate.isStandAlone && isHalf(candidate));
  if (halves.length === 0) return distinct;
  const { joinedFull, rest } = joinCopies(full, halves);
  const [inPanels, whole] = partition(joinedFull, isHalf);
  const sameTime = pairHalves([...rest, ...inPanels].sort(compareCandidates), 0);
  const [standAlone, alone] = partition(sameTime.alone, (half) => half.isStandAlone);
  const nearTime = pairHalves(standAlone, millisecondsOf(values.pairingTolerance));
  return [...whole, ...sameTime.pairs, ...nearTime.pairs, ...nearTime.alone, ...alone].sort(
    compareCandidates,
  );
}

/** Given in time order, so that equal candidates stand among neighbours that start at the same instant. */
function joinEqual(sorted: readonly PressureCandidate[]): readonly PressureCandidate[] {
  const hasNeighbour = sorted.some((candidate, index) => {
    const next = sorted[index + 1];
    return next !== undefined && startOf(candidate) === startOf(next);
  });
  if (!hasNeighbour) return sorted;
  const kept = new Map<string, PressureCandidate>();
  sorted.forEach((candidate, index) => {
    const key = keyOfEqual(candidate) ?? `alone ${String(index)}`;
    const equal = kept.get(key);
    kept.set(key, equal === undefined ? candidate : joined(equal, candidate));
  });
  return [...kept.values()];
}

/** Text that is equal for equal candidates; undefined for one without a time, which equals nothing. */
function keyOfEqual(candidate: PressureCandidate): string | undefined {
  const time = timeKey(candidate);
  if (time === undefined) return undefined;
  const { systolic, diastolic, arm, setting, isStandAlone } = candidate;
  const parts = [
    systolic?.mmHg,
    systolic?.unit === undefined,
    systolic?.fault === undefined,
    diastolic?.mmHg,
    diastolic?.unit === undefined,
    diastolic?.fault === undefined,
  ];
  return [time, ...parts, arm, setting, isStandAlone].join('|');
}

function timeKey({ time, isMean }: PressureCandidate): string | undefined {
  if (isUnusable(time)) return undefined;
  return [time.from.earliest, time.from.latest, time.to.earliest, time.to.latest, isMean].join('|');
}

const isHalf = ({ systolic, diastolic }: PressureCandidate): boolean =>
  (systolic === undefined) !== (diastolic === undefined);

/** Those for which it holds, and the others, each in the order given. */
function partition(
  candidates: readonly PressureCandidate[],
  holds: (candidate: PressureCandidate) => boolean,
): readonly [PressureCandidate[], PressureCandidate[]] {
  const yes: PressureCandidate[] = [];
  const no: PressureCandidate[] = [];
  for (const candidate of candidates) (holds(candidate) ? yes : no).push(candidate);
  return [yes, no];
}

function joinCopies(full: readonly PressureCandidate[], halves: readonly PressureCandidate[]) {
  const joinedFull = [...full];
  const byHalf = new Map<string, number>();
  full.forEach((candidate, index) => {
    for (const half of ['systolic', 'diastolic'] as const) {
      const key = copyKey(candidate, half);
      if (key !== undefined && !byHalf.has(key)) byHalf.set(key, index);
    }
  });
  const rest = halves.filter((half) => {
    const key = copyKey(half, half.systolic === undefined ? 'diastolic' : 'systolic');
    const index = key === undefined ? undefined : byHalf.get(key);
    const original = index === undefined ? undefined : joinedFull[index];
    if (index === undefined || original === undefined || !agree(original.arm, half.arm)) return true;
    joinedFull[index] = joined(original, half);
    return false;
  });
  return { joinedFull, rest };
}

function copyKey(candidate: PressureCandidate, half: 'systolic' | 'diastolic'): string | undefined {
  const time = timeKey(candidate);
  const value = candidate[half];
  return time === undefined || value === undefined ? undefined : [time, half, value.mmHg].join('|');
}

function pairHalves(halves: readonly PressureCandidate[], toleranceMilliseconds: number) {
  const systolics = halves.filter((half) => half.systolic !== undefined);
  const diastolics = halves.filter((half) => half.diastolic !== undefined);
  const partnersOf = (half: PressureCandidate, others: readonly PressureCandidate[]) =>
    near(half, others, toleranceMilliseconds).filter((other) => belong(half, other, toleranceMilliseconds));
  const pairs: PressureCandidate[] = [];
  const paired = new Set<PressureCandidate>();
  for (const systolic of systolics) {
    const [diastolic, ...more] = partnersOf(systolic, diastolics);
    if (diastolic === undefined || more.length > 0 || partnersOf(diastolic, systolics).length > 1) continue;
    pairs.push(joined(systolic, diastolic));
    paired.add(systolic).add(diastolic);
  }
  return { pairs, alone: halves.filter((half) => !paired.has(half)) };
}

/** Those of `others`, sorted by time, that start within the tolerance: found by bisection. */
function near(half: PressureCandidate, others: readonly PressureCandidate[], tolerance: number) {
  const start = startOf(half);
  let low = 0;
  let high = others.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    const other = others[middle];
    if (other !== undefined && startOf(other) < start - tolerance) low = middle + 1;
    else high = middle;
  }
  let end = low;
  for (
    let other = others[end];
    other !== undefined && startOf(other) <= start + tolerance;
    other = others[end]
  )
    end += 1;
  return others.slice(low, end);
}

function startOf({ time }: PressureCandidate): number {
  return isUnusable(time) ? Number.POSITIVE_INFINITY : time.from.earliest;
}

function belong(one: PressureCandidate, other: PressureCandidate, tolerance: number): boolean {
  return (
    one.isMean === other.isMean &&
    (one.isStandAlone || other.isStandAlone) &&
    agree(one.encounter, other.encounter) &&
    agree(one.arm, other.arm) &&
    agree(deviceOf(one), deviceOf(other)) &&
    agree(knownSetting(one), knownSetting(other)) &&
    isSameTime(one, other, tolerance)
  );
}

function isSameTime(one: PressureCandidate, other: PressureCandidate, tolerance: number): boolean {
  if (isUnusable(one.time) || isUnusable(other.time)) return false;
  if (timeKey(one) === timeKey(other)) return true;
  if (one.time.from.precision !== 'minute' || other.time.from.precision !== 'minute' || one.isMean)
    return false;
  return (
    gapAtMost(one.time.from, other.time.from, tolerance) === true ||
    gapAtMost(other.time.from, one.time.from, tolerance) === true
  );
}

function knownSetting({ setting }: PressureCandidate): string | undefined {
  return setting === 'unknown' ? undefined : setting;
}

function agree(one: string | undefined, other: string | undefined): boolean {
  return one === undefined || other === undefined || one === other;
}
