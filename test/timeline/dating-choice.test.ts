// Which dating is chosen, in its words: limits of either comparator, facts without a day, and what is said of the others.
import type { Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import type { DatingFact } from '../../src/timeline/dating-facts.ts';
import { chooseDating } from '../../src/timeline/gestational-age.ts';
import type { TimelineValues } from '../../src/timeline/timeline.ts';
import { dueDate, lastPeriod, loinc, observation, quantity } from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { date, pregnancyOf, scanAge } from './dating-support.ts';
import { received } from './received.ts';
import { values } from './values.ts';

const unconfirmed = 'No scan before 22+0 was sent to confirm it: suboptimally dated.';

const fact = (fields: Partial<DatingFact>, reference = 'Observation/1'): DatingFact => ({
  received: { ...received(observation(loinc('18185-9'), undefined)), reference },
  method: 'stated-age',
  startDay: 1000,
  asSent: 'sent',
  remarks: [],
  ...fields,
});
const scan = (startDay: number, observedDay?: number) =>
  fact({ method: 'ultrasound', startDay, ...(observedDay === undefined ? {} : { observedDay }) });
const period = (startDay: number) => fact({ method: 'last-period', startDay, observedDay: startDay + 50 });

describe('re-dating in words (clinical-rules 2.2 rule 10)', () => {
  it.each([
    [0, []],
    [7, ['Dated by the last period: it and the scan are 7 days apart, limit 7 at 10+0.']],
    [8, ['Re-dated by ultrasound: last period and scan are 8 days apart, limit 7 at 10+0.']],
  ])('%i days apart: %j', (apart, remarks) => {
    const found = pregnancyOf([lastPeriod(date(-70), date(-140)), scanAge(date(-70), 70 - apart)]).dating;
    expect(found?.remarks).toEqual(remarks);
    expect(found?.others).toHaveLength(1);
  });

  it.each([
    ['>', 6, 'last-period'],
    ['>', 7, 'last-period'],
    ['>', 8, 'ultrasound'],
    ['>=', 6, 'last-period'],
    ['>=', 7, 'ultrasound'],
    ['>=', 8, 'ultrasound'],
  ] as const)('a limit of %s 7 days at %i days apart: by %s', (comparator, apart, method) => {
    const redating = values.redating.map((row) => ({ ...row, limitDays: { ...row.limitDays, comparator } }));
    const sent = [period(1000), scan(1000 + apart, 1070)];
    expect(chooseDating(sent, { ...values, redating })?.method).toBe(method);
  });

  it.each([
    ['without a day', undefined],
    ['before the last period', 990],
    ['more than 44 weeks after it', 1309],
  ])('a scan %s dates, for the last period gives no age to compare with', (_, observedDay) => {
    const found = chooseDating([period(1000), scan(985, observedDay)], values);
    expect(found).toMatchObject({ method: 'ultrasound', startDay: 985, conflict: false });
    expect(found?.remarks[0]).toBe(
      'Dated by ultrasound: the last period gives no age on the day of the scan to compare with.',
    );
  });

  it('a due date of a scan that names no day is such a scan', () => {
    const due = observation(loinc('11781-2'), undefined, { valueDateTime: date(100) });
    expect(pregnancyOf([lastPeriod(date(-70), date(-200)), due]).dating).toMatchObject({
      method: 'ultrasound',
      asSent: `due date ${date(100)}`,
    });
  });
});

describe('facts that differ', () => {
  it.each([
    ['ultrasound', 'Ultrasound'],
    ['due-date', 'The due date'],
    ['stated-age', 'A stated gestational age'],
    ['conception', 'The date of conception'],
  ] as const)('one by %s is named so, with its day and the days it differs by', (method, words) => {
    const chosen = scan(1000, 1050);
    const other = fact({ method, startDay: 980, observedDay: 1100 });
    const found = chooseDating([chosen, other], values);
    expect(found?.remarks).toEqual([`${words} of 1973-01-05 differs by 20 days and was not used.`]);
    expect(found).toMatchObject({ conflict: true, others: [{ method, startDay: 980 }] });
  });

  it('one without a day is named without one', () => {
    const other = fact({ method: 'due-date', startDay: 1008 });
    expect(chooseDating([scan(1000, 1050), other], values)?.remarks).toEqual([
      'The due date differs by 8 days and was not used.',
    ]);
  });

  it.each([
    ['at 20 weeks', 1140, 10],
    ['at 8 weeks', 1056, 5],
    ['on no day that is known', undefined, 7],
  ])('two scans, the later %s: more than the limit of its row is a conflict', (_, observedDay, limit) => {
    const conflictAt = (apart: number) =>
      chooseDating([scan(1000, 1045), scan(1000 + apart, observedDay)], values)?.conflict;
    expect([conflictAt(limit), conflictAt(limit + 1)]).toEqual([false, true]);
    expect([conflictAt(-limit), conflictAt(-limit - 1)]).toEqual([false, true]);
  });

  it('a last period that a scan has replaced is no conflict, another due date is', () => {
    const sent = [period(1000), scan(1020, 1070)];
    expect(chooseDating(sent, values)?.conflict).toBe(false);
    const due = fact({ method: 'due-date', startDay: 1040, observedDay: 1080 });
    expect(chooseDating([...sent, due], values)).toMatchObject({ method: 'ultrasound', conflict: true });
  });
});

describe('which of several', () => {
  it('the earliest stated, then the earlier begun, then the first by reference; whatever the order', () => {
    const early = fact({ observedDay: 1100, startDay: 1002 }, 'Observation/b');
    const begun = fact({ observedDay: 1100, startDay: 1001 }, 'Observation/c');
    const named = fact({ observedDay: 1100, startDay: 1001, asSent: 'first' }, 'Observation/a');
    const undated = fact({ startDay: 1000 }, 'Observation/0');
    const late = fact({ observedDay: 1101, startDay: 999 }, 'Observation/1');
    for (const sent of [
      [early, begun, named, undated, late],
      [late, undated, named, begun, early],
      [undated, named, late, early, begun],
    ]) {
      const found = chooseDating(sent, values);
      expect(found).toMatchObject({ asSent: 'first', source: { reference: 'Observation/a' } });
      expect(found?.others.map(({ source }) => source.reference)).toEqual([
        'Observation/c',
        'Observation/b',
        'Observation/1',
        'Observation/0',
      ]);
    }
  });

  it.each([
    ['due-date', 'conception'],
    ['conception', 'stated-age'],
  ] as const)('by %s before by %s', (first, second) => {
    const sent = [fact({ method: second, observedDay: 1040 }), fact({ method: first, observedDay: 1080 })];
    expect(chooseDating(sent, values)?.method).toBe(first);
  });

  it('none dates nothing', () => {
    expect(chooseDating([], values)).toBeUndefined();
  });
});

describe('the scan that confirms', () => {
  it.each([
    ['at 21+6', scan(1000, 1153), true],
    ['at 22+0', scan(1000, 1154), false],
    ['on no known day', scan(1000), false],
    ['that is no scan', fact({ observedDay: 1101 }), false],
  ])('%s', (_, other, isConfirmed) => {
    const due = fact({ method: 'due-date', observedDay: 1200 });
    const found = chooseDating([due, other], values);
    expect(found?.remarks).toEqual(isConfirmed ? [] : [unconfirmed]);
  });

  it('is not asked for by values that name no week for it', () => {
    const { confirmingScanBefore: _, ...rest } = values;
    const without: TimelineValues = rest;
    expect(chooseDating([period(1000)], without)?.remarks).toEqual([]);
    expect(chooseDating([period(1000)], values)?.remarks).toEqual([unconfirmed]);
  });
});

describe('an age as it is kept', () => {
  const stated = (code: string, fields: Partial<Observation>) =>
    pregnancyOf([observation(loinc(code), date(0), fields), scanAge(date(-60), 80)]).dating?.others[0];

  it.each([
    ['49051-6', { valueInteger: 20 }, '20 wk'],
    ['49052-4', { valueInteger: 140 }, '140 d'],
    ['18185-9', { valueString: ' 20w0d ' }, '20w0d'],
    ['18185-9', { valueQuantity: quantity(20, 'wk') }, '20 wk'],
  ])('%s %j is "%s" on its day', (code, fields, words) => {
    expect(stated(code, fields)?.asSent).toBe(`${words} on ${date(0)}`);
  });

  it.each([
    ['whole weeks', { valueQuantity: quantity(31, 'wk') }, false],
    ['tenths of a week', { valueQuantity: quantity(31.5, 'wk') }, true],
    ['tenths of a day', { valueQuantity: quantity(217.4, 'd') }, false],
  ])('%s have the remark on decimals: %s %s', (_, fields, isRemarked) => {
    const { dating } = pregnancyOf([observation(loinc('18185-9'), date(0), fields)]);
    expect(dating?.remarks.some((remark) => remark.includes('tenths of a week'))).toBe(isRemarked);
  });

  it('of nought weeks is a number, and no possible age', () => {
    const nought = observation(loinc('49051-6'), date(0), { valueInteger: 0 });
    expect(codesOf(built([nought]))).toEqual(['value-out-of-range']);
  });

  it.each<[string, Partial<Observation>]>([
    ['49052-4', { valueInteger: 140 }],
    ['49051-6', { valueInteger: 20 }],
    ['18185-9', { valueString: '20w0d' }],
    ['18185-9', { component: [{ code: loinc('49052-4'), valueQuantity: quantity(140, 'd') }] }],
    [
      '18185-9',
      {
        valueQuantity: quantity(19, 'wk'),
        component: [{ code: loinc('49052-4'), valueQuantity: quantity(140, 'd') }],
      },
    ],
  ])('of 20 weeks by %s %j has no remark of its own', (code, fields) => {
    const { dating } = pregnancyOf([observation(loinc(code), date(0), fields)]);
    expect(dating?.remarks).toEqual([unconfirmed]);
    expect(dating?.startDay).toBe(Date.parse(date(0)) / 86_400_000 - 140);
  });

  it('in components counts where the whole has no value of its own, for whatever reason', () => {
    const component = [{ code: loinc('49051-6'), valueQuantity: quantity(31, 'wk') }];
    const dataAbsentReason = { coding: [{ code: 'not-applicable' }] };
    const sent = observation(loinc('18185-9'), date(0), { dataAbsentReason, component });
    expect(pregnancyOf([sent]).dating?.asSent).toBe(`31 wk on ${date(0)}`);
    const nothing = observation(loinc('18185-9'), date(0), { dataAbsentReason });
    expect(codesOf(built([nothing]))).toEqual(['value-absent-with-reason']);
  });

  it('of seven days beside weeks is no remainder', () => {
    const component = [{ code: loinc('49052-4'), valueQuantity: quantity(7, 'd') }];
    const both = observation(loinc('18185-9'), date(0), { valueQuantity: quantity(31, 'wk'), component });
    expect(codesOf(built([both]))).toEqual(['value-out-of-range']);
  });

  it('remaining days beside a last period of the same time are no part of it', () => {
    const sent = [
      lastPeriod(date(-5), date(-100)),
      observation(loinc('49052-4'), date(-5), { valueInteger: 3 }),
    ];
    const result = built(sent);
    expect(codesOf(result)).toEqual(['value-out-of-range']);
    expect(result.notNeeded).toEqual([]);
  });

  it('a date to come is refused from the day after the evaluation', () => {
    const begun = (start: string) => {
      const { effectiveDateTime: _, ...rest } = lastPeriod(date(0), start);
      return codesOf(built([rest]));
    };
    expect([begun(date(1)), begun(date(2))]).toEqual([[], ['value-out-of-range']]);
    expect(codesOf(built([dueDate(date(-9), date(271))]))).toEqual([]);
    expect(codesOf(built([dueDate(date(-9), date(272))]))).toEqual(['value-out-of-range']);
  });
});
