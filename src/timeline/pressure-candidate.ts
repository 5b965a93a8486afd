// One taking of the blood pressure before it is judged: two halves or one, from one observation or several.
import type { Received } from '../bundle/read-bundle-types.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { effectiveSpan } from './effective-moment.ts';
import { fieldsOf, textOf } from './fields.ts';
import { compareIntervals, compareMoments } from './moment.ts';
import type { PressureParts } from './pressure-panel.ts';
import { encounterOf, settingOfMean, settingOfReading } from './pressure-setting.ts';
import type { PressureValue } from './pressure-value.ts';
import type { Moment, Setting, Technique } from './timeline.ts';
import { isUnusable } from './unusable.ts';
import type { Writable } from './writable.ts';

export interface PressureCandidate {
  readonly isMean: boolean;
  readonly systolic?: PressureValue;
  readonly diastolic?: PressureValue;
  /** Start and end of what it covers, or why it has no time. */
  readonly time: { readonly from: Moment; readonly to: Moment } | Unusable;
  readonly sources: readonly Received[];
  readonly setting: Setting;
  readonly arm?: 'left' | 'right';
  readonly technique: Technique;
  readonly encounter?: string;
  /** Its other half may stand in another observation. */
  readonly isStandAlone: boolean;
  readonly numberOfReadings?: number;
}

/** The candidates of one observation: a reading, an average, both, or none. */
export function candidatesOf(parts: PressureParts, context: TimelineContext): readonly PressureCandidate[] {
  const time = effectiveSpan(parts.received, context);
  const candidates: PressureCandidate[] = [];
  for (const isMean of [false, true]) {
    const values = parts.values.filter((value) => value.isMean === isMean);
    if (values.length > 0) candidates.push(candidateOf(parts, values, isMean, time, context));
  }
  return candidates;
}

function candidateOf(
  parts: PressureParts,
  values: readonly PressureValue[],
  isMean: boolean,
  time: PressureCandidate['time'],
  context: TimelineContext,
): PressureCandidate {
  const { received, circumstances } = parts;
  const candidate: Writable<PressureCandidate> = {
    isMean,
    time,
    sources: [received],
    setting: settingOf(parts, isMean, time, context),
    technique: circumstances.technique,
    isStandAlone: parts.isStandAlone && values.length === 1,
  };
  for (const value of values) candidate[value.half] ??= value;
  const encounter = encounterOf(fieldsOf(received.resource));
  if (encounter !== undefined) candidate.encounter = encounter;
  if (circumstances.arm !== undefined) candidate.arm = circumstances.arm;
  if (parts.numberOfReadings !== undefined) candidate.numberOfReadings = parts.numberOfReadings;
  return candidate;
}

function settingOf(
  { received, circumstances, isOver24h }: PressureParts,
  isMean: boolean,
  time: PressureCandidate['time'],
  context: TimelineContext,
): Setting {
  if (!isMean || isUnusable(time)) return settingOfReading(received, circumstances.place, context);
  return settingOfMean(received, circumstances.place, { ...time, isOver24h }, context);
}

/** Two candidates as one; what the first records goes before what the second records. */
export function joined(first: PressureCandidate, second: PressureCandidate): PressureCandidate {
  const { setting } = first.setting === 'unknown' ? second : first;
  return {
    ...second,
    ...first,
    time: earlier(first.time, second.time),
    technique: { ...second.technique, ...first.technique },
    setting,
    sources: uniqueSources([...first.sources, ...second.sources]),
  };
}

function earlier(
  first: PressureCandidate['time'],
  second: PressureCandidate['time'],
): PressureCandidate['time'] {
  if (isUnusable(first)) return second;
  if (isUnusable(second)) return first;
  return compareMoments(second.from, first.from) < 0 ? second : first;
}

function uniqueSources(sources: readonly Received[]): readonly Received[] {
  const byIndex = new Map(sources.map((source) => [source.index, source]));
  return [...byIndex.values()].sort(compareReferences);
}

export function compareReferences(one: Received, other: Received): number {
  if (one.reference !== other.reference) return one.reference < other.reference ? -1 : 1;
  return one.index - other.index;
}

/** Order in which candidates are compared: time, then reference; the order of entries never decides. */
export function compareCandidates(one: PressureCandidate, other: PressureCandidate): number {
  const byTime = compareTimes(one.time, other.time);
  const [first] = one.sources;
  const [second] = other.sources;
  if (byTime !== 0 || first === undefined || second === undefined) return byTime;
  return compareReferences(first, second);
}

function compareTimes(one: PressureCandidate['time'], other: PressureCandidate['time']): number {
  if (isUnusable(one) || isUnusable(other)) return Number(isUnusable(one)) - Number(isUnusable(other));
  return compareIntervals(one.from, other.from);
}

/** What identifies the device of a candidate, to compare it with another's. */
export function deviceOf(candidate: PressureCandidate): string | undefined {
  return textOf(candidate.technique.device);
}
