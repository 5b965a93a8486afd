// May this pressure be used to classify? Hands on a reading, an average, or the reason with the numbers.
import type { Threshold } from '../guidelines/guideline.ts';
import type { TimelineContext, Unusable } from './context.ts';
import type { PressureCandidate } from './pressure-candidate.ts';
import type { PressureValue } from './pressure-value.ts';
import { sourceOf } from './source.ts';
import type {
  LowerBounds,
  MeanPressure,
  Moment,
  PressureReading,
  TimelineValues,
  UnusablePressure,
} from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';
import type { Writable } from './writable.ts';

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
 *          context    the plausible range; whether it is asked about now
 * Returns  a reading or an average; or, with its reason, the numbers of one that has no unit, lies outside the
 *          plausible range, has a diastolic pressure not below the systolic, has no usable time, or has a fault
 *          of form; only the reason for one that lies after the moment asked for, unless that is now
 * Throws   never
 * Notes    1. One bad half makes the whole reading unusable; its good half keeps its number there.
 *          2. Of two faults the more urgent is named: above the range, then not below, then below the range.
 *          3. Where only one half has no unit or a fault of form, the other is used alone.
 * Source   clinical-rules Q1, Q2, Q8; decisions 5 and 14; fhir checklist F-V04, F-V09.
 */
export function judgePressure(candidate: PressureCandidate, context: Clocked): Judgement {
  const { values } = context;
  if (isUnusable(candidate.time) && isNotYet(candidate, context)) return { why: candidate.time };
  const sent = halvesIn(candidate);
  const flawed = sent.filter((value) => value.fault !== undefined || value.unit === undefined);
  if (flawed.length === 0) return judgeMeasured(candidate, values);
  const judged = flawed.length === sent.length ? {} : judgeMeasured(without(candidate, flawed), values);
  const fault = flawed.find((value) => value.fault !== undefined)?.fault;
  return {
    ...judged,
    unusablePressure: {
      ...numbersOf(candidate, judged.unusablePressure?.why ?? kindOf(fault)),
      ...(fault === undefined ? {} : { fault: { element: fault.element, message: fault.message } }),
    },
    why: fault ?? withoutUnit,
  };
}

/**
 * A pressure that was set aside as a whole: its numbers, for urgency only.
 *
 * Given    candidate, reason  why the resource was set aside
 * Returns  the numbers with the reason; undefined for one that lies after the moment asked for, unless that is now
 * Throws   never
 * Source   decision 5
 */
export function setAsidePressure(
  candidate: PressureCandidate,
  { element, message }: Pick<Unusable, 'element' | 'message'>,
  context: Clocked,
): UnusablePressure | undefined {
  if (isNotYet(candidate, context)) return undefined;
  return { ...numbersOf(candidate, 'faulty-form'), fault: { element, message } };
}

type Clocked = Pick<TimelineContext, 'values' | 'asOfIsNow'>;

/** Asked about an earlier moment, what came later is not seen; nothing can be later than now. */
const isNotYet = ({ time }: PressureCandidate, { asOfIsNow }: Clocked): boolean =>
  isUnusable(time) && time.code === 'time-in-future' && asOfIsNow !== true;

const withoutUnit = unusable(
  'unit-missing',
  'component',
  'A pressure was sent without a unit: send mm[Hg] or kPa.',
);

function kindOf(fault: Unusable | undefined): UnusablePressure['why'] {
  if (fault === undefined) return 'unit-missing';
  return fault.code === 'unit-unknown' ? 'unit-unknown' : 'faulty-form';
}

function judgeMeasured(candidate: PressureCandidate, values: TimelineValues): Judgement {
  const fault = faultOf(candidate, values);
  if (fault !== undefined) return { unusablePressure: numbersOf(candidate, fault), why: whyOf(fault) };
  const { time } = candidate;
  if (isUnusable(time)) return { unusablePressure: numbersOf(candidate, 'time-unusable'), why: time };
  const why = halvesIn(candidate).find((value) => value.lowerBound !== undefined)?.lowerBound?.why;
  return {
    ...(candidate.isMean ? { mean: meanOf(candidate, time) } : { reading: readingOf(candidate, time.from) }),
    ...(why === undefined ? {} : { why }),
  };
}

function meanOf(candidate: PressureCandidate, time: Pick<MeanPressure, 'from' | 'to'>): MeanPressure {
  const mean: Writable<MeanPressure> = {
    from: time.from,
    to: time.to,
    asSent: asSentOf(candidate),
    sources: candidate.sources.map(sourceOf),
    setting: candidate.setting,
  };
  if (candidate.systolic !== undefined) mean.systolicMmHg = candidate.systolic.mmHg;
  if (candidate.diastolic !== undefined) mean.diastolicMmHg = candidate.diastolic.mmHg;
  if (candidate.numberOfReadings !== undefined) mean.numberOfReadings = candidate.numberOfReadings;
  const lowerBounds = lowerBoundsOf(candidate);
  if (lowerBounds !== undefined) mean.lowerBounds = lowerBounds;
  return mean;
}

function readingOf(candidate: PressureCandidate, at: Moment): PressureReading {
  const reading: Writable<PressureReading> = {
    at,
    asSent: asSentOf(candidate),
    sources: candidate.sources.map(sourceOf),
    setting: candidate.setting,
    technique: candidate.technique,
    remarks: remarksOf(candidate),
  };
  if (candidate.systolic !== undefined) reading.systolicMmHg = candidate.systolic.mmHg;
  if (candidate.diastolic !== undefined) reading.diastolicMmHg = candidate.diastolic.mmHg;
  if (candidate.arm !== undefined) reading.arm = candidate.arm;
  const lowerBounds = lowerBoundsOf(candidate);
  if (lowerBounds !== undefined) reading.lowerBounds = lowerBounds;
  if (isDiastolicUnheard(candidate)) reading.isDiastolicUnheard = true;
  return reading;
}

function lowerBoundsOf({ systolic, diastolic }: PressureCandidate): LowerBounds | undefined {
  const ofSystolic = systolic?.lowerBound?.sign;
  const ofDiastolic = diastolic?.lowerBound?.sign;
  if (ofSystolic === undefined && ofDiastolic === undefined) return undefined;
  return {
    ...(ofSystolic === undefined ? {} : { systolic: ofSystolic }),
    ...(ofDiastolic === undefined ? {} : { diastolic: ofDiastolic }),
  };
}

/** Q8: a pressure felt at the wrist has no diastolic half, whatever was sent as one. */
const isDiastolicUnheard = ({ technique, systolic, diastolic }: PressureCandidate): boolean =>
  technique.method === 'palpation' && systolic !== undefined && diastolic !== undefined;

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
    sources: candidate.sources.map(sourceOf),
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
  const remarks = new Set<string>();
  if (systolic === undefined) remarks.add('the systolic pressure is missing');
  else if (diastolic === undefined) remarks.add('the diastolic pressure is missing');
  if (isDiastolicUnheard(candidate)) remarks.add('the systolic pressure was felt, so no diastolic was heard');
  if (technique.position === 'standing') remarks.add('taken standing');
  for (const half of [systolic, diastolic]) half?.remarks.forEach((remark) => remarks.add(remark));
  return [...remarks];
}

/** For people: `19.0/12.4 kPa`, `168/- mm[Hg]`, `152/98 (no unit)`. */
function asSentOf({ systolic, diastolic }: PressureCandidate): string {
  const numbers = [systolic?.sent ?? '-', diastolic?.sent ?? '-'] as const;
  const units = [unitIn(systolic ?? diastolic), unitIn(diastolic ?? systolic)] as const;
  if (units[0] === units[1]) return `${numbers[0]}/${numbers[1]} ${units[0]}`;
  return `${numbers[0]} ${units[0]} / ${numbers[1]} ${units[1]}`;
}

const unitIn = (value: PressureValue | undefined): string => value?.unit ?? '(no unit)';
