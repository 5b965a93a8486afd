// Texts that are nearly a FHIR date or time, character by character; gaps and days at their edges.
import { describe, expect, it } from 'vitest';
import { isInFuture } from '../../src/timeline/effective-moment.ts';
import {
  compareIntervals,
  formatInstant,
  gapAtLeast,
  gapAtMost,
  isBefore,
  isSameLocalDay,
  lastLocalDay,
  momentAt,
  offsetAt,
  parseMoment,
} from '../../src/timeline/moment.ts';
import { placeOf } from '../../src/timeline/place.ts';
import { formatDay, toDay } from '../../src/timeline/calendar.ts';
import { contextWith, moment } from './received.ts';
import { values } from './values.ts';

const minute = 60_000;

describe('a text that is no date or time (F-T06)', () => {
  it.each([
    '2026/02',
    '2026/02/01',
    '2026-02/01',
    '2026-02-1x',
    '2026-02-1-',
    '2026-02-1/',
    '2026-02-01T1-:00:00Z',
    '2026-02-x1',
    '2026-02-32',
    '2026-0x-01',
    '202x',
    '20',
    '2026-',
    '2026-02-',
    '2026-02-011',
    '2026-02-01t10:00:00Z',
    '2026-02-01 10:00',
    '2026-02-01T',
    '2026-02-01T1',
    '2026-02-01T10:',
    '2026-02-01T10:0',
    '2026-02-01T10.00Z',
    '2026-02-01T1x:00:00Z',
    '2026-02-01T10:x0:00Z',
    '2026-02-01T10:00:x0Z',
    '2026-02-01T10:00:0',
    '2026-02-01T10:00:',
    '2026-02-01T10:00:00.',
    '2026-02-01T10:00:00.x',
    '2026-02-01T10:00:00,5Z',
    '2026-02-01T10:00:00z',
    '2026-02-01T10:00:00ZZ',
    '2026-02-01T10:00:00*05:30',
    '2026-02-01T10:00:00 05:30',
    '2026-02-01T10:00:00+05:300',
    '2026-02-01T10:00:00+05.30',
    '2026-02-01T10:00:00+05',
    '2026-02-01T10:00:00+05:',
    '2026-02-01T10:00:00+5:30',
    '2026-02-01T10:00:00+xx:30',
    '2026-02-01T10:00:00+0x:30',
    '2026-02-01T10:00:00+05:x0',
    '2026-02-01T10:00:00+05:xx',
    '2026-02-01T10:00:00+05:60',
    '2026-02-01T10:00:00+14:01',
    '2026-02-01T10:00:00-14:01',
    '2026-02-01T24:00:01Z',
    '2026-02-01T24:00:00.001Z',
    '-026-02-01',
    '2026-02-29',
    '2026-04-31',
    '2026-06-31',
    '2026-09-31',
    '2026-11-31',
  ])('%j', (text) => {
    expect(parseMoment(text, undefined)).toBeUndefined();
  });

  it.each([
    ['0001', '0001-01-01T00:00:00Z'],
    ['2026-02-01T00:00:00Z', '2026-02-01T00:00:00Z'],
    ['2026-02-01T23:59:59Z', '2026-02-01T23:59:59Z'],
    ['2026-02-01T10:59:59.999Z', '2026-02-01T10:59:59.999Z'],
    ['2026-02-01T10:00:00.1Z', '2026-02-01T10:00:00.100Z'],
    ['2026-02-01T10:00:00.12Z', '2026-02-01T10:00:00.120Z'],
    ['2026-02-01T10:00:00.1239Z', '2026-02-01T10:00:00.123Z'],
    ['2026-02-01T10:00:00.5', '2026-02-01T10:00:00.500Z'],
    ['2026-02-01T10:00:00+14:00', '2026-01-31T20:00:00Z'],
    ['2026-02-01T10:00:00-14:00', '2026-02-02T00:00:00Z'],
    ['2026-02-01T10:00:00+05:59', '2026-02-01T04:01:00Z'],
    ['2026-02-01T10:00:00-00:00', '2026-02-01T10:00:00Z'],
    ['2026-02-01T10:00-03:00', '2026-02-01T13:00:00Z'],
  ])('but %s begins at %s', (text, begins) => {
    expect(moment(text).earliest).toBe(Date.parse(begins));
  });

  it('an offset of nought is nought, from either side', () => {
    for (const zone of ['Z', '+00:00', '-00:00'])
      expect(Object.is(moment(`2026-02-01T10:00:00${zone}`).offsetMinutes, 0)).toBe(true);
  });
});

describe('a facility whose clocks change', () => {
  const summer = Date.parse('2026-03-29T02:00:00Z');
  const berlin = (local: number) => (local < summer ? 60 : 120);

  it('a date there lasts as long as its day does', () => {
    const found = parseMoment('2026-03-29', berlin);
    expect(found?.earliest).toBe(Date.parse('2026-03-28T23:00:00Z'));
    expect(found?.latest).toBe(Date.parse('2026-03-29T22:00:00Z') - 1);
    expect(lastLocalDay(found ?? moment('2000'))).toBe(toDay(2026, 3, 29));
  });

  it('the last day of a month is that day, though the month is an hour short or long', () => {
    expect(lastLocalDay(parseMoment('2026-03', berlin) ?? moment('2000'))).toBe(toDay(2026, 3, 31));
    const autumn = (local: number) => (local < Date.parse('2026-10-25T03:00:00Z') ? 120 : 60);
    expect(lastLocalDay(parseMoment('2026-10', autumn) ?? moment('2000'))).toBe(toDay(2026, 10, 31));
  });

  it('a time without a zone takes the offset of that time', () => {
    expect(parseMoment('2026-03-29T01:59', berlin)?.earliest).toBe(Date.parse('2026-03-29T00:59:00Z'));
    expect(parseMoment('2026-03-29T03:00', berlin)?.earliest).toBe(Date.parse('2026-03-29T01:00:00Z'));
    expect([offsetAt(berlin, summer), offsetAt(330, 0), offsetAt(undefined, 0)]).toEqual([120, 330, 0]);
  });
});

describe('an instant as text', () => {
  it.each([
    [0, '2026-02-01T13:10:09Z'],
    [1, '2026-02-01T13:11:09+00:01'],
    [-1, '2026-02-01T13:09:09-00:01'],
    [-60, '2026-02-01T12:10:09-01:00'],
    [-14 * 60, '2026-01-31T23:10:09-14:00'],
  ])('at an offset of %i minutes is %s', (offset, text) => {
    expect(formatInstant(Date.parse('2026-02-01T13:10:09.999Z'), offset)).toBe(text);
    expect(momentAt(Date.parse('2026-02-01T13:10:09Z'), offset)).toMatchObject({
      text,
      localDay: Date.parse(text.slice(0, 10)) / 86_400_000,
      offsetMinutes: offset,
      precision: 'minute',
    });
  });

  it.each(['1600-02-29', '1700-03-01', '1899-12-31', '1900-03-01', '2000-02-29', '2000-12-31', '2400-02-29'])(
    'the day %s is printed as itself',
    (text) => {
      expect(formatDay(Date.parse(text) / 86_400_000)).toBe(text);
    },
  );
});

describe('gaps at their edges', () => {
  const [ten, five, day, next] = [
    moment('2026-02-01T10:00:00Z'),
    moment('2026-02-01T10:05:00Z'),
    moment('2026-02-01'),
    moment('2026-02-02'),
  ];
  const whole = 24 * 60 * minute;

  it.each([
    ['instants', ten, five, 5 * minute, true, true],
    ['instants, a moment less', ten, five, 5 * minute + 1, false, true],
    ['instants, a moment more', ten, five, 5 * minute - 1, true, false],
    ['one instant', ten, ten, 0, true, true],
    ['one date', day, day, whole, false, undefined],
    ['a time and its date', ten, day, 10 * 60 * minute, undefined, undefined],
    ['a date and the next', day, next, 1, true, undefined],
    ['a date and the next, two days', day, next, 2 * whole - 1, undefined, true],
    ['a date and the next, a moment more', day, next, 2 * whole, false, true],
    ['a date and the day before', next, day, 0, false, false],
  ] as const)('%s', (_, first, second, gap, atLeast, atMost) => {
    const told = [gapAtLeast(first, second, gap), gapAtMost(first, second, gap)];
    expect(told).toEqual([atLeast, atMost]);
  });

  it('order is told where intervals do not overlap', () => {
    expect([isBefore(ten, five), isBefore(five, ten), isBefore(ten, ten)]).toEqual([true, false, false]);
    expect([isBefore(day, next), isBefore(next, day), isBefore(day, day)]).toEqual([true, false, undefined]);
    expect(isBefore(moment('2026-02-01T00:00:00Z'), day)).toBeUndefined();
    expect(isBefore(moment('2026-02-01T23:59:59.999Z'), day)).toBe(false);
    expect(Math.sign(compareIntervals(ten, day))).toBe(1);
    expect(Math.sign(compareIntervals(moment('2026-02-01T00:00:00Z'), day))).toBe(-1);
  });

  it('one day is told of two days, and not of a month in which both may lie', () => {
    const [month, january] = [moment('2026-02'), moment('2026-01')];
    expect([isSameLocalDay(day, ten), isSameLocalDay(day, next)]).toEqual([true, false]);
    expect([isSameLocalDay(month, day), isSameLocalDay(day, month)]).toEqual([undefined, undefined]);
    expect(isSameLocalDay(month, month)).toBeUndefined();
    expect([isSameLocalDay(january, day), isSameLocalDay(day, january)]).toEqual([false, false]);
  });
});

describe('the future (F-T10)', () => {
  // evaluated at noon of 10 March 2025, with five minutes for clocks that differ
  it.each([
    ['2025-03-10T12:05:00Z', undefined, false],
    ['2025-03-10T12:05:01Z', undefined, true],
    ['2025-03-11', undefined, false],
    ['2025-03-12', undefined, true],
    ['2025-03-11', 0, true],
    ['2025-03-11', 14 * 60, false],
    ['2025-03', undefined, false],
  ])('%s with an offset of %s: %s', (text, facilityOffsetMinutes, expected) => {
    const context = {
      ...contextWith(),
      ...(facilityOffsetMinutes === undefined ? {} : { facilityOffsetMinutes }),
    };
    const found = parseMoment(text, facilityOffsetMinutes) ?? moment('2000');
    expect(isInFuture(found, context)).toBe(expected);
  });
});

describe('a month around a birth', () => {
  const bornOn = (text: string) => ({
    remarks: [],
    birth: { at: moment(text), asSent: text, source: { reference: 'Observation/1', preliminary: false } },
  });
  const place = (text: string, born: string) => placeOf(moment(text), bornOn(born), values);

  it.each([
    ['2026-03', '2026-02-20', { period: 'after-birth' }],
    ['2026-03', '2026-02-16', { period: 'unknown' }],
    ['2026-03', '2026-02-17', { period: 'after-birth' }],
    ['2026-02', '2026-02-10', { period: 'unknown' }],
    ['2026-04', '2026-02-20', { period: 'unknown' }],
    ['2026-03-05', '2026-02', { period: 'after-birth' }],
    ['2026-02-10', '2026-02', { period: 'unknown' }],
    ['2026-02-01T09:00:00Z', '2026-02', { period: 'unknown' }],
    ['2026-02-10T09:00:00Z', '2026-02-10', { period: 'after-birth', daysAfterBirth: 0 }],
    ['2026-02-11', '2026-02-10T09:00:00Z', { period: 'after-birth', daysAfterBirth: 1 }],
    ['2026-02-09', '2026-02-10T09:00:00Z', { period: 'unknown' }],
    ['2026-02-10', '2026-02-10T09:00:00Z', { period: 'unknown' }],
  ])('%s, born %s', (text, born, expected) => {
    expect(place(text, born)).toEqual(expected);
  });
});
