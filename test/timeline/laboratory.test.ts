import type { Observation, Specimen } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import type { Analyte } from '../../src/guidelines/guideline.ts';
import { laboratoryCodes } from '../../src/terminology/laboratory-codes.ts';
import { laboratoryAnalyteOf, readLaboratory } from '../../src/timeline/laboratory.ts';
import { at, contextWith, received } from './received.ts';

const loinc = 'http://loinc.org';

const observation = (code: string, value: Partial<Observation>): Observation => ({
  resourceType: 'Observation',
  status: 'final',
  code: { coding: [{ system: loinc, code }] },
  ...value,
});

const read = (resource: Observation, context = contextWith()): ReturnType<typeof readLaboratory> =>
  readLaboratory(received(resource), context, at);

const analytes: Record<Analyte, string> = {
  platelets: '777-3',
  creatinine: '2160-0',
  alt: '1742-6',
  ast: '1920-8',
  ldh: '2532-0',
  bilirubin: '1975-2',
  haemoglobin: '718-7',
  urate: '3084-1',
  fibrinogen: '3255-7',
  'sflt1-plgf-ratio': '74757-6',
  plgf: '74755-0',
  'oxygen-saturation': '59408-5',
  'heart-rate': '8867-4',
  'respiratory-rate': '9279-1',
  'body-mass-index': '39156-5',
  'fundal-height': '11881-0',
  'urine-output': '9187-6',
  hcg: '19080-1',
  potassium: '2823-3',
  magnesium: '19123-9',
  'urine-specific-gravity': '5811-5',
  'urine-ph': '5803-2',
};

describe('each analyte', () => {
  // terminology.csv, sections 3 and 4
  it.each(Object.entries(analytes))('%s is known by LOINC %s', (analyte, code) => {
    expect(laboratoryAnalyteOf({ coding: [{ system: loinc, code }] })).toBe(analyte);
  });

  it('has no code in common with another', () => {
    const byCode = new Map<string, Set<string>>();
    for (const { code, analyte } of laboratoryCodes)
      byCode.set(code, (byCode.get(code) ?? new Set()).add(analyte));
    expect([...byCode].filter(([, names]) => names.size > 1)).toEqual([]);
  });

  it('is not found under a code of something else', () => {
    expect(laboratoryAnalyteOf({ coding: [{ system: loinc, code: '4544-3' }] })).toBeUndefined();
    expect(laboratoryAnalyteOf({ coding: [{ system: 'urn:local', code: '777-3' }] })).toBeUndefined();
    expect(laboratoryAnalyteOf({ text: 'Platelets' })).toBeUndefined();
  });
});

describe('a value', () => {
  it('is given in every accepted unit, with what was sent', () => {
    const result = read(observation('2160-0', { valueQuantity: { value: 1.2, unit: 'mg/dL' } }));
    expect(result).toMatchObject({
      analyte: 'creatinine',
      // 1.2 x 88.4 (clinical-rules 1.6)
      measured: { value: 106.08 },
      byUnit: { sentUnit: 'mg/dL', values: { 'mg/dL': 1.2, 'umol/L': 106.08 } },
      asSent: '1.2 mg/dL',
      haemolysed: false,
      source: { reference: 'Observation/1', preliminary: false },
    });
  });

  it('may be a bound', () => {
    expect(
      read(observation('777-3', { valueQuantity: { value: 100, comparator: '<', unit: '10*9/L' } })),
    ).toMatchObject({
      measured: { value: 100, comparator: '<' },
    });
  });

  it('may be written as text with its unit, or be a bare ratio of growth factors', () => {
    expect(read(observation('777-3', { valueString: '132 x10^9/L' }))).toMatchObject({
      measured: { value: 132 },
    });
    expect(read(observation('74757-6', { valueInteger: 38 }))).toMatchObject({ measured: { value: 38 } });
  });

  it.each<[Partial<Observation>, string]>([
    [{ valueInteger: 132 }, 'unit-missing'],
    [{ valueString: 'low' }, 'value-not-readable'],
    [{ valueRange: { low: { value: 1 } } }, 'value-type-not-usable'],
    [{ valueCodeableConcept: { text: 'low' } }, 'value-type-not-usable'],
    [{}, 'value-missing'],
    [{ dataAbsentReason: { text: 'clotted' } }, 'value-absent-with-reason'],
    [{ valueInteger: 1, valueString: '2' }, 'value-ambiguous'],
  ])('%o is set aside: %s', (value, code) => {
    expect(read(observation('777-3', value))).toMatchObject({ kind: 'unusable', code });
  });

  it('with codings of two analytes is set aside', () => {
    const resource = {
      ...observation('777-3', {}),
      code: {
        coding: [
          { system: loinc, code: '777-3' },
          { system: loinc, code: '1742-6' },
        ],
      },
    };
    expect(read(resource)).toMatchObject({ code: 'value-ambiguous', element: 'code' });
  });
});

describe('the upper reference limit', () => {
  const limit = (referenceRange: Observation['referenceRange']): number | undefined => {
    const value: Partial<Observation> = { valueQuantity: { value: 52, unit: 'U/L' } };
    const result = read(
      observation('1742-6', referenceRange === undefined ? value : { ...value, referenceRange }),
    );
    return 'kind' in result ? undefined : result.upperReference;
  };
  const normal = { coding: [{ code: 'normal' }] };

  it.each<[string, Observation['referenceRange'], number | undefined]>([
    ['with its unit', [{ high: { value: 40, unit: 'U/L' } }], 40],
    ['without a unit it is in the unit sent', [{ high: { value: 40 } }], 40],
    ['in another accepted unit', [{ high: { value: 0.5, unit: 'ukat/L' } }], 30],
    ['in a unit of something else', [{ high: { value: 40, unit: 'g/L' } }], undefined],
    [
      'of the normal range only',
      [
        { type: normal, high: { value: 40 } },
        { type: { coding: [{ code: 'therapeutic' }] }, high: { value: 90 } },
      ],
      40,
    ],
    ['two different ones', [{ high: { value: 40 } }, { high: { value: 35 } }], undefined],
    ['only a lower one', [{ low: { value: 7 } }], undefined],
    ['only text', [{ text: '7-40' }], undefined],
    ['of a range whose kind is only in words', [{ type: { text: 'adult' }, high: { value: 40 } }], 40],
    ['of another range only', [{ type: { coding: [{ code: 'critical' }] }, high: { value: 40 } }], undefined],
    ['the same twice', [{ high: { value: 40 } }, { high: { value: 40, unit: 'U/L' } }], 40],
    ['in a unit nobody knows', [{ high: { value: 40, code: 'furlong' } }], undefined],
    ['with a code for its unit', [{ high: { value: 0.5, code: 'ukat/L' } }], 30],
    ['without a number', [{ high: {} }], undefined],
    ['none', undefined, undefined],
  ])('%s', (_, ranges, expected) => {
    expect(limit(ranges)).toBe(expected);
  });
});

describe('a haemolysed sample', () => {
  const haemolysed = (value: Partial<Observation>, context = contextWith()): boolean | undefined => {
    const result = read(
      observation('2532-0', { valueQuantity: { value: 900, unit: 'U/L' }, ...value }),
      context,
    );
    return 'kind' in result ? undefined : result.haemolysed;
  };
  const specimen = (fields: Partial<Specimen>): ReturnType<typeof contextWith> =>
    contextWith({ 'Specimen/1': { resourceType: 'Specimen', ...fields } });
  const withSpecimen = { specimen: { reference: 'Specimen/1' } };

  it('is known by note, interpretation or condition of the specimen', () => {
    expect(haemolysed({ note: [{ text: 'Sample haemolysed.' }] })).toBe(true);
    expect(haemolysed({ note: [{ text: 'Gross hemolysis' }] })).toBe(true);
    expect(haemolysed({ interpretation: [{ text: 'haemolysed' }] })).toBe(true);
    const condition = [
      { coding: [{ system: 'http://terminology.hl7.org/CodeSystem/v2-0493', code: 'HEM' }] },
    ];
    expect(haemolysed(withSpecimen, specimen({ condition }))).toBe(true);
    expect(haemolysed(withSpecimen, specimen({ note: [{ text: 'hemolyzed' }] }))).toBe(true);
  });

  it('is not one whose note denies it, nor one of which nothing is said', () => {
    expect(haemolysed({ note: [{ text: 'Not haemolysed' }] })).toBe(false);
    expect(haemolysed({ note: [{ text: 'no visible haemolysis' }] })).toBe(false);
    expect(haemolysed({})).toBe(false);
    expect(haemolysed(withSpecimen)).toBe(false);
    expect(haemolysed(withSpecimen, specimen({}))).toBe(false);
  });
});
