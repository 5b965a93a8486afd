// Ages in weeks and days, counts, states and times of a pregnancy, sent in ways that are odd and allowed.
import type { FhirResource, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import {
  birth,
  bundleOf,
  condition,
  lab,
  lastPeriod,
  loinc,
  observation,
  patient,
  quantity,
  snomed,
} from '../support/resources.ts';
import { readBundle } from '../../src/bundle/read-bundle.ts';
import { buildTimeline } from '../../src/timeline/build-timeline.ts';
import { built, codesOf, defaultAsOf } from './build.ts';
import { ageNow, date, pregnancyOf, scanAge } from './dating-support.ts';
import { values } from './values.ts';

const today = date(0);
const obs = (code: string, fields: Partial<Observation>, at: string | undefined = today) =>
  observation(loinc(code), at, fields);
const weeks = (value: number, at = today) => obs('49051-6', { valueQuantity: quantity(value, 'wk') }, at);
const days = (fields: Partial<Observation>, at = today) => obs('49052-4', fields, at);

describe('weeks and remaining days in two observations', () => {
  it.each<[string, Partial<Observation>, string]>([
    ['as a quantity', { valueQuantity: quantity(3, 'd') }, '30+3'],
    ['as an integer', { valueInteger: 3 }, '30+3'],
    ['none', { valueInteger: 0 }, '30+0'],
    ['six', { valueInteger: 6 }, '30+6'],
  ])('%s are one age', (_, sent, expected) => {
    const result = built([weeks(30), days(sent)]);
    expect(ageNow([weeks(30), days(sent)])).toBe(expected);
    expect(result.notNeeded).toHaveLength(1);
    expect(codesOf(result)).toEqual([]);
  });

  it('of two days are not one age', () => {
    const sent = [weeks(30), days({ valueInteger: 3 }, date(-1))];
    expect(ageNow(sent)).toBe('30+0');
    expect(codesOf(built(sent))).toEqual(['value-out-of-range']);
  });

  it.each<[string, Partial<Observation>]>([
    ['half a day', { valueInteger: 3.5 }],
    ['less than none', { valueInteger: -1 }],
    ['a text', { valueString: 'three' }],
    ['nothing', {}],
  ])('of %s leave the weeks as they are', (_, sent) => {
    expect(ageNow([weeks(30), days(sent)])).toBe('30+0');
    expect(codesOf(built([weeks(30), days(sent)]))).toHaveLength(1);
  });

  it('beside weeks that are not possible date nothing, and each is set aside', () => {
    const sent = [weeks(60), days({ valueInteger: 3 })];
    expect(pregnancyOf(sent).dating).toBeUndefined();
    expect(codesOf(built(sent))).toEqual(['value-out-of-range', 'value-out-of-range']);
  });

  it('of seven or more are the age in days', () => {
    expect(ageNow([days({ valueInteger: 213 })])).toBe('30+3');
  });
});

describe('weeks and days as components', () => {
  const part = (code: string, fields: object) => ({ code: loinc(code), ...fields });
  const withParts = (fields: Partial<Observation>, ...component: NonNullable<Observation['component']>) =>
    obs('18185-9', { component, ...fields });

  it.each<[string, Observation, string | undefined]>([
    [
      'weeks and days',
      withParts({}, part('49051-6', { valueInteger: 30 }), part('49052-4', { valueInteger: 3 })),
      '30+3',
    ],
    [
      'days and weeks',
      withParts({}, part('49052-4', { valueInteger: 3 }), part('49051-6', { valueInteger: 30 })),
      '30+3',
    ],
    ['weeks alone', withParts({}, part('49051-6', { valueInteger: 30 })), '30+0'],
    [
      'days beside an own value in weeks',
      withParts({ valueQuantity: quantity(30, 'wk') }, part('49052-4', { valueInteger: 3 })),
      '30+3',
    ],
    ['only remaining days', withParts({}, part('49052-4', { valueInteger: 3 })), undefined],
    [
      'days beside weeks that are not whole',
      withParts({ valueQuantity: quantity(215, 'd') }, part('49052-4', { valueInteger: 3 })),
      '30+5',
    ],
    [
      'days that cannot be read',
      withParts({ valueQuantity: quantity(30, 'wk') }, part('49052-4', { valueString: 'three' })),
      '30+0',
    ],
  ])('%s', (_, sent, expected) => {
    expect(ageNow([sent])).toBe(expected);
  });
});

describe('what does not date', () => {
  it.each<[string, FhirResource, string]>([
    [
      'an age that is only a bound',
      obs('18185-9', { valueQuantity: { ...quantity(30, 'wk'), comparator: '>' } }),
      'value-not-readable',
    ],
    ['a bare integer under a code without unit', obs('18185-9', { valueInteger: 30 }), 'unit-missing'],
    ['yes', obs('18185-9', { valueBoolean: true }), 'value-type-not-usable'],
    ['an empty text', obs('18185-9', { valueString: ' ' }), 'value-not-readable'],
    [
      'an age of a month without a day',
      obs('18185-9', { valueQuantity: quantity(30, 'wk') }, '2026-01'),
      'time-invalid',
    ],
    [
      'a due date under a coded value',
      obs('11778-8', { valueCodeableConcept: { text: date(70) } }),
      'value-type-not-usable',
    ],
    ['a due date sent tomorrow', obs('11778-8', { valueDateTime: date(70) }, date(9)), 'time-in-future'],
    [
      'a due date recorded on no day of the calendar',
      obs('11778-8', { valueDateTime: date(70) }, '2026-02-30'),
      'time-invalid',
    ],
    ['a blank text for a due date', obs('11778-8', { valueString: ' ' }), 'value-not-readable'],
  ])('%s', (_, sent, code) => {
    expect(pregnancyOf([sent]).dating).toBeUndefined();
    expect(codesOf(built([sent]))).toEqual([code]);
  });

  it('a text of a due date may have blanks around it', () => {
    expect(pregnancyOf([obs('11778-8', { valueString: ` ${date(70)} ` })]).dating?.asSent).toContain(
      date(70),
    );
  });
});

describe('two datings that differ by more than a week conflict', () => {
  it.each([
    [7, false],
    [8, true],
  ])('due dates %i days apart: %s', (apart, conflict) => {
    const due = (offset: number, at: number) => obs('11778-8', { valueDateTime: date(offset) }, date(at));
    expect(pregnancyOf([due(70, -20), due(70 + apart, -10)]).dating?.conflict).toBe(conflict);
  });

  it('an early scan and a last period keep to their own limit', () => {
    // 5 days apart at 8+4 weeks is the limit (clinical-rules 2.2 rule 10): the last period stays
    const sent = [lastPeriod(date(-90), date(-100)), scanAge(date(-40), 55)];
    expect(pregnancyOf(sent).dating).toMatchObject({ method: 'last-period', conflict: false });
    expect(pregnancyOf([lastPeriod(date(-90), date(-100)), scanAge(date(-40), 54)]).dating).toMatchObject({
      method: 'ultrasound',
    });
  });
});

describe('counts', () => {
  const parity = (fields: Partial<Observation>) => obs('11977-6', fields);
  it.each<[string, Partial<Observation>, number | undefined, string | undefined]>([
    ['an integer', { valueInteger: 2 }, 2, undefined],
    ['a quantity without unit', { valueQuantity: { value: 2 } }, 2, undefined],
    ['a quantity in {#}', { valueQuantity: quantity(2, '{#}') }, 2, undefined],
    ['half a birth', { valueQuantity: { value: 1.5 } }, undefined, 'value-not-readable'],
    ['more than one', { valueQuantity: { value: 1, comparator: '>' } }, undefined, 'value-not-readable'],
    ['a text', { valueString: '2' }, undefined, 'value-type-not-usable'],
    ['a length', { valueQuantity: quantity(2, 'cm') }, undefined, 'unit-unknown'],
  ])('%s', (_, fields, expected, code) => {
    const result = built([parity(fields)]);
    expect(result.timeline.woman.parity?.count).toBe(expected);
    expect(codesOf(result)).toEqual(code === undefined ? [] : [code]);
  });

  it('of births are not taken for pregnancies', () => {
    const { woman } = built([
      obs('11977-6', { valueInteger: 1 }),
      obs('11996-6', { valueInteger: 3 }),
    ]).timeline;
    expect([woman.parity?.count, woman.gravidity?.count]).toEqual([1, 3]);
  });
});

describe('a birth long ago, and signs that she is pregnant again', () => {
  const long = birth(date(-400));
  const status = (code: string) => obs('82810-3', { valueCodeableConcept: snomed(code) });
  const isAgain = (...signs: readonly FhirResource[]) => pregnancyOf([long, ...signs]).birth === undefined;

  it.each<[string, FhirResource, boolean]>([
    ['recorded as pregnant', status('77386006'), true],
    ['recorded as not pregnant', status('60001007'), false],
    ['a number of fetuses', obs('55281-0', { valueInteger: 1 }), true],
    ['a number of births', obs('11977-6', { valueInteger: 1 }), false],
    ['a uterus of 24 cm', lab(today, 'fundal-height', 24, 'cm'), true],
    ['a uterus of 15 cm', lab(today, 'fundal-height', 15, 'cm'), false],
    [
      'a uterus of less than 24 cm',
      obs('11881-0', { valueQuantity: { ...quantity(24, 'cm'), comparator: '<' } }),
      false,
    ],
    [
      'pregnancy as an active condition',
      { ...condition('epilepsy', date(-5)), code: snomed('77386006') },
      true,
    ],
    [
      'pregnancy as a condition that is over',
      {
        ...condition('epilepsy', date(-5)),
        code: snomed('77386006'),
        clinicalStatus: { coding: [{ code: 'resolved' }] },
      },
      false,
    ],
  ])('%s: %s', (_, sign, expected) => {
    expect(isAgain(sign)).toBe(expected);
  });

  it('recorded as not pregnant is remarked, unless a newer record says that she is', () => {
    const at = (code: string, offset: number) => ({ ...status(code), effectiveDateTime: date(offset) });
    expect(pregnancyOf([at('60001007', -3)]).remarks).toContain(`Recorded as not pregnant on ${date(-3)}.`);
    expect(pregnancyOf([at('60001007', -3), at('77386006', -1)]).remarks).toEqual([]);
    expect(pregnancyOf([at('77386006', -3), at('60001007', -1)]).remarks).toHaveLength(1);
  });
});

describe('the woman', () => {
  const womanWith = (fields: object) =>
    buildTimeline(readBundle(bundleOf([], patient(fields))), { asOf: Date.parse(defaultAsOf), values });

  it.each<[string, object, boolean | undefined]>([
    ['by a flag', { deceasedBoolean: true }, true],
    ['by a time before the evaluation', { deceasedDateTime: '2026-02-01T17:00:00Z' }, true],
    ['at the time of the evaluation', { deceasedDateTime: defaultAsOf }, true],
    ['not by a later time', { deceasedDateTime: '2026-02-01T18:01:00Z' }, undefined],
    ['not by a flag that says no', { deceasedBoolean: false }, undefined],
    ['not by a time that cannot be read', { deceasedDateTime: 'lately' }, undefined],
  ])('has died %s', (_, fields, expected) => {
    expect(womanWith(fields).timeline.woman.hasDied).toBe(expected);
  });

  it.each<[string, object, boolean]>([
    ['a whole date', { birthDate: '1996-04-02' }, true],
    ['a year', { birthDate: '1996' }, false],
    ['a date to come', { birthDate: '2027-01-01' }, false],
  ])('is as old as %s of birth says', (_, fields, isKnown) => {
    const { timeline, issues } = womanWith(fields);
    expect(timeline.woman.birthDay !== undefined).toBe(isKnown);
    expect(issues.map(({ code }) => code)).toEqual(isKnown ? [] : ['birth-date-not-used']);
  });
});
