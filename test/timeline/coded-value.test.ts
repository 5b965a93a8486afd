import { describe, expect, it } from 'vitest';
import { canonicalSystem, readValue, systemCodesOf } from '../../src/timeline/coded-value.ts';
import { readPresence } from '../../src/timeline/presence.ts';

const snomed = 'http://snomed.info/sct';
const loinc = 'http://loinc.org';
const coded = (system: string | undefined, code: string, text?: string): Record<string, unknown> => ({
  valueCodeableConcept: {
    coding: [system === undefined ? { code } : { system, code }],
    ...(text === undefined ? {} : { text }),
  },
});

const presenceOf = (holder: unknown): string => {
  const read = readPresence(holder);
  return read.kind === 'usable' ? read.presence : read.code;
};

describe('one value, or the reason why not', () => {
  it('two values are refused (F-V01)', () => {
    expect(readValue({ valueString: '2+', valueInteger: 2 })).toMatchObject({
      code: 'value-ambiguous',
      element: 'valueInteger',
    });
  });

  it('a value beside a reason for its absence is refused (obs-6)', () => {
    expect(
      readValue({ valueString: '2+', dataAbsentReason: { coding: [{ code: 'unknown' }] } }),
    ).toMatchObject({
      code: 'value-ambiguous',
    });
  });

  it('a stated absence is not the same as nothing sent (F-V02, F-V03)', () => {
    const extension = [
      { url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason', valueCode: 'asked-unknown' },
    ];
    expect(readValue({ dataAbsentReason: { text: 'refused' } })).toMatchObject({
      code: 'value-absent-with-reason',
    });
    expect(readValue({ _valueString: { extension } })).toMatchObject({
      code: 'value-absent-with-reason',
      element: '_valueString'.slice(1),
    });
    expect(readValue({})).toMatchObject({ code: 'value-missing' });
  });

  it('false and 0 are values', () => {
    expect(readValue({ valueBoolean: false })).toMatchObject({ kind: 'usable', value: false });
    expect(readValue({ valueInteger: 0 })).toMatchObject({ kind: 'usable', value: 0 });
  });
});

// Codes: terminology.md sections 2 and 3; the rest of the list in codes-from-memory.
describe('present or absent', () => {
  it.each<[string, Record<string, unknown>]>([
    ['present', { valueBoolean: true }],
    ['absent', { valueBoolean: false }],
    ['present', coded(snomed, '52101004')],
    ['absent', coded(snomed, '2667000')],
    ['present', coded(snomed, '373066001')],
    ['absent', coded(snomed, '373067005')],
    ['present', coded(snomed, '10828004')],
    ['absent', coded(snomed, '260385009')],
    ['present', coded(loinc, 'LA33-6')],
    ['absent', coded(loinc, 'LA32-8')],
    ['present', coded(undefined, 'LA33-6')],
    ['present', { valueString: 'Yes' }],
    ['absent', { valueString: 'no' }],
    ['absent', { valueString: ' Denied. ' }],
    ['present', { valueCodeableConcept: { text: 'present' } }],
    ['present', { interpretation: [{ coding: [{ code: 'POS' }] }] }],
    ['absent', { interpretation: [{ coding: [{ code: 'NEG' }] }] }],
    ['value-absent-with-reason', coded(snomed, '261665006')],
    ['value-absent-with-reason', { valueString: 'not asked' }],
    ['value-not-readable', { valueString: 'perhaps' }],
    ['value-not-readable', { valueBoolean: 'true' }],
    ['value-not-readable', coded('http://example.org', '52101004')],
    ['value-type-not-usable', { valueInteger: 1 }],
    ['value-missing', {}],
    ['value-ambiguous', coded(snomed, '52101004', 'absent')],
    [
      'value-ambiguous',
      {
        valueCodeableConcept: {
          coding: [
            { system: snomed, code: '52101004' },
            { system: snomed, code: '2667000' },
          ],
        },
      },
    ],
  ])('%s: %o', (expected, holder) => {
    expect(presenceOf(holder)).toBe(expected);
  });

  it('synonyms of one meaning do not contradict each other (F-V10)', () => {
    const coding = [
      { system: snomed, code: '373066001' },
      { system: loinc, code: 'LA33-6' },
      { system: 'urn:local', code: '1' },
    ];
    expect(presenceOf({ valueCodeableConcept: { coding } })).toBe('present');
  });
});

describe('code systems', () => {
  it.each([
    ['http://snomed.info/sct/', snomed],
    ['urn:oid:2.16.840.1.113883.6.96', snomed],
    ['https://loinc.org', loinc],
    ['http://loinc.org/', loinc],
    ['https://www.loinc.org/', loinc],
    ['http://id.who.int/icd11/mms', 'http://id.who.int/icd/release/11/mms'],
    ['http://terminology.hl7.org/CodeSystem/icd10CM', 'http://hl7.org/fhir/sid/icd-10-cm'],
    ['http://example.org', 'http://example.org'],
  ])('%s is %s', (sent, canonical) => {
    expect(canonicalSystem(sent)).toBe(canonical);
  });

  it('a coding without a code names nothing', () => {
    const concept = {
      coding: [{ system: snomed }, { system: 'http://snomed.info/sct/', code: '398254007' }, { code: 'x' }],
    };
    expect(systemCodesOf(concept)).toEqual(['http://snomed.info/sct|398254007', '|x']);
  });
});
