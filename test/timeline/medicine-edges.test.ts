// Medicines by reference, their names, and from when to when, where several places could say it.
import type { MedicationRequest, MedicationStatement } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import {
  agentsNamed,
  isUnknownMedicine,
  medicinesOf,
  medicineWords,
} from '../../src/timeline/medicine-names.ts';
import { readMedicines, type MedicineResource } from '../../src/timeline/medicines.ts';
import { contextWith, moment, received } from './received.ts';

const atc = 'http://www.whocc.no/atc';
const rxnorm = 'http://www.nlm.nih.gov/research/umls/rxnorm';
const coded = (system: string, code: string, display?: string) => ({
  coding: [{ system, code, ...(display === undefined ? {} : { display }) }],
});
const labetalol = coded(atc, 'C07AG01');

const statement = (fields: Partial<MedicationStatement>): MedicationStatement => ({
  resourceType: 'MedicationStatement',
  status: 'active',
  subject: {},
  ...fields,
});
const request = (fields: Partial<MedicationRequest>): MedicationRequest => ({
  resourceType: 'MedicationRequest',
  status: 'active',
  intent: 'order',
  subject: {},
  medicationCodeableConcept: labetalol,
  ...fields,
});

const medicationReference = { reference: 'Medication/1' };
/** What a statement gives that refers to a Medication with these fields, and the issues it raises. */
function referred(fields: object, display?: string) {
  const context = contextWith({ 'Medication/1': { resourceType: 'Medication', ...fields } });
  const reference = display === undefined ? medicationReference : { ...medicationReference, display };
  const read = readMedicines(received(statement({ medicationReference: reference })), context);
  return { read, raised: context.raised };
}

describe('a medicine by reference', () => {
  const ingredients = (...concepts: object[]) => ({
    ingredient: concepts.map((itemCodeableConcept) => ({ itemCodeableConcept })),
  });

  it('known by the name of its product only is reported as that', () => {
    const { read, raised } = referred({ code: { text: 'Labetalol tablet' } });
    expect(read).toMatchObject([{ medicine: 'labetalol', asSent: 'Labetalol tablet' }]);
    expect(raised).toEqual(['recognised-by-name']);
    const other = referred({ code: { text: 'Labetalol' }, ...ingredients({ text: 'lactose' }) });
    expect(other.raised).toEqual(['recognised-by-name']);
  });

  it('known by a code is not, whatever else was named', () => {
    const byCode = referred({ code: labetalol, ...ingredients({ text: 'aspirin' }) });
    expect(byCode.read).toMatchObject([{ medicine: 'labetalol' }]);
    expect(byCode.raised).toEqual([]);
    const byIngredient = referred({ code: { text: 'Aspirin pack' }, ...ingredients(labetalol) });
    expect(byIngredient.read).toMatchObject([{ medicine: 'labetalol', asSent: 'Aspirin pack' }]);
    expect(byIngredient.raised).toEqual([]);
  });

  it('counts each agent once', () => {
    const { read } = referred({ code: labetalol, ...ingredients(labetalol, coded(rxnorm, '6185')) });
    expect(read).toHaveLength(1);
  });

  it('without a wording is named by its agents and the first code there is', () => {
    expect(referred({ code: labetalol }).read).toMatchObject([{ asSent: 'labetalol (C07AG01)' }]);
    const withoutOwn = referred(ingredients(coded(rxnorm, '6185')));
    expect(withoutOwn.read).toMatchObject([{ asSent: 'labetalol (6185)' }]);
    const codeless = { coding: [{ system: atc }, { system: atc, code: 'C07AG01' }] };
    expect(referred({ code: codeless }).read).toMatchObject([{ asSent: 'labetalol (C07AG01)' }]);
  });

  it('without a wording or a code of its own is named by its agents alone', () => {
    expect(referred(ingredients({ text: 'labetalol' })).read).toMatchObject([{ asSent: 'labetalol' }]);
  });

  it('takes the words of the reference where the product has none', () => {
    expect(referred({ code: labetalol }, 'Trandate').read).toMatchObject([{ asSent: 'Trandate' }]);
    expect(referred({ code: { ...labetalol, text: 'Own' } }, 'Trandate').read).toMatchObject([
      { asSent: 'Own' },
    ]);
  });

  it.each([
    ['by an unknown code', { code: coded(rxnorm, '999') }],
    ['by an unknown ingredient', ingredients(coded(rxnorm, '999'))],
    ['by one unknown ingredient of two', ingredients(coded(atc, 'A02BC01'), coded(rxnorm, '999'))],
  ])('that may be one of ours %s is set aside', (_, fields) => {
    expect(referred(fields).read).toMatchObject({ kind: 'unusable', code: 'code-unknown' });
  });

  it.each([
    ['by a whole ATC code of another substance', { code: coded(atc, 'A02BC01') }],
    ['by an ingredient with a name', ingredients(coded(rxnorm, '999', 'omeprazole'))],
    ['by the name of the product', { code: { text: 'Omeprazole' }, ...ingredients(coded(rxnorm, '9')) }],
    ['by nothing at all', {}],
  ])('that is not ours %s is not needed', (_, fields) => {
    expect(referred(fields).read).toMatchObject({ kind: 'not-needed' });
  });
});

describe('may it be one of ours?', () => {
  it.each([
    ['a code alone', coded(rxnorm, '999'), true],
    ['an incomplete ATC code', coded(atc, 'C09AA'), false],
    ['an incomplete ATC code that is in no group of ours', coded(atc, 'A02BC'), true],
    ['a whole ATC code', coded(atc, 'A02BC01'), false],
    [
      'a whole ATC code beside another',
      {
        coding: [
          { system: rxnorm, code: '9' },
          { system: atc, code: 'A02BC01' },
        ],
      },
      false,
    ],
    ['a whole ATC code between blanks', coded(atc, ' A02BC01 '), false],
    ['a whole ATC code that goes on', coded(atc, 'A02BC012'), true],
    ['something before a whole ATC code', coded(atc, 'XA02BC01'), true],
    ['what looks like ATC in another system', coded(rxnorm, 'A02BC01'), true],
    ['a code of ours', labetalol, false],
    ['a code with a name', coded(rxnorm, '999', 'omeprazole'), false],
    ['a code beside a text', { ...coded(rxnorm, '999'), text: 'omeprazole' }, false],
    ['a system without a code', { coding: [{ system: rxnorm }] }, false],
    ['nothing', {}, false],
  ])('%s: %j %s', (_, concept, expected) => {
    expect(isUnknownMedicine(concept)).toBe(expected);
  });
});

describe('the names of agents', () => {
  it('in a text count as words of their own, each agent once', () => {
    expect(agentsNamed('Labetalol 100 mg, LABETALOL 200 mg')).toEqual({
      medicines: ['labetalol'],
      byName: true,
    });
    expect(agentsNamed('omeprazole')).toEqual({ medicines: [], byName: false });
    expect(agentsNamed('xlabetalol').medicines).toEqual([]);
    expect(agentsNamed('labetalolum').medicines).toEqual([]);
    expect(agentsNamed('(labetalol)').medicines).toEqual(['labetalol']);
  });

  it('of a concept are looked for in its text and in every display', () => {
    const named = { text: 'pack', coding: [{ display: 'a' }, { display: 'labetalol 100 mg' }, {}] };
    expect(medicinesOf(named)).toEqual({ medicines: ['labetalol'], byName: true });
    expect(medicinesOf({ coding: [labetalol.coding[0], { system: atc, code: 'C07AG01' }] })).toEqual({
      medicines: ['labetalol'],
      byName: false,
    });
  });

  it.each([
    [['ace-inhibitor', 'enalapril'], 'enalapril'],
    [['ace-inhibitor', 'captopril'], 'captopril'],
    [['ace-inhibitor', 'thiazide'], 'ACE inhibitor, thiazide'],
    [['nsaid'], 'NSAID'],
    [['other-beta-blocker'], 'other beta blocker'],
  ] as const)('%j are written "%s"', (medicines, words) => {
    expect(medicineWords(medicines)).toBe(words);
  });
});

describe('from when to when', () => {
  const spanOf = (resource: MedicineResource) => {
    const read = readMedicines(received(resource), contextWith());
    return 'kind' in read ? read.kind : read.map(({ start, end }) => [start?.text, end?.text])[0];
  };
  const bounds = (start: string, end: string) => ({
    timing: { repeat: { boundsPeriod: { start, end } } },
  });

  it('of a request is that of its first instruction with bounds, else when it was written', () => {
    const dosageInstruction = [
      { text: 'twice a day' },
      bounds('2025-03-01', '2025-03-20'),
      bounds('2025-02-01', '2025-02-20'),
    ];
    expect(spanOf(request({ dosageInstruction, authoredOn: '2025-02-28' }))).toEqual([
      '2025-03-01',
      '2025-03-20',
    ]);
    expect(spanOf(request({ authoredOn: '2025-02-28' }))).toEqual(['2025-02-28', undefined]);
    const dispenseRequest = { validityPeriod: { end: '2025-04-01' } };
    expect(spanOf(request({ authoredOn: '2025-02-28', dispenseRequest }))).toEqual([
      '2025-02-28',
      '2025-04-01',
    ]);
  });

  it('passes over a date that is none', () => {
    const effectivePeriod = { start: 'spring', end: '2025-03-31' };
    expect(spanOf(statement({ medicationCodeableConcept: labetalol, effectivePeriod }))).toEqual([
      undefined,
      '2025-03-31',
    ]);
    const sent = request({ authoredOn: '2025-02-28', dosageInstruction: [bounds('soon', '2025-03-20')] });
    expect(spanOf(sent)).toEqual(['2025-02-28', '2025-03-20']);
  });

  it.each([
    ['2025-03-10T11:59:59Z', 'stopped'],
    ['2025-03-10T12:00:00Z', 'active'],
    ['2025-03-10', 'active'],
    ['2025-03-09', 'stopped'],
  ])('until %s is, at noon of 10 March, %s', (end, status) => {
    const sent = statement({ medicationCodeableConcept: labetalol, effectivePeriod: { end } });
    expect(readMedicines(received(sent), contextWith())).toMatchObject([{ status, end: moment(end) }]);
  });

  it.each([
    ['original-order', 'active'],
    ['reflex-order', 'active'],
    ['filler-order', 'active'],
    ['instance-order', 'active'],
    ['plan', 'ordered'],
    ['option', 'ordered'],
  ] as const)('a request of intent %s is %s', (intent, status) => {
    expect(readMedicines(received(request({ intent })), contextWith())).toMatchObject([{ status }]);
  });

  it.each(['toString', '', 'given', undefined])('a status of %j says nothing', (status) => {
    const sent = { ...request({}), status } as MedicationRequest;
    expect(readMedicines(received(sent), contextWith())).toMatchObject({ code: 'status-not-usable' });
  });
});
