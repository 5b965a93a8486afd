// A key for "the same minute", whatever zone it is written in. Only for telling copies; no clinical time is read here.
import { canonicalText, memberOf, textOf } from './json.ts';
import type { ResourceJson } from './json.ts';

const MINUTES_PER_DAY = 1440;
const MINUTES_PER_HOUR = 60;
/** "2026-02-01T10:00" */
const MINUTE_LENGTH = 16;

/**
 * A key that two times share when they are the same minute.
 *
 * Given    text  a FHIR dateTime or instant
 * Returns  minutes on one scale, in UTC, for a full time with a zone; the text itself for anything less
 * Throws   never
 * Notes    1. A date and a time on that date never share a key: the date is not padded.
 */
export function minuteKey(text: string): number | string {
  if (text.length <= MINUTE_LENGTH || text[10] !== 'T') return text;
  const offset = offsetMinutes(text);
  if (offset === undefined) return text;
  const days = dayNumber(digits(text, 0, 4), digits(text, 5, 2), digits(text, 8, 2));
  const minutes =
    days * MINUTES_PER_DAY + digits(text, 11, 2) * MINUTES_PER_HOUR + digits(text, 14, 2) - offset;
  return Number.isNaN(minutes) ? text : minutes;
}

/** Days since 1 March of year 0: years begin in March, so that the leap day is the last of its year. */
function dayNumber(year: number, month: number, day: number): number {
  const shifted = month > 2 ? year : year - 1;
  const monthFromMarch = month > 2 ? month - 3 : month + 9;
  const leapDays = Math.floor(shifted / 4) - Math.floor(shifted / 100) + Math.floor(shifted / 400);
  return shifted * 365 + leapDays + Math.floor((monthFromMarch * 153 + 2) / 5) + day;
}

/** Key of the effective time of an Observation; a Timing is compared as text, and no time at all is a key too. */
export function effectiveKey(resource: ResourceJson): number | string {
  const point = resource.effectiveDateTime ?? resource.effectiveInstant;
  if (typeof point === 'string') return minuteKey(point);
  const period = resource.effectivePeriod;
  if (period !== undefined) return `${partKey(period, 'start')}/${partKey(period, 'end')}`;
  return resource.effectiveTiming === undefined ? 'none' : canonicalText(resource.effectiveTiming);
}

function partKey(period: unknown, name: string): number | string {
  const text = textOf(memberOf(period, name));
  return text === undefined ? '' : minuteKey(text);
}

function offsetMinutes(text: string): number | undefined {
  if (text.endsWith('Z')) return 0;
  const at = text.length - 6;
  const sign = text[at] === '+' ? 1 : text[at] === '-' ? -1 : 0;
  if (sign === 0 || at < MINUTE_LENGTH) return undefined;
  const minutes = digits(text, at + 1, 2) * MINUTES_PER_HOUR + digits(text, at + 4, 2);
  return Number.isNaN(minutes) ? undefined : sign * minutes;
}

function digits(text: string, from: number, count: number): number {
  let number = 0;
  for (let at = from; at < from + count; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (!(digit >= 0 && digit <= 9)) return NaN;
    number = number * 10 + digit;
  }
  return number;
}
