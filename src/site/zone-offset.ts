// A time zone as offsets from UTC, from the tables of the platform.

/**
 * Offset of a zone from UTC, in minutes, at a local time given as if it were UTC.
 *
 * Given    timeZone   IANA name
 * Notes    1. In the hour that a change of clocks repeats, the offset before the change is taken; in the hour it
 *             leaves out, the offset after it.
 */
export function zoneOffset(timeZone: string): (localMilliseconds: number) => number {
  const format = new Intl.DateTimeFormat('en-GB', { timeZone, timeZoneName: 'longOffset' });
  const known = new Map<number, number>();
  const offsetAt = (instant: number): number => {
    const quarter = Math.floor(instant / quarterHour);
    const cached = known.get(quarter);
    if (cached !== undefined) return cached;
    const offset = minutesOf(format.formatToParts(quarter * quarterHour));
    if (known.size < mostKnown) known.set(quarter, offset);
    return offset;
  };
  return (local) => {
    const first = offsetAt(local - offsetAt(local) * 60_000);
    const earlier = offsetAt(local - first * 60_000 - hour);
    return earlier !== first && offsetAt(local - earlier * 60_000) === earlier ? earlier : first;
  };
}

const hour = 3_600_000;
const quarterHour = 900_000;
const mostKnown = 10_000;

function minutesOf(parts: readonly Intl.DateTimeFormatPart[]): number {
  const name = parts.find(({ type }) => type === 'timeZoneName')?.value ?? '';
  const form = /GMT([+-])(\d{2}):(\d{2})/.exec(name);
  if (form === null) return 0;
  const minutes = Number(form[2]) * 60 + Number(form[3]);
  return form[1] === '-' ? -minutes : minutes;
}
