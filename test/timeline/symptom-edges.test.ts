// What a symptom is called, how severe it was, and when it was over, by the one element that says so.
import type { CodeableConcept, Observation, ObservationComponent } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { isSymptomObservation, readSymptoms } from '../../src/timeline/symptoms.ts';
import { severityWritten, symptomsNamed, symptomsOf } from '../../src/timeline/symptom-words.ts';
import { loinc, observation, snomed } from '../support/resources.ts';
import { at, contextWith, received } from './received.ts';

const headache = snomed('25064002');
const severe = snomed('24484000');
const mild = snomed('255604002');
const complaint = loinc('75325-1');

const read = (fields: Partial<Observation>, code: CodeableConcept = headache) =>
  readSymptoms(received(observation(code, undefined, fields)), contextWith(), at);
const firstOf = (fields: Partial<Observation>, code?: CodeableConcept) => {
  const result = read(fields, code);
  return 'kind' in result ? result : result[0];
};

describe('the words of a symptom', () => {
  it.each([
    ['severe   headache', ['headache']],
    ['Persistent headache.', ['headache']],
    ['  Headache  ', ['headache']],
    ['moderate chest pain', ['chest-pain']],
    ['mild nausea and vomiting', ['nausea', 'vomiting']],
    ['severely headache', []],
    ['a severe headache', []],
    ['chest severe pain', []],
    ['head.ache', []],
    ['headache. since morning', []],
    ['', []],
  ])('%j name %j', (text, symptoms) => {
    expect(symptomsNamed(text)).toEqual(symptoms);
  });

  it('of a concept count each symptom once, and only where no code is recognised', () => {
    const twice = { coding: [headache.coding?.[0] ?? {}, { system: 'http://loinc.org', code: 'x' }] };
    expect(symptomsOf({ ...twice, text: 'chest pain' })).toEqual(['headache']);
    const same = { coding: [...(headache.coding ?? []), ...(headache.coding ?? [])] };
    expect(symptomsOf(same)).toEqual(['headache']);
    expect(symptomsOf({ coding: [{ code: 'x' }], text: 'chest pain' })).toEqual(['chest-pain']);
    expect(symptomsOf({})).toEqual([]);
  });

  it.each([
    ['severely', 'severe'],
    ['moderately', 'moderate'],
    ['mildly', 'mild'],
    ['not severe', undefined],
    ['non-severe', undefined],
    ['not moderate', undefined],
    ['not mild but severe', 'severe'],
    ['mild, not severe', 'mild'],
    ['persevered', undefined],
    [undefined, undefined],
  ])('%j are %s', (text, severity) => {
    expect(severityWritten(text)).toBe(severity);
  });
});

describe('an observation is of a symptom', () => {
  const part = (code: CodeableConcept): ObservationComponent => ({ code });
  it.each([
    ['by its code', observation(headache, undefined), true],
    ['by a code under which the symptom is the value', observation(complaint, undefined), true],
    ['by a component', observation(snomed('1'), undefined, { component: [part(headache)] }), true],
    ['by its text alone', observation({ text: 'headache' }, undefined), true],
    ['not by another component', observation(snomed('1'), undefined, { component: [part(mild)] }), false],
    ['not by another code', observation(snomed('1'), undefined), false],
    ['not by its value alone', observation(snomed('1'), undefined, { valueString: 'headache' }), false],
  ])('%s', (_, sent, expected) => {
    expect(isSymptomObservation(sent)).toBe(expected);
  });
});

describe('what was sent', () => {
  it.each([
    ['name and answer', { valueBoolean: true }, snomed('25064002', 'Headache'), 'Headache: true'],
    ['the answer where there is no name', { valueBoolean: true }, headache, 'true'],
    ['name and severity', { valueCodeableConcept: snomed('24484000', 'Bad') }, headache, 'Bad'],
    ['the severity as understood', { valueCodeableConcept: severe }, headache, 'severe'],
    ['that it was recorded', {}, { text: 'headache' }, 'headache: recorded'],
    ['the text of a complaint', { valueString: 'Severe headache' }, complaint, 'Severe headache'],
    [
      'the words of a coded complaint',
      { valueCodeableConcept: snomed('25064002', 'Pain') },
      complaint,
      'Pain',
    ],
    ['the symptom of a code without words', { valueCodeableConcept: headache }, complaint, 'headache'],
  ])('is kept: %s', (_, fields, code, asSent) => {
    expect(firstOf(fields, code)).toMatchObject({ symptom: 'headache', presence: 'present', asSent });
  });

  it('is set aside where a complaint names no symptom, or says nothing', () => {
    expect(firstOf({ valueString: 'itching' }, complaint)).toMatchObject({
      code: 'value-not-readable',
      element: 'valueString',
    });
    expect(firstOf({ valueInteger: 3 }, complaint)).toMatchObject({
      code: 'value-not-readable',
      element: 'valueInteger',
    });
    expect(firstOf({}, complaint)).toMatchObject({ code: 'value-missing' });
    expect(firstOf({ valueBoolean: true }, snomed('1'))).toMatchObject({ code: 'code-missing' });
  });

  it('is said of the component that cannot be read, and the others count', () => {
    const component = [
      { code: headache, valueString: 'later' },
      { code: snomed('29857009'), valueBoolean: true },
    ];
    const context = contextWith();
    const issues: (string | undefined)[] = [];
    const spoken = {
      ...context,
      issue: (_: unknown, { element }: { element: string }) => void issues.push(element),
    };
    const result = readSymptoms(
      received(observation({ text: 'danger signs' }, undefined, { component })),
      spoken,
      at,
    );
    expect(result).toMatchObject([{ symptom: 'chest-pain', presence: 'present' }]);
    expect(issues).toEqual(['component[0].valueString']);
  });

  it('of a component that is no symptom is not asked for', () => {
    const context = contextWith();
    const component = [
      { code: snomed('1'), valueString: 'later' },
      { code: headache, valueBoolean: true },
    ];
    const sent = observation({ text: 'visit' }, undefined, { component });
    expect(readSymptoms(received(sent), context, at)).toHaveLength(1);
    expect(context.raised).toEqual([]);
  });

  it('is the reason of the whole where no component counts', () => {
    const component = [{ code: snomed('29857009'), valueString: 'later' }];
    expect(read({ valueString: 'perhaps', component })).toMatchObject({
      code: 'value-not-readable',
      element: 'valueString',
    });
  });
});

describe('how severe', () => {
  const component = (code: CodeableConcept, valueCodeableConcept: CodeableConcept) => ({
    component: [{ code, valueCodeableConcept }],
  });
  it.each([
    ['a complaint in words', { valueString: 'Severe headache' }, complaint, 'severe'],
    ['a complaint by its note', { valueString: 'headache', note: [{ text: 'mild' }] }, complaint, 'mild'],
    ['the code of its value', { valueCodeableConcept: mild }, headache, 'mild'],
    [
      'a component that is no symptom',
      { valueBoolean: true, ...component(snomed('1'), severe) },
      headache,
      'severe',
    ],
    [
      'not a component of another symptom',
      { valueBoolean: true, ...component(snomed('29857009'), severe) },
      headache,
      undefined,
    ],
    [
      'its second component',
      {
        valueBoolean: true,
        component: [{ code: snomed('1') }, { code: snomed('2'), valueCodeableConcept: mild }],
      },
      headache,
      'mild',
    ],
    [
      'its second interpretation',
      { valueBoolean: true, interpretation: [snomed('3'), severe] },
      headache,
      'severe',
    ],
    ['a text of its value', { valueString: 'yes' }, { ...headache, text: 'mild headache' }, 'mild'],
    [
      'its value before its note',
      { valueCodeableConcept: mild, note: [{ text: 'severe' }] },
      headache,
      'mild',
    ],
  ])('by %s', (_, fields, code, severity) => {
    expect((firstOf(fields, code) as { severity?: string }).severity).toBe(severity);
  });

  it('each component by itself, and by the note of the whole whether it is over', () => {
    const parts = [
      { code: headache, valueCodeableConcept: severe },
      { code: snomed('29857009'), valueBoolean: true },
    ];
    const result = read({ component: parts, note: [{ text: 'all resolved' }] }, { text: 'danger signs' });
    expect(result).toMatchObject([
      { symptom: 'headache', severity: 'severe', relieved: true },
      { symptom: 'chest-pain', relieved: true },
    ]);
    expect(firstOf({ valueString: 'headache', note: [{ text: 'gone' }] }, complaint)).toMatchObject({
      relieved: true,
    });
  });
});
