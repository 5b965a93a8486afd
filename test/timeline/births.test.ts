// Which resources tell of a birth, which date of theirs is the birth, and which of several tellings is used.
import type { FhirResource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { birth, loinc, observation, snomed } from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { date, pregnancyOf } from './dating-support.ts';

const subject = { reference: 'Patient/woman' };
const icd10 = 'http://hl7.org/fhir/sid/icd-10';
const resource = (fields: object): FhirResource => ({ subject, ...fields }) as unknown as FhirResource;
const procedure = (fields: object = { performedDateTime: date(-3) }, code = '66348005') =>
  resource({ resourceType: 'Procedure', status: 'completed', code: snomed(code), ...fields });
const condition = (fields: object = { onsetDateTime: date(-3) }, coding: object = {}) =>
  resource({
    resourceType: 'Condition',
    code: { coding: [{ system: icd10, code: 'O80.0', ...coding }] },
    ...fields,
  });
const bornAt = (...resources: readonly FhirResource[]) => pregnancyOf(resources).birth?.at.text;

describe('a birth is told by', () => {
  it.each<[string, FhirResource]>([
    ['a caesarean section', procedure(undefined, '11466000')],
    ['an instrumental delivery', procedure(undefined, '236974004')],
    ['ICD-10 O82.1', condition(undefined, { code: 'O82.1' })],
    ['ICD-10-CM o80', condition(undefined, { system: 'http://hl7.org/fhir/sid/icd-10-cm', code: 'o80' })],
    ['ICD-10-CM Z37.0', condition(undefined, { system: 'http://hl7.org/fhir/sid/icd-10-cm', code: 'Z37.0' })],
  ])('%s', (_, told) => {
    expect(bornAt(told)).toBe(date(-3));
  });

  it.each<[string, FhirResource]>([
    ['another operation', procedure(undefined, '80146002')],
    ['another diagnosis of ICD-10', condition(undefined, { code: 'O79' })],
    ['the letters O80 of another system', condition(undefined, { system: 'http://example.org/ward' })],
    ['the letters O80 of no system', condition(undefined, { system: undefined })],
    ['a system without a code', condition(undefined, { code: undefined })],
    ['another observation', observation(loinc('8302-2'), date(-3), { valueDateTime: date(-3) })],
  ])('%s: no', (_, told) => {
    expect(bornAt(told)).toBeUndefined();
  });
});

describe('the date of a birth is', () => {
  it.each<[string, FhirResource, string]>([
    ['when a procedure was performed', procedure({ performedDateTime: date(-4) }), date(-4)],
    ['the end of a procedure', procedure({ performedPeriod: { start: date(-5), end: date(-4) } }), date(-4)],
    ['the start of a procedure without end', procedure({ performedPeriod: { start: date(-5) } }), date(-5)],
    [
      'the onset of a diagnosis, before the day of its record',
      condition({ onsetDateTime: date(-5), recordedDate: date(-2) }),
      date(-5),
    ],
    ['the start of the onset', condition({ onsetPeriod: { start: date(-6), end: date(-2) } }), date(-6)],
    ['the day of its record, where nothing else is known', condition({ recordedDate: date(-2) }), date(-2)],
    [
      'a text that is a date, with blanks around it',
      observation(loinc('93857-1'), date(-1), { valueString: ` ${date(-3)} ` }),
      date(-3),
    ],
  ])('%s', (_, told, expected) => {
    expect(bornAt(told)).toBe(expected);
  });

  it.each<[string, FhirResource, string]>([
    ['no date', procedure({}), 'time-missing'],
    [
      'a date that is not one of the calendar',
      procedure({ performedDateTime: '2026-02-30' }),
      'value-not-readable',
    ],
    ['a date after the evaluation', procedure({ performedDateTime: date(3) }), 'time-in-future'],
    [
      'a yes for a value',
      observation(loinc('93857-1'), date(-1), { valueBoolean: true }),
      'value-type-not-usable',
    ],
    [
      'a date under a coded value',
      observation(loinc('93857-1'), date(-1), { valueCodeableConcept: { text: date(-3) } }),
      'value-type-not-usable',
    ],
    [
      'a blank text for a value',
      observation(loinc('93857-1'), date(-1), { valueString: ' ' }),
      'value-type-not-usable',
    ],
    [
      'words for a value',
      observation(loinc('93857-1'), date(-1), { valueString: 'yesterday' }),
      'value-not-readable',
    ],
  ])('not known from %s: set aside', (_, told, code) => {
    expect(bornAt(told)).toBeUndefined();
    expect(codesOf(built([told]))).toEqual([code]);
  });

  it.each(['refuted', 'entered-in-error'])(
    'not taken from a diagnosis that is %s, however that is sent',
    (code) => {
      for (const coding of [[{ code }], { code }]) {
        const refuted = condition({ onsetDateTime: date(-3), verificationStatus: { coding } });
        expect(bornAt(refuted)).toBeUndefined();
      }
      const confirmed = { coding: [{ code: 'confirmed' }] };
      expect(bornAt(condition({ onsetDateTime: date(-3), verificationStatus: confirmed }))).toBe(date(-3));
    },
  );
});

describe('of several tellings of one birth', () => {
  const observed = (text: string) => ({ ...birth(text), id: 'o' });
  const performed = (text: string) => ({ ...procedure({ performedDateTime: text }), id: 'p' });
  const diagnosed = (text: string) => ({ ...condition({ onsetDateTime: text }), id: 'c' });

  it.each<[string, readonly FhirResource[], string]>([
    [
      'the finer date is used, whoever tells it',
      [observed(date(-3)), performed(`${date(-3)}T04:00:00Z`)],
      `${date(-3)}T04:00:00Z`,
    ],
    ['a day goes before a month', [observed('2026-01'), diagnosed(date(-20))], date(-20)],
    ['a month goes before a year', [observed('2026'), diagnosed('2026-01')], '2026-01'],
    ['an observation goes before a procedure', [performed(date(-3)), observed(date(-4))], date(-4)],
    ['a procedure goes before a diagnosis', [diagnosed(date(-3)), performed(date(-4))], date(-4)],
    [
      'of twins the later is used',
      [
        { ...birth(`${date(-3)}T04:00:00Z`), id: 'first' },
        { ...birth(`${date(-3)}T04:20:00Z`), id: 'second' },
      ],
      `${date(-3)}T04:20:00Z`,
    ],
  ])('%s', (_, told, expected) => {
    for (const sent of [told, [...told].reverse()]) {
      const { timeline, notNeeded } = built(sent);
      expect(timeline.pregnancy.birth?.at.text).toBe(expected);
      expect(timeline.woman.previousBirths).toEqual([]);
      expect(notNeeded).toHaveLength(1);
    }
  });

  it('of one moment and kind the same is used in whatever order they come', () => {
    const one = { ...performed(date(-3)), id: 'p1' };
    const other = { ...procedure({ performedDateTime: date(-3) }, '11466000'), id: 'p2' };
    const usedOf = (sent: readonly FhirResource[]) => built(sent).timeline.pregnancy.birth?.source.reference;
    expect(usedOf([one, other])).toBe(usedOf([other, one]));
  });

  it('a birth of an earlier pregnancy stays one of its own', () => {
    const { timeline } = built([birth('2023-05-01'), performed(date(-3)), observed(`${date(-3)}T05:00:00Z`)]);
    expect(timeline.pregnancy.birth?.at.text).toBe(`${date(-3)}T05:00:00Z`);
    expect(timeline.woman.previousBirths).toMatchObject([{ at: { text: '2023-05-01' } }]);
  });
});
