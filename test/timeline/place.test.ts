import { describe, expect, it } from 'vitest';
import { parseMoment } from '../../src/timeline/moment.ts';
import { placeOf } from '../../src/timeline/place.ts';
import type { Dating, Moment, Pregnancy } from '../../src/timeline/timeline.ts';
import { values } from './values.ts';

const source = { reference: 'Observation/1', preliminary: false };

function moment(text: string): Moment {
  const found = parseMoment(text, undefined);
  if (found === undefined) throw new Error(`not a moment: ${text}`);
  return found;
}

function dated(startText: string, birthText?: string): Pregnancy {
  const dating: Dating = {
    startDay: moment(startText).localDay,
    method: 'ultrasound',
    asSent: 'test',
    source,
    others: [],
    remarks: [],
    conflict: false,
  };
  return { dating, ...bornAt(birthText) };
}

function bornAt(text?: string): Pregnancy {
  return {
    remarks: [],
    ...(text === undefined ? {} : { birth: { at: moment(text), asSent: text, source } }),
  };
}

const place = (text: string, pregnancy: Pregnancy) => placeOf(moment(text), pregnancy, values);

describe('in a dated pregnancy (rule 9)', () => {
  const pregnancy = dated('2025-09-14');

  it.each([
    ['2026-01-31T23:59:59Z', 'before-20-weeks', 139],
    ['2026-02-01T00:00:00Z', 'from-20-weeks', 140],
    ['2026-02-01', 'from-20-weeks', 140],
    ['2026-02-01T00:30:00+05:30', 'from-20-weeks', 140],
    ['2026-01-31T19:00:00Z', 'before-20-weeks', 139],
    ['2025-09-14', 'before-20-weeks', 0],
  ])('%s is %s, day %i', (text, period, gestationalAgeDays) => {
    expect(place(text, pregnancy)).toEqual({ period, gestationalAgeDays });
  });

  it('a month that straddles 20+0 is unknown, one that does not is known', () => {
    expect(place('2026-01', pregnancy)).toEqual({ period: 'before-20-weeks' });
    expect(place('2026-02', pregnancy)).toEqual({ period: 'from-20-weeks' });
    expect(place('2026', pregnancy)).toEqual({ period: 'unknown' });
    expect(place('2026-02', dated('2025-09-20'))).toEqual({ period: 'unknown' });
  });

  it('the day before day 0 is earlier', () => {
    expect(place('2025-09-13', pregnancy)).toEqual({ period: 'unknown', outside: 'earlier' });
    expect(place('2025-09', pregnancy)).toEqual({ period: 'unknown' });
  });
});

describe('around a birth (rule 12, decision 27)', () => {
  it('with its time splits its day', () => {
    const pregnancy = dated('2025-05-01', '2026-02-01T04:00:00Z');
    expect(place('2026-02-01T03:59:00Z', pregnancy)).toEqual({
      period: 'from-20-weeks',
      gestationalAgeDays: 276,
    });
    expect(place('2026-02-01T04:00:00Z', pregnancy)).toEqual({ period: 'after-birth', daysAfterBirth: 0 });
    expect(place('2026-02-01T09:29:00+05:30', pregnancy).period).toBe('from-20-weeks');
    expect(place('2026-02-01', pregnancy)).toEqual({ period: 'unknown' });
  });

  it('with only a date has its whole day after it', () => {
    const pregnancy = dated('2025-05-01', '2026-02-01');
    expect(place('2026-02-01T00:10:00Z', pregnancy)).toEqual({ period: 'after-birth', daysAfterBirth: 0 });
    expect(place('2026-02-01', pregnancy)).toEqual({ period: 'after-birth', daysAfterBirth: 0 });
    expect(place('2026-01-31', pregnancy).period).toBe('from-20-weeks');
  });

  it.each([
    ['2026-03-14', { period: 'after-birth', daysAfterBirth: 41 }],
    ['2026-03-15', { period: 'after-birth', daysAfterBirth: 42 }],
    ['2026-03-16', { period: 'unknown', daysAfterBirth: 43, outside: 'later' }],
  ])('%s: day 42 is the last', (text, expected) => {
    expect(place(text, dated('2025-05-01', '2026-02-01'))).toEqual(expected);
  });

  it('undated, the hours before it on its day are from 20 weeks, other days are unknown', () => {
    const pregnancy = bornAt('2026-02-01T04:00:00Z');
    expect(place('2026-02-01T02:00:00Z', pregnancy)).toEqual({ period: 'from-20-weeks' });
    expect(place('2026-01-31T02:00:00Z', pregnancy)).toEqual({ period: 'unknown' });
    expect(place('2025-03-01', pregnancy)).toEqual({ period: 'unknown', outside: 'earlier' });
    expect(place('2025-03-30', pregnancy)).toEqual({ period: 'unknown' });
    expect(place('2025-03-29', pregnancy)).toEqual({ period: 'unknown', outside: 'earlier' });
    expect(place('2025-03', pregnancy)).toEqual({ period: 'unknown' });
  });
});

describe('without dating and birth', () => {
  it('every moment is unknown', () => {
    expect(place('2026-02-01', bornAt())).toEqual({ period: 'unknown' });
  });

  it('a size of the uterus that puts her past 20+0 is believed', () => {
    expect(place('2026-02-01', { remarks: [], assumedFrom20Weeks: { asSent: '30 cm', source } })).toEqual({
      period: 'from-20-weeks',
    });
  });

  it('that size speaks for the days after it was measured, not for those before', () => {
    const measured: Pregnancy = {
      remarks: [],
      assumedFrom20Weeks: { asSent: '30 cm', source, measuredDay: moment('2026-02-01').localDay },
    };
    expect(place('2026-02-01', measured)).toEqual({ period: 'from-20-weeks' });
    expect(place('2026-02-02T10:00:00Z', measured)).toEqual({ period: 'from-20-weeks' });
    expect(place('2026-01-31', measured)).toEqual({ period: 'unknown' });
    expect(place('2025-03-30', measured)).toEqual({ period: 'unknown' });
    expect(place('2025-03-29', measured)).toEqual({ period: 'unknown', outside: 'earlier' });
  });
});
