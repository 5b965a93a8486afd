import { describe, expect, it } from 'vitest';
import { diastolicOnly, loinc, observation, pressure, quantity, systolicOnly } from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { at, pressures, panel, systolic, diastolic } from './pressure-support.ts';

describe('values in odd places (F-P06, F-P07)', () => {
  it('reads both pressures from one text with mmHg, with a warning', () => {
    const result = built([panel(undefined, { valueString: ' 152 / 98 mmHg' })]);
    expect(result.timeline.pressures).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
    expect(result.issues).toMatchObject([{ code: 'pressure-as-text' }]);
  });

  it('treats a text without a unit like any number without a unit (decision 14)', () => {
    const result = built([panel(undefined, { valueString: '152/98' })]);
    expect(result.timeline.pressures).toEqual([]);
    expect(result.timeline.unusablePressures).toMatchObject([
      { why: 'unit-missing', systolic: 152, diastolic: 98 },
    ]);
    expect(codesOf(result)).toEqual(['unit-missing']);
  });

  it.each(['152-98', '152/98/70', '1520/98', 'high'])('refuses the text %j', (valueString) => {
    expect(codesOf(built([panel(undefined, { valueString })]))).toEqual(['value-type-not-usable']);
  });

  it('ignores a component that repeats the code of its observation, with a warning (obs-7)', () => {
    const result = built([{ ...systolicOnly(at, 152), component: [systolic(130)] }]);
    expect(result.timeline.pressures).toMatchObject([{ systolicMmHg: 152 }]);
    expect(result.issues).toMatchObject([
      { code: 'component-repeats-value' },
      { code: 'pressure-half-missing' },
    ]);
  });

  it('uses neither of two different systolic components', () => {
    const result = built([panel([systolic(152), systolic(130), diastolic(90)])]);
    expect(result.timeline.pressures).toMatchObject([{ diastolicMmHg: 90 }]);
    expect(result.timeline.pressures[0]).not.toHaveProperty('systolicMmHg');
    expect(result.issues).toMatchObject([{ code: 'value-ambiguous' }]);
  });

  it('refuses another type of value (QUIRKS: valueBoolean)', () => {
    expect(codesOf(built([observation(loinc('8480-6'), at, { valueBoolean: true })]))).toEqual([
      'value-type-not-usable',
    ]);
  });
});

describe('units (F-V04 to F-V07)', () => {
  it.each([
    [18.6, 12.0, 140, 90],
    [21.3, 14.7, 160, 110],
    [21.2, 14.6, 159, 110],
  ])('%d/%d kPa is %d/%d mm[Hg], rounded half up (clinical-rules 1.6)', (s, d, sMmHg, dMmHg) => {
    expect(pressures([pressure(at, s, d, { unit: 'kPa' })])).toMatchObject([
      { systolicMmHg: sMmHg, diastolicMmHg: dMmHg, asSent: `${String(s)}/${String(d)} kPa` },
    ]);
  });

  it('without a unit is set aside and its numbers kept for urgency', () => {
    const bare = (code: string, value: number) => ({ code: loinc(code), valueQuantity: { value } });
    const result = built([panel([bare('8480-6', 172), bare('8462-4', 112)])]);
    expect(codesOf(result)).toEqual(['unit-missing']);
    expect(result.timeline.unusablePressures).toMatchObject([
      { why: 'unit-missing', systolic: 172, diastolic: 112, asSent: '172/112 (no unit)', at: { text: at } },
    ]);
  });

  it('without a unit is read in the unit the site declares, and says so', () => {
    const bare = (code: string, value: number) => ({ code: loinc(code), valueQuantity: { value } });
    const result = built([panel([bare('8480-6', 21.3), bare('8462-4', 14)])], { defaultPressureUnit: 'kPa' });
    expect(result.timeline.pressures).toMatchObject([{ systolicMmHg: 160, diastolicMmHg: 105 }]);
    expect(result.timeline.pressures[0]?.remarks).toEqual([
      'no unit was sent; kPa is the unit this site declares',
    ]);
  });

  it('known only to be below a number is not used; at least a number is kept with a remark', () => {
    const bound = (comparator: '<' | '>=') => ({ ...quantity(160, 'mm[Hg]'), comparator });
    const half = (comparator: '<' | '>=') =>
      observation(loinc('8480-6'), at, { valueQuantity: bound(comparator) });
    expect(codesOf(built([half('<')]))).toEqual(['value-not-readable']);
    expect(pressures([half('>=')])).toMatchObject([
      {
        systolicMmHg: 160,
        asSent: '>=160/- mm[Hg]',
        remarks: ['the diastolic pressure is missing', 'the systolic pressure was at least this'],
      },
    ]);
  });
});

describe('values that may not classify (F-P09; Q1, Q2; decision 5)', () => {
  it.each([
    [90, 150, 'diastolic-not-below-systolic', 'diastolic-not-below-systolic'],
    [120, 120, 'diastolic-not-below-systolic', 'diastolic-not-below-systolic'],
    [261, 110, 'above-plausible-range', 'value-out-of-range'],
    [200, 161, 'above-plausible-range', 'value-out-of-range'],
    [59, 40, 'below-plausible-range', 'value-out-of-range'],
    [100, 29, 'below-plausible-range', 'value-out-of-range'],
    [10, 80, 'diastolic-not-below-systolic', 'diastolic-not-below-systolic'],
    [120, 300, 'above-plausible-range', 'value-out-of-range'],
  ])('%d/%d is %s: set aside, numbers kept', (s, d, why, code) => {
    const result = built([pressure(at, s, d)]);
    expect(result.timeline.pressures).toEqual([]);
    expect(result.timeline.unusablePressures).toMatchObject([{ why, systolic: s, diastolic: d }]);
    expect(result.timeline.unusablePressures[0]?.sources).toHaveLength(1);
    expect(codesOf(result)).toEqual([code]);
  });

  it.each([
    [260, 160],
    [60, 30],
  ])('%d/%d at the ends of the range is used', (s, d) => {
    expect(pressures([pressure(at, s, d)])).toHaveLength(1);
  });

  it('a swapped pair of separate observations sets both aside', () => {
    const result = built([systolicOnly(at, 90), diastolicOnly(at, 140)]);
    expect(codesOf(result)).toEqual(['diastolic-not-below-systolic', 'diastolic-not-below-systolic']);
    expect(result.timeline.unusablePressures).toHaveLength(1);
  });
});
