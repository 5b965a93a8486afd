// May this pressure be used to classify? Hands on a reading, an average, or the reason with the numbers.
import type { Threshold } from '../guidelines/guideline.ts';
import type { Received } from '../bundle/read-bundle-types.ts';
import type { Unusable } from './context.ts';
import type { PressureCandidate } from './pressure-candidate.ts';
import type { PressureValue } from './pressure-value.ts';
import type { MeanPressure, PressureReading, Source, TimelineValues, UnusablePressure } from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';

export interface Judgement {
  readonly reading?: PressureReading;
  readonly mean?: MeanPressure;
  readonly unusablePressure?: UnusablePressure;
  /** Why some or all of it was not used. */
  readonly why?: Unusable;
}

/**
 * May this pressure be used to classify?
 *
 * Given    candidate  halves in mm[Hg] or bare, with their time
 *          values     the plausible range
 * Returns  a reading or an average; or, with its reason, the numbers of one that has no unit, lies outside the
 *          plausible range, has a diastolic pressure not below the systolic, or has no usable time; only the
 *          reason for one that lies in the future
 * Throws   never
 * Notes    1. One bad half makes the whole reading unusable; its good half keeps its number there.
 *          2. Of two faults the more urgent is named: above the range, then not below, then below the range.
 *          3. Where only one half has no unit, the other is used alone.
 * Source   clinical-rules Q1, Q2; decisions 5 and 14.
 */
export function judgePressure(candidate: PressureCandidate, values: TimelineValues): Judgement {
  if (isUnusable(candidate.time) && candidate.time.code === 'time-in-future') return { why: candidate.time };
  const sent = halvesIn(candidate);
  const bare = sent.filter((value) => value.unit === undefined);
  if (bare.length === 0) return judgeMeasured(candidate, values);
  const judged = bare.length === sent.length ? {} : judgeMeasured(without(candidate, bare), values);
  const why = unusable(
    'unit-missing',
    'component',
    'A pressure was sent without a unit: send mm[Hg] or kPa.',
  );
  return {
    ...judged,
    unusablePressure: judged.unusablePressure ?? numbersOf(candidate, 'unit-missing'),
    why,
  };
}

function judgeMeasured(candidate: PressureCandidate, values: TimelineValues): Judgement {
  const fault = faultOf(candidate, values);
  if (fault !== undefined) return { unusablePressure: numbersOf(candidate, fault), why: whyOf(fault) };
  const { time } = candidate;
  if (isUnusable(time)) return { unusablePressure: numbersOf(candidate, 'time-unusable'), why: time };
  const facts = {
    ...numbersIn(candidate),
    asSent: asSentOf(candidate),
    sources: candidate.sources.map(toSource),
    setting: candidate.setting,
  };
  if (candidate.isMean) {
    const { numberOfReadings } = candidate;
    return { mean: { ...facts, ...time, ...(numberOfReadings === undefined ? {} : { numberOfReadings }) } };
  }
  return {
    reading: {
      ...facts,
      at: time.from,
      ...(candidate.arm === undefined ? {} : { arm: candidate.arm }),
      technique: candidate.technique,
      remarks: remarksOf(candidate),
    },
  };
}

type Fault = 'above-plausible-range' | 'diastolic-not-below-systolic' | 'below-plausible-range';

function faultOf(
  { systolic, diastolic }: PressureCandidate,
  { plausible }: TimelineValues,
): Fault | undefined {
  const isAbove = exceeds(systolic, plausible.systolicHigh) || exceeds(diastolic, plausible.diastolicHigh);
  if (isAbove) return 'above-plausible-range';
  if (systolic !== undefined && diastolic !== undefined && diastolic.mmHg >= systolic.mmHg)
    return 'diastolic-not-below-systolic';
  const isBelow =
    fallsBelow(systolic, plausible.systolicLow) || fallsBelow(diastolic, plausible.diastolicLow);
  return isBelow ? 'below-plausible-range' : undefined;
}

/** The upper end of the range belongs to it, unless its comparator is `<`. */
function exceeds(value: PressureValue | undefined, limit: Threshold): boolean {
  if (value === undefined) return false;
  return value.mmHg > limit.value || (limit.comparator === '<' && value.mmHg === limit.value);
}

/** The lower end of the range belongs to it, unless its comparator is `>`. */
function fallsBelow(value: PressureValue | undefined, limit: Threshold): boolean {
  if (value === undefined) return false;
  return value.mmHg < limit.value || (limit.comparator === '>' && value.mmHg === limit.value);
}

function whyOf(fault: Fault): Unusable {
  if (fault === 'diastolic-not-below-systolic')
    return unusable(
      fault,
      'component',
      'The diastolic pressure is not below the systolic: check and re-enter.',
    );
  return unusable(
    'value-out-of-range',
    'component',
    'The pressure lies outside the plausible range: repeat it.',
  );
}

function numbersOf(candidate: PressureCandidate, why: UnusablePressure['why']): UnusablePressure {
  const { systolic, diastolic, time } = candidate;
  return {
    why,
    ...(isUnusable(time) ? {} : { at: time.from }),
    ...(systolic === undefined ? {} : { systolic: systolic.mmHg }),
    ...(diastolic === undefined ? {} : { diastolic: diastolic.mmHg }),
    asSent: asSentOf(candidate),
    sources: candidate.sources.map(toSource),
  };
}

function numbersIn({ systolic, diastolic }: PressureCandidate) {
  return {
    ...(systolic === undefined ? {} : { systolicMmHg: systolic.mmHg }),
    ...(diastolic === undefined ? {} : { diastolicMmHg: diastolic.mmHg }),
  };
}

function halvesIn({ systolic, diastolic }: PressureCandidate): readonly PressureValue[] {
  return [systolic, diastolic].flatMap((value) => (value === undefined ? [] : [value]));
}

function without(candidate: PressureCandidate, values: readonly PressureValue[]): PressureCandidate {
  const { systolic, diastolic, ...rest } = candidate;
  return {
    ...rest,
    ...(systolic === undefined || values.includes(systolic) ? {} : { systolic }),
    ...(diastolic === undefined || values.includes(diastolic) ? {} : { diastolic }),
  };
}

function remarksOf(candidate: PressureCandidate): readonly string[] {
  const { systolic, diastolic, technique } = candidate;
  const half =
    systolic === undefined
      ? ['the systolic pressure is missing']
      : diastolic === undefined
        ? ['the diastolic pressure is missing']
        : [];
  const standing = technique.position === 'standing' ? ['taken standing'] : [];
  return [...new Set([...half, ...standing, ...halvesIn(candidate).flatMap((value) => value.remarks)])];
}

/** For people: `19.0/12.4 kPa`, `168/- mm[Hg]`, `152/98 (no unit)`. */
function asSentOf({ systolic, diastolic }: PressureCandidate): string {
  const numbers = `${systolic?.sent ?? '-'}/${diastolic?.sent ?? '-'}`;
  const units = new Set(
    [systolic, diastolic].flatMap((value) => (value === undefined ? [] : [value.unit ?? '(no unit)'])),
  );
  if (units.size < 2) return `${numbers} ${[...units].join('')}`;
  return `${systolic?.sent ?? '-'} ${systolic?.unit ?? '(no unit)'} / ${diastolic?.sent ?? '-'} ${diastolic?.unit ?? '(no unit)'}`;
}

function toSource({ reference, preliminary }: Received): Source {
  return { reference, preliminary };
}
