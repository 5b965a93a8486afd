import type { MedicationAdministration, MedicationRequest, MedicationStatement, Resource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import type { MedicineId } from '../../src/guidelines/guideline.ts';
import { medicineCodes } from '../../src/terminology/medicine-codes.ts';
import { agentsNamed, medicinesOf } from '../../src/timeline/medicine-names.ts';
import { readMedicines, type MedicineResource } from '../../src/timeline/medicines.ts';
import { readRequest } from '../../src/timeline/requests.ts';
import { contextWith, moment, received } from './received.ts';

const atc = 'http://www.whocc.no/atc';
const rxnorm = 'http://www.nlm.nih.gov/research/umls/rxnorm';
const snomed = 'http://snomed.info/sct';
const concept = (system: string, code: string): { coding: { system: string; code: string }[] } => ({
  coding: [{ system, code }],
});
const nifedipine = concept(atc, 'C08CA05');

const statement = (fields: Partial<MedicationStatement>): MedicationStatement => ({
  resourceType: 'MedicationStatement',
  status: 'active',
  subject: {},
  medicationCodeableConcept: nifedipine,
  ...fields,
});
const request = (fields: Partial<MedicationRequest>): MedicationRequest => ({
  resourceType: 'MedicationRequest',
  status: 'active',
  intent: 'order',
  subject: {},
  medicationCodeableConcept: nifedipine,
  ...fields,
});
const administration = (fields: Partial<MedicationAdministration>): MedicationAdministration => ({
  resourceType: 'MedicationAdministration',
  status: 'completed',
  subject: {},
  medicationCodeableConcept: nifedipine,
  ...fields,
});

const read = (
  resource: MedicineResource,
  others: Readonly<Record<string, Resource>> = {},
): ReturnType<typeof readMedicines> => readMedicines(received(resource), contextWith(others));

describe('agents by code', () => {
  // terminology.csv section 9; combinations: its last bullet ("combinations count")
  it.each<[string, string, readonly MedicineId[]]>([
    [atc, 'C07AG01', ['labetalol']],
    [atc, 'C08CA05', ['nifedipine']],
    [atc, 'C02AB01', ['methyldopa']],
    [atc, 'C02DB01', ['dihydralazine']],
    [atc, 'C09AA03', ['ace-inhibitor']],
    [atc, 'C09AA02', ['ace-inhibitor', 'enalapril']],
    [atc, 'C09AA01', ['ace-inhibitor', 'captopril']],
    [atc, 'C09BA03', ['ace-inhibitor', 'thiazide']],
    [atc, 'C09CA01', ['angiotensin-receptor-blocker']],
    [atc, 'C09DX04', ['angiotensin-receptor-blocker', 'neprilysin-inhibitor']],
    [atc, 'C09DX02', ['angiotensin-receptor-blocker', 'renin-inhibitor']],
    [atc, 'C09XA52', ['renin-inhibitor', 'thiazide']],
    [atc, 'C02LB01', ['methyldopa', 'thiazide']],
    [atc, 'C03DA01', ['aldosterone-antagonist']],
    [atc, 'C07AB03', ['atenolol']],
    [atc, 'C07AB02', ['other-beta-blocker']],
    [atc, 'G02AB03', ['ergometrine']],
    [atc, 'G02AC01', ['ergometrine']],
    [atc, 'M01AH01', ['nsaid']],
    [atc, 'A12AA03', ['calcium-gluconate']],
    [atc, 'A12AA04', ['calcium-supplement']],
    [atc, 'B01AC06', ['aspirin']],
    [atc, 'N02CA02', []],
    [rxnorm, '6185', ['labetalol']],
    [rxnorm, '29046', ['ace-inhibitor']],
    [rxnorm, '3827', ['ace-inhibitor', 'enalapril']],
    [rxnorm, '52175', ['angiotensin-receptor-blocker']],
    [rxnorm, '5640', ['nsaid']],
    [rxnorm, '4025', []],
    [snomed, '41549009', ['ace-inhibitor']],
    [snomed, '85272000', ['nifedipine']],
  ])('%s %s: %o', (system, code, medicines) => {
    expect(medicinesOf(concept(system, code))).toEqual({ medicines, byName: false });
  });

  it('cover every medicine a rule asks for, but the one that is a route', () => {
    const coded = new Set<string>(medicineCodes.flatMap((row) => row.medicines));
    expect(medicineIds.filter((id) => !coded.has(id))).toEqual(['sublingual-nifedipine']);
  });
});

const medicineIds: readonly MedicineId[] = [
  'labetalol',
  'nifedipine',
  'amlodipine',
  'nicardipine',
  'methyldopa',
  'hydralazine',
  'dihydralazine',
  'magnesium-sulfate',
  'calcium-gluconate',
  'aspirin',
  'calcium-supplement',
  'ace-inhibitor',
  'angiotensin-receptor-blocker',
  'renin-inhibitor',
  'neprilysin-inhibitor',
  'aldosterone-antagonist',
  'atenolol',
  'other-beta-blocker',
  'other-antihypertensive',
  'thiazide',
  'loop-diuretic',
  'statin',
  'nsaid',
  'ergometrine',
  'enalapril',
  'captopril',
  'sublingual-nifedipine',
];

describe('agents by name', () => {
  it.each<[string, readonly MedicineId[]]>([
    ['Lisinopril 10 MG Oral Tablet', ['ace-inhibitor']],
    ['amlodipine 5 MG / benazepril 10 MG Oral Capsule', ['amlodipine', 'ace-inhibitor']],
    ['Dihydralazine', ['dihydralazine']],
    ['Atorvastatin calcium 20 mg', ['statin']],
    ['Magnesium sulphate 50%', ['magnesium-sulfate']],
    ['Paracetamol', []],
  ])('%s: %o', (text, medicines) => {
    expect(agentsNamed(text).medicines).toEqual(medicines);
  });

  it('count only when no code is recognised, and that is said', () => {
    const context = contextWith();
    const product = { coding: [{ system: rxnorm, code: '314076', display: 'lisinopril 10 MG Oral Tablet' }] };
    expect(readMedicines(received(statement({ medicationCodeableConcept: product })), context)).toMatchObject(
      [{ medicine: 'ace-inhibitor', asSent: 'lisinopril 10 MG Oral Tablet' }],
    );
    expect(context.raised).toEqual(['recognised-by-name']);
    expect(
      read(statement({ medicationCodeableConcept: { ...concept(atc, 'C07AG01'), text: 'nifedipine' } })),
    ).toMatchObject([{ medicine: 'labetalol' }]);
  });

  it('an unknown medicine is not needed', () => {
    expect(read(statement({ medicationCodeableConcept: { text: 'Folic acid' } }))).toEqual({
      kind: 'not-needed',
      why: 'This medicine is not in our list.',
    });
  });
});

describe('a code that is not in our list', () => {
  it.each([
    ['without a name may be one of ours', concept(rxnorm, '314076'), 'unusable'],
    ['of SNOMED CT, likewise', concept(snomed, '1'), 'unusable'],
    ['of a group of substances, likewise', concept(atc, 'C09'), 'unusable'],
    ['that names its substance is not needed', concept(atc, 'A02BC01'), 'not-needed'],
    ['with a name is not needed', { ...concept(rxnorm, '198051'), text: 'Omeprazole' }, 'not-needed'],
  ])('%s', (_, medicationCodeableConcept, kind) => {
    expect(read(statement({ medicationCodeableConcept }))).toMatchObject({
      kind,
      ...(kind === 'unusable' ? { code: 'code-unknown' } : {}),
    });
  });
});

describe('the name of a medicine sent without a wording', () => {
  it.each([
    [concept(snomed, '37400007'), 'magnesium sulfate (37400007)'],
    [concept(atc, 'C09AA03'), 'ACE inhibitor (C09AA03)'],
    [concept(atc, 'C09AA02'), 'enalapril (C09AA02)'],
  ])('%o is %s', (medicationCodeableConcept, asSent) => {
    expect(read(statement({ medicationCodeableConcept }))).toEqual(
      expect.arrayContaining([expect.objectContaining({ asSent })]),
    );
  });
});

describe('is it taken?', () => {
  it.each<[string, MedicineResource, string]>([
    ['statement active', statement({}), 'active'],
    ['statement completed', statement({ status: 'completed' }), 'stopped'],
    ['statement intended', statement({ status: 'intended' }), 'ordered'],
    ['statement on hold', statement({ status: 'on-hold' }), 'stopped'],
    [
      'statement whose period is over',
      statement({ effectivePeriod: { start: '2025-01-01', end: '2025-02-01' } }),
      'stopped',
    ],
    [
      'statement whose period runs',
      statement({ effectivePeriod: { start: '2025-01-01', end: '2025-03-10' } }),
      'active',
    ],
    ['request active', request({}), 'active'],
    ['request draft', request({ status: 'draft' }), 'ordered'],
    ['request proposed', request({ intent: 'proposal' }), 'ordered'],
    ['request stopped', request({ status: 'stopped' }), 'stopped'],
    ['request cancelled', request({ status: 'cancelled' }), 'stopped'],
    ['administration completed', administration({}), 'given'],
    ['administration running', administration({ status: 'in-progress' }), 'active'],
  ])('%s', (_, resource, status) => {
    expect(read(resource)).toMatchObject([{ medicine: 'nifedipine', status }]);
  });

  it.each<[string, MedicineResource]>([
    ['not taken', statement({ status: 'not-taken' })],
    ['not given', administration({ status: 'not-done' })],
    ['an order not to give', request({ doNotPerform: true })],
  ])('%s is not needed', (_, resource) => {
    expect(read(resource)).toMatchObject({ kind: 'not-needed' });
  });

  it('an unknown status is set aside', () => {
    expect(read(statement({ status: 'unknown' }))).toMatchObject({
      kind: 'unusable',
      code: 'status-not-usable',
    });
  });

  it('from when to when', () => {
    expect(
      read(
        administration({ effectivePeriod: { start: '2025-03-10T08:00:00Z', end: '2025-03-10T08:20:00Z' } }),
      ),
    ).toMatchObject([{ start: moment('2025-03-10T08:00:00Z'), end: moment('2025-03-10T08:20:00Z') }]);
    expect(read(request({ authoredOn: '2025-03-09' }))).toMatchObject([{ start: moment('2025-03-09') }]);
  });
});

describe('where the medicine is named', () => {
  const medicationReference = { reference: 'Medication/1' };
  // medicationCodeableConcept and medicationReference are alternatives; a copy without the first.
  const referring = (fields: Partial<MedicationStatement>): MedicationStatement => {
    const { medicationCodeableConcept: _, ...rest } = statement({});
    return { ...rest, ...fields };
  };

  it('by reference, with its ingredients', () => {
    const medication: Resource & Record<string, unknown> = {
      resourceType: 'Medication',
      code: { text: 'Combination tablet' },
      ingredient: [
        { itemCodeableConcept: concept(rxnorm, '52175') },
        { itemCodeableConcept: concept(rxnorm, '17767') },
      ],
    };
    expect(read(referring({ medicationReference }), { 'Medication/1': medication })).toMatchObject([
      { medicine: 'angiotensin-receptor-blocker', asSent: 'Combination tablet' },
      { medicine: 'amlodipine' },
    ]);
  });

  it('by a reference that leads nowhere', () => {
    expect(read(referring({ medicationReference }))).toMatchObject({
      kind: 'unusable',
      code: 'reference-unresolved',
    });
    expect(read(referring({ medicationReference: { display: 'Labetalol 200 mg' } }))).toMatchObject([
      { medicine: 'labetalol' },
    ]);
  });

  it('twice, or nowhere', () => {
    expect(read(statement({ medicationReference }))).toMatchObject({
      kind: 'unusable',
      code: 'value-ambiguous',
    });
    expect(read(referring({}))).toMatchObject({ kind: 'unusable', code: 'code-missing' });
  });
});

describe('nifedipine under the tongue', () => {
  it.each<[string, MedicineResource]>([
    ['by code of the route', administration({ dosage: { route: concept(snomed, '37839007') } })],
    ['by text of the route', statement({ dosage: [{ route: { text: 'Sublingual' } }] })],
    ['by the instruction', request({ dosageInstruction: [{ text: '10 mg sublingually now' }] })],
  ])('%s is an entry more', (_, resource) => {
    expect(read(resource)).toMatchObject([{ medicine: 'nifedipine' }, { medicine: 'sublingual-nifedipine' }]);
  });

  it('by mouth is none', () => {
    expect(read(administration({ dosage: { route: { text: 'oral' } } }))).toMatchObject([
      { medicine: 'nifedipine', route: 'oral' },
    ]);
  });
});

describe('a request on the chart', () => {
  it('is kept with codes, status, intent and date', () => {
    expect(
      readRequest(
        received({
          resourceType: 'ServiceRequest',
          status: 'active',
          intent: 'order',
          subject: {},
          authoredOn: '2025-03-09',
          code: concept(snomed, '183548008'),
        }),
        contextWith(),
      ),
    ).toEqual({
      codes: [`${snomed}|183548008`],
      status: 'active',
      intent: 'order',
      at: moment('2025-03-09'),
      source: { reference: 'ServiceRequest/1', preliminary: false },
    });
  });

  it('without a code, or not to be done, is not needed', () => {
    const base = { resourceType: 'ServiceRequest', status: 'active', intent: 'order', subject: {} } as const;
    expect(readRequest(received(base), contextWith())).toMatchObject({ kind: 'not-needed' });
    expect(
      readRequest(
        received({ ...base, doNotPerform: true, code: concept(snomed, '183548008') }),
        contextWith(),
      ),
    ).toMatchObject({ kind: 'not-needed' });
  });
});
