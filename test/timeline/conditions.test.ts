import type { AllergyIntolerance, Condition, FamilyMemberHistory } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { conditionCodes } from '../../src/terminology/condition-codes.ts';
import { classifications, type ConditionId } from '../../src/guidelines/guideline.ts';
import {
  suggestedConditionCodes,
  suggestedReferralCodes,
  type SuggestedCodes,
} from '../../src/terminology/suggested-codes.ts';
import {
  conditionsOf,
  readAllergy,
  readConditions,
  readFamilyHistory,
} from '../../src/timeline/conditions.ts';
import { contextWith, moment, received } from './received.ts';

const snomed = 'http://snomed.info/sct';
const icd10 = 'http://hl7.org/fhir/sid/icd-10';
const icd10cm = 'http://hl7.org/fhir/sid/icd-10-cm';
const icd11 = 'http://id.who.int/icd/release/11/mms';
const concept = (system: string, code: string): { coding: { system: string; code: string }[] } => ({
  coding: [{ system, code }],
});
const status = (code: string): { coding: { code: string }[] } => ({ coding: [{ code }] });

const condition = (fields: Partial<Condition>): Condition => ({
  resourceType: 'Condition',
  subject: { reference: 'Patient/1' },
  code: concept(snomed, '398254007'),
  ...fields,
});
const read = (fields: Partial<Condition>): ReturnType<typeof readConditions> =>
  readConditions(received(condition(fields)), contextWith());

describe('condition codes', () => {
  // terminology.csv sections 6 and 7; prefixes and dots: its "How to read the tables"
  it.each<[string, string, readonly ConditionId[]]>([
    [snomed, '398254007', ['pre-eclampsia']],
    [snomed, '46764007', ['pre-eclampsia-severe']],
    [snomed, '237282002', ['pre-eclampsia-severe']],
    [snomed, '95605009', ['hellp']],
    [snomed, '69909000', ['eclampsia', 'superimposed-pre-eclampsia']],
    [snomed, '38341003', ['chronic-hypertension']],
    [snomed, '40521000119100', ['postpartum-hypertension']],
    [snomed, '416402001', ['trophoblastic-disease']],
    [snomed, '84757009', ['epilepsy']],
    [snomed, '29399001', ['advanced-maternal-age', 'nulliparity']],
    [icd10, 'O14.1', ['pre-eclampsia-severe']],
    [icd10, 'O141', ['pre-eclampsia-severe']],
    [icd10, 'O14.2', ['hellp']],
    [icd10, 'O14', ['pre-eclampsia']],
    [icd10, 'O11', ['superimposed-pre-eclampsia']],
    [icd10, 'O10.0', ['chronic-hypertension']],
    [icd10, 'O13', ['gestational-hypertension']],
    [icd10, 'O16', ['hypertension-in-pregnancy-unspecified']],
    [icd10, 'R03.0', ['raised-pressure-finding']],
    [icd10cm, 'O14.13', ['pre-eclampsia-severe']],
    [icd10cm, 'O1410', ['pre-eclampsia-severe']],
    [icd10cm, 'o14.93', ['pre-eclampsia']],
    [icd10cm, 'O13.5', ['postpartum-hypertension']],
    [icd10cm, 'O13.1', ['gestational-hypertension']],
    [icd10cm, 'O11.1', ['superimposed-pre-eclampsia']],
    [icd10cm, 'O09.523', ['advanced-maternal-age', 'pregnant']],
    [icd10cm, 'Z3A.32', ['pregnant']],
    [icd10cm, 'E66.3', []],
    [icd11, 'JA24.1', ['pre-eclampsia-severe']],
    [icd11, 'JA24.1/JA8Z', ['pre-eclampsia-severe']],
    [icd11, 'JA22.0', ['proteinuria']],
    [icd11, 'MC80.00', ['white-coat-hypertension']],
    [icd11, 'MC80.0', ['raised-pressure-finding']],
    [icd10, '398254007', []],
    [snomed, 'O14.1', []],
    ['urn:local', 'O14.1', []],
  ])('%s %s names %o', (system, code, conditions) => {
    expect(conditionsOf(concept(system, code))).toEqual(conditions);
  });

  it('never takes chronic hypertension in pregnancy for obesity, nor a mole for a miscarriage', () => {
    expect(conditionsOf(concept(icd10, 'O01.9'))).toEqual(['trophoblastic-disease']);
    expect(conditionsOf(concept(icd10, 'O03.9'))).toEqual(['miscarriage']);
  });

  it('a code without its system is tried in every system', () => {
    expect(conditionsOf({ coding: [{ code: 'O14.10' }] })).toEqual(['pre-eclampsia-severe']);
    expect(conditionsOf({ coding: [{ code: '398254007' }] })).toEqual(['pre-eclampsia']);
  });

  it('every condition a rule asks for has a code', () => {
    const coded = new Set(conditionCodes.flatMap((row) => row.conditions));
    expect([...coded].sort()).toEqual([...conditionIds].sort());
  });
});

const conditionIds: readonly ConditionId[] = [
  'chronic-hypertension',
  'gestational-hypertension',
  'pre-eclampsia',
  'pre-eclampsia-severe',
  'superimposed-pre-eclampsia',
  'hellp',
  'eclampsia',
  'postpartum-hypertension',
  'hypertension-in-pregnancy-unspecified',
  'white-coat-hypertension',
  'transient-hypertension',
  'raised-pressure-finding',
  'proteinuria',
  'history-of-pre-eclampsia',
  'history-of-eclampsia',
  'poor-obstetric-history',
  'family-history-of-pre-eclampsia',
  'chronic-kidney-disease',
  'diabetes',
  'gestational-diabetes',
  'systemic-lupus-erythematosus',
  'antiphospholipid-syndrome',
  'multiple-pregnancy',
  'assisted-conception',
  'obesity',
  'nulliparity',
  'advanced-maternal-age',
  'trophoblastic-disease',
  'fetal-growth-restriction',
  'fetal-death',
  'placental-abruption',
  'disseminated-intravascular-coagulation',
  'stroke',
  'epilepsy',
  'asthma',
  'heart-block',
  'heart-failure',
  'bradycardia',
  'depression',
  'urinary-tract-infection',
  'aspirin-allergy',
  'active-bleeding',
  'peptic-ulcer',
  'pregnant',
  'post-partum-state',
  'miscarriage',
];

describe('a condition on record (F-M09)', () => {
  it.each<[string, Partial<Condition>, string, string]>([
    [
      'both statuses',
      { clinicalStatus: status('active'), verificationStatus: status('confirmed') },
      'active',
      'confirmed',
    ],
    [
      'recurrence',
      { clinicalStatus: status('recurrence'), verificationStatus: status('confirmed') },
      'active',
      'confirmed',
    ],
    ['relapse', { clinicalStatus: status('relapse') }, 'active', 'unverified'],
    ['resolved', { clinicalStatus: status('resolved') }, 'inactive', 'unverified'],
    ['remission', { clinicalStatus: status('remission') }, 'inactive', 'unverified'],
    ['provisional', { verificationStatus: status('provisional') }, 'active', 'provisional'],
    ['differential', { verificationStatus: status('differential') }, 'active', 'provisional'],
    ['unconfirmed', { verificationStatus: status('unconfirmed') }, 'active', 'unverified'],
    ['no status', {}, 'active', 'unverified'],
    ['ended before', { abatementDateTime: '2025-01-01' }, 'inactive', 'unverified'],
    ['to end later', { abatementDateTime: '2026-01-01' }, 'active', 'unverified'],
    ['ended, in words', { abatementString: 'after birth' }, 'inactive', 'unverified'],
  ])('%s', (_, fields, state, certainty) => {
    expect(read(fields)).toMatchObject([{ condition: 'pre-eclampsia', state, certainty }]);
  });

  it('refuted is not needed', () => {
    expect(read({ verificationStatus: status('refuted') })).toMatchObject({ kind: 'not-needed' });
  });

  it('keeps its dates and its codes as `system|code`', () => {
    const code = {
      coding: [
        { system: snomed, code: '398254007', display: 'Pre-eclampsia' },
        { system: icd10, code: 'O14.9' },
      ],
    };
    const fields = { code, onsetDateTime: '2025-03-01', recordedDate: '2025-03-02T10:00:00Z' };
    expect(read(fields)).toMatchObject([
      {
        onset: moment('2025-03-01'),
        recorded: moment('2025-03-02T10:00:00Z'),
        codes: [`${snomed}|398254007`, `${icd10}|O14.9`],
        asSent: 'Pre-eclampsia',
      },
    ]);
  });

  it('that no rule asks for is not needed; one without a code is set aside', () => {
    expect(read({ code: concept(snomed, '1') })).toMatchObject({ kind: 'not-needed' });
    expect(read({ code: { text: 'Pre-eclampsia' } })).toMatchObject({
      kind: 'unusable',
      code: 'code-missing',
    });
    expect(read({ code: { coding: [{ display: 'Pre-eclampsia' }] } })).toMatchObject({
      kind: 'unusable',
      code: 'code-missing',
    });
  });
});

describe('allergy to aspirin', () => {
  const allergy = (fields: Partial<AllergyIntolerance>): ReturnType<typeof readAllergy> =>
    readAllergy(received({ resourceType: 'AllergyIntolerance', patient: {}, ...fields }), contextWith());

  it.each<[string, Partial<AllergyIntolerance>]>([
    ['substance', { code: concept(snomed, '387458008') }],
    ['product', { code: concept(snomed, '7947003') }],
    ['ingredient', { code: concept('http://www.nlm.nih.gov/research/umls/rxnorm', '1191') }],
    ['allergy', { code: concept(snomed, '293586001') }],
    ['name', { code: { text: 'Aspirin' } }],
    [
      'substance of a reaction',
      {
        code: { text: 'drug allergy' },
        reaction: [{ substance: concept(snomed, '387458008'), manifestation: [] }],
      },
    ],
  ])('by %s', (_, fields) => {
    expect(allergy(fields)).toMatchObject([
      { condition: 'aspirin-allergy', allergicTo: ['aspirin'], state: 'active' },
    ]);
  });

  it('refuted, resolved, or of something else', () => {
    const code = concept(snomed, '387458008');
    expect(allergy({ code, verificationStatus: status('refuted') })).toMatchObject({ kind: 'not-needed' });
    expect(allergy({ code, clinicalStatus: status('resolved') })).toMatchObject([{ state: 'inactive' }]);
    expect(allergy({ code: { text: 'Peanut' } })).toMatchObject({ kind: 'not-needed' });
    expect(allergy({})).toMatchObject({ kind: 'not-needed' });
  });
});

describe('allergy to another medicine', () => {
  const rxnorm = 'http://www.nlm.nih.gov/research/umls/rxnorm';
  const allergy = (code: AllergyIntolerance['code']): ReturnType<typeof readAllergy> =>
    readAllergy(
      received({ resourceType: 'AllergyIntolerance', patient: {}, ...(code === undefined ? {} : { code }) }),
      contextWith(),
    );

  it.each<[NonNullable<AllergyIntolerance['code']>, readonly string[], string]>([
    [concept(rxnorm, '6185'), ['labetalol'], 'allergy to labetalol'],
    [concept('http://www.whocc.no/atc', 'C08CA05'), ['nifedipine'], 'allergy to nifedipine'],
    [concept(rxnorm, '6585'), ['magnesium-sulfate'], 'allergy to magnesium sulfate'],
    [concept(rxnorm, '3827'), ['ace-inhibitor', 'enalapril'], 'allergy to enalapril'],
    [{ text: 'Methyldopa' }, ['methyldopa'], 'Methyldopa'],
    [concept(rxnorm, '1191'), ['aspirin'], 'allergy to aspirin'],
  ])('%o: %o, called %s', (code, allergicTo, asSent) => {
    expect(allergy(code)).toMatchObject([{ allergicTo, asSent, state: 'active' }]);
  });
});

describe('family history', () => {
  const history = (
    relationship: FamilyMemberHistory['relationship'],
    code: string,
  ): ReturnType<typeof readFamilyHistory> =>
    readFamilyHistory(
      received({
        resourceType: 'FamilyMemberHistory',
        status: 'completed',
        patient: {},
        relationship,
        condition: [{ code: concept(snomed, code) }],
      }),
      contextWith(),
    );
  const role = (code: string): FamilyMemberHistory['relationship'] =>
    concept('http://terminology.hl7.org/CodeSystem/v3-RoleCode', code);

  it('of pre-eclampsia in mother or sister counts', () => {
    for (const relationship of [role('MTH'), role('NSIS'), { text: 'Sister' }]) {
      expect(history(relationship, '398254007')).toMatchObject([
        { condition: 'family-history-of-pre-eclampsia', state: 'active' },
      ]);
    }
  });

  it('of others, or of something else, does not', () => {
    expect(history(role('AUNT'), '398254007')).toMatchObject({ kind: 'not-needed' });
    expect(history(role('MTH'), '44054006')).toMatchObject({ kind: 'not-needed' });
  });
});

describe('codes we suggest', () => {
  const suggestions: ReadonlyMap<string, SuggestedCodes> = new Map(Object.entries(suggestedConditionCodes));

  it('exist for every class but the two that name no condition', () => {
    expect(classifications.filter((each) => !suggestions.has(each))).toEqual([
      'cannot-classify',
      'normotensive',
    ]);
    expect([...suggestions.keys()].filter((key) => !classifications.some((each) => each === key))).toEqual(
      [],
    );
  });

  it('hold one SNOMED CT and one ICD-10 code each, and are read back as a condition', () => {
    for (const [name, { codes, afterBirth }] of suggestions) {
      for (const list of afterBirth === undefined ? [codes] : [codes, afterBirth]) {
        expect(
          list.filter(({ system }) => system === snomed),
          name,
        ).toHaveLength(1);
        expect(
          list.filter(({ system }) => system === icd10),
          name,
        ).toHaveLength(1);
        for (const { system, code } of list)
          expect(conditionsOf(concept(system, code)), `${name} ${code}`).not.toEqual([]);
      }
    }
  });

  it('name the condition of the class', () => {
    const conditionsOfClass = (name: string): readonly ConditionId[] =>
      conditionsOf({ coding: [...(suggestions.get(name)?.codes ?? [])] });
    expect(conditionsOfClass('eclampsia')).toEqual(['eclampsia']);
    expect(conditionsOfClass('hellp')).toEqual(['hellp']);
    expect(conditionsOfClass('pre-eclampsia')).toEqual(['pre-eclampsia']);
    expect(conditionsOfClass('pre-eclampsia-severe-features')).toEqual(['pre-eclampsia-severe']);
    expect(conditionsOfClass('superimposed-pre-eclampsia')).toEqual(['superimposed-pre-eclampsia']);
    expect(conditionsOfClass('gestational-hypertension')).toEqual(['gestational-hypertension']);
    expect(conditionsOfClass('chronic-hypertension')).toEqual(['chronic-hypertension']);
    expect(conditionsOfClass('isolated-proteinuria')).toEqual(['proteinuria']);
    expect(conditionsOfClass('raised-unconfirmed')).toEqual(['raised-pressure-finding']);
  });

  it('exist for each level of referral', () => {
    expect(Object.keys(suggestedReferralCodes)).toEqual([
      'hospital-with-intensive-care',
      'hospital',
      'clinic',
    ]);
  });
});
