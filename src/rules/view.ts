// What the checks look at: the timeline, each reading placed on the pregnancy, readings gathered into occasions.
import type { PressureLimits, TimelineValues, VisitValues } from '../guidelines/guideline.ts';
import type { Moment, Place, PressureReading, Timeline } from '../timeline/timeline.ts';
import { placeOf } from '../timeline/place.ts';
import { milliseconds, reaches } from './compare.ts';
import { leftOpenBy, visitValue, type Pressure } from './visit-value.ts';

export interface PlacedReading {
  readonly reading: PressureReading;
  readonly place: Place;
}

/** One contact: readings taken within the occasion length, and the value they give together. Values in mm[Hg]. */
export interface Occasion {
  /** Time of the first reading. */
  readonly at: Moment;
  readonly place: Place;
  readonly readings: readonly PressureReading[];
  readonly value: Pressure;
  /** The higher of the ways of averaging: for urgency, never for the class. */
  readonly cautiousValue: Pressure;
}

export interface View {
  readonly timeline: Timeline;
  readonly values: TimelineValues;
  readonly now: Place;
  /** Clinic readings of this pregnancy and the weeks after it, oldest first. */
  readonly readings: readonly PlacedReading[];
  /** The same with single home readings: a severe value counts wherever it was taken. */
  readonly everyReading: readonly PlacedReading[];
  readonly occasions: readonly Occasion[];
  readonly place: (moment: Moment) => Place;
}

/**
 * Prepares a timeline for the checks.
 *
 * Given    timeline  facts up to `asOf`
 *          values    dating values
 *          visit     how readings become a visit value
 * Returns  the view; readings from before this pregnancy are left out
 * Throws   never
 * Notes    1. A clinic average is one reading of its occasion, never two.
 *          2. Occasions are cut by the time of their first reading; a reading with only a date joins
 *             readings with the same date text and none else.
 * Source   ours (occasion length); clinical reasons in the guideline data
 */
export function prepareView(timeline: Timeline, values: TimelineValues, visit: VisitValues): View {
  const place = (moment: Moment): Place => placeOf(moment, timeline.pregnancy, values);
  const clinicMeans = timeline.meanPressures.filter((mean) => mean.setting === 'clinic').map(asReading);
  const placeAll = (readings: readonly PressureReading[]): PlacedReading[] =>
    readings
      .map((reading) => ({ reading, place: place(reading.at) }))
      .filter(({ place: where }) => where.outside !== 'earlier')
      .sort(
        (a, b) => a.reading.at.earliest - b.reading.at.earliest || a.reading.at.latest - b.reading.at.latest,
      );
  const placed = placeAll([...timeline.pressures, ...clinicMeans]);
  const { homePressures } = timeline;
  return {
    timeline,
    values,
    now: place(momentOf(timeline.asOf, placed.at(-1)?.reading.at)),
    readings: placed,
    everyReading:
      homePressures.length === 0
        ? placed
        : placeAll([...timeline.pressures, ...clinicMeans, ...homePressures]),
    occasions: gather(placed, visit),
    place,
  };
}

function asReading(mean: Timeline['meanPressures'][number]): PressureReading {
  const { systolicMmHg, diastolicMmHg } = mean;
  return {
    at: mean.from,
    ...(systolicMmHg === undefined ? {} : { systolicMmHg }),
    ...(diastolicMmHg === undefined ? {} : { diastolicMmHg }),
    asSent: mean.asSent,
    sources: mean.sources,
    setting: mean.setting,
    technique: {},
    remarks: ['average of several readings'],
    ...leftOpenBy([mean]),
  };
}

const dayMs = 86_400_000;

/** `asOf` as a moment; its calendar day is counted in the zone of the newest reading. */
export function momentOf(asOf: number, like?: Moment): Moment {
  const offset = like?.offsetMinutes ?? 0;
  return {
    earliest: asOf,
    latest: asOf,
    localDay: Math.floor((asOf + offset * 60_000) / dayMs),
    precision: 'minute',
    text: new Date(asOf).toISOString(),
    offsetMinutes: offset,
  };
}

function gather(placed: readonly PlacedReading[], visit: VisitValues): Occasion[] {
  const length = milliseconds(visit.occasionLength);
  const groups: PlacedReading[][] = [];
  for (const item of placed) {
    const group = groups.at(-1);
    const first = group?.[0];
    if (group !== undefined && first !== undefined && isSameOccasion(first, item, length)) group.push(item);
    else groups.push([item]);
  }
  return groups.flatMap((group) => {
    const first = group[0];
    if (first === undefined) return [];
    const readings = group.map((item) => item.reading);
    return [{ at: first.reading.at, place: first.place, readings, ...visitValue(readings, visit) }];
  });
}

function isSameOccasion(first: PlacedReading, item: PlacedReading, length: number): boolean {
  if (first.place.period !== item.place.period) return false;
  const [a, b] = [first.reading.at, item.reading.at];
  if (a.precision !== 'minute' || b.precision !== 'minute') return a.text === b.text;
  return b.earliest - a.earliest < length;
}

export const isRaised = (occasion: Occasion, limits: PressureLimits): boolean =>
  reaches(occasion.value, limits);

/** Is `later` at least `ms` after `earlier`? Undefined when partial dates leave it open. */
export function isAtLeastAfter(earlier: Moment, later: Moment, ms: number): boolean | undefined {
  if (later.earliest - earlier.latest >= ms) return true;
  if (later.latest - earlier.earliest < ms) return false;
  return undefined;
}
