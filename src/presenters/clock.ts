// Times as people at the clinic read them, and the dates a referral is due.
import type { Urgency } from '../guidelines/guideline.ts';
import { english } from '../messages/en.ts';
import type { Timeline } from '../timeline/timeline.ts';

const minuteMs = 60_000;
const dayMs = 86_400_000;

/**
 * A time as sent, in words, on the clock it was written with: "24 Nov 2026 09:10", "24 Nov 2026", "Nov 2026".
 *
 * Notes    1. Nothing is converted: 09:10+05:30 is shown as 09:10. Text of another shape is shown as it stands.
 */
export function spokenTime(text: string, months: readonly string[] = english.months): string {
  const parts = /^(\d{4})(?:-(\d{2})(?:-(\d{2})(?:T(\d{2}:\d{2}))?)?)?/.exec(text);
  const [, year, month, day, time] = parts ?? [];
  if (year === undefined) return text;
  const monthName = month === undefined ? undefined : months[Number(month) - 1];
  const date = [day === undefined ? undefined : String(Number(day)), monthName, year];
  return [...date, time].filter((part) => part !== undefined).join(' ');
}

/** The instant on the clock of the place, ISO 8601 with its offset. */
export function localInstant(milliseconds: number, offsetMinutes: number): string {
  const local = new Date(milliseconds + offsetMinutes * minuteMs).toISOString().slice(0, 19);
  return `${local}${offsetText(offsetMinutes)}`;
}

function offsetText(offsetMinutes: number): string {
  if (offsetMinutes === 0) return 'Z';
  const size = Math.abs(offsetMinutes);
  const hours = String(Math.floor(size / 60)).padStart(2, '0');
  return `${offsetMinutes < 0 ? '-' : '+'}${hours}:${String(size % 60).padStart(2, '0')}`;
}

/**
 * The clock the clinic works by: the offset written on the newest pressure that has one; 0 when none has.
 */
export function clinicOffset(timeline: Timeline): number {
  const newestFirst = [...timeline.pressures, ...timeline.homePressures].sort(
    (a, b) => b.at.latest - a.at.latest,
  );
  return newestFirst.find((reading) => reading.at.offsetMinutes !== undefined)?.at.offsetMinutes ?? 0;
}

/** The moment of the answer, on the clock of the clinic: "24 Nov 2026 09:30", with "UTC" when no zone is known. */
export function asOfWords(timeline: Timeline, months?: readonly string[]): string {
  const offset = clinicOffset(timeline);
  return `${spokenTime(localInstant(timeline.asOf, offset), months)}${offset === 0 ? ' UTC' : ''}`;
}

/** The last second of the local day, with its offset. */
function endOfDay(instant: string): string {
  return `${instant.slice(0, 10)}T23:59:59${instant.slice(19)}`;
}

/** When advice of this urgency is due, as FHIR `occurrence[x]`. */
export type Due =
  | { readonly occurrenceDateTime: string }
  | { readonly occurrencePeriod: { readonly start: string; readonly end?: string } };

/**
 * The time advice is due.
 *
 * Given    urgency         of the advice
 *          asOf            milliseconds since 1970-01-01T00:00Z
 *          offsetMinutes   clock of the clinic
 * Returns  emergency       the moment itself
 *          same-day        until the last second of the local calendar day
 *          others          until the end of the interval their name states; routine has no end
 * Source   ours: the interval is the name of the urgency.
 */
export function dueTime(urgency: Urgency, asOf: number, offsetMinutes: number): Due {
  const start = localInstant(asOf, offsetMinutes);
  switch (urgency) {
    case 'emergency':
      return { occurrenceDateTime: start };
    case 'same-day':
      return { occurrencePeriod: { start, end: endOfDay(start) } };
    case 'within-48-hours':
      return { occurrencePeriod: { start, end: localInstant(asOf + 2 * dayMs, offsetMinutes) } };
    case 'within-7-days':
      return { occurrencePeriod: { start, end: localInstant(asOf + 7 * dayMs, offsetMinutes) } };
    case 'routine':
      return { occurrencePeriod: { start } };
  }
}

/**
 * The last moment at which advice of this urgency is still in time.
 *
 * Given    urgency         of the advice
 *          asOf            milliseconds since 1970-01-01T00:00Z
 *          offsetMinutes   clock of the clinic
 * Returns  milliseconds; the end of the local day for same-day; undefined for routine care
 * Source   ours: the interval is the name of the urgency.
 */
export function dueInstant(urgency: Urgency, asOf: number, offsetMinutes: number): number | undefined {
  const due = dueTime(urgency, asOf, offsetMinutes);
  if ('occurrenceDateTime' in due) return asOf;
  const { end } = due.occurrencePeriod;
  if (end === undefined) return undefined;
  return Date.parse(end);
}
