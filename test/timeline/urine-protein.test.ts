import type { Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import {
  readUrineProtein,
  readUrineSign,
  urineProteinKindOf,
  urineSignOf,
} from '../../src/timeline/urine-protein.ts';
import { at, contextWith, received } from './received.ts';

const loinc = 'http://loinc.org';
const snomed = 'http://snomed.info/sct';
const ucum = 'http://unitsofmeasure.org';

const observation = (code: string, value: Partial<Observation>, system = loinc): Observation => ({
  resourceType: 'Observation',
  status: 'final',
  code: { coding: [{ system, code }] },
  ...value,
});

const read = (resource: Observation): ReturnType<typeof readUrineProtein> =>
  readUrineProtein(received(resource), contextWith(), at);

const gradeOf = (value: Partial<Observation>, code = '20454-5'): unknown => {
  const result = read(observation(code, value));
  if (result.kind === 'strip') return result.grade;
  return result.kind === 'unusable' ? result.code : result.kind;
};

const coded = (system: string, code: string, text?: string): Partial<Observation> => ({
  valueCodeableConcept: { coding: [{ system, code }], ...(text === undefined ? {} : { text }) },
});

describe('a strip coded as an answer, a qualifier or a finding', () => {
  // terminology.csv
  it.each([
    [loinc, 'LA6577-6', 0],
    [loinc, 'LA11832-5', 0.5],
    [loinc, 'LA11841-6', 1],
    [loinc, 'LA11842-4', 2],
    [loinc, 'LA11843-2', 3],
    [loinc, 'LA11844-0', 4],
    [loinc, 'LA11883-8', 0],
    [loinc, 'LA6576-8', 'positive-ungraded'],
    [snomed, '260385009', 0],
    [snomed, '260405006', 0.5],
    [snomed, '260347006', 1],
    [snomed, '260348001', 2],
    [snomed, '260349009', 3],
    [snomed, '260350009', 4],
    [snomed, '10828004', 'positive-ungraded'],
    [snomed, '167273002', 0],
    [snomed, '167274008', 0.5],
    [snomed, '167275009', 1],
    [snomed, '167276005', 2],
    [snomed, '167277001', 3],
    [snomed, '167278006', 4],
    [loinc, 'LA8983-4', 'value-not-readable'],
    [loinc, 'LA6751-7', 'value-not-readable'],
    [loinc, 'LA8981-8', 'value-not-readable'],
    [loinc, 'LA11884-6', 'value-not-readable'],
    [loinc, 'LA9663-1', 'value-not-readable'],
  ])('%s %s is %s', (system, code, grade) => {
    expect(gradeOf(coded(system, code))).toBe(grade);
  });

  it.each([
    ['441614007', 1],
    ['441517005', 2],
    ['441521003', 3],
  ])('%s, of a three-plus scale, keeps its grade %d and says so', (code, grade) => {
    expect(read(observation('20454-5', coded(snomed, code)))).toMatchObject({
      grade,
      remarks: ['Graded on a scale of three plus signs, not four.'],
    });
  });

  it('an answer and a qualifier of the same grade are synonyms', () => {
    const coding = [
      { system: loinc, code: 'LA11842-4' },
      { system: snomed, code: '260348001' },
    ];
    expect(gradeOf({ valueCodeableConcept: { coding, text: '(++)' } })).toBe(2);
  });

  it('codings of two grades are refused', () => {
    const coding = [
      { system: loinc, code: 'LA11842-4' },
      { system: snomed, code: '260347006' },
    ];
    expect(gradeOf({ valueCodeableConcept: { coding } })).toBe('value-ambiguous');
  });

  it('a text that contradicts the coding is refused', () => {
    expect(gradeOf(coded(loinc, 'LA11842-4', '1+'))).toBe('value-ambiguous');
    expect(gradeOf(coded(loinc, 'LA6577-6', 'positive'))).toBe('value-ambiguous');
  });

  it('a text that agrees, or says more than "positive", is taken', () => {
    expect(gradeOf(coded(snomed, '167277001', 'Urine protein test = +++'))).toBe(3);
    expect(gradeOf(coded(snomed, '10828004', '2+'))).toBe(2);
  });

  it('a finding that states the grade may be the code itself', () => {
    expect(urineProteinKindOf({ coding: [{ system: snomed, code: '167276005' }] })).toBe('strip');
    expect(read(observation('167276005', {}, snomed))).toMatchObject({ kind: 'strip', grade: 2 });
    expect(read(observation('167276005', { valueBoolean: true }, snomed))).toMatchObject({
      kind: 'strip',
      grade: 2,
    });
    expect(read(observation('167276005', { valueBoolean: false }, snomed))).toMatchObject({
      code: 'value-ambiguous',
    });
  });
});

describe('a strip written as text', () => {
  // Strings seen in files: terminology.md section 2; the grammar is stated there.
  it.each([
    ['+1', 1],
    ['1+', 1],
    ['(++)', 2],
    ['++', 2],
    ['+', 1],
    ['+++', 3],
    ['++++', 4],
    ['3 +', 3],
    ['4 plus', 4],
    ['two plus', 2],
    ['trace', 0.5],
    ['Traços', 0.5],
    ['TR', 0.5],
    ['+/-', 0.5],
    ['±', 0.5],
    ['NEG', 0],
    ['negative', 0],
    ['Negativo', 0],
    ['Negatief', 0],
    ['negatif', 0],
    ['nil', 0],
    ['Absent', 0],
    ['not detected', 0],
    ['-', 0],
    ['positive', 'positive-ungraded'],
    ['abnormal', 'positive-ungraded'],
    ['2+ (100 mg/dL)', 2],
    ['Protein: 2+', 2],
    ['MODERATE', 'value-not-readable'],
    ['small', 'value-not-readable'],
    ['5+', 'value-not-readable'],
    ['+++++', 'value-not-readable'],
    ['0.3', 'value-not-readable'],
    ['see note', 'value-not-readable'],
    ['  ', 'value-not-readable'],
  ])('"%s" is %s', (text, grade) => {
    expect(gradeOf({ valueString: text })).toBe(grade);
  });

  it('small, moderate and large ask for the scale', () => {
    const result = read(observation('20454-5', { valueString: 'moderate' }));
    expect(result.kind === 'unusable' && result.message).toMatch(/State the scale/);
  });
});

describe('a strip as a number, a Boolean or an interpretation', () => {
  it.each([
    [0, 0],
    [1, 1],
    [4, 4],
    [5, 'value-not-readable'],
    [-1, 'value-not-readable'],
    [1.5, 'value-not-readable'],
  ])('integer %d is %s', (valueInteger, grade) => {
    expect(gradeOf({ valueInteger })).toBe(grade);
  });

  // clinical-rules 1.6: trace 10-20, 1+ 30, 2+ 100, 3+ 300, 4+ 1000 (2000 by brand) mg/dL.
  it.each([
    [0, 0],
    [9.9, 'value-not-readable'],
    [10, 0.5],
    [15, 0.5],
    [20, 0.5],
    [20.1, 'value-not-readable'],
    [29.9, 'value-not-readable'],
    [30, 1],
    [30.1, 'value-not-readable'],
    [100, 2],
    [120, 'value-not-readable'],
    [300, 3],
    [1000, 4],
    [2000, 4],
    [114.3, 'value-not-readable'],
  ])('%d mg/dL on a strip is %s', (value, grade) => {
    expect(gradeOf({ valueQuantity: { value, system: ucum, code: 'mg/dL' } }, '5804-0')).toBe(grade);
    expect(gradeOf({ valueQuantity: { value, unit: 'mg/dL' } }, '20454-5')).toBe(grade);
  });

  it('the label may be sent in g/L', () => {
    expect(gradeOf({ valueQuantity: { value: 0.3, unit: 'g/L' } }, '50561-0')).toBe(1);
  });

  it('"at least 300 mg/dL" is at least 3+, "less than 30" is no grade', () => {
    expect(
      read(observation('5804-0', { valueQuantity: { value: 300, comparator: '>=', unit: 'mg/dL' } })),
    ).toMatchObject({
      grade: 3,
      remarks: ['At least this grade.'],
    });
    expect(gradeOf({ valueQuantity: { value: 30, comparator: '<', unit: 'mg/dL' } })).toBe(
      'value-not-readable',
    );
  });

  it('a bare quantity under a presence code is not guessed at', () => {
    expect(gradeOf({ valueQuantity: { value: 72 } })).toBe('unit-missing');
    expect(gradeOf({ valueQuantity: { value: 2, system: ucum, code: '{grade}' } })).toBe(2);
  });

  it('other forms', () => {
    expect(gradeOf({ valueBoolean: true })).toBe('positive-ungraded');
    expect(gradeOf({ valueBoolean: false })).toBe(0);
    expect(gradeOf({ interpretation: [{ coding: [{ code: 'POS' }] }] })).toBe('positive-ungraded');
    expect(gradeOf({ interpretation: [{ coding: [{ code: 'NEG' }] }] })).toBe(0);
    expect(gradeOf({ interpretation: [{ coding: [{ code: 'H' }] }] })).toBe('value-missing');
    expect(gradeOf({ valueRatio: { numerator: { value: 1 } } })).toBe('value-type-not-usable');
    expect(gradeOf({})).toBe('value-missing');
    expect(gradeOf({ valueString: '2+', valueInteger: 1 })).toBe('value-ambiguous');
  });
});

describe('kinds of urine protein stay apart', () => {
  it.each([
    ['2890-2', 0.28, 'mg/mg', 'protein-creatinine-ratio'],
    ['34366-5', 35, 'mg/mmol', 'protein-creatinine-ratio'],
    ['13801-6', 300, 'mg/g', 'protein-creatinine-ratio'],
    ['32294-1', 8, 'mg/mmol', 'albumin-creatinine-ratio'],
    ['9318-7', 70, 'mg/g', 'albumin-creatinine-ratio'],
    ['2889-4', 0.3, 'g/(24.h)', 'excretion-24h'],
    ['2888-6', 30, 'mg/dL', 'concentration'],
    ['21482-5', 30, 'mg/dL', 'concentration'],
  ])('%s %d %s is %s', (code, value, unit, kind) => {
    const result = read(observation(code, { valueQuantity: { value, unit, system: ucum, code: unit } }));
    expect(result).toMatchObject({
      kind,
      byUnit: { sentUnit: unit, values: { [unit]: value } },
      asSent: `${value} ${unit}`,
    });
  });

  it('0.28 mg/mg keeps its own number and is 31.7 mg/mmol (clinical-rules 1.6)', () => {
    const result = read(observation('2890-2', { valueQuantity: { value: 0.28, unit: 'mg/mg' } }));
    expect(result.kind === 'protein-creatinine-ratio' && result.byUnit.values['mg/mg']).toBe(0.28);
    expect(result.kind === 'protein-creatinine-ratio' && result.byUnit.values['mg/mmol']?.toFixed(1)).toBe(
      '31.7',
    );
  });

  it.each([
    ['2890-2', { valueQuantity: { value: 0.3 } }, 'unit-missing'],
    ['2890-2', { valueString: '0.3' }, 'value-not-readable'],
    ['2890-2', { valueInteger: 300 }, 'value-type-not-usable'],
    ['14585-4', { valueQuantity: { value: 8, unit: 'mmol/mol' } }, 'unit-unknown'],
    ['98121-7', { valueString: 'normal' }, 'method-not-usable'],
    ['2889-4', { valueQuantity: { value: 300, unit: 'mg' } }, 'unit-unknown'],
  ])('%s %o is set aside: %s', (code, value, reason) => {
    expect(read(observation(code, value))).toMatchObject({ kind: 'unusable', code: reason });
  });

  it('codings of two kinds are refused', () => {
    const resource = observation('2890-2', { valueQuantity: { value: 30, unit: 'mg/mmol' } });
    const two = {
      ...resource,
      code: {
        coding: [
          { system: loinc, code: '2890-2' },
          { system: loinc, code: '20454-5' },
        ],
      },
    };
    expect(read(two)).toMatchObject({ code: 'value-ambiguous', element: 'code' });
  });

  it('a code without its system is read, and that is said', () => {
    const context = contextWith();
    const resource: Observation = {
      resourceType: 'Observation',
      status: 'final',
      code: { coding: [{ code: '20454-5' }] },
      valueString: '1+',
    };
    expect(readUrineProtein(received(resource), context, at)).toMatchObject({ grade: 1 });
    expect(context.raised).toEqual(['code-without-system']);
  });

  it('other codes name no urine protein', () => {
    expect(urineProteinKindOf({ coding: [{ system: loinc, code: '5803-2' }] })).toBeUndefined();
    expect(urineProteinKindOf(undefined)).toBeUndefined();
  });
});

describe('other signs of the strip', () => {
  const sign = (code: string, value: Partial<Observation>): unknown => {
    const result = readUrineSign(received(observation(code, value)), contextWith(), at);
    return 'code' in result ? result.code : `${result.sign} ${result.present}`;
  };

  it.each([
    ['5802-4', { valueString: 'positive' }, 'nitrite true'],
    ['5802-4', { valueBoolean: false }, 'nitrite false'],
    ['5799-2', { valueString: '3+' }, 'leucocytes true'],
    ['5799-2', coded(loinc, 'LA6577-6'), 'leucocytes false'],
    ['5794-3', { valueString: 'moderate' }, 'blood true'],
    ['5794-3', {}, 'value-missing'],
  ])('%s %o: %s', (code, value, expected) => {
    expect(sign(code, value)).toBe(expected);
  });

  it('are recognised by code', () => {
    expect(urineSignOf({ coding: [{ system: loinc, code: '5802-4' }] })).toBe('nitrite');
    expect(urineSignOf({ coding: [{ system: loinc, code: '20454-5' }] })).toBeUndefined();
  });
});
