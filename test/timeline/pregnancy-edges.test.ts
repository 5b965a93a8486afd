// What ends a pregnancy, what begins the next one, and which day it is at the place of the woman.
import type { FhirResource, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { asOfDay } from '../../src/timeline/pregnancy.ts';
import {
  birth,
  condition,
  dueDate,
  gestationalAge,
  lab,
  lastPeriod,
  loinc,
  observation,
  snomed,
} from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { date, day, pregnancyOf } from './dating-support.ts';
import { contextWith } from './received.ts';

const loss = (at: string): FhirResource => ({
  ...condition('epilepsy', at),
  code: snomed('17369002'),
});
const fetuses = (at: string): Observation => observation(loinc('55281-0'), at, { valueInteger: 2 });
const uterus = (at: string) => lab(at, 'fundal-height', 24, 'cm');
const today = day(date(0));

describe('the end of a pregnancy', () => {
  it('by the birth that belongs to its dating needs no remark', () => {
    expect(pregnancyOf([lastPeriod(date(-200), date(-290)), birth(date(-10))]).remarks).toEqual([]);
  });

  it('by a birth without any dating needs no remark', () => {
    expect(pregnancyOf([birth(date(-10))])).toMatchObject({ birth: {}, remarks: [] });
  });

  it('by the last of two births of it is that last one', () => {
    const { pregnancy, woman } = built([
      lastPeriod(date(-290), date(-300)),
      birth(date(-160)),
      birth(date(-2)),
    ]).timeline;
    expect(pregnancy.birth?.at.text).toBe(date(-2));
    expect(woman.previousBirths).toMatchObject([{ at: { text: date(-160) } }]);
  });

  it('is not a miscarriage recorded on the day of a birth, but one recorded later is', () => {
    expect(pregnancyOf([birth(date(-10)), loss(date(-10))]).birth?.at.text).toBe(date(-10));
    expect(pregnancyOf([birth(date(-10)), loss(date(-11))]).birth?.at.text).toBe(date(-10));
    const later = pregnancyOf([birth(date(-10)), loss(date(-9))]);
    expect(later.birth).toBeUndefined();
    expect(later.remarks).toEqual([]);
  });

  it('by a loss before the last period says nothing of the pregnancy it dates', () => {
    const after = pregnancyOf([lastPeriod(date(-60), date(-90)), loss(date(-91))]);
    expect(after).toMatchObject({ dating: { startDay: today - 90 }, remarks: [] });
  });

  it('on the day the next one begins keeps the two apart', () => {
    const sent = [lastPeriod(date(-60), date(-90)), birth(date(-15)), lastPeriod(date(-5), date(-15))];
    expect(pregnancyOf(sent).dating).toMatchObject({ startDay: today - 15, others: [], conflict: false });
  });

  it('before 20 weeks of the dating by a birth is remarked on, with its age', () => {
    const found = pregnancyOf([lastPeriod(date(-150), date(-160)), birth(date(-60))]);
    expect(found.birth).toBeUndefined();
    expect(found.remarks).toEqual([
      'A birth is recorded at 14+2 by the dating: not taken as its end. Check both.',
    ]);
    const onDayNought = pregnancyOf([lastPeriod(date(-50), date(-60)), birth(date(-60))]);
    expect(onDayNought.remarks).toEqual([
      'A birth is recorded at 0+0 by the dating: not taken as its end. Check both.',
    ]);
    expect(pregnancyOf([lastPeriod(date(-50), date(-60)), birth(date(-61))]).remarks).toEqual([]);
  });

  it('later than 44 weeks of the dating by a birth says that the dating is of an earlier one', () => {
    const found = pregnancyOf([lastPeriod(date(-330), date(-340)), birth(date(-10))]);
    expect(found.birth?.at.text).toBe(date(-10));
    expect(found.remarks).toEqual(['The dating sent is of a pregnancy before the last birth.']);
  });
});

describe('facts of one pregnancy', () => {
  it.each([
    [139, true],
    [140, false],
  ])('begin less than 20 weeks apart: %i days: %s', (apart, isOne) => {
    const { dating } = pregnancyOf([
      lastPeriod(date(-20), date(-30)),
      dueDate(date(-150), date(280 - 30 - apart)),
    ]);
    expect(dating?.startDay).toBe(isOne ? today - 30 - apart : today - 30);
  });

  it.each([
    [-30, 'before the older', true],
    [-25, 'on the first day of the older', true],
    [-24, 'between them', false],
  ])('have no birth %i days ago, %s, between them', (born, _, isOne) => {
    const sent = [lastPeriod(date(-20), date(-25)), dueDate(date(-9), date(270)), birth(date(born))];
    expect(pregnancyOf(sent).dating?.others).toHaveLength(isOne ? 1 : 0);
  });

  it('of a birth long past do not keep that birth', () => {
    const { woman, pregnancy } = built([birth(date(-400)), lastPeriod(date(-20), date(-60))]).timeline;
    expect(pregnancy.birth).toBeUndefined();
    expect(woman.previousBirths).toHaveLength(1);
  });
});

describe('an age stated after the birth', () => {
  const bornThen = birth(date(-10));

  it.each([
    ['of 20 weeks', 140, -5, -10 - 140],
    ['of 19+6 weeks', 139, -5, -5 - 139],
    ['of 20 weeks, ten days later', 140, 0, -10 - 140],
  ])('%s: %i days stated on day %i, day 0 is %i', (_, age, stated, start) => {
    const facts = [bornThen, gestationalAge(date(stated), age)];
    expect(pregnancyOf(facts).dating?.startDay).toBe(today + start);
  });

  it('says that it was taken as the age at birth', () => {
    const { dating } = pregnancyOf([bornThen, gestationalAge(date(-5), 266)]);
    expect(dating?.remarks[0]).toBe(
      'the gestational age was stated after the birth: taken as the age at birth',
    );
    for (const stated of [-10, -11]) {
      const { dating: told } = pregnancyOf([bornThen, gestationalAge(date(stated), 266)]);
      expect(told?.remarks.join()).not.toContain('taken as the age at birth');
    }
  });
});

describe('what is history', () => {
  it('of a birth before the pregnancy began leaves a stated age alone', () => {
    const { dating } = pregnancyOf([birth(date(-400)), gestationalAge(date(-5), 150)]);
    expect(dating?.startDay).toBe(today - 155);
  });

  it('is a dating of an earlier pregnancy recorded late, unless its due date was past by then', () => {
    const current = lastPeriod(date(-50), date(-100));
    expect(codesOf(built([current, lastPeriod(date(-5), date(-250))]))).toEqual(['previous-pregnancy']);
    expect(codesOf(built([current, lastPeriod(date(-100), date(-381))]))).toEqual(['value-out-of-range']);
    expect(codesOf(built([current, lastPeriod(date(-100), date(-380))]))).toEqual(['previous-pregnancy']);
    expect(codesOf(built([current, lastPeriod(date(-101), date(-381))]))).toEqual(['previous-pregnancy']);
  });

  it('is a loss, whatever other conditions are on record', () => {
    const sent = [lastPeriod(date(-60), date(-90)), condition('epilepsy', date(-500)), loss(date(-20))];
    expect(pregnancyOf(sent).dating).toBeUndefined();
    expect(pregnancyOf(sent.slice(0, 2)).dating).toBeDefined();
  });

  it('is not a number of births counted before this pregnancy', () => {
    const parity = observation(loinc('11977-6'), date(-400), { valueInteger: 1 });
    const { timeline, setAside } = built([lastPeriod(date(-60), date(-90)), parity]);
    expect(timeline.woman.parity?.count).toBe(1);
    expect(setAside).toEqual([]);
  });
});

describe('an undated pregnancy begins after the last end', () => {
  it('by a birth: fetuses counted before it are of that one', () => {
    const sent = [birth(date(-200)), birth(date(-5)), fetuses(date(-250))];
    expect(codesOf(built(sent))).toEqual(['previous-pregnancy']);
    expect(
      built([birth(date(-200)), birth(date(-5)), fetuses(date(-150))]).timeline.pregnancy.fetuses,
    ).toEqual({ count: 2, source: { reference: 'Observation/r2', preliminary: false } });
  });

  it('by a loss: a uterus measured before it is of that one', () => {
    expect(pregnancyOf([loss(date(-30)), uterus(date(-31))]).assumedFrom20Weeks).toBeUndefined();
    expect(pregnancyOf([loss(date(-30)), uterus(date(-29))]).assumedFrom20Weeks).toMatchObject({
      measuredDay: today - 29,
    });
    expect(pregnancyOf([uterus(date(-29))]).remarks).toEqual([]);
  });

  it.each([
    [-168, true],
    [-169, false],
  ])('a uterus of 24 cm measured %i days ago may be of it: %s', (measured, isOwn) => {
    // 44 weeks less the 20 that it shows
    expect(pregnancyOf([uterus(date(measured))]).assumedFrom20Weeks !== undefined).toBe(isOwn);
  });

  it.each([
    [-313, true],
    [-314, false],
  ])('fetuses counted %i days ago are of a birth five days ago: %s', (counted, isOwn) => {
    const { fetuses: found } = pregnancyOf([birth(date(-5)), fetuses(date(counted))]);
    expect(found !== undefined).toBe(isOwn);
  });

  it.each([
    [42, true],
    [43, false],
  ])('a sign of pregnancy %i days after a birth keeps that birth: %s', (after, isKept) => {
    expect(pregnancyOf([birth(date(-after)), uterus(date(0))]).birth !== undefined).toBe(isKept);
  });
});

describe('the day of the evaluation at the place of the woman', () => {
  const dayAt = (asOf: string, facilityOffsetMinutes?: number | ((local: number) => number)) =>
    asOfDay({
      ...contextWith(),
      asOf: Date.parse(asOf),
      ...(facilityOffsetMinutes === undefined ? {} : { facilityOffsetMinutes }),
    });

  it.each([
    ['2026-02-01T23:59:59Z', undefined, '2026-02-01'],
    ['2026-02-01T18:29:59Z', 330, '2026-02-01'],
    ['2026-02-01T18:30:00Z', 330, '2026-02-02'],
    ['2026-02-01T02:59:59Z', -180, '2026-01-31'],
    ['2026-02-01T03:00:00Z', -180, '2026-02-01'],
  ])('at %s with an offset of %s is %s', (asOf, offset, expected) => {
    expect(dayAt(asOf, offset)).toBe(day(expected));
  });

  it('is still the day before where clocks go back at midnight', () => {
    // at 24:00 of 29 October 2026 clocks go back to 23:00, from three hours before UTC to two
    const change = Date.parse('2026-10-30T00:00:00Z');
    const cairo = (local: number) => (local < change ? 180 : 120);
    expect(dayAt('2026-10-29T20:30:00Z', cairo)).toBe(day('2026-10-29'));
    expect(dayAt('2026-10-29T21:30:00Z', cairo)).toBe(day('2026-10-29'));
    expect(dayAt('2026-10-29T22:00:00Z', cairo)).toBe(day('2026-10-30'));
  });
});
