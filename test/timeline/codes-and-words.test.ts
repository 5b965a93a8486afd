// Codes in any spelling of their system, words beside codes, and values of which one form is null.
import { describe, expect, it } from 'vitest';
import { classifiedRows, indexClassified } from '../../src/timeline/classified-codes.ts';
import { indexCodes, rowsFor } from '../../src/timeline/code-index.ts';
import {
  canonicalSystem,
  hasAbsentReason,
  readValue,
  reportMissingSystem,
} from '../../src/timeline/coded-value.ts';
import { conditionsOf } from '../../src/timeline/conditions.ts';
import { isDating } from '../../src/timeline/dating-facts.ts';
import { notesOf } from '../../src/timeline/free-text.ts';
import { observationKindOf } from '../../src/timeline/observation-kind.ts';
import { findingsIn } from '../../src/timeline/observed-findings.ts';
import { readPresence } from '../../src/timeline/presence.ts';
import { symptomsOf } from '../../src/timeline/symptom-words.ts';
import { weeksInCode } from '../../src/timeline/weeks-code.ts';
import { loinc, observation, quantity, snomed } from '../support/resources.ts';
import { contextWith, received } from './received.ts';

const loincSystem = 'http://loinc.org';
const icd10cm = 'http://hl7.org/fhir/sid/icd-10-cm';
const coded = (system: string | undefined, code: string) => ({
  coding: [system === undefined ? { code } : { system, code }],
});

describe('a table of codes (F-V10)', () => {
  const index = indexCodes([
    { system: loincSystem, code: 'a', says: 1 },
    { system: loincSystem, code: 'b', says: 2 },
    { system: 'urn:other', code: 'a', says: 3 },
  ]);
  const saysOf = (...codings: { system?: string; code?: string }[]) =>
    rowsFor(codings, index).map(({ says }) => says);

  it.each([
    ['http://loinc.org', [1]],
    ['http://loinc.org/', [1]],
    ['HTTP://LOINC.ORG', [1]],
    ['HTTP://LOINC.ORG/', [1]],
    ['https://loinc.org', [1]],
    ['urn:oid:2.16.840.1.113883.6.1', [1]],
    ['urn:other', [3]],
    ['http:/loinc.org', []],
    ['http://loinc.org//', []],
    ['urn:another', []],
    [undefined, [1, 3]],
  ])('finds a code under the system %s: %j', (system, says) => {
    expect(saysOf(system === undefined ? { code: 'a' } : { system, code: 'a' })).toEqual(says);
  });

  it('gives the rows in the order of the codings; one without a code names none', () => {
    expect(saysOf({ code: 'b' }, { system: loincSystem }, { code: 'x' }, { code: 'a' })).toEqual([2, 1, 3]);
    expect(saysOf()).toEqual([]);
  });
});

describe('a table of classifications', () => {
  const index = indexClassified([
    { system: icd10cm, code: 'O14.1', says: 'severe' },
    { system: icd10cm, code: 'O14', says: 'any' },
    { system: 'http://snomed.info/sct', code: '398254007', says: 'snomed' },
    { system: 'urn:list', code: 'ab-1', says: 'list' },
  ]);
  const saysOf = (system: string | undefined, code: string) =>
    classifiedRows(coded(system, code), index).map(({ says }) => says);

  it.each([
    [icd10cm, 'O14.10', ['severe']],
    [icd10cm, 'o14.1', ['severe']],
    [icd10cm, 'O14.1†', ['severe']],
    [icd10cm, 'O14.1/X', ['severe']],
    [icd10cm, 'O14.1&X', ['severe']],
    [icd10cm, 'O14.9', ['any']],
    [icd10cm, 'O14', ['any']],
    [icd10cm, 'O1', []],
    [icd10cm, '', []],
    ['http://snomed.info/sct', '398254007', ['snomed']],
    ['http://snomed.info/sct', ' 398254007 ', ['snomed']],
    ['http://snomed.info/sct', '3982540071', []],
    ['http://snomed.info/sct', '398-254007', []],
    ['urn:list', 'ab-1', ['list']],
    ['urn:list', 'AB-1', []],
    ['urn:list', 'ab1', []],
    ['urn:none', 'O14', []],
    [undefined, 'O14.15', ['severe']],
    [undefined, 'ab-1', ['list']],
    [undefined, 'zz', []],
  ])('under %s finds %j: %j', (system, code, says) => {
    expect(saysOf(system, code)).toEqual(says);
  });

  it('a longer SNOMED CT code is another concept', () => {
    expect(symptomsOf(coded('http://snomed.info/sct', '250640021'))).toEqual([]);
    expect(conditionsOf(coded('http://snomed.info/sct', '3982540070'))).toEqual([]);
  });
});

describe('the spelling of a system', () => {
  it.each([
    [' http://loinc.org ', loincSystem],
    ['https://LOINC.org', loincSystem],
    ['https://loinc.org/', loincSystem],
    ['urn:x/', 'urn:x/'],
    [' ', undefined],
    [3, undefined],
  ])('%j is %j', (sent, canonical) => {
    expect(canonicalSystem(sent)).toBe(canonical);
  });

  it.each([
    ['a code without it', { coding: [{ code: 'a' }] }, ['code-without-system']],
    ['the second of two', { coding: [{ system: 's', code: 'b' }, { code: 'a' }] }, ['code-without-system']],
    ['a display alone', { coding: [{ display: 'a' }] }, []],
    ['a code with it', { coding: [{ system: 's', code: 'a' }] }, []],
    ['a text', { text: 'a' }, []],
  ])('is missed for %s: %j %j', (_, concept, raised) => {
    const context = contextWith();
    reportMissingSystem(received(observation(loinc('1'), undefined)), concept, 'code', context);
    expect(context.raised).toEqual(raised);
  });
});

describe('one value', () => {
  it('is not disturbed by another that is null', () => {
    expect(readValue({ valueQuantity: null, valueString: 'x' })).toMatchObject({ name: 'valueString' });
    expect(readValue({ valueString: null })).toMatchObject({ code: 'value-missing' });
  });

  it.each([
    ['component[1].', 'component[1].value'],
    ['', 'value'],
  ])('that is missing in %j is missed at %s', (element, place) => {
    expect(readValue({}, element)).toMatchObject({ code: 'value-missing', element: place });
  });

  it('absent with a reason is told by that extension and no other', () => {
    const url = 'http://hl7.org/fhir/StructureDefinition/data-absent-reason';
    expect(hasAbsentReason({ extension: [{ url: 'urn:x' }, { url }] })).toBe(true);
    expect(hasAbsentReason({ extension: [{ url: 'urn:x' }] })).toBe(false);
    expect(hasAbsentReason({ _value: { extension: { url } } }, 'value')).toBe(true);
    expect(hasAbsentReason({ extension: [{ url }] }, 'value')).toBe(false);
    expect(readValue({ _valueString: { extension: [{ url: 'urn:x' }] } })).toMatchObject({
      code: 'value-missing',
    });
  });
});

describe('present or absent, with words beside the code', () => {
  const yes = snomed('373066001');
  it.each([
    ['the same word', { ...yes, text: 'Yes' }, 'present', 'Yes'],
    ['other words', { ...yes, text: 'since morning' }, 'present', 'since morning'],
    ['no words', yes, 'present', '373066001'],
    ['words alone', { text: 'No.' }, 'absent', 'No.'],
  ])('%s', (_, valueCodeableConcept, presence, asSent) => {
    expect(readPresence({ valueCodeableConcept })).toMatchObject({ presence, asSent });
  });

  it.each([
    [{ ...yes, text: 'unknown' }, 'value-ambiguous'],
    [{ text: 'unknown' }, 'value-absent-with-reason'],
    [{ text: 'since morning' }, 'value-not-readable'],
    [{ text: 'y.es' }, 'value-not-readable'],
    [{ coding: [...(yes.coding ?? []), ...(snomed('373067005').coding ?? [])] }, 'value-ambiguous'],
  ])('%j: %s', (valueCodeableConcept, code) => {
    expect(readPresence({ valueCodeableConcept }, 'component[0].')).toMatchObject({
      code,
      element: 'component[0].valueCodeableConcept',
    });
  });

  it('without a value is read from the first interpretation that tells', () => {
    const told = (...interpretation: object[]) => readPresence({ interpretation });
    const [pos, neg, high] = ['POS', 'NEG', 'H'].map((code) => ({ coding: [{ code }] }));
    expect(told(high ?? {}, neg ?? {}, pos ?? {})).toMatchObject({ presence: 'absent', asSent: 'NEG' });
    expect(told({ ...pos, text: 'there' })).toMatchObject({ presence: 'present', asSent: 'there' });
    expect(told({ coding: [{ code: 'POS' }, { code: 'NEG' }] })).toMatchObject({ code: 'value-missing' });
    expect(told(snomed('261665006'))).toMatchObject({ code: 'value-missing' });
    const refused = { dataAbsentReason: { text: 'refused' }, interpretation: [pos] };
    expect(readPresence(refused)).toMatchObject({ code: 'value-absent-with-reason' });
  });
});

describe('notes', () => {
  it('are the texts of all of them, and of nothing else', () => {
    expect(notesOf({ note: [{ text: 'a' }, { authorString: 'x' }, { text: ' ' }, { text: 'b' }] })).toBe(
      'a; b',
    );
    expect(notesOf({ note: { text: 'a' } })).toBe('a');
    expect(notesOf({})).toBe('');
    expect(notesOf(undefined)).toBe('');
  });
});

describe('which reader an observation goes to', () => {
  const part = (code: string) => [{ code: loinc(code) }];
  it.each([
    ['a diagnosis that is not observed', { code: snomed('398254007') }, undefined],
    ['a finding that is', { code: snomed('22033007') }, 'finding'],
    ['components of no use', { code: { text: 'visit' }, component: part('8302-2') }, undefined],
    ['components that date', { code: { text: 'visit' }, component: part('49051-6') }, 'dating'],
    ['components of a pressure', { code: { text: 'visit' }, component: part('8480-6') }, 'pressure'],
    ['nothing', {}, undefined],
  ])('%s: %j %s', (_, fields, kind) => {
    expect(observationKindOf(fields)).toBe(kind);
  });

  it('only findings that may be observed are findings', () => {
    expect(findingsIn(snomed('398254007'))).toEqual([]);
    expect(findingsIn(snomed('22033007'))).toEqual(['fetal-growth-restriction']);
  });
});

describe('what dates', () => {
  const height = { code: loinc('8302-2'), valueQuantity: quantity(160, 'cm') };
  it.each([
    ['a code', { code: loinc('18185-9') }, true],
    ['a component', { code: { text: 'visit' }, component: [height, { code: loinc('49051-6') }] }, true],
    ['neither', { code: { text: 'visit' }, component: [height] }, false],
    ['another code', { code: loinc('8302-2') }, false],
  ])('%s: %j %s', (_, fields, expected) => {
    expect(isDating(fields)).toBe(expected);
  });
});

describe('weeks in a code', () => {
  it.each([
    [icd10cm, 'Z3A.08', 8],
    [icd10cm, 'Z3A.07', undefined],
    [icd10cm, 'Z3A.42', 42],
    [icd10cm, 'Z3A.43', undefined],
    [icd10cm, 'z3a.20', 20],
    [undefined, 'Z3A.20', 20],
    ['http://terminology.hl7.org/CodeSystem/icd10CM', 'Z3A.20', 20],
    ['http://hl7.org/fhir/sid/icd-10', 'Z3A.20', undefined],
    [icd10cm, 'Z3A.200', undefined],
    [icd10cm, 'XZ3A.20', undefined],
  ])('%s %s: %s', (system, code, weeks) => {
    expect(weeksInCode(coded(system, code))?.weeks).toBe(weeks);
  });

  it('are those of the first coding that names some', () => {
    const coding = [{ code: 'x' }, { system: icd10cm }, { system: icd10cm, code: 'Z3A.30' }];
    expect(weeksInCode({ coding })).toEqual({ weeks: 30, code: 'Z3A.30' });
  });
});
