// Limits, haemolysis, samples and births, told by one element of several that could.
import type { FhirResource, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { isBirth } from '../../src/timeline/birth.ts';
import { readLaboratory } from '../../src/timeline/laboratory.ts';
import { urineSampleOf } from '../../src/timeline/urine-sample.ts';
import {
  birth,
  lastPeriod,
  loinc,
  observation,
  quantity,
  snomed,
  strip,
  woman,
} from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { at, contextWith, received } from './received.ts';

const status = (code: string) => ({ coding: [{ code }] });

describe('the upper limit of a result', () => {
  const limitOf = (...referenceRange: object[]) => {
    const sent = { valueQuantity: quantity(40, 'U/L'), referenceRange } as Partial<Observation>;
    const read = readLaboratory(received(observation(loinc('1742-6'), undefined, sent)), contextWith(), at);
    return 'kind' in read ? read.code : read.upperReference;
  };
  it.each<[string, object[], number | undefined]>([
    ['with a unit', [{ high: quantity(35, 'U/L') }], 35],
    ['in another unit', [{ high: quantity(1, 'ukat/L') }], 60],
    ['in an unknown unit', [{ high: quantity(35, 'furlong') }], undefined],
    ['without a unit is in that of the value', [{ high: { value: 35 } }], 35],
    ['without a number', [{ high: {} }], undefined],
    ['with a text for a number', [{ high: { value: '35' } }], undefined],
    ['of the normal range', [{ type: status('normal'), high: { value: 35 } }], 35],
    ['of a type without a code', [{ type: { coding: [{ display: 'adult' }] }, high: { value: 35 } }], 35],
    ['of another range', [{ type: status('therapeutic'), high: { value: 35 } }], undefined],
    ['told twice alike', [{ high: { value: 35 } }, { high: quantity(35, 'U/L') }], 35],
    ['told twice differently', [{ high: { value: 35 } }, { high: { value: 45 } }], undefined],
    ['with a lower one', [{ low: { value: 5 } }], undefined],
  ])('%s', (_, ranges, expected) => {
    expect(limitOf(...ranges)).toBe(expected);
  });
});

describe('haemolysis', () => {
  const isHaemolysed = (fields: Partial<Observation>, specimen?: object) => {
    const context = contextWith(
      specimen === undefined ? {} : { 'Specimen/1': { resourceType: 'Specimen', ...specimen } },
    );
    const sent = { valueQuantity: quantity(40, 'U/L'), ...fields };
    const read = readLaboratory(received(observation(loinc('1742-6'), undefined, sent)), context, at);
    return 'kind' in read ? read.code : read.haemolysed;
  };
  const drawn = { specimen: { reference: 'Specimen/1' } };
  const high = { coding: [{ code: 'H' }, { display: 'high' }] };

  it.each<[string, Partial<Observation>, object | undefined, boolean]>([
    ['in the second interpretation', { interpretation: [high, { text: 'haemolysed' }] }, undefined, true],
    [
      'by code, beside another',
      { interpretation: [{ coding: [{ code: 'x' }, { code: 'HEM' }] }] },
      undefined,
      true,
    ],
    ['denied in a note', { note: [{ text: 'not haemolysed' }] }, undefined, false],
    ['in the condition of the specimen', drawn, { condition: [high, { text: 'hemolyzed' }] }, true],
    ['in a note on the specimen', drawn, { note: [{ text: 'haemolysed' }] }, true],
    ['nowhere', { interpretation: [high], ...drawn }, { condition: [high] }, false],
    ['on no specimen that was sent', drawn, undefined, false],
  ])('said %s: %j %j %s', (_, fields, specimen, expected) => {
    expect(isHaemolysed(fields, specimen)).toBe(expected);
  });
});

describe('the sample of a urine result', () => {
  const sampleOf = (fields: Partial<Observation>) =>
    urineSampleOf(received({ ...strip('2025-03-10', '1+'), ...fields }), contextWith());
  it.each<[string, Partial<Observation>, object | undefined]>([
    [
      'a display of the code',
      { code: loinc('20454-5', 'Protein in first morning urine') },
      { isFirstMorning: true },
    ],
    [
      'the text of the code',
      { code: { ...loinc('20454-5'), text: 'early morning' } },
      { isFirstMorning: true },
    ],
    ['the method', { method: { text: 'contaminated cup' } }, { isContaminated: true }],
    ['a note', { note: [{ text: 'chlorhexidine used' }] }, { hasAntiseptic: true }],
    [
      'the words of the reference',
      { specimen: { display: 'first void of the day' } },
      { isFirstMorning: true },
    ],
    ['a denial', { note: [{ text: 'not contaminated' }] }, undefined],
    [
      'two texts that are nothing together',
      { note: [{ text: 'early' }], method: { text: 'morning' } },
      undefined,
    ],
    ['nothing', {}, undefined],
  ])('is read from %s', (_, fields, expected) => {
    const sample = sampleOf(fields);
    expect(sample).toEqual(expected === undefined ? undefined : { ...expected, readBy: 'eye' });
  });

  it('read by an automated strip code was read by a machine', () => {
    expect(sampleOf({ code: loinc('57735-3'), note: [{ text: 'early morning' }] })?.readBy).toBe('analyser');
  });
});

describe('a birth', () => {
  const delivery = (fields: object): FhirResource => ({
    resourceType: 'Procedure',
    status: 'completed',
    code: snomed('66348005'),
    subject: { reference: woman },
    ...fields,
  });
  it.each<[string, FhirResource, string]>([
    ['without a date', delivery({}), 'time-missing'],
    ['on no day of the calendar', delivery({ performedDateTime: '2026-02-31' }), 'value-not-readable'],
    ['in the future', delivery({ performedDateTime: '2026-02-20' }), 'time-in-future'],
    ['as yes', observation(loinc('93857-1'), '2026-02-01', { valueBoolean: true }), 'value-type-not-usable'],
    [
      'as a blank text',
      observation(loinc('93857-1'), '2026-02-01', { valueString: ' ' }),
      'value-type-not-usable',
    ],
    [
      'as a coded value',
      observation(loinc('93857-1'), '2026-02-01', { valueCodeableConcept: { text: '2026-01-20' } }),
      'value-type-not-usable',
    ],
  ])('%s is set aside', (_, sent, code) => {
    expect(codesOf(built([sent]))).toEqual([code]);
  });

  it.each([
    ['an observation', { resourceType: 'Observation', code: loinc('93857-1') }, true],
    ['another observation', { resourceType: 'Observation', code: loinc('8480-6') }, false],
    ['a procedure', { resourceType: 'Procedure', code: snomed('66348005') }, true],
    [
      'a procedure under the code of an observation',
      { resourceType: 'Procedure', code: loinc('93857-1') },
      false,
    ],
    ['another resource', { resourceType: 'ServiceRequest', code: snomed('66348005') }, false],
  ])('is told by %s: %j %s', (_, fields, expected) => {
    expect(isBirth(fields)).toBe(expected);
  });

  it('of a condition is known by one coding of several, in ICD alone', () => {
    const born = (...coding: object[]): FhirResource => ({
      resourceType: 'Condition',
      subject: { reference: woman },
      onsetDateTime: '2026-01-20',
      code: { coding },
    });
    const icd = 'http://hl7.org/fhir/sid/icd-10';
    const isBorn = (...coding: object[]) => built([born(...coding)]).timeline.pregnancy.birth !== undefined;
    expect(isBorn({ system: 'urn:local', code: 'x' }, { system: icd, code: 'o80.1' })).toBe(true);
    expect(isBorn({ system: icd, code: 'Z37.0' })).toBe(true);
    expect(isBorn({ code: 'O80.1' })).toBe(false);
    expect(isBorn({ system: 'urn:local', code: 'O80.1' })).toBe(false);
    expect(isBorn({ system: icd }, { system: icd, code: 'XO80' })).toBe(false);
  });

  it.each(['2026-01-19', '2026-01-21'])(
    'told by an observation on %s goes before a procedure of 20 January, in either order',
    (text) => {
      const told = [delivery({ performedDateTime: '2026-01-20' }), birth(text)];
      for (const sent of [told, [...told].reverse()]) {
        const { pregnancy } = built([lastPeriod('2025-06-01', '2025-05-01'), ...sent]).timeline;
        expect(pregnancy.birth?.at.text).toBe(text);
      }
    },
  );
});
