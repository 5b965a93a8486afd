// Records whose state, certainty, name or relative stands in one element of several.
import type { FhirResource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { conditionStateOf } from '../../src/timeline/condition-state.ts';
import { readAllergy, readConditions, readFamilyHistory } from '../../src/timeline/conditions.ts';
import { observation, snomed, woman } from '../support/resources.ts';
import { built } from './build.ts';
import { contextWith, received } from './received.ts';

const status = (...codes: readonly (string | undefined)[]) => ({
  coding: codes.map((code) => (code === undefined ? {} : { code })),
});

describe('the state of a condition (F-M09)', () => {
  // evaluated at noon of 10 March 2025
  const stateOf = (fields: object) => conditionStateOf(fields, contextWith()).state;
  it.each([
    ['nothing said', {}, 'active'],
    ['recurrence', { clinicalStatus: status('recurrence') }, 'active'],
    ['relapse', { clinicalStatus: status('relapse') }, 'active'],
    ['remission', { clinicalStatus: status('remission') }, 'inactive'],
    ['a bare code', { clinicalStatus: 'resolved' }, 'inactive'],
    ['a coding without a code before it', { clinicalStatus: status(undefined, 'resolved') }, 'inactive'],
    ['an end now', { abatementDateTime: '2025-03-10T12:00:00Z' }, 'inactive'],
    ['an end in a minute', { abatementDateTime: '2025-03-10T12:01:00Z' }, 'active'],
    ['an end that begins today', { abatementDateTime: '2025-03-10' }, 'inactive'],
    ['the end of a period', { abatementPeriod: { end: '2025-03-01' } }, 'inactive'],
    ['a period without an end', { abatementPeriod: { start: '2025-03-01' } }, 'active'],
    ['an end in words', { abatementString: 'after the birth' }, 'inactive'],
    ['an end at an age', { abatementAge: { value: 29 } }, 'inactive'],
    ['an end in a range of ages', { abatementRange: { low: { value: 29 } } }, 'inactive'],
    ['a later end beside words', { abatementDateTime: '2026', abatementString: 'soon' }, 'active'],
  ])('%s: %j is %s', (_, fields, state) => {
    expect(stateOf(fields)).toBe(state);
  });

  it.each([
    ['confirmed', 'confirmed'],
    ['provisional', 'provisional'],
    ['differential', 'provisional'],
    ['unconfirmed', 'unverified'],
    ['refuted', 'refuted'],
    ['entered-in-error', 'refuted'],
    [undefined, 'unverified'],
  ])('verified as %s it is %s', (code, certainty) => {
    const verificationStatus = status(code);
    expect(conditionStateOf({ verificationStatus }, contextWith()).certainty).toBe(certainty);
  });

  it.each([
    [{ onsetDateTime: '2025-01-01', onsetPeriod: { start: '2025-02-01' } }, '2025-01-01', undefined],
    [{ onsetPeriod: { start: '2025-02-01' } }, '2025-02-01', undefined],
    [{ recordedDate: '2025-03-01', assertedDate: '2025-03-02' }, undefined, '2025-03-01'],
    [{ assertedDate: '2025-03-02' }, undefined, '2025-03-02'],
    [{ onsetDateTime: 'childhood', recordedDate: 'then' }, undefined, undefined],
  ])('%j began %s, recorded %s', (fields, onset, recorded) => {
    const found = conditionStateOf(fields, contextWith());
    expect([found.onset?.text, found.recorded?.text]).toEqual([onset, recorded]);
  });
});

describe('what a record is called', () => {
  const asSentOf = (code: object) => {
    const read = readConditions(received({ resourceType: 'Condition', subject: {}, code }), contextWith());
    return 'kind' in read ? read.kind : read[0]?.asSent;
  };

  it('is its text, else a display, else its code', () => {
    expect(asSentOf({ ...snomed('84757009', 'Epilepsy'), text: 'fits' })).toBe('fits');
    expect(asSentOf(snomed('84757009', 'Epilepsy'))).toBe('Epilepsy');
    expect(asSentOf(snomed('84757009'))).toBe('http://snomed.info/sct|84757009');
  });

  it('of a finding or a procedure likewise', () => {
    const growth = (code: object) =>
      built([observation(code, '2026-02-01', { valueBoolean: true })]).timeline.conditions[0]?.asSent;
    expect(growth(snomed('22033007', 'Small baby'))).toBe('Small baby');
    expect(growth(snomed('22033007'))).toBe('http://snomed.info/sct|22033007');
    const conception = (code: object): FhirResource => ({
      resourceType: 'Procedure',
      status: 'completed',
      subject: { reference: woman },
      code,
    });
    const wordsOf = (code: object) => built([conception(code)]).timeline.conditions[0];
    expect(wordsOf(snomed('63487001', 'IVF'))?.asSent).toBe('IVF');
    expect(wordsOf(snomed('63487001'))?.asSent).toBe('http://snomed.info/sct|63487001');
    expect(wordsOf(snomed('63487001'))).not.toHaveProperty('onset');
  });

  it('of an allergy is its text, else the medicines it is to', () => {
    const read = (fields: object) =>
      readAllergy(received({ resourceType: 'AllergyIntolerance', patient: {}, ...fields }), contextWith());
    const reaction = [{ substance: { text: 'labetalol' } }, { substance: { text: 'aspirin' } }];
    expect(read({ reaction })).toMatchObject([
      {
        condition: 'aspirin-allergy',
        allergicTo: ['labetalol', 'aspirin'],
        asSent: 'allergy to labetalol, aspirin',
      },
    ]);
    expect(read({ code: { text: 'Labetalol' } })).toMatchObject([{ asSent: 'Labetalol' }]);
    expect(read({ code: { text: 'Pollen' } })).toMatchObject({ kind: 'not-needed' });
  });

  it.each([
    [{ text: ' Sister ' }, true],
    [{ text: 'sister-in-law' }, false],
    [{}, false],
    [undefined, false],
  ])('a relative named %j is asked about: %s', (relationship, isAsked) => {
    const history = {
      resourceType: 'FamilyMemberHistory',
      status: 'completed',
      patient: {},
      condition: [
        { code: { coding: [...(snomed('84757009').coding ?? []), ...(snomed('398254007').coding ?? [])] } },
      ],
      ...(relationship === undefined ? {} : { relationship }),
    } as const;
    const read = readFamilyHistory(received(history as never), contextWith());
    expect('kind' in read).toBe(!isAsked);
  });
});
