// Unit factors against the printed figures of clinical-rules 1.6 and against UCUM (@lhncbc/ucum-lhc).
import * as ucumPackage from '@lhncbc/ucum-lhc';
import { describe, expect, it } from 'vitest';
import { quantityUnits, type QuantityKind, type QuantityUnits } from '../../src/terminology/units.ts';
import { readQuantity } from '../../src/timeline/quantity.ts';

const kinds: Readonly<Record<string, QuantityUnits>> = quantityUnits;
const ucum = 'http://unitsofmeasure.org';

function converted(kind: QuantityKind, value: number, from: string, to: string): number | undefined {
  const read = readQuantity({ value, unit: from, system: ucum, code: from }, kind);
  return read.kind === 'usable' ? read.byUnit.values[to] : undefined;
}

describe('figures printed in clinical-rules 1.6', () => {
  it.each<[QuantityKind, number, string, string, number, number]>([
    ['creatinine', 1.1, 'mg/dL', 'umol/L', 97.2, 1],
    ['creatinine', 90, 'umol/L', 'mg/dL', 1.018, 3],
    ['creatinine', 1.0, 'mg/dL', 'umol/L', 88.4, 1],
    ['protein-creatinine-ratio', 0.3, 'mg/mg', 'mg/mmol', 33.9, 1],
    ['protein-creatinine-ratio', 30, 'mg/mmol', 'mg/mg', 0.265, 3],
    ['protein-creatinine-ratio', 0.28, 'mg/mg', 'mg/mmol', 31.7, 1],
    ['protein-creatinine-ratio', 30, 'g/mol', 'mg/mmol', 30, 9],
    ['albumin-creatinine-ratio', 8, 'mg/mmol', 'mg/g', 70.7, 1],
    ['bilirubin', 1.2, 'mg/dL', 'umol/L', 20.5, 1],
    ['platelets', 100_000, '/uL', '10*9/L', 100, 9],
    ['platelets', 100, '10*3/uL', '10*9/L', 100, 9],
    ['magnesium', 1, 'mmol/L', 'mg/dL', 2.431, 3],
    ['magnesium', 1, 'mmol/L', 'meq/L', 2, 9],
    ['pressure', 12.0, 'kPa', 'mm[Hg]', 90, 9],
    ['pressure', 18.67, 'kPa', 'mm[Hg]', 140, 9],
    ['pressure', 14.67, 'kPa', 'mm[Hg]', 110, 9],
    ['pressure', 21.33, 'kPa', 'mm[Hg]', 160, 9],
    ['pressure', 21.3, 'kPa', 'mm[Hg]', 160, 9],
    // Edge case X20: 19.0/12.4 kPa is 143/93.
    ['pressure', 19.0, 'kPa', 'mm[Hg]', 143, 9],
    ['pressure', 12.4, 'kPa', 'mm[Hg]', 93, 9],
  ])('%s: %d %s is %d in %s', (kind, value, from, to, printed, digits) => {
    expect(converted(kind, value, from, to)?.toFixed(digits)).toBe(printed.toFixed(digits));
  });

  it('100 10*3/uL is exactly 100 10*9/L, where binary arithmetic gives 99.99999999999999', () => {
    expect(converted('platelets', 100, '10*3/uL', '10*9/L')).toBe(100);
  });

  it.each([1, 7, 33, 110, 149, 150, 290, 350.5])(
    '%d thousand per microlitre keeps its digits in every unit',
    (value) => {
      expect(converted('platelets', value, '10*3/uL', '/uL')).toBe(Number(`${value}e3`));
      expect(converted('platelets', value, '10*9/L', '10*3/uL')).toBe(value);
    },
  );
});

describe('factors agree with UCUM where UCUM can convert', () => {
  const utils = ucumPackage.UcumLhcUtils.getInstance();
  // The rounded factors of clinical-rules 1.6 (molar masses, kPa) differ from UCUM on purpose.
  const pairs = Object.entries(kinds).flatMap(([kind, { units }]) =>
    units.flatMap((from) =>
      units
        .filter((to) => to !== from && kind !== 'pressure')
        .map((to) => ({ kind, from, to, result: utils.convertUnitTo(from.code, 1, to.code) })),
    ),
  );
  const comparable = pairs.filter(
    ({ result }) => result.status === 'succeeded' && typeof result.toVal === 'number',
  );

  it('has pairs to compare', () => {
    expect(comparable.length).toBeGreaterThan(100);
  });

  it.each(comparable.map((pair) => ({ ...pair, name: `${pair.kind} ${pair.from.code} ${pair.to.code}` })))(
    '$name',
    ({ from, to, result }) => {
      const ours =
        ((from.times ?? 1) * (to.over ?? 1) * 10 ** (from.tenTo - to.tenTo)) /
        ((from.over ?? 1) * (to.times ?? 1));
      const theirs = Number(result.toVal);
      expect(Math.abs(ours - theirs) / theirs).toBeLessThan(1e-9);
    },
  );

  it('1 kPa is 7.50062 mm[Hg] to the digits printed (UCUM: 7.500638)', () => {
    const result = utils.convertUnitTo('kPa', 1, 'mm[Hg]');
    expect(Number(result.toVal)).toBeCloseTo(7.50062, 4);
  });

  it('every unit is valid UCUM', () => {
    const codes = [...new Set(Object.values(kinds).flatMap(({ units }) => units.map((unit) => unit.code)))];
    const invalid = codes.filter((code) => utils.validateUnitString(code).status !== 'valid');
    expect(invalid).toEqual([]);
  });
});

describe('spellings', () => {
  it('are written lower case and without white space, as they are looked up', () => {
    const wrong = Object.values(kinds).flatMap(({ units }) =>
      units.flatMap((unit) =>
        (unit.also ?? []).filter((spelling) => spelling !== spelling.toLowerCase().replace(/\s/g, '')),
      ),
    );
    expect(wrong).toEqual([]);
  });

  it('belong to one unit of a kind only', () => {
    const twice = Object.entries(kinds).flatMap(([kind, { units }]) => {
      const all = units.flatMap((unit) => unit.also ?? []);
      return all
        .filter((spelling, position) => all.indexOf(spelling) !== position)
        .map((spelling) => `${kind} ${spelling}`);
    });
    expect(twice).toEqual([]);
  });
});
