// FHIR date, dateTime and instant as the interval they cover. Hands on moments and three-valued comparisons.
import {
  daysInMonth,
  formatDay,
  millisecondsPerDay,
  millisecondsPerMinute,
  toDay,
  twoDigits,
} from './calendar.ts';
import type { Moment } from './timeline.ts';

const widestOffsetMinutes = 14 * 60;

/**
 * Offset from UTC in minutes of the facility's clocks: always the same, or by the local time in milliseconds
 * (as if it were UTC), where clocks change in the year.
 */
export type FacilityOffset = number | ((localMilliseconds: number) => number);

/** The offset at a local time; UTC when the facility names none. */
export function offsetAt(offset: FacilityOffset | undefined, localMilliseconds: number): number {
  return typeof offset === 'function' ? offset(localMilliseconds) : (offset ?? 0);
}

/**
 * What does a FHIR date, dateTime or instant say?
 *
 * Given    text                   as sent
 *          facilityOffsetMinutes  offset taken for a text without a zone; absent: UTC
 * Returns  the interval it covers; undefined when it is not a date of the calendar or not of these shapes
 * Throws   never
 * Notes    1. A year, a month or a date is the whole of it, in the facility's zone, never its midnight.
 *          2. A time without a zone, or without seconds, is accepted though FHIR forbids it; without a zone
 *             `takenFrom` says `facility-zone`.
 *          3. A time with hours is one instant (earliest = latest), so that 10:00 and 14:00 are 4 h apart.
 *          4. Second 60 counts as second 59. 24:00 is the midnight that ends the day written.
 *          5. `localDay` is the day as written, whatever its zone; of a month or year, its first day.
 * Source   FHIR R4 datatypes (dateTime, instant); fhir checklist F-T02 to F-T06.
 */
export function parseMoment(
  text: string,
  facilityOffsetMinutes: FacilityOffset | undefined,
): Moment | undefined {
  const length = text.length;
  const year = number(text, 0, 4);
  if (year < 1) return undefined;
  const offset = facilityOffsetMinutes;
  if (length === 4) return wholeDays(text, toDay(year, 1, 1), toDay(year + 1, 1, 1), 'year', offset);
  const month = number(text, 5, 7);
  const monthLength = text.charCodeAt(4) === hyphen ? daysInMonth(year, month) : 0;
  if (monthLength === 0) return undefined;
  const firstOfMonth = toDay(year, month, 1);
  if (length === 7) return wholeDays(text, firstOfMonth, firstOfMonth + monthLength, 'month', offset);
  const dayOfMonth = number(text, 8, 10);
  if (text.charCodeAt(7) !== hyphen || dayOfMonth < 1 || dayOfMonth > monthLength) return undefined;
  const day = firstOfMonth + dayOfMonth - 1;
  if (length === 10) return wholeDays(text, day, day + 1, 'day', offset);
  return instantOf(text, day, facilityOffsetMinutes);
}

const hyphen = 45;
const colon = 58;
const zero = 48;

/** Digits of `text` from `start` to `end` as a number; -1 when one of them is not a digit. */
function number(text: string, start: number, end: number): number {
  let value = 0;
  for (let index = start; index < end; index += 1) {
    const digit = text.charCodeAt(index) - zero;
    if (!(digit >= 0 && digit <= 9)) return -1;
    value = value * 10 + digit;
  }
  return value;
}

function wholeDays(
  text: string,
  firstDay: number,
  endDay: number,
  precision: 'day' | 'month' | 'year',
  offset: FacilityOffset | undefined,
): Moment {
  const toUtc = (local: number): number => local - offsetAt(offset, local) * millisecondsPerMinute;
  return {
    earliest: toUtc(firstDay * millisecondsPerDay),
    latest: toUtc(endDay * millisecondsPerDay) - 1,
    localDay: firstDay,
    precision,
    text,
  };
}

function instantOf(text: string, localDay: number, facilityOffsetMinutes: FacilityOffset | undefined) {
  const timeOfDay = timeOfDayOf(text);
  if (timeOfDay === undefined) return undefined;
  const local = localDay * millisecondsPerDay + timeOfDay.milliseconds;
  if (timeOfDay.end === text.length) {
    const instant = local - offsetAt(facilityOffsetMinutes, local) * millisecondsPerMinute;
    return { ...at(instant, localDay, text), takenFrom: 'facility-zone' } as const;
  }
  const offsetMinutes = offsetOf(text, timeOfDay.end);
  if (offsetMinutes === undefined) return undefined;
  const instant = local - offsetMinutes * millisecondsPerMinute;
  return { earliest: instant, latest: instant, localDay, precision: 'minute', text, offsetMinutes } as const;
}

function at(instant: number, localDay: number, text: string): Moment {
  return { earliest: instant, latest: instant, localDay, precision: 'minute', text };
}

/** Reads `Thh:mm[:ss[.fff]]` from the eleventh character on; `end` is where the zone begins. */
function timeOfDayOf(text: string): { readonly milliseconds: number; readonly end: number } | undefined {
  const hour = number(text, 11, 13);
  const minute = number(text, 14, 16);
  if (text[10] !== 'T' || text.charCodeAt(13) !== colon || hour < 0 || minute < 0 || minute > 59)
    return undefined;
  const hasSeconds = text.charCodeAt(16) === colon;
  const second = hasSeconds ? number(text, 17, 19) : 0;
  const fraction = hasSeconds ? fractionOf(text) : { milliseconds: 0, end: 16 };
  if (second < 0 || second > 60 || fraction === undefined) return undefined;
  const milliseconds =
    (hour * 60 + minute) * millisecondsPerMinute + Math.min(second, 59) * 1000 + fraction.milliseconds;
  return milliseconds > millisecondsPerDay ? undefined : { milliseconds, end: fraction.end };
}

/** Reads `.fff` after the seconds, any number of digits, to the millisecond. */
function fractionOf(text: string): { readonly milliseconds: number; readonly end: number } | undefined {
  if (text[19] !== '.') return { milliseconds: 0, end: 19 };
  let end = 20;
  while (number(text, end, end + 1) >= 0) end += 1;
  if (end === 20) return undefined;
  return { milliseconds: number(text.slice(20, Math.min(end, 23)).padEnd(3, '0'), 0, 3), end };
}

function offsetOf(text: string, start: number): number | undefined {
  if (text[start] === 'Z') return text.length === start + 1 ? 0 : undefined;
  const sign = text[start] === '+' ? 1 : text[start] === '-' ? -1 : 0;
  const hours = number(text, start + 1, start + 3);
  const minutes = number(text, start + 4, start + 6);
  const isShaped = sign !== 0 && text.length === start + 6 && text.charCodeAt(start + 3) === colon;
  if (!isShaped || hours < 0 || minutes < 0 || minutes > 59) return undefined;
  const size = hours * 60 + minutes;
  if (size > widestOffsetMinutes) return undefined;
  return size === 0 ? 0 : sign * size;
}

/**
 * An instant as a moment.
 *
 * Given    milliseconds   since 1970-01-01T00:00Z
 *          offsetMinutes  zone whose calendar day counts
 * Returns  a moment of one instant, with that day
 * Throws   never
 */
export function momentAt(milliseconds: number, offsetMinutes: number): Moment {
  const localDay = Math.floor((milliseconds + offsetMinutes * millisecondsPerMinute) / millisecondsPerDay);
  return { ...at(milliseconds, localDay, formatInstant(milliseconds, offsetMinutes)), offsetMinutes };
}

/**
 * An instant as FHIR text in a given zone: `2026-02-01T13:10:00+05:30`.
 *
 * Given    milliseconds   since 1970-01-01T00:00Z
 *          offsetMinutes  offset from UTC of the zone to print in
 * Returns  date, hours, minutes, seconds and offset; `Z` for an offset of 0
 * Throws   never
 * Notes    1. Fractions of a second are cut off.
 */
export function formatInstant(milliseconds: number, offsetMinutes: number): string {
  const local = milliseconds + offsetMinutes * millisecondsPerMinute;
  const day = Math.floor(local / millisecondsPerDay);
  const seconds = Math.floor((local - day * millisecondsPerDay) / 1000);
  const hour = twoDigits(Math.floor(seconds / 3600));
  const minute = twoDigits(Math.floor(seconds / 60) % 60);
  return `${formatDay(day)}T${hour}:${minute}:${twoDigits(seconds % 60)}${formatOffset(offsetMinutes)}`;
}

function formatOffset(offsetMinutes: number): string {
  if (offsetMinutes === 0) return 'Z';
  const size = Math.abs(offsetMinutes);
  return `${offsetMinutes < 0 ? '-' : '+'}${twoDigits(Math.floor(size / 60))}:${twoDigits(size % 60)}`;
}

/** Last calendar day that a moment may lie on; equal to `localDay` unless only a month or year is known. */
export function lastLocalDay(moment: Moment): number {
  if (moment.precision === 'minute' || moment.precision === 'day') return moment.localDay;
  return moment.localDay + Math.round((moment.latest + 1 - moment.earliest) / millisecondsPerDay) - 1;
}

/**
 * Lies the second moment at least so long after the first?
 *
 * Given    first, second  moments; partial dates are the interval they cover
 *          milliseconds   the shortest gap that counts, 0 or more
 * Returns  true or false when it is so for every instant they may stand for; undefined when it cannot be told
 * Throws   never
 * Notes    1. Equal to the gap counts as at least.
 *          2. A second moment before the first is false.
 */
export function gapAtLeast(first: Moment, second: Moment, milliseconds: number): boolean | undefined {
  if (second.earliest - first.latest >= milliseconds) return true;
  if (second.latest - first.earliest < milliseconds) return false;
  return undefined;
}

/**
 * Lies the second moment at most so long after the first, and not before it?
 *
 * Given    as `gapAtLeast`
 * Returns  true, false, or undefined when it cannot be told
 * Throws   never
 * Notes    1. Equal to the gap counts as at most.
 */
export function gapAtMost(first: Moment, second: Moment, milliseconds: number): boolean | undefined {
  const shortest = second.earliest - first.latest;
  const longest = second.latest - first.earliest;
  if (longest < 0 || shortest > milliseconds) return false;
  return shortest >= 0 && longest <= milliseconds ? true : undefined;
}

/** Is the first moment before the second? undefined when the intervals overlap. */
export function isBefore(first: Moment, second: Moment): boolean | undefined {
  if (first.latest < second.earliest) return true;
  return first.earliest >= second.latest ? false : undefined;
}

/** Did both fall on one calendar day as written? undefined when one of them is only a month or year that holds the other. */
export function isSameLocalDay(first: Moment, second: Moment): boolean | undefined {
  const firstEnd = lastLocalDay(first);
  const secondEnd = lastLocalDay(second);
  if (firstEnd < second.localDay || secondEnd < first.localDay) return false;
  return first.localDay === firstEnd && second.localDay === secondEnd ? true : undefined;
}

/** By earliest, then latest instant; 0 for the same interval, however it was written. */
export function compareIntervals(first: Moment, second: Moment): number {
  return first.earliest - second.earliest || first.latest - second.latest;
}

/** Order of a timeline: by earliest, then latest instant, then the text as sent. */
export function compareMoments(first: Moment, second: Moment): number {
  const byInterval = compareIntervals(first, second);
  if (byInterval !== 0) return byInterval;
  return first.text < second.text ? -1 : first.text > second.text ? 1 : 0;
}
