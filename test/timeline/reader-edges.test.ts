// Times, medicines, urine, findings and the account of what was read, sent in ways that are odd and possible.
import type {
  Encounter,
  FhirResource,
  MedicationRequest,
  MedicationStatement,
  Observation,
} from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import {
  loinc,
  observation,
  pressure,
  quantity,
  snomed,
  strip,
  symptom,
  takes,
} from '../support/resources.ts';
import { built, codesOf } from './build.ts';

const at = '2026-02-01T10:00:00Z';
const subject = { reference: 'Patient/woman' };
const { effectiveDateTime: _at, ...timeless } = pressure(at, 150, 95);
const timed = (fields: Partial<Observation>): Observation => ({ ...timeless, ...fields });
const momentOf = (fields: Partial<Observation>) => built([timed(fields)]).timeline.pressures[0]?.at;
const codeOf = (fields: Partial<Observation>) => codesOf(built([timed(fields)]))[0];
const issuesOf = (fields: Partial<Observation>) => built([timed(fields)]).issues.map(({ code }) => code);

describe('the time of an observation', () => {
  it.each<[string, Partial<Observation>, string]>([
    ['a start that is none', { effectivePeriod: { start: 'morning' } }, 'time-invalid'],
    ['an end that is none', { effectivePeriod: { start: at, end: 'noon' } }, 'time-invalid'],
    [
      'an end under its other name that is none',
      { effectivePeriod: { start: at, stop: 'noon' } as object },
      'time-invalid',
    ],
    ['a time of issue that is none', { issued: 'today' }, 'time-invalid'],
    ['a timing of no event', { effectiveTiming: { event: [] } }, 'time-missing'],
    ['a timing of one event that is none', { effectiveTiming: { event: ['noon'] } }, 'time-invalid'],
    ['an encounter that was not sent', { encounter: { reference: 'Encounter/none' } }, 'time-missing'],
    ['a number', { effectiveDateTime: 2026 as unknown as string }, 'time-invalid'],
    [
      'a start after the evaluation',
      { effectivePeriod: { start: '2026-02-02T10:00:00Z' } },
      'time-in-future',
    ],
  ])('with %s: %s', (_, fields, code) => {
    expect(codeOf(fields)).toBe(code);
  });

  it('of a timing skips an event that is none', () => {
    expect(momentOf({ effectiveTiming: { event: ['noon', at] } })).toMatchObject({ text: at });
  });

  it('of a period that ends where it starts is that moment', () => {
    expect(momentOf({ effectivePeriod: { start: at, end: at } })).toMatchObject({ text: at });
  });

  it.each<[string, Partial<Observation>, readonly string[]]>([
    ['with a zone', { effectiveDateTime: at }, []],
    ['of a date', { effectiveDateTime: '2026-02-01' }, []],
    ['of a date and the time of issue with a zone', { issued: at }, ['time-from-issued']],
    ['without a zone', { effectiveDateTime: '2026-02-01T10:00:00' }, ['time-zone-assumed']],
    ['of issue without a zone', { issued: '2026-02-01T10:00:00' }, ['time-zone-assumed', 'time-from-issued']],
    ['of issue, a date', { issued: '2026-02-01' }, ['time-from-issued']],
    ['of a period with a zone', { effectivePeriod: { start: at } }, []],
    ['of a period without one', { effectivePeriod: { start: '2026-02-01T10:00:00' } }, ['time-zone-assumed']],
  ])('%s is reported as %j %j', (_, fields, issues) => {
    expect(issuesOf(fields)).toEqual(issues);
  });

  it('from an encounter is reported; an encounter without period gives none', () => {
    const encounter = (period?: Encounter['period']): Encounter => ({
      resourceType: 'Encounter',
      id: 'e',
      status: 'finished',
      class: { code: 'AMB' },
      subject,
      ...(period === undefined ? {} : { period }),
    });
    const visit = timed({ encounter: { reference: 'Encounter/e' } });
    expect(built([encounter({ start: at }), visit]).issues.map(({ code }) => code)).toEqual([
      'time-from-encounter',
    ]);
    expect(codesOf(built([encounter(), visit]))).toContain('time-missing');
    expect(codesOf(built([encounter({ start: 'noon' }), visit]))).toContain('time-missing');
    expect(codesOf(built([{ ...encounter({ start: at }), status: 'entered-in-error' }, visit]))).toContain(
      'time-missing',
    );
  });
});

describe('the account of what was read', () => {
  it('names the kind of what was set aside', () => {
    const result = built([
      timed({}),
      { ...strip(at, '1+'), valueCodeableConcept: { text: 'smudged' } },
      symptom(at, 'headache', true),
    ]);
    expect(result.setAside.map(({ about }) => about)).toEqual(['urine', 'blood-pressure']);
    const date = observation(loinc('11778-8'), at, { valueDateTime: 'soon' });
    expect(built([date]).setAside[0]).not.toHaveProperty('about');
  });

  it('says of each resource once what became of it', () => {
    const result = built([pressure(at, 90, 140), pressure('2026-02-01T11:00:00Z', 150, 95)]);
    expect(result.setAside).toHaveLength(1);
    expect(result.notNeeded).toEqual([]);
  });

  it.each([
    [150, undefined, '8462-4'],
    [undefined, 95, '8480-6'],
  ])('names the code of the half that is missing: %s/%s wants %s', (s, d, code) => {
    const { issues } = built([pressure(at, s, d)]);
    expect(issues[0]?.message).toContain(code);
  });
});

describe('a medicine', () => {
  const nifedipine = { coding: [{ system: 'http://www.whocc.no/atc', code: 'C08CA05' }] };
  const statement = (fields: Partial<MedicationStatement>) =>
    built([{ ...takes('nifedipine', '2026-01-20'), medicationCodeableConcept: nifedipine, ...fields }])
      .timeline.medicines;
  const names = (fields: Partial<MedicationStatement>) => statement(fields).map(({ medicine }) => medicine);

  it.each<[string, Partial<MedicationStatement>, boolean]>([
    ['by the code of the route', { dosage: [{ route: snomed('37839007') }] }, true],
    ['by the name of the route', { dosage: [{ route: { text: 'sublingual' } }] }, true],
    ['in the words of the dosage', { dosage: [{ text: '10 mg under the tongue' }] }, true],
    ['in what the patient is told', { dosage: [{ patientInstruction: 'sublingual' }] }, true],
    ['in the second of two dosages', { dosage: [{ text: 'by mouth' }, { text: 'sublingual' }] }, true],
    ['not by mouth', { dosage: [{ route: snomed('26643006'), text: 'swallow' }] }, false],
    ['not where nothing is said', {}, false],
    [
      'not by a route without a code',
      { dosage: [{ route: { coding: [{ system: 'http://example.org' }] } }] },
      false,
    ],
  ])('nifedipine is under the tongue %s: %j %s', (_, fields, isUnder) => {
    expect(names(fields).includes('sublingual-nifedipine')).toBe(isUnder);
    expect(names(fields)).toContain('nifedipine');
  });

  it('another one under the tongue is only itself', () => {
    const labetalol = { coding: [{ system: 'http://www.whocc.no/atc', code: 'C07AG01' }] };
    expect(names({ medicationCodeableConcept: labetalol, dosage: [{ text: 'sublingual' }] })).toEqual([
      'labetalol',
    ]);
  });

  it('keeps the words of its route, or its code', () => {
    const routeOf = (fields: Partial<MedicationStatement>) => statement(fields)[0]?.route;
    expect(routeOf({ dosage: [{ route: { text: 'by mouth' } }] })).toBe('by mouth');
    expect(routeOf({ dosage: [{ route: snomed('26643006') }] })).toBe('26643006');
    expect(routeOf({ dosage: [{ text: 'sublingual' }] })).toBe('sublingual');
    expect(routeOf({ dosage: [{ text: 'daily' }, { route: { text: 'by mouth' } }] })).toBe('by mouth');
    expect(routeOf({ dosage: [{ text: 'twice a day' }] })).toBeUndefined();
  });

  it('of a request reads the instruction, and is an order; a statement is none', () => {
    const order: MedicationRequest = {
      resourceType: 'MedicationRequest',
      status: 'active',
      intent: 'order',
      subject,
      medicationCodeableConcept: nifedipine,
      authoredOn: at,
      dosageInstruction: [{ text: 'sublingual' }],
    };
    expect(built([order]).timeline.medicines.map(({ medicine, isOrder }) => [medicine, isOrder])).toEqual([
      ['nifedipine', true],
      ['sublingual-nifedipine', true],
    ]);
    expect(statement({})[0]).not.toHaveProperty('isOrder');
  });

  it('by reference counts a coded ingredient before the name of the product', () => {
    const product = {
      resourceType: 'Medication',
      id: 'm',
      code: { text: 'Aspirin and labetalol pack' },
      ingredient: [{ itemCodeableConcept: nifedipine }],
    } as FhirResource;
    const { medicationCodeableConcept: _concept, ...rest } = takes('nifedipine', '2026-01-20');
    const taken: MedicationStatement = { ...rest, medicationReference: { reference: 'Medication/m' } };
    expect(built([product, taken]).timeline.medicines.map(({ medicine }) => medicine)).toEqual([
      'nifedipine',
    ]);
  });
});

describe('urine', () => {
  const proteinOf = (code: string, fields: Partial<Observation>) => {
    const { timeline, setAside } = built([observation(loinc(code), at, fields)]);
    const [found] = timeline.urineProteins;
    if (found === undefined) return setAside[0]?.code;
    return found.kind === 'strip' ? found.grade : found.measured.value;
  };

  it.each<[string, Partial<Observation>, unknown]>([
    ['2 of the unit 1', { valueQuantity: quantity(2, '1') }, 2],
    ['2 {PLUS}', { valueQuantity: quantity(2, '{PLUS}') }, 2],
    ['2 plus, by its text', { valueQuantity: { value: 2, unit: 'plus' } }, 2],
    [
      'at least 2 of the unit 1',
      { valueQuantity: { ...quantity(2, '1'), comparator: '>=' } },
      'unit-unknown',
    ],
    ['yes', { valueBoolean: true }, 'positive-ungraded'],
    ['no', { valueBoolean: false }, 0],
    ['5', { valueInteger: 5 }, 'value-not-readable'],
    ['a blank text', { valueString: ' ' }, 'value-not-readable'],
    ['a date', { valueDateTime: at }, 'value-type-not-usable'],
    [
      'only "positive" as interpretation',
      { interpretation: [{ coding: [{ code: 'POS' }] }] },
      'positive-ungraded',
    ],
    ['only "negative" as interpretation', { interpretation: [{ coding: [{ code: 'NEG' }] }] }, 0],
    ['only "high" as interpretation', { interpretation: [{ coding: [{ code: 'H' }] }] }, 'value-missing'],
    [
      'no value, for a reason',
      {
        dataAbsentReason: { coding: [{ code: 'unknown' }] },
        interpretation: [{ coding: [{ code: 'POS' }] }],
      },
      'value-absent-with-reason',
    ],
  ])('a strip of %s', (_, fields, expected) => {
    expect(proteinOf('20454-5', fields)).toBe(expected);
  });

  it.each<[string, Partial<Observation>, unknown]>([
    ['as text with its unit', { valueString: '40 mg/mmol' }, 40],
    ['as text without one', { valueString: '40' }, 'value-not-readable'],
    ['as a coded value', { valueCodeableConcept: { text: '40 mg/mmol' } }, 'value-type-not-usable'],
    ['as nothing', {}, 'value-missing'],
  ])('a ratio %s', (_, fields, expected) => {
    expect(proteinOf('34366-5', fields)).toBe(expected);
  });

  it('a code that states 2+ keeps it with a value that confirms, and not with one that denies', () => {
    const stated = (fields: Partial<Observation>) => {
      const { timeline, setAside } = built([observation(snomed('167276005'), at, fields)]);
      const [found] = timeline.urineProteins;
      return found?.kind === 'strip' ? found.grade : setAside[0]?.code;
    };
    expect(stated({})).toBe(2);
    expect(stated({ valueBoolean: true })).toBe(2);
    expect(stated({ valueString: '2+' })).toBe(2);
    expect(stated({ valueString: '3+' })).toBe('value-ambiguous');
    expect(stated({ valueBoolean: false })).toBe('value-ambiguous');
  });

  it('of which nothing is known of the sample has none', () => {
    expect(built([strip(at, '1+')]).timeline.urineProteins[0]).not.toHaveProperty('sample');
  });

  it('takes the sample from its specimen', () => {
    const specimen = (fields: object): FhirResource => ({
      resourceType: 'Specimen',
      id: 's',
      subject,
      ...fields,
    });
    const sampleOf = (fields: object) =>
      built([specimen(fields), { ...strip(at, '1+'), specimen: { reference: 'Specimen/s' } }]).timeline
        .urineProteins[0]?.sample;
    expect(sampleOf({ type: { text: 'First morning urine' } })).toMatchObject({ isFirstMorning: true });
    expect(sampleOf({ condition: [{ text: 'contaminated' }] })).toMatchObject({ isContaminated: true });
    expect(sampleOf({ note: [{ text: 'chlorhexidine used' }] })).toMatchObject({ hasAntiseptic: true });
    expect(sampleOf({ type: { text: 'Urine' } })).toBeUndefined();
  });

  it('read by a method that names a machine was read by one', () => {
    const read = (text: string) =>
      built([{ ...strip(at, '1+'), method: { text }, note: [{ text: 'early morning' }] }]).timeline
        .urineProteins[0]?.sample?.readBy;
    expect(['automated reader', 'urine analyser', 'Analyzer', 'colour chart'].map(read)).toEqual([
      'analyser',
      'analyser',
      'analyser',
      'eye',
    ]);
  });
});

describe('a finding sent as an observation', () => {
  const growth = (fields: Partial<Observation>, time: string | undefined = at) =>
    built([observation(snomed('22033007'), time, fields)]);

  it.each<[string, Partial<Observation>, number]>([
    ['yes', { valueBoolean: true }, 1],
    ['nothing', {}, 1],
    ['no', { valueBoolean: false }, 0],
    ['a number', { valueInteger: 3 }, 0],
  ])('with %s', (_, fields, count) => {
    expect(growth(fields).timeline.conditions).toHaveLength(count);
  });

  it('without a time counts, undated; with a time to come it does not', () => {
    const { effectiveDateTime: _time, ...undated } = observation(snomed('22033007'), at, {
      valueBoolean: true,
    });
    const [found] = built([undated]).timeline.conditions;
    expect(found).toMatchObject({ condition: 'fetal-growth-restriction', state: 'active' });
    expect(found).not.toHaveProperty('onset');
    expect(codesOf(growth({ valueBoolean: true }, '2026-03-01'))).toEqual(['time-in-future']);
  });
});

describe('a procedure for assisted conception', () => {
  const performed = (fields: object) =>
    built([
      {
        resourceType: 'Procedure',
        status: 'completed',
        subject,
        code: snomed('63487001'),
        ...fields,
      },
    ]).timeline.conditions[0]?.onset?.text;

  it('is dated by when it was performed, or by the start of that', () => {
    expect(performed({ performedDateTime: '2025-12-01' })).toBe('2025-12-01');
    expect(performed({ performedPeriod: { start: '2025-12-02', end: '2025-12-03' } })).toBe('2025-12-02');
    expect(performed({})).toBeUndefined();
  });
});
