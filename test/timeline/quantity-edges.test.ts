// Numbers at the ends of their range, factors that are not powers of ten, and the words for a quantity that is none.
import { describe, expect, it } from 'vitest';
import { byUnitOf, readQuantity, type QuantityKind } from '../../src/timeline/quantity.ts';
import { readQuantityText } from '../../src/timeline/quantity-text.ts';

const messageOf = (quantity: unknown, kind: QuantityKind): string => {
  const read = readQuantity(quantity, kind);
  return read.kind === 'usable' ? '' : read.message;
};

describe('a number in another unit', () => {
  // clinical-rules 1.6 and UCUM: factors as printed
  it.each<[QuantityKind, number, string, string, number]>([
    ['urine-output', 2400, 'mL/(24.h)', 'mL/h', 100],
    ['urine-output', 2.4, 'L/d', 'mL/h', 100],
    ['urine-output', 30, 'mL/h', 'mL/(24.h)', 720],
    ['urine-output', 0.72, 'L/(24.h)', 'mL/d', 720],
    ['magnesium', 4.862, 'mg/dL', 'mmol/L', 2],
    ['magnesium', 4, 'meq/L', 'mmol/L', 2],
    ['magnesium', 2, 'mmol/L', 'mg/dL', 4.862],
    ['magnesium', 4, 'meq/L', 'mg/dL', 4.862],
    ['duration', 90, 's', 'min', 1.5],
    ['duration', 1.5, 'h', 's', 5400],
    ['length', 10, '[in_i]', 'cm', 25.4],
    ['length', 0.254, 'm', '[in_i]', 10],
    ['alt', 1, 'ukat/L', 'nkat/L', 1000],
    ['alt', 500, 'nkat/L', 'U/L', 30],
    ['creatinine', 1, 'mg/dL', 'mg/L', 10],
    ['creatinine', 10, 'mg/L', 'umol/L', 88.4],
    ['gestational-age', 217, 'd', 'wk', 31],
    ['pressure', 120, 'mm[Hg]', 'kPa', 15.9986774427],
    ['pressure', 18.6, 'kPa', 'mm[Hg]', 140],
    ['pressure', 18.5318, 'kPa', 'mm[Hg]', 139],
    ['pressure', 18.6, 'kPa', 'kPa', 18.6],
  ])('%s: %d %s is, in %s, %d', (kind, value, unit, other, expected) => {
    expect(byUnitOf(value, unit, kind)?.values[other]).toBe(expected);
  });

  it.each<[QuantityKind, number, string, string, number]>([
    ['protein-concentration', 0.07, 'mg/L', 'mg/dL', 0.007],
    ['protein-concentration', 0.07, 'g/L', 'mg/dL', 7],
    ['protein-concentration', 0.14, 'g/dL', 'mg/dL', 140],
    ['platelets', 0.07, '10*5/uL', '10*9/L', 7],
    ['platelets', 0.03, '/uL', '10*9/L', 0.00003],
    ['platelets', 132_000, '/uL', '10*9/L', 132],
    ['platelets', 132_001, '/uL', '10*9/L', 132.001],
    ['haemoglobin', 11.3, 'g/dL', 'g/L', 113],
    ['haemoglobin', 7, 'g/L', 'g/dL', 0.7],
    ['oxygen-saturation', 0.07, '1', '%', 7],
    ['length', 0.29, 'm', 'cm', 29],
    ['plgf', 0.57, 'ng/mL', 'pg/mL', 570],
    ['platelets', 1e-7, '10*9/L', '/L', 100],
    ['platelets', 1.5e21, '/L', '10*9/L', 1.5e12],
    ['platelets', 3e15, '10*9/L', '/L', 3e24],
    ['platelets', 2, '10*9/L', '/L', 2e9],
  ])('%s: the decimal point is moved, so that %d %s is, in %s, the number written %d', (...row) => {
    const [kind, value, unit, other, expected] = row;
    expect(byUnitOf(value, unit, kind)?.values[other]).toBe(expected);
  });
});

describe('the ends of a range', () => {
  it.each<[QuantityKind, number, string, boolean]>([
    ['oxygen-saturation', 100, '%', true],
    ['oxygen-saturation', 100.1, '%', false],
    ['oxygen-saturation', 1, '1', true],
    ['oxygen-saturation', 1.01, '1', false],
    ['urine-ph', 14, '[pH]', true],
    ['urine-ph', 14.1, '[pH]', false],
    ['urine-specific-gravity', 2, '1', true],
    ['urine-specific-gravity', 1015, '1', false],
    ['pressure', 0, 'mm[Hg]', true],
    ['pressure', 1e9, 'mm[Hg]', true],
    ['pressure', -0.1, 'mm[Hg]', false],
  ])('%s of %d %s is possible: %s', (kind, value, code, isPossible) => {
    const read = readQuantity({ value, code }, kind);
    expect(read.kind === 'usable' ? 'usable' : read.code).toBe(isPossible ? 'usable' : 'value-out-of-range');
  });
});

describe('a unit', () => {
  it.each<[QuantityKind, Record<string, unknown>, string]>([
    ['pressure', { value: 1, unit: 'mm \t  Hg' }, 'mm[Hg]'],
    ['pressure', { value: 1, unit: 'millimeters of mercury' }, 'mm[Hg]'],
    ['platelets', { value: 1, unit: 'Giga/L' }, '10*9/L'],
    ['count', { value: 1, unit: '{fetuses}' }, '1'],
    ['heart-rate', { value: 1, unit: ' {beats}/min ' }, '/min'],
    ['protein-creatinine-ratio', { value: 1, unit: 'mg{protein}/mmol{creat}' }, 'mg/mmol'],
    ['protein-creatinine-ratio', { value: 1, unit: 'mg/mg', code: 'g/g' }, 'g/g'],
    ['protein-creatinine-ratio', { value: 1, unit: 'furlong', code: 'mg/mg' }, 'mg/mg'],
    ['alt', { value: 1, unit: 'U/L', code: '[IU]/L' }, '[IU]/L'],
    ['pressure', { value: 1, unit: 'mmHg', system: 'http://example.org', code: 'x' }, 'mm[Hg]'],
  ])('%s %j is read as %s', (kind, quantity, code) => {
    const read = readQuantity(quantity, kind);
    expect(read.kind === 'usable' && read.byUnit.sentUnit).toBe(code);
  });

  it.each<[QuantityKind, Record<string, unknown>, string]>([
    ['protein-creatinine-ratio', { value: 1, unit: 'mg/g', code: 'mg/mg' }, 'unit'],
    ['urine-output', { value: 1, unit: 'mL/h', code: 'mL/d' }, 'unit'],
    ['magnesium', { value: 1, unit: 'meq/L', code: 'mmol/L' }, 'unit'],
    ['creatinine', { value: 1, unit: 'mg/L', code: 'umol/L' }, 'unit'],
    ['platelets', { value: 1, code: 'g/L' }, 'code'],
    ['pressure', { value: 1, system: 'http://example.org', code: 'mm[Hg]' }, 'system'],
  ])('%s %j is refused at its %s', (kind, quantity, element) => {
    expect(readQuantity(quantity, kind)).toMatchObject({
      code: 'unit-unknown',
      element: `valueQuantity.${element}`,
    });
  });

  it('is found for every kind by its own table alone', () => {
    const code = '10*9/L';
    expect(readQuantity({ value: 1, code }, 'platelets').kind).toBe('usable');
    expect(readQuantity({ value: 1, code }, 'pressure')).toMatchObject({ code: 'unit-unknown' });
    expect(readQuantity({ value: 1, code }, 'platelets').kind).toBe('usable');
  });
});

describe('the words for a quantity that cannot be used', () => {
  it.each<[unknown, QuantityKind, RegExp]>([
    [{ value: '142', unit: 'mmHg' }, 'pressure', /The value is text/],
    [{ value: true, unit: 'mmHg' }, 'pressure', /not a number/],
    [{ value: null, unit: 'mmHg' }, 'pressure', /has no value/],
    [{ value: 1, unit: 'months' }, 'gestational-age', /months differ in length/],
    [{ value: 1, unit: 'mmol/L' }, 'haemoglobin', /one chain or four/],
    [{ value: 1, code: 'mmol/mol{creat}' }, 'protein-creatinine-ratio', /molar ratio/],
    [{ value: 1, unit: 'furlong' }, 'pressure', /Send one of mm\[Hg\], kPa\.$/],
    [
      { value: 1 },
      'alt',
      /^The number has no unit\. Send one of U\/L, \[IU\]\/L, mU\/mL, ukat\/L, nkat\/L\.$/,
    ],
    [{ value: 1 }, 'pressure', /without a unit cannot be used/],
  ])('%j as %s', (quantity, kind, message) => {
    expect(messageOf(quantity, kind)).toMatch(message);
  });

  it('of an unknown comparator name the comparator; one that is null is none', () => {
    expect(readQuantity({ value: 1, unit: 'mmHg', comparator: '=' }, 'pressure')).toMatchObject({
      code: 'modifier-not-understood',
      element: 'valueQuantity.comparator',
    });
    const read = readQuantity({ value: 1, unit: 'mmHg', comparator: null }, 'pressure');
    expect(read).toMatchObject({ measured: { value: 1 }, asSent: '1 mmHg' });
    expect(read.kind === 'usable' && read.measured).not.toHaveProperty('comparator');
  });

  it('a number that needs no unit is kept without one', () => {
    expect(readQuantity({ value: 38 }, 'sflt1-plgf-ratio')).toMatchObject({ asSent: '38' });
    expect(readQuantity({ value: 2, code: '1' }, 'count')).toMatchObject({ asSent: '2' });
    expect(readQuantity({ value: 2, unit: '1', code: '1' }, 'count')).toMatchObject({ asSent: '2' });
  });
});

describe('a quantity in a text', () => {
  const read = (text: unknown) => readQuantityText(text, 'protein-creatinine-ratio', 'valueString');
  it.each([
    [' 35 mg/mmol ', { value: 35 }, '35 mg/mmol'],
    ['35mg/mmol', { value: 35 }, '35mg/mmol'],
    ['0.35 g/mmol', { value: 350 }, '0.35 g/mmol'],
    ['> 300 mg/mmol', { value: 300, comparator: '>' }, '> 300 mg/mmol'],
    ['<=4.5 mg/mmol', { value: 4.5, comparator: '<=' }, '<=4.5 mg/mmol'],
  ])('%j is %j, kept as sent', (text, measured, asSent) => {
    expect(read(text)).toMatchObject({ measured, asSent });
    const found = read(text);
    expect(found.kind === 'usable' && found.measured).toEqual(measured);
  });

  it.each([
    ['35', 'value-not-readable', /not a number with its unit/],
    ['35,5 mg/mmol', 'value-not-readable', /not a number with its unit/],
    ['about 35 mg/mmol', 'value-not-readable', /not a number with its unit/],
    [35, 'value-not-readable', /not a number with its unit/],
    [undefined, 'value-not-readable', /not a number with its unit/],
    ['35 furlong', 'unit-unknown', /Send one of/],
    ['35 1', 'unit-unknown', /unit 1/],
  ])('%j is refused: %s', (text, code, message) => {
    const found = read(text);
    expect(found).toMatchObject({ kind: 'unusable', code, element: 'valueString' });
    expect(found.kind === 'unusable' && found.message).toMatch(message);
  });
});
