// The grammar of a strip written as text, and what a grade says of itself: where it comes from, and why it is none.
import type { Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { gradeInCode, gradeOfNumber, gradeWritten } from '../../src/timeline/strip-grade.ts';
import { readUrineProtein, readUrineSign, urineProteinKindOf } from '../../src/timeline/urine-protein.ts';
import { loinc, observation, quantity, snomed } from '../support/resources.ts';
import { at, contextWith, received } from './received.ts';

const read = (fields: Partial<Observation>, code = loinc('20454-5')) =>
  readUrineProtein(received(observation(code, undefined, fields)), contextWith(), at);
const concept = (coding: ReturnType<typeof loinc>, text: string) => ({
  valueCodeableConcept: { ...coding, text },
});

describe('a grade written in words and signs', () => {
  // terminology.md section 2: the grammar of strings seen in files
  it.each([
    ['two   plus', 2],
    ['not \t detected', 0],
    ['NOT  DETECTED', 0],
    ['Protein 2+', 2],
    ['Protein: 2+', 2],
    ['Protein : 2+', 2],
    ['protein:2+', 2],
    ['proteinuria ++', 2],
    ['Urine protein trace', 0.5],
    ['urine proteinuria: negative', 0],
    ['Protein test = +++', 3],
    ['a = b = 1+', 1],
    ['2+ 100 mg/dL', 2],
    ['2+ 100mg/dl', 2],
    ['2+ (100  mg/dL )', 2],
    ['trace (15.5 mg/dL)', 0.5],
    ['trace (15.25 mg/dL)', 0.5],
    ['1+ (30 MG/DL)', 1],
    ['negative 0 mg/dL', 0],
    ['[3+]', 3],
    ['(trace)', 0.5],
    ['trace.', 0.5],
    ['Trace protein', 0.5],
    ['2+ protein', 2],
    ['3+ proteinuria', 3],
    ['no protein', 0],
    ['1+ of protein in urine', 1],
    ['2+ 100 mg/dL.', 2],
    ['2+.', 2],
    ['２＋', 2],
    ['plus 4', 4],
    ['+ 4', 4],
    ['4plus', 4],
    ['+1', 1],
    ['+2', 2],
    ['+3', 3],
    ['plus', 1],
    ['-ve', 0],
    ['négatif', 0],
    ['small', 'scale-unknown'],
    ['indeterminate', 'no-result'],
    ['not done', 'no-result'],
    ['+ve', 'positive-ungraded'],
  ])('%j is %s', (text, meaning) => {
    expect(gradeWritten(text)).toBe(meaning);
  });

  it.each([
    '12+',
    'x2+',
    '2+3',
    '2+ or 3+',
    '+2+',
    '0+',
    '+0',
    '5 plus',
    '2',
    '2.',
    'trace..',
    'tra.ce',
    '2+ 100 mg/dL seen',
    '2+ 100 g/dL',
    '100 mg/dL',
    '2 + 3 plus',
    '+++++',
    'x+',
    '+x',
    '=',
    'protein',
    'albumin 2+',
  ])('%j states none', (text) => {
    expect(gradeWritten(text)).toBeUndefined();
  });
});

describe('a coded grade with a text', () => {
  it.each([
    ['2+ and "positive"', concept(loinc('LA11842-4'), 'positive'), 2],
    ['2+ and "moderate"', concept(loinc('LA11842-4'), 'moderate'), 2],
    ['trace and "small"', concept(loinc('LA11832-5'), 'small'), 0.5],
    ['positive and "moderate"', concept(loinc('LA6576-8'), 'moderate'), 'positive-ungraded'],
    ['positive and "3+"', concept(loinc('LA6576-8'), '3+'), 3],
    ['moderate and "2+"', concept(loinc('LA6751-7'), '2+'), 2],
    ['2+ and "see note"', concept(loinc('LA11842-4'), 'see note'), 2],
    ['a local code and "2+"', concept({ coding: [{ system: 'urn:local', code: '7' }] }, '2+'), 2],
  ])('%s', (_, value, grade) => {
    expect(read(value)).toMatchObject({ kind: 'strip', grade });
  });

  it.each([
    ['negative and "moderate"', concept(loinc('LA6577-6'), 'moderate'), 'value-ambiguous'],
    ['moderate and "negative"', concept(loinc('LA6751-7'), 'negative'), 'value-ambiguous'],
    ['positive and "negative"', concept(loinc('LA6576-8'), 'negative'), 'value-ambiguous'],
    ['inconclusive and "2+"', concept(loinc('LA9663-1'), '2+'), 'value-ambiguous'],
    ['inconclusive and "positive"', concept(loinc('LA9663-1'), 'positive'), 'value-ambiguous'],
    ['2+ and "invalid"', concept(loinc('LA11842-4'), 'invalid'), 'value-ambiguous'],
    ['moderate and "positive"', concept(loinc('LA6751-7'), 'positive'), 'value-not-readable'],
  ])('%s is refused', (_, value, code) => {
    expect(read(value)).toMatchObject({ kind: 'unusable', code, element: 'valueCodeableConcept' });
  });

  it('keeps the words that people read, else the code', () => {
    expect(read(concept(loinc('LA11842-4'), '(++)'))).toMatchObject({ asSent: '(++)', remarks: [] });
    expect(read({ valueCodeableConcept: loinc('LA11842-4', 'Two') })).toMatchObject({ asSent: 'Two' });
    expect(read({ valueCodeableConcept: loinc('LA11842-4') })).toMatchObject({ asSent: 'LA11842-4' });
  });
});

describe('where a grade comes from', () => {
  it('is said of a bare number, a bin label and an interpretation, and of nothing else', () => {
    expect(read({ valueInteger: 2 })).toMatchObject({
      asSent: '2',
      remarks: ['A bare number is read as that many plus signs.'],
    });
    expect(read({ valueQuantity: quantity(100, 'mg/dL') })).toMatchObject({
      grade: 2,
      remarks: ['Grade taken from the label of the strip in mg/dL.'],
    });
    expect(read({ interpretation: [{ coding: [{ code: 'POS' }] }] })).toMatchObject({
      asSent: 'POS',
      remarks: ['Read from the interpretation.'],
    });
    expect(read({ valueString: '2+' })).toMatchObject({ asSent: '2+', remarks: [] });
    expect(read({ valueBoolean: true })).toMatchObject({ asSent: 'true', remarks: [] });
  });

  it('an upper bound on the label of a negative strip is negative, and no more than that', () => {
    const none = read({ valueQuantity: { ...quantity(0, 'mg/dL'), comparator: '<=' } });
    expect(none).toMatchObject({
      grade: 0,
      remarks: ['Grade taken from the label of the strip in mg/dL.'],
    });
    const above = read({ valueQuantity: { ...quantity(1000, 'mg/dL'), comparator: '>' } });
    expect(above).toMatchObject({ grade: 4, remarks: ['At least this grade.'] });
  });

  it.each(['<', '<='] as const)('an upper bound with %s on any other label is no grade', (comparator) => {
    const sent = read({ valueQuantity: { ...quantity(300, 'mg/dL'), comparator } });
    expect(sent).toMatchObject({ code: 'value-not-readable', element: 'valueQuantity' });
  });

  it('the code of a finding states it in words or as code, and without a remark', () => {
    const named = snomed('167276005', 'Urine protein test = ++ (finding)');
    expect(gradeInCode(named)).toEqual({
      kind: 'usable',
      grade: 2,
      asSent: 'Urine protein test = ++ (finding)',
      remarks: [],
    });
    expect(gradeInCode(snomed('167276005'))?.asSent).toBe('167276005');
    expect(gradeInCode(loinc('LA11842-4'))).toBeUndefined();
  });

  it('the codes of two findings state none', () => {
    const coding = ['167276005', '167277001'].map((code) => ({ system: 'http://snomed.info/sct', code }));
    expect(gradeInCode({ coding })).toBeUndefined();
    expect(urineProteinKindOf({ coding })).toBeUndefined();
  });

  it.each(['2', true, null])('a whole number sent as %j is no number', (value) => {
    expect(gradeOfNumber(value, 'valueInteger')).toMatchObject({ code: 'value-not-readable' });
  });
});

describe('a measured quantity of protein', () => {
  it('has no remark', () => {
    const ratio = read({ valueQuantity: quantity(35, 'mg/mmol') }, loinc('34366-5'));
    expect(ratio).toMatchObject({ kind: 'protein-creatinine-ratio', remarks: [] });
  });
});

describe('why there is no grade', () => {
  it.each([
    [{ valueString: 'indeterminate' }, /gave no result/],
    [{ valueString: 'see note' }, /not understood/],
    [{ valueString: 'large' }, /State the scale/],
    [{ valueCodeableConcept: loinc('LA9663-1') }, /gave no result/],
    [{ valueInteger: 7 }, /not a grade from 0 to 4/],
    [{ valueQuantity: quantity(45, 'mg/dL') }, /label of a colour bin/],
    [{ valueString: ' ' }, /text is empty/],
    [{ valueBoolean: 'yes' as unknown as boolean }, /not true or false/],
  ])('%j says so', (fields, message) => {
    const result = read(fields);
    expect(result.kind === 'unusable' && result.message).toMatch(message);
  });
});

describe('a sign of the strip that a grade does not tell', () => {
  const sign = (fields: Partial<Observation>) =>
    readUrineSign(received(observation(loinc('5802-4'), undefined, fields)), contextWith(), at);

  it.each([
    ['yes', { valueString: 'yes' }, true, 'yes'],
    ['no', { valueString: 'no' }, false, 'no'],
    ['a coded yes', { valueCodeableConcept: snomed('373066001') }, true, '373066001'],
    ['a coded no', { valueCodeableConcept: snomed('373067005') }, false, '373067005'],
    ['a size in words', { valueString: 'Large' }, true, 'Large'],
    ['a size in the text of a concept', { valueCodeableConcept: { text: 'small' } }, true, 'small'],
    ['a trace', { valueString: 'trace' }, true, 'trace'],
  ])('%s', (_, fields, present, asSent) => {
    expect(sign(fields)).toMatchObject({ sign: 'nitrite', present, asSent });
  });

  it.each([
    ['words that say nothing', { valueString: 'see note' }],
    ['no result', { valueString: 'invalid' }],
  ])('%s', (_, fields) => {
    expect(sign(fields)).toMatchObject({ kind: 'unusable', code: 'value-not-readable' });
  });
});
