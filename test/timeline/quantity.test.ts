import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantityUnits } from '../../src/terminology/units.ts';
import { byUnitOf, canonicalUnit, readQuantity, type QuantityKind } from '../../src/timeline/quantity.ts';
import { readQuantityText } from '../../src/timeline/quantity-text.ts';

const system = 'http://unitsofmeasure.org';

const valueIn = (quantity: unknown, kind: QuantityKind, unit: string): number | undefined => {
  const read = readQuantity(quantity, kind);
  return read.kind === 'usable' ? read.byUnit.values[unit] : undefined;
};

const codeOf = (quantity: unknown, kind: QuantityKind): string => {
  const read = readQuantity(quantity, kind);
  return read.kind === 'usable' ? 'usable' : read.code;
};

const messageOf = (quantity: unknown, kind: QuantityKind): string => {
  const read = readQuantity(quantity, kind);
  return read.kind === 'usable' ? '' : read.message;
};

// Wordings seen in files: terminology.md section 11, QUIRKS.md.
describe('a unit is recognised by code or by wording', () => {
  it.each<[QuantityKind, Record<string, unknown>, string, number]>([
    ['pressure', { value: 142, unit: 'mmHg', system, code: 'mm[Hg]' }, 'mm[Hg]', 142],
    ['pressure', { value: 142, unit: 'mm[Hg]' }, 'mm[Hg]', 142],
    ['pressure', { value: 142, unit: 'mmHg' }, 'mm[Hg]', 142],
    ['pressure', { value: 142, unit: 'mm Hg' }, 'mm[Hg]', 142],
    ['pressure', { value: 142, unit: 'MMHG' }, 'mm[Hg]', 142],
    ['pressure', { value: 142, system, code: 'mmHg' }, 'mm[Hg]', 142],
    ['pressure', { value: 142, code: 'mm[Hg]' }, 'mm[Hg]', 142],
    ['platelets', { value: 132, unit: '10e9/L' }, '10*9/L', 132],
    ['platelets', { value: 132, unit: 'x10^9/L' }, '10*9/L', 132],
    ['platelets', { value: 132, unit: '×10⁹/L' }, '10*9/L', 132],
    ['platelets', { value: 132, system, code: '10^9/L' }, '10*9/L', 132],
    ['platelets', { value: 132, unit: 'K/uL' }, '10*9/L', 132],
    ['platelets', { value: 132, unit: 'G/L' }, '10*9/L', 132],
    ['platelets', { value: 1.32, unit: 'lakhs/cumm' }, '10*9/L', 132],
    ['platelets', { value: 132000, unit: '/cumm' }, '10*9/L', 132],
    ['alt', { value: 52, unit: 'IU/L' }, 'U/L', 52],
    ['alt', { value: 52, system, code: '[IU]/L' }, 'U/L', 52],
    ['alt', { value: 0.5, system, code: 'ukat/L' }, 'U/L', 30],
    ['creatinine', { value: 92, unit: 'µmol/L' }, 'umol/L', 92],
    ['creatinine', { value: 92, unit: 'μmol/L' }, 'umol/L', 92],
    ['creatinine', { value: 92, unit: 'mcmol/L' }, 'umol/L', 92],
    ['creatinine', { value: 1.1, unit: 'mg/dl' }, 'mg/dL', 1.1],
    ['protein-excretion', { value: 0.3, unit: 'g/24h' }, 'mg/(24.h)', 300],
    ['protein-excretion', { value: 300, unit: 'mg/24 h' }, 'mg/(24.h)', 300],
    ['protein-excretion', { value: 0.35, system, code: 'g/d' }, 'mg/(24.h)', 350],
    ['protein-creatinine-ratio', { value: 35, unit: 'mg/mmol creat' }, 'mg/mmol', 35],
    ['protein-creatinine-ratio', { value: 300, system, code: 'mg/g{creat}' }, 'mg/mg', 0.3],
    ['protein-creatinine-ratio', { value: 1500, unit: 'g/mol' }, 'mg/mmol', 1500],
    ['protein-creatinine-ratio', { value: 0.035, system, code: 'g/mmol{creat}' }, 'mg/mmol', 35],
    ['gestational-age', { value: 30, system, code: 'wk' }, 'd', 210],
    ['gestational-age', { value: 30, unit: 'weeks' }, 'd', 210],
    ['gestational-age', { value: 212, unit: 'days' }, 'd', 212],
    ['heart-rate', { value: 92, system, code: '{beats}/min' }, '/min', 92],
    ['heart-rate', { value: 92, unit: 'bpm' }, '/min', 92],
    ['oxygen-saturation', { value: 0.91, system, code: '1' }, '%', 91],
    ['sflt1-plgf-ratio', { value: 38 }, '1', 38],
    ['count', { value: 2, system, code: '{#}' }, '1', 2],
    ['body-mass-index', { value: 31, unit: 'kg/m²' }, 'kg/m2', 31],
  ])('%s %o', (kind, quantity, unit, value) => {
    expect(valueIn(quantity, kind, unit)).toBe(value);
  });
});

describe('a quantity that cannot be used says why', () => {
  it.each<[string, QuantityKind, unknown]>([
    ['value-missing', 'pressure', undefined],
    ['value-missing', 'pressure', null],
    ['value-missing', 'pressure', { unit: 'mmHg' }],
    ['value-not-readable', 'pressure', { value: '142', unit: 'mmHg' }],
    ['value-not-readable', 'pressure', { value: Number.NaN, unit: 'mmHg' }],
    ['value-not-readable', 'pressure', { value: Number.POSITIVE_INFINITY, unit: 'mmHg' }],
    ['value-not-readable', 'pressure', { value: true, unit: 'mmHg' }],
    ['value-out-of-range', 'pressure', { value: -142, unit: 'mmHg' }],
    ['value-out-of-range', 'oxygen-saturation', { value: 980, unit: '%' }],
    ['unit-missing', 'pressure', { value: 142 }],
    ['unit-missing', 'pressure', { value: 142, unit: ' ' }],
    ['unit-missing', 'protein-creatinine-ratio', { value: 0.3 }],
    ['unit-unknown', 'protein-creatinine-ratio', { value: 0.3, system, code: '1' }],
    ['unit-unknown', 'albumin-creatinine-ratio', { value: 8, system, code: 'mmol/mol{creat}' }],
    ['unit-unknown', 'gestational-age', { value: 30, system, code: 'cm' }],
    ['unit-unknown', 'gestational-age', { value: 30, unit: 'weeks', system, code: 'cm' }],
    ['unit-unknown', 'gestational-age', { value: 7, system, code: 'mo' }],
    ['unit-unknown', 'haemoglobin', { value: 7, unit: 'mmol/L' }],
    ['unit-unknown', 'platelets', { value: 132, unit: 'g/L' }],
    ['unit-unknown', 'pressure', { value: 142, system: 'http://example.org/units', code: 'mm[Hg]' }],
    ['unit-unknown', 'creatinine', { value: 1, unit: 'mg/dL', system, code: 'umol/L' }],
    ['unit-unknown', 'pressure', { value: 142, unit: '__proto__' }],
    ['modifier-not-understood', 'pressure', { value: 142, unit: 'mmHg', comparator: 'ad' }],
  ])('%s: %s %o', (code, kind, quantity) => {
    expect(codeOf(quantity, kind)).toBe(code);
  });

  it('a reason for the absence, in an extension, is kept apart from nothing sent', () => {
    const extension = [
      { url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason', valueCode: 'unknown' },
    ];
    expect(codeOf({ extension }, 'pressure')).toBe('value-absent-with-reason');
    expect(codeOf({ _value: { extension }, unit: 'mmHg' }, 'pressure')).toBe('value-absent-with-reason');
  });

  it('a ratio without a unit names the units it could have had', () => {
    expect(messageOf({ value: 0.3 }, 'protein-creatinine-ratio')).toMatch(/mg\/g, mg\/mg or mg\/mmol/);
  });

  it('no message holds the value', () => {
    for (const quantity of [
      { value: 98765 },
      { value: 98765, unit: 'furlong' },
      { value: -98765, unit: 'mmHg' },
    ]) {
      expect(messageOf(quantity, 'pressure')).not.toContain('98765');
    }
  });

  it('the faulty element is named', () => {
    expect(
      readQuantity({ value: 1, unit: 'furlong' }, 'pressure', 'component[0].valueQuantity'),
    ).toMatchObject({
      element: 'component[0].valueQuantity.unit',
    });
  });
});

describe('what is kept', () => {
  it('a comparator stays beside the number and in the wording', () => {
    const read = readQuantity({ value: 100, comparator: '<', unit: 'K/uL' }, 'platelets');
    expect(read).toMatchObject({ measured: { value: 100, comparator: '<' }, asSent: '<100 K/uL' });
  });

  it('the unit sent is named by its UCUM code', () => {
    expect(readQuantity({ value: 19, unit: 'kPa' }, 'pressure')).toMatchObject({
      measured: { value: 143 },
      byUnit: { sentUnit: 'kPa', values: { kPa: 19, 'mm[Hg]': 143 } },
      asSent: '19 kPa',
    });
  });

  it('a pressure in mm[Hg] keeps its decimals', () => {
    expect(valueIn({ value: 114.96244492813044, unit: 'mmHg' }, 'pressure', 'mm[Hg]')).toBe(
      114.96244492813044,
    );
  });

  it('an exponent in the number is no obstacle', () => {
    expect(valueIn({ value: 1e-7, unit: 'g/dL' }, 'protein-concentration', 'mg/L')).toBe(0.001);
  });

  it('the first unit of a kind is its canonical one', () => {
    expect(canonicalUnit('creatinine')).toBe('umol/L');
    expect(byUnitOf(1, 'mg/dL', 'creatinine')?.values['umol/L']).toBe(88.4);
    expect(byUnitOf(1, 'furlong', 'creatinine')).toBeUndefined();
  });
});

describe('a quantity written as text', () => {
  it.each([
    ['35 mg/mmol', 35],
    ['>300mg/mmol', 300],
    ['<= 4.5 mg/mmol', 4.5],
  ])('%s', (text, value) => {
    expect(readQuantityText(text, 'protein-creatinine-ratio', 'valueString')).toMatchObject({
      measured: { value },
    });
  });

  it.each(['35', '0,3 g/24h', 'normal', '', '30-35 mg/mmol'])('"%s" is not guessed at', (text) => {
    expect(readQuantityText(text, 'protein-creatinine-ratio', 'valueString').kind).toBe('unusable');
  });
});

const hundredths = fc.integer({ min: 0, max: 9_000_000 }).map((whole) => Number(`${whole}e-2`));
const someKinds: readonly QuantityKind[] = [
  'pressure',
  'platelets',
  'creatinine',
  'alt',
  'protein-creatinine-ratio',
  'magnesium',
  'urine-output',
  'gestational-age',
];

describe('for any number', () => {
  it('the value in the unit sent is the value sent', () => {
    fc.assert(
      fc.property(fc.constantFrom(...someKinds), hundredths, (kind, value) => {
        for (const { code } of quantityUnits[kind].units)
          expect(byUnitOf(value, code, kind)?.values[code]).toBe(value);
      }),
    );
  });

  it('powers of ten give back the number they started from', () => {
    fc.assert(
      fc.property(hundredths, (value) => {
        const inThousands = byUnitOf(value, '10*3/uL', 'platelets')?.values['/uL'];
        expect(byUnitOf(inThousands ?? Number.NaN, '/uL', 'platelets')?.values['10*3/uL']).toBe(value);
      }),
    );
  });

  it('no shape of input throws', () => {
    fc.assert(
      fc.property(fc.anything(), (quantity) => {
        readQuantity(quantity, 'pressure');
      }),
    );
  });
});
