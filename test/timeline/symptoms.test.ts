import type { Condition, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { symptomCodes } from '../../src/terminology/symptom-codes.ts';
import { symptomNames } from '../../src/terminology/severity.ts';
import type { SymptomId } from '../../src/guidelines/guideline.ts';
import {
  isSymptomObservation,
  readSymptoms,
  readSymptomsOfCondition,
  symptomsOf,
} from '../../src/timeline/symptoms.ts';
import type { Symptom } from '../../src/timeline/timeline.ts';
import { isUnusable } from '../../src/timeline/unusable.ts';
import { at, contextWith, moment, received } from './received.ts';

const snomed = 'http://snomed.info/sct';
const icd10 = 'http://hl7.org/fhir/sid/icd-10';
const icd10cm = 'http://hl7.org/fhir/sid/icd-10-cm';
const concept = (system: string, code: string): { coding: { system: string; code: string }[] } => ({
  coding: [{ system, code }],
});
const headache = concept(snomed, '25064002');

const observation = (fields: Partial<Observation>): Observation => ({
  resourceType: 'Observation',
  status: 'final',
  code: headache,
  ...fields,
});
const condition = (fields: Partial<Condition>): Condition => ({
  resourceType: 'Condition',
  subject: {},
  code: headache,
  ...fields,
});

const read = (resource: Observation): ReturnType<typeof readSymptoms> =>
  readSymptoms(received(resource), contextWith(), at);
const readCondition = (resource: Condition): ReturnType<typeof readSymptomsOfCondition> =>
  readSymptomsOfCondition(received(resource), contextWith());
const clinical = (code: string): { coding: { code: string }[] } => ({ coding: [{ code }] });

describe('symptom codes', () => {
  // terminology.csv section 5
  it.each<[string, string, readonly SymptomId[]]>([
    [snomed, '25064002', ['headache']],
    [snomed, '23388006', ['visual-disturbance']],
    [snomed, '301717006', ['epigastric-pain']],
    [snomed, '16932000', ['nausea', 'vomiting']],
    [snomed, '34842007', ['vaginal-bleeding']],
    [icd10, 'R51', ['headache']],
    [icd10, 'R10.1', ['epigastric-pain']],
    [icd10, 'R10.4', ['abdominal-pain']],
    [icd10cm, 'R10.13', ['epigastric-pain']],
    [icd10cm, 'R1013', ['epigastric-pain']],
    [icd10cm, 'R51.9', ['headache']],
    [icd10cm, 'R11.0', ['nausea']],
    [icd10cm, 'R11.2', ['nausea', 'vomiting']],
    [icd10, 'R07.0', []],
    ['http://id.who.int/icd/release/11/mms', 'MB4D', ['headache']],
    [snomed, '398254007', []],
  ])('%s %s names %o', (system, code, symptoms) => {
    expect(symptomsOf(concept(system, code))).toEqual(symptoms);
  });

  it('every symptom has a code and a name', () => {
    const all: Record<SymptomId, true> = {
      headache: true,
      'visual-disturbance': true,
      'epigastric-pain': true,
      dyspnoea: true,
      vomiting: true,
      nausea: true,
      'chest-pain': true,
      clonus: true,
      hyperreflexia: true,
      'altered-mental-status': true,
      coma: true,
      seizure: true,
      oliguria: true,
      'vaginal-bleeding': true,
      'abdominal-pain': true,
      'reduced-fetal-movement': true,
      oedema: true,
      'pulmonary-oedema': true,
      'lung-crackles': true,
    };
    const coded = new Set<string>(symptomCodes.flatMap((row) => row.symptoms));
    const named = new Set<string>(symptomNames.flatMap((row) => row.symptoms));
    expect(Object.keys(all).filter((symptom) => !coded.has(symptom) || !named.has(symptom))).toEqual([]);
  });

  it('a name counts when nothing is coded, and only alone', () => {
    expect(symptomsOf({ text: 'Severe headache' })).toEqual(['headache']);
    expect(symptomsOf({ text: 'Headache questionnaire' })).toEqual([]);
    expect(symptomsOf({ text: 'no headache' })).toEqual([]);
  });
});

describe('an observation of a symptom', () => {
  it.each<[string, Partial<Observation>, 'present' | 'absent']>([
    ['true', { valueBoolean: true }, 'present'],
    ['false', { valueBoolean: false }, 'absent'],
    ['present', { valueCodeableConcept: concept(snomed, '52101004') }, 'present'],
    ['absent', { valueCodeableConcept: concept(snomed, '2667000') }, 'absent'],
    ['no, in words', { valueString: 'no' }, 'absent'],
    ['nothing but the finding in the code', {}, 'present'],
    ['a severity', { valueCodeableConcept: concept(snomed, '24484000') }, 'present'],
    ['a negative interpretation', { interpretation: [{ coding: [{ code: 'NEG' }] }] }, 'absent'],
  ])('%s', (_, value, presence) => {
    expect(read(observation(value))).toMatchObject([{ symptom: 'headache', presence, at }]);
  });

  it.each<[Partial<Observation>, string]>([
    [{ valueString: 'later' }, 'value-not-readable'],
    [{ dataAbsentReason: { coding: [{ code: 'not-asked' }] } }, 'value-absent-with-reason'],
    [{ valueBoolean: true, valueString: 'no' }, 'value-ambiguous'],
  ])('%o is set aside: %s', (value, code) => {
    expect(read(observation(value))).toMatchObject({ kind: 'unusable', code });
  });

  it('may hold the symptom in its value', () => {
    for (const code of [
      concept('http://loinc.org', '75325-1'),
      concept(snomed, '418799008'),
      concept('http://terminology.hl7.org/CodeSystem/v3-ActCode', 'ASSERTION'),
    ]) {
      const resource = observation({ code, valueCodeableConcept: headache });
      expect(isSymptomObservation(resource)).toBe(true);
      expect(read(resource)).toMatchObject([{ symptom: 'headache', presence: 'present' }]);
    }
  });

  it('whose value names no known symptom is set aside', () => {
    const resource = observation({ code: concept('http://loinc.org', '75325-1'), valueString: 'itching' });
    expect(read(resource)).toMatchObject({ kind: 'unusable', code: 'value-not-readable' });
  });

  it('may list several as components; one that cannot be read is reported', () => {
    const context = contextWith();
    const resource = observation({
      code: { text: 'Danger signs' },
      component: [
        { code: headache, valueBoolean: true },
        { code: concept(snomed, '79922009'), valueBoolean: false },
        { code: concept(snomed, '63102001'), valueString: 'later' },
      ],
    });
    expect(isSymptomObservation(resource)).toBe(true);
    expect(readSymptoms(received(resource), context, at)).toMatchObject([
      { symptom: 'headache', presence: 'present' },
      { symptom: 'epigastric-pain', presence: 'absent' },
    ]);
    expect(context.raised).toEqual(['value-not-readable']);
  });

  it.each<[Partial<Observation>, 'mild' | 'moderate' | 'severe' | undefined]>([
    [{ valueCodeableConcept: concept(snomed, '24484000') }, 'severe'],
    [
      {
        valueBoolean: true,
        component: [{ code: concept(snomed, '246112005'), valueCodeableConcept: concept(snomed, '6736007') }],
      },
      'moderate',
    ],
    [{ valueBoolean: true, interpretation: [concept(snomed, '255604002')] }, 'mild'],
    [{ valueBoolean: true, code: { ...headache, text: 'Severe headache' } }, 'severe'],
    [{ valueBoolean: true, note: [{ text: 'severe, since morning' }] }, 'severe'],
    [{ valueBoolean: true, note: [{ text: 'not severe' }] }, undefined],
    [{ valueBoolean: true }, undefined],
  ])('%o is %s', (value, severity) => {
    const [symptom] = asList(read(observation(value)));
    expect(symptom?.severity).toBe(severity);
  });

  it.each([
    ['relieved by paracetamol', true],
    ['Resolved.', true],
    ['not relieved by paracetamol', false],
    ['unrelieved', false],
    ['since morning', false],
  ])('noted "%s" is relieved: %s', (text, relieved) => {
    expect(read(observation({ valueBoolean: true, note: [{ text }] }))).toMatchObject([{ relieved }]);
  });

  it('without a time has none', () => {
    const [symptom] = asList(
      readSymptoms(received(observation({ valueBoolean: true })), contextWith(), undefined),
    );
    expect(symptom).not.toHaveProperty('at');
  });
});

function asList(result: ReturnType<typeof readSymptoms>): readonly Symptom[] {
  return isUnusable(result) ? [] : result;
}

describe('a condition that is a symptom', () => {
  const onset = { onsetDateTime: '2025-03-09T20:00:00Z' };
  const onsetMoment = moment('2025-03-09T20:00:00Z');

  it('active is present from its onset', () => {
    expect(
      readCondition(
        condition({ clinicalStatus: clinical('active'), ...onset, severity: concept(snomed, '24484000') }),
      ),
    ).toMatchObject([
      { symptom: 'headache', presence: 'present', at: onsetMoment, severity: 'severe', relieved: false },
    ]);
  });

  it('refuted is absent (terminology.md section 5)', () => {
    expect(
      readCondition(condition({ verificationStatus: clinical('refuted'), recordedDate: '2025-03-10' })),
    ).toMatchObject([{ presence: 'absent', at: moment('2025-03-10') }]);
  });

  it('resolved was present, and is absent from its end', () => {
    const resource = condition({
      clinicalStatus: clinical('resolved'),
      ...onset,
      abatementDateTime: '2025-03-10T08:00:00Z',
    });
    expect(readCondition(resource)).toMatchObject([
      { presence: 'present', at: onsetMoment, relieved: true },
      { presence: 'absent', at: moment('2025-03-10T08:00:00Z') },
    ]);
  });

  it('inactive without any date is absent', () => {
    expect(readCondition(condition({ clinicalStatus: clinical('inactive') }))).toMatchObject([
      { presence: 'absent', relieved: true },
    ]);
  });

  it('a seizure that is over was there all the same', () => {
    const resource = condition({
      code: concept(snomed, '91175000'),
      clinicalStatus: clinical('resolved'),
      ...onset,
    });
    expect(readCondition(resource)).toMatchObject([
      { symptom: 'seizure', presence: 'present', at: onsetMoment, relieved: false },
    ]);
  });
});
