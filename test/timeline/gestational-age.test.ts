import type { Observation } from 'fhir/r4.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatDay, toDay } from '../../src/timeline/calendar.ts';
import {
  dueDate,
  gestationalAge,
  lastPeriod,
  loinc,
  observation,
  quantity,
  snomed,
} from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { pregnancyOf, ageNow, day, date, scanAge } from './dating-support.ts';

describe('day 0 of gestation', () => {
  it('is 280 days before the due date (rule 9): due 8 October 2026, day 0 is 1 January', () => {
    expect(pregnancyOf([dueDate('2026-01-30', '2026-10-08')]).dating).toMatchObject({
      startDay: toDay(2026, 1, 1),
      method: 'due-date',
      asSent: 'due date 2026-10-08',
      conflict: false,
    });
  });

  it('is the first day of the last period', () => {
    expect(ageNow([lastPeriod('2025-10-01', '2025-09-14')])).toBe('20+0');
    expect(ageNow([lastPeriod('2025-10-01', '2025-09-15')])).toBe('19+6');
  });

  it.each([
    ['11778-8', 'due-date'],
    ['11779-6', 'last-period'],
    ['11781-2', 'ultrasound'],
    ['11780-4', 'conception'],
    ['53692-0', 'conception'],
    ['53694-6', 'due-date'],
  ])('follows from a due date under %s, method %s', (code, method) => {
    const found = pregnancyOf([observation(loinc(code), '2026-01-30', { valueDateTime: '2026-10-08' })]);
    expect(found.dating).toMatchObject({ startDay: toDay(2026, 1, 1), method });
  });

  it('follows from SNOMED CT codes and from a date as text', () => {
    const text = observation(snomed('21840007'), '2026-01-30', { valueString: '2026-01-01' });
    expect(pregnancyOf([text]).dating).toMatchObject({ startDay: toDay(2026, 1, 1), method: 'last-period' });
    const due = observation(snomed('161714006'), undefined, { valueDateTime: '2026-10-08T08:00:00+05:30' });
    expect(pregnancyOf([due]).dating).toMatchObject({ startDay: toDay(2026, 1, 1) });
  });

  it('uses the calendar day as written, not the day in UTC (F-T04)', () => {
    const late = gestationalAge('2026-02-01T00:30:00+05:30', 140);
    expect(pregnancyOf([late]).dating?.startDay).toBe(day('2026-02-01') - 140);
  });

  it.each(['2026-01', '2026', '2026-02-31', 'soon'])(
    'needs a whole date: %j does not date',
    (valueDateTime) => {
      expect(codesOf(built([observation(loinc('8665-2'), '2026-01-30', { valueDateTime })]))).toEqual([
        'value-not-readable',
      ]);
    },
  );

  it('of any last period is 280 days before its due date', () => {
    fc.assert(
      fc.property(fc.integer({ min: -300, max: -1 }), (offset) => {
        const byPeriod = pregnancyOf([lastPeriod(date(-1), date(offset))]).dating?.startDay;
        const byDueDate = pregnancyOf([dueDate(date(-1), date(offset + 280))]).dating?.startDay;
        expect(byPeriod).toBe(day('2026-02-01') + offset);
        expect(byDueDate).toBe(byPeriod);
      }),
    );
  });
});

describe('a stated age', () => {
  it('holds on its own day and is advanced to the time of the evaluation', () => {
    expect(ageNow([gestationalAge('2026-01-25T09:00:00Z', 217)])).toBe('32+0');
  });

  const stated = (fields: Partial<Observation>, code = '18185-9') => [
    observation(loinc(code), '2026-02-01', fields),
  ];

  it.each([
    ['weeks in UCUM', { valueQuantity: quantity(31, 'wk') }, '31+0'],
    [
      'a code and no unit (QUIRKS)',
      { valueQuantity: { value: 20, system: 'http://unitsofmeasure.org', code: 'wk' } },
      '20+0',
    ],
    ['a unit and no code (QUIRKS)', { valueQuantity: { value: 20, unit: 'weeks' } }, '20+0'],
    ['days', { valueQuantity: quantity(220, 'd') }, '31+3'],
    ['text 31w4d', { valueString: '31w4d' }, '31+4'],
    ['text 31+4', { valueString: '31+4' }, '31+4'],
    ['text in a concept', { valueCodeableConcept: { text: '31 weeks 4 days' } }, '31+4'],
    ['31.4 weeks, rounded to the nearest day', { valueQuantity: quantity(31.4, 'wk') }, '31+3'],
  ])('as %s', (_, fields, expected) => {
    expect(ageNow(stated(fields))).toBe(expected);
  });

  it('with a decimal says that it is ambiguous', () => {
    const found = pregnancyOf(stated({ valueQuantity: quantity(31.4, 'wk') }));
    expect(found.dating?.remarks[0]).toBe(
      'weeks were sent with a decimal: read as tenths of a week, not as days',
    );
  });

  it.each([
    ['cm (QUIRKS)', { valueQuantity: quantity(20, 'cm') }, 'unit-unknown'],
    ['months', { valueQuantity: quantity(5, 'mo') }, 'unit-unknown'],
    ['no unit', { valueQuantity: { value: 20 } }, 'unit-missing'],
    ['no value', {}, 'value-missing'],
    ['a bound', { valueQuantity: { ...quantity(20, 'wk'), comparator: '<' as const } }, 'value-not-readable'],
    ['text with a decimal', { valueString: '31.4 weeks' }, 'value-not-readable'],
    ['3+6 weeks (rule 14)', { valueQuantity: quantity(27, 'd') }, 'value-out-of-range'],
    ['44+1 weeks (rule 14)', { valueQuantity: quantity(309, 'd') }, 'value-out-of-range'],
  ])('in %s is set aside', (_, fields, code) => {
    const result = built(stated(fields));
    expect(codesOf(result)).toEqual([code]);
    expect(result.timeline.pregnancy.dating).toBeUndefined();
  });

  it.each([
    [28, '4+0'],
    [308, '44+0'],
  ])('of %i days is just possible', (days, expected) => {
    expect(ageNow(stated({ valueQuantity: quantity(days, 'd') }))).toBe(expected);
  });

  it('of weeks beside days in another observation is one age (49051-6, 49052-4)', () => {
    const weeks = observation(loinc('49051-6'), '2026-02-01', { valueQuantity: quantity(31, 'wk') });
    const days = observation(loinc('49052-4'), '2026-02-01', { valueQuantity: quantity(4, 'd') });
    expect(ageNow([weeks, days])).toBe('31+4');
    expect(ageNow([days, weeks])).toBe('31+4');
    expect(built([weeks, days]).notNeeded).toHaveLength(1);
  });

  it('of weeks and days as components is one age', () => {
    const component = [
      { code: loinc('49052-4'), valueQuantity: quantity(4, 'd') },
      { code: loinc('49051-6'), valueQuantity: quantity(31, 'wk') },
    ];
    expect(ageNow([observation({ text: 'gestation' }, '2026-02-01', { component })])).toBe('31+4');
  });

  it('in total days under 49052-4 stands alone', () => {
    expect(ageNow([observation(loinc('49052-4'), '2026-02-01', { valueQuantity: quantity(221, 'd') })])).toBe(
      '31+4',
    );
  });

  it('as a whole number needs a code that says weeks or days', () => {
    expect(ageNow(stated({ valueInteger: 31 }, '49051-6'))).toBe('31+0');
    expect(ageNow(stated({ valueInteger: 221 }, '49052-4'))).toBe('31+4');
    expect(codesOf(built(stated({ valueInteger: 31 })))).toEqual(['unit-missing']);
    expect(codesOf(built(stated({ valueInteger: -31 }, '49051-6')))).toEqual(['value-not-readable']);
    expect(codesOf(built(stated({ valueInteger: 31.5 }, '49051-6')))).toEqual(['value-not-readable']);
    expect(codesOf(built(stated({ valueBoolean: true })))).toEqual(['value-type-not-usable']);
    expect(codesOf(built(stated({ valueCodeableConcept: {} })))).toEqual(['value-not-readable']);
  });

  it('of more than six days beside whole weeks is the age in days', () => {
    const both = (weeks: number, days: number) => {
      const component = [
        { code: loinc('49051-6'), valueQuantity: quantity(weeks, 'wk') },
        { code: loinc('49052-4'), valueQuantity: quantity(days, 'd') },
      ];
      return ageNow([observation({ text: 'gestation' }, '2026-02-01', { component })]);
    };
    expect(both(31, 6)).toBe('31+6');
    expect(both(31, 0)).toBe('31+0');
    expect(both(31, 221)).toBe('31+4');
    expect(both(30.857142857, 3)).toBe('30+6');
  });

  it('of seven days in another observation is no remainder of the weeks', () => {
    const weeks = observation(loinc('49051-6'), '2026-02-01', { valueQuantity: quantity(31, 'wk') });
    const seven = observation(loinc('49052-4'), '2026-02-01', { valueQuantity: quantity(7, 'd') });
    expect(ageNow([weeks, seven])).toBe('31+0');
    expect(codesOf(built([weeks, seven]))).toEqual(['value-out-of-range']);
  });

  it('of its own goes before that of its components, which fill in the days', () => {
    const component = [
      { code: loinc('49051-6'), valueQuantity: quantity(20, 'wk') },
      { code: loinc('49052-4'), valueQuantity: quantity(4, 'd') },
      { code: { text: 'fundus' }, valueQuantity: quantity(30, 'cm') },
    ];
    expect(ageNow(stated({ valueQuantity: quantity(31, 'wk'), component }))).toBe('31+4');
    expect(ageNow(stated({ component }))).toBe('20+4');
    expect(ageNow(stated({ component: component.slice(1, 2) }, '49051-6'))).toBeUndefined();
  });

  it('needs the day on which it was stated', () => {
    expect(
      codesOf(built([observation(loinc('18185-9'), '2026-01', { valueQuantity: quantity(20, 'wk') })])),
    ).toEqual(['time-invalid']);
    expect(
      codesOf(built([observation(loinc('18185-9'), undefined, { valueQuantity: quantity(20, 'wk') })])),
    ).toEqual(['time-missing']);
  });
});

describe('re-dating by ultrasound (rule 10)', () => {
  // Age by the last period on the day of the scan, and the difference up to which the last period stands.
  it.each([
    ['8+6', 62, 5],
    ['9+0', 63, 7],
    ['13+6', 97, 7],
    ['14+0', 98, 7],
    ['15+6', 111, 7],
    ['16+0', 112, 10],
    ['21+6', 153, 10],
    ['22+0', 154, 14],
    ['27+6', 195, 14],
    ['28+0', 196, 21],
  ])('at %s by the last period: more than the limit re-dates, up to it does not', (_, lmpAge, limit) => {
    const scanDay = date(-7);
    const period = lastPeriod(scanDay, formatDay(day(scanDay) - lmpAge));
    for (const sign of [-1, 1]) {
      const methodFor = (difference: number) =>
        pregnancyOf([period, scanAge(scanDay, lmpAge + sign * difference)]).dating?.method;
      expect(methodFor(limit - 1)).toBe('last-period');
      expect(methodFor(limit)).toBe('last-period');
      expect(methodFor(limit + 1)).toBe('ultrasound');
    }
  });

  it('says what it did, keeps the other fact, and calls it no conflict', () => {
    const found = pregnancyOf([lastPeriod(date(-70), date(-140)), scanAge(date(-70), 80)]).dating;
    expect(found).toMatchObject({
      method: 'ultrasound',
      conflict: false,
      others: [{ method: 'last-period' }],
    });
    expect(found?.remarks).toEqual([
      'Re-dated by ultrasound: last period and scan are 10 days apart, limit 7 at 10+0.',
    ]);
  });

  it('uses the earliest of several scans', () => {
    const found = pregnancyOf([
      scanAge(date(-20), 200),
      scanAge(date(-100), 125),
      lastPeriod(date(-150), date(-190)),
    ]);
    expect(found.dating).toMatchObject({ method: 'ultrasound', startDay: day('2026-02-01') - 225 });
  });
});

describe('which fact dates the pregnancy', () => {
  it('is the ultrasound before the due date, that before a stated age, and none is lost', () => {
    const facts = [gestationalAge(date(-1), 200), dueDate(date(-1), date(80)), scanAge(date(-120), 80)];
    expect(pregnancyOf(facts).dating).toMatchObject({ method: 'ultrasound', others: [{}, {}] });
    expect(pregnancyOf(facts.slice(0, 2)).dating).toMatchObject({ method: 'due-date' });
  });

  it('is a last period before a stated age that agrees within a week', () => {
    const found = pregnancyOf([lastPeriod(date(-100), date(-190)), gestationalAge(date(-10), 175)]).dating;
    expect(found).toMatchObject({ method: 'last-period', conflict: false });
  });

  it('is the stated age when the last period differs by more than a week, and that is a conflict', () => {
    const found = pregnancyOf([lastPeriod(date(-100), date(-190)), gestationalAge(date(-10), 172)]).dating;
    expect(found).toMatchObject({ method: 'stated-age', conflict: true });
    expect(found?.remarks).toContain('The last period of 2025-10-24 differs by 8 days and was not used.');
  });

  it.each([
    [7, false],
    [8, true],
  ])(
    'of two stated ages the newest does not win (rule 13); %i days apart: conflict %s',
    (difference, conflict) => {
      const found = pregnancyOf([
        gestationalAge(date(-30), 150),
        gestationalAge(date(-2), 178 + difference),
      ]).dating;
      expect(found).toMatchObject({ startDay: day('2026-02-01') - 180, conflict });
    },
  );

  it('says when no scan before 22+0 confirms it (S19)', () => {
    const remark = 'No scan before 22+0 was sent to confirm it: suboptimally dated.';
    expect(pregnancyOf([lastPeriod(date(-100), date(-190))]).dating?.remarks).toContain(remark);
    expect(pregnancyOf([scanAge(date(-40), 154)]).dating?.remarks).toContain(remark);
    expect(pregnancyOf([scanAge(date(-40), 153)]).dating?.remarks).not.toContain(remark);
  });
});
