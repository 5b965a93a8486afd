import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compareMoments,
  formatInstant,
  gapAtLeast,
  gapAtMost,
  isBefore,
  isSameLocalDay,
  lastLocalDay,
  momentAt,
  parseMoment,
} from '../../src/timeline/moment.ts';
import { daysInMonth, formatDay, toDay } from '../../src/timeline/calendar.ts';

const minute = 60_000;
const hour = 60 * minute;

function moment(text: string, facilityOffsetMinutes?: number) {
  const found = parseMoment(text, facilityOffsetMinutes);
  if (found === undefined) throw new Error(`not a moment: ${text}`);
  return found;
}

describe('a time with its zone', () => {
  it.each([
    ['2026-02-01T10:00:00Z', '2026-02-01T10:00:00Z', 0],
    ['2026-02-01T10:00:00+05:30', '2026-02-01T04:30:00Z', 330],
    ['2026-02-01T10:00:00-03:00', '2026-02-01T13:00:00Z', -180],
    ['2026-02-01T10:00:00.250Z', '2026-02-01T10:00:00.250Z', 0],
    ['2026-02-01T10:00:00.1234567+14:00', '2026-01-31T20:00:00.123Z', 840],
    ['2026-03-29T02:30:00+02:00', '2026-03-29T00:30:00Z', 120],
  ])('%s is the instant %s', (text, instant, offsetMinutes) => {
    const found = moment(text);
    expect(found.earliest).toBe(Date.parse(instant));
    expect(found.latest).toBe(found.earliest);
    expect(found).toMatchObject({ precision: 'minute', text, offsetMinutes });
  });

  it('keeps the calendar day as written, not the day in UTC', () => {
    expect(moment('2026-02-01T00:30:00+05:30').localDay).toBe(toDay(2026, 2, 1));
    expect(moment('2026-01-31T19:00:00Z').localDay).toBe(toDay(2026, 1, 31));
  });

  it('agrees with Date on any instant', () => {
    fc.assert(
      fc.property(
        fc.date({ min: new Date('1900-01-01'), max: new Date('2100-01-01'), noInvalidDate: true }),
        (date) => {
          expect(moment(date.toISOString()).earliest).toBe(date.getTime());
        },
      ),
    );
  });

  it('is the same instant in any zone it is printed in', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4e9 }),
        fc.integer({ min: -840, max: 840 }),
        (seconds, offset) => {
          const text = formatInstant(seconds * 1000, offset);
          expect(moment(text).earliest).toBe(seconds * 1000);
          expect(moment(text)).toEqual(momentAt(seconds * 1000, offset));
        },
      ),
    );
  });
});

describe('a partial date (F-T02, F-T03)', () => {
  it.each([
    ['2026', 'year', '2026-01-01T00:00:00Z', '2026-12-31T23:59:59.999Z'],
    ['2026-02', 'month', '2026-02-01T00:00:00Z', '2026-02-28T23:59:59.999Z'],
    ['2024-02-29', 'day', '2024-02-29T00:00:00Z', '2024-02-29T23:59:59.999Z'],
  ])('%s is the whole %s, never its midnight', (text, precision, earliest, latest) => {
    const found = moment(text);
    expect(found).toEqual({
      earliest: Date.parse(earliest),
      latest: Date.parse(latest),
      localDay: Math.floor(Date.parse(earliest) / 86_400_000),
      precision,
      text,
    });
  });

  it('covers the day in the zone of the facility when one is given', () => {
    const found = moment('2026-02-01', 330);
    expect(found.earliest).toBe(Date.parse('2026-01-31T18:30:00Z'));
    expect(found.latest).toBe(Date.parse('2026-02-01T18:29:59.999Z'));
    expect(found.localDay).toBe(toDay(2026, 2, 1));
  });

  it('knows its last possible day', () => {
    expect(lastLocalDay(moment('2026-02'))).toBe(toDay(2026, 2, 28));
    expect(lastLocalDay(moment('2026'))).toBe(toDay(2026, 12, 31));
    expect(lastLocalDay(moment('2026-02-01'))).toBe(toDay(2026, 2, 1));
  });
});

describe('a time FHIR forbids and people send', () => {
  it('is accepted without seconds', () => {
    expect(moment('2026-02-01T10:00Z').earliest).toBe(Date.parse('2026-02-01T10:00:00Z'));
  });

  it('is accepted without a zone, in the zone of the facility, and says so (F-T05)', () => {
    const found = moment('2026-01-31T06:59:00', 330);
    expect(found.earliest).toBe(Date.parse('2026-01-31T01:29:00Z'));
    expect(found.takenFrom).toBe('facility-zone');
    expect('offsetMinutes' in found).toBe(false);
    expect(moment('2026-01-31T06:59').earliest).toBe(Date.parse('2026-01-31T06:59:00Z'));
  });

  it('clamps second 60 to 59 (F-T06)', () => {
    expect(moment('2026-06-30T23:59:60Z').earliest).toBe(Date.parse('2026-06-30T23:59:59Z'));
  });

  it('reads 24:00 as the midnight that ends the day written', () => {
    const found = moment('2026-02-01T24:00:00Z');
    expect(found.earliest).toBe(Date.parse('2026-02-02T00:00:00Z'));
    expect(found.localDay).toBe(toDay(2026, 2, 1));
  });

  it.each([
    '2026-02-31',
    '2026-02-31T10:00:00Z',
    '2025-02-29',
    '2100-02-29',
    '2026-00-10',
    '2026-13-01',
    '2026-01-00',
    '0000-01-01',
    '2026-02-01T24:01:00Z',
    '2026-02-01T25:00:00Z',
    '2026-02-01T10:60:00Z',
    '2026-02-01T10:00:61Z',
    '2026-02-01T10:00:00.Z',
    '2026-02-01T10:00:00+15:00',
    '2026-02-01T10:00:00+05:3',
    '2026-02-01T10:00:00+0530',
    '2026-02-01T10:00:00Zulu',
    '2026-02-01T10',
    '2026-02-01 10:00:00Z',
    '2026/02/01',
    '01.02.2026',
    '20260201',
    '2026-2-1',
    '',
    'yesterday',
  ])('refuses %j', (text) => {
    expect(parseMoment(text, undefined)).toBeUndefined();
  });

  it('never throws on any text', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        parseMoment(text, undefined);
      }),
    );
  });
});

describe('the gap between two moments', () => {
  it('of exactly four hours is at least four hours', () => {
    const [first, second] = [moment('2026-02-01T10:00:00Z'), moment('2026-02-01T14:00:00Z')];
    expect(gapAtLeast(first, second, 4 * hour)).toBe(true);
    expect(gapAtMost(first, second, 4 * hour)).toBe(true);
    expect(gapAtLeast(first, second, 4 * hour + 1)).toBe(false);
    expect(gapAtMost(first, second, 4 * hour - 1)).toBe(false);
  });

  it('counts instants, not clock faces', () => {
    const [first, second] = [moment('2026-02-01T10:00:00+05:30'), moment('2026-02-01T08:30:00Z')];
    expect(gapAtLeast(first, second, 4 * hour)).toBe(true);
    expect(gapAtLeast(first, second, 4 * hour + 1)).toBe(false);
  });

  it('of two readings on one date cannot be told', () => {
    const day = moment('2026-02-01');
    expect(gapAtLeast(day, day, 4 * hour)).toBeUndefined();
    expect(gapAtLeast(day, moment('2026-02-02'), 4 * hour)).toBeUndefined();
    expect(gapAtLeast(day, moment('2026-02-03'), 4 * hour)).toBe(true);
    expect(gapAtLeast(day, moment('2026-02-01'), 48 * hour)).toBe(false);
  });

  it('is no gap when the second comes first', () => {
    const [first, second] = [moment('2026-02-01T10:00:00Z'), moment('2026-02-01T09:00:00Z')];
    expect(gapAtLeast(first, second, 0)).toBe(false);
    expect(gapAtMost(first, second, hour)).toBe(false);
    expect(isBefore(second, first)).toBe(true);
    expect(isBefore(first, second)).toBe(false);
  });

  it('tells same days as written, and leaves a month open', () => {
    const late = moment('2026-02-01T23:30:00+05:30');
    expect(isSameLocalDay(late, moment('2026-02-01'))).toBe(true);
    expect(isSameLocalDay(late, moment('2026-02-02T00:30:00+05:30'))).toBe(false);
    expect(isSameLocalDay(late, moment('2026-02'))).toBeUndefined();
    expect(isSameLocalDay(late, moment('2026-03'))).toBe(false);
    expect(isBefore(moment('2026-02-01'), late)).toBeUndefined();
  });
});

describe('an instant as text', () => {
  it('is printed in the zone of the reading', () => {
    expect(formatInstant(Date.parse('2026-02-01T13:10:00Z'), 0)).toBe('2026-02-01T13:10:00Z');
    expect(formatInstant(Date.parse('2026-02-01T20:00:00Z'), 330)).toBe('2026-02-02T01:30:00+05:30');
    expect(formatInstant(Date.parse('2026-02-01T01:00:00Z'), -210)).toBe('2026-01-31T21:30:00-03:30');
  });
});

describe('the calendar', () => {
  it('knows leap years', () => {
    expect([2023, 2024, 2100, 2000].map((year) => daysInMonth(year, 2))).toEqual([28, 29, 28, 29]);
  });

  it('counts days as Date does, both ways', () => {
    fc.assert(
      fc.property(fc.integer({ min: -700_000, max: 700_000 }), (day) => {
        const text = new Date(day * 86_400_000).toISOString().slice(0, 10);
        if (text.startsWith('-') || text.startsWith('+')) return;
        expect(formatDay(day)).toBe(text);
        const [year = 0, month = 0, dayOfMonth = 0] = text.split('-').map(Number);
        expect(toDay(year, month, dayOfMonth)).toBe(day);
      }),
    );
  });
});

describe('at most so long after', () => {
  const within = (first: string, second: string) => gapAtMost(moment(first), moment(second), 5 * minute);

  it.each([
    ['2026-02-01T10:00:00Z', '2026-02-01T10:00:00Z', true],
    ['2026-02-01T10:00:00Z', '2026-02-01T10:05:00Z', true],
    ['2026-02-01T10:00:00Z', '2026-02-01T10:05:01Z', false],
    ['2026-02-01T10:00:00Z', '2026-02-01T09:59:59Z', false],
    ['2026-02-01T10:00:00Z', '2026-02-01', undefined],
    ['2026-02-01', '2026-02-01', undefined],
    ['2026-02-01', '2026-02-02', undefined],
    ['2026-02-01', '2026-02-03', false],
    ['2026-02-02', '2026-02-01', false],
  ])('%s, then %s: %s', (first, second, expected) => {
    expect(within(first, second)).toBe(expected);
  });
});

describe('the order of a timeline', () => {
  const ordered = (first: string, second: string) => Math.sign(compareMoments(moment(first), moment(second)));

  it.each([
    ['2026-02-01T10:00:00Z', '2026-02-01T10:00:01Z'],
    ['2026-02-01', '2026-02-02'],
    ['2026-02-01T00:00:00Z', '2026-02-01'],
    ['2026-02-01T10:00:00+00:00', '2026-02-01T10:00:00Z'],
  ])('%s comes before %s', (first, second) => {
    expect(ordered(first, second)).toBe(-1);
    expect(ordered(second, first)).toBe(1);
    expect(ordered(first, first)).toBe(0);
  });
});
