// Odd but possible ways to send a pressure: as members of a panel, as numbers with faults, as text, as a lower bound.
import type { FhirResource, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import {
  diastolicOnly,
  loinc,
  observation,
  pressure,
  quantity,
  snomed,
  systolicOnly,
} from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { at, diastolic, panel, pressures } from './pressure-support.ts';

const withMembers = (...ids: readonly string[]): Partial<Observation> => ({
  id: 'p',
  hasMember: ids.map((id) => ({ reference: `Observation/${id}` })),
});
const named = <R extends FhirResource>(id: string, resource: R): R => ({ ...resource, id });
const mean = (code: string, value: number) =>
  observation(loinc(code), at, { valueQuantity: quantity(value, 'mm[Hg]') });

describe('a panel with members (F-P04)', () => {
  it('of two systolics joins nothing: its members are paired like stand-alone values', () => {
    const found = pressures([
      panel(undefined, withMembers('s1', 's2', 'd')),
      named('s1', systolicOnly('2026-02-01T09:00:00Z', 152)),
      named('s2', systolicOnly('2026-02-01T09:30:00Z', 148)),
      named('d', diastolicOnly('2026-02-01T09:30:00Z', 98)),
    ]);
    expect(found.map(({ systolicMmHg, diastolicMmHg }) => [systolicMmHg, diastolicMmHg])).toEqual([
      [152, undefined],
      [148, 98],
    ]);
  });

  it('of two diastolics joins nothing', () => {
    const found = pressures([
      panel(undefined, withMembers('s', 'd1', 'd2')),
      named('s', systolicOnly('2026-02-01T09:00:00Z', 152)),
      named('d1', diastolicOnly('2026-02-01T09:30:00Z', 98)),
      named('d2', diastolicOnly('2026-02-01T10:00:00Z', 96)),
    ]);
    expect(found).toHaveLength(3);
  });

  it('of a reading and half an average joins nothing', () => {
    const { timeline } = built([
      panel(undefined, withMembers('s', 'd')),
      named('s', systolicOnly(at, 152)),
      named('d', mean('96609-3', 87)),
    ]);
    expect(timeline.pressures).toMatchObject([{ systolicMmHg: 152 }]);
    expect(timeline.meanPressures).toMatchObject([{ diastolicMmHg: 87 }]);
  });

  it('of one half is that half, with the panel among its sources', () => {
    const [found] = pressures([panel(undefined, withMembers('s')), named('s', systolicOnly(at, 152))]);
    expect(found).toMatchObject({ systolicMmHg: 152 });
    expect(found?.sources).toHaveLength(2);
  });

  it.each<[string, string, object]>([
    ['systolic', '8480-6', { systolicMmHg: 152 }],
    ['diastolic', '8462-4', { diastolicMmHg: 152 }],
  ])('of a %s alone, without a time, lends its time to it', (_, code, expected) => {
    const timeless = observation(loinc(code), undefined, {
      id: 'm',
      valueQuantity: quantity(152, 'mm[Hg]'),
    });
    const found = pressures([panel(undefined, withMembers('m')), timeless]);
    expect(found).toMatchObject([{ ...expected, at: { text: at } }]);
  });

  it('of one half leaves it free for its other half outside the panel, a few minutes later', () => {
    const found = pressures([
      panel(undefined, withMembers('s')),
      named('s', systolicOnly(at, 152)),
      diastolicOnly('2026-02-01T10:03:00Z', 98),
    ]);
    expect(found).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
  });

  it('of something that is no pressure is not a reading', () => {
    const pulse = observation(loinc('8867-4'), at, { id: 'h', valueQuantity: quantity(80, '/min') });
    const result = built([panel(undefined, withMembers('h')), pulse]);
    expect(result.timeline.pressures).toEqual([]);
    expect(codesOf(result)).toContain('reference-unresolved');
  });

  it('of a whole reading keeps it, and needs nothing of the panel', () => {
    const result = built([panel(undefined, withMembers('r')), named('r', pressure(at, 152, 98))]);
    expect(result.timeline.pressures).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
    expect(result.notNeeded.map(({ reference }) => reference)).toEqual(['Observation/p']);
  });

  it('lends arm and position to its members, whose own go before', () => {
    const position = { code: loinc('8361-8'), valueCodeableConcept: snomed('33586001') };
    const sent = (arm: Partial<Observation>) => [
      panel([position], { ...withMembers('s', 'd'), bodySite: snomed('368208006') }),
      named('s', { ...systolicOnly(at, 152), ...arm }),
      named('d', diastolicOnly(at, 98)),
    ];
    expect(pressures(sent({}))).toMatchObject([{ arm: 'left', technique: { position: 'sitting' } }]);
    expect(pressures(sent({ bodySite: snomed('368209003') }))).toMatchObject([{ arm: 'right' }]);
  });

  it('without an arm leaves its members without one', () => {
    const [found] = pressures([
      panel(undefined, withMembers('s', 'd')),
      named('s', systolicOnly(at, 152)),
      named('d', diastolicOnly(at, 98)),
    ]);
    expect(found).not.toHaveProperty('arm');
  });

  it('is one reading beside stand-alone readings, which stay', () => {
    expect(
      pressures([
        panel(undefined, withMembers('s', 'd')),
        named('s', systolicOnly(at, 152)),
        named('d', diastolicOnly(at, 98)),
        pressure('2026-02-01T08:00:00Z', 120, 76),
      ]),
    ).toHaveLength(2);
  });

  it('whose time lies in the future does not lend it', () => {
    const timeless = (code: string, id: string) =>
      observation(loinc(code), undefined, { id, valueQuantity: quantity(150, 'mm[Hg]') });
    const { timeline } = built([
      panel(undefined, { ...withMembers('s'), effectiveDateTime: '2026-03-01T10:00:00Z' }),
      timeless('8480-6', 's'),
    ]);
    expect(timeline.pressures).toEqual([]);
  });
});

describe('a number with a fault, kept for urgency (decisions 5 and 14; F-V09)', () => {
  const kept = (value: Partial<Observation>) =>
    built([observation(loinc('8480-6'), at, value)]).timeline.unusablePressures[0]?.systolic;

  it.each<[string, Partial<Observation>, number]>([
    ['a whole number', { valueInteger: 180 }, 180],
    ['"180"', { valueString: '180' }, 180],
    ['"180 mmHg"', { valueString: '180 mmHg' }, 180],
    ['"180mm Hg"', { valueString: '180mm Hg' }, 180],
    ['"180 mm[Hg]"', { valueString: '180 mm[Hg]' }, 180],
    ['"about 24,0 kPa"', { valueString: 'about 24,0 kPa' }, 180],
    ['"24.0kPa"', { valueString: '24.0kPa' }, 180],
    [
      'the upper end of a range',
      { valueRange: { low: quantity(150, 'mm[Hg]'), high: quantity(180, 'mm[Hg]') } },
      180,
    ],
    ['the lower end of a range without an upper', { valueRange: { low: quantity(150, 'mm[Hg]') } }, 150],
    ['psi', { valueQuantity: quantity(3.5, '[psi]') }, 181],
    ['cm[Hg]', { valueQuantity: quantity(18, 'cm[Hg]') }, 180],
    ['a unit that is none of pressure', { valueQuantity: quantity(180, 'mg/dL') }, 180],
    [
      'a code and a text that name different units: the higher',
      { valueQuantity: { ...quantity(24, 'kPa'), unit: 'mmHg' } },
      180,
    ],
    [
      'a number written as text',
      { valueQuantity: { ...quantity(0, 'mm[Hg]'), value: ' 180 ' as unknown as number } },
      180,
    ],
    [
      'a number written with a comma',
      { valueQuantity: { ...quantity(0, 'kPa'), value: '24,0' as unknown as number } },
      180,
    ],
    ['zero, with a foreign unit', { valueQuantity: quantity(0, 'mg/dL') }, 0],
    ['two values: the higher', { valueInteger: 150, valueString: '180' }, 180],
  ])('%s', (_, value, expected) => {
    expect(kept(value)).toBe(expected);
  });

  it.each<[string, Partial<Observation>]>([
    ['words', { valueString: 'high' }],
    ['below zero', { valueQuantity: quantity(-180, 'mm[Hg]') }],
    [
      'a blank text for a number',
      { valueQuantity: { ...quantity(0, 'mm[Hg]'), value: ' ' as unknown as number } },
    ],
    [
      'a word for a number',
      { valueQuantity: { ...quantity(0, 'mm[Hg]'), value: 'high' as unknown as number } },
    ],
    ['yes', { valueBoolean: true }],
    ['known only to be below', { valueQuantity: { ...quantity(180, 'mg/dL'), comparator: '<' } }],
    ['a range without ends', { valueRange: {} }],
  ])('none from %s', (_, value) => {
    expect(kept(value)).toBeUndefined();
  });

  it('is said with its fault, and beside the sound half', () => {
    const odd = { code: loinc('8480-6'), valueQuantity: quantity(180, 'mg/dL') };
    const { timeline } = built([panel([odd, diastolic(98)])]);
    expect(timeline.pressures).toMatchObject([{ diastolicMmHg: 98 }]);
    expect(timeline.pressures[0]).not.toHaveProperty('systolicMmHg');
    expect(timeline.unusablePressures).toMatchObject([{ why: 'unit-unknown', systolic: 180, diastolic: 98 }]);
    expect(timeline.unusablePressures[0]?.fault?.element).toContain('component[0]');
  });

  it('without a unit has no fault of form', () => {
    const bare = { code: loinc('8480-6'), valueQuantity: { value: 180 } };
    const { timeline } = built([panel([bare])]);
    expect(timeline.unusablePressures).toMatchObject([{ why: 'unit-missing', systolic: 180 }]);
    expect(timeline.unusablePressures[0]).not.toHaveProperty('fault');
  });
});

describe('a pressure as text (F-P06)', () => {
  const text = (valueString: string) => built([panel(undefined, { valueString })]).timeline;

  it.each(['152/98 mmHg', '152/98mmHg', '152 / 98 mm Hg', '152/98 mm[Hg]', '152/98 MMHG '])(
    '%j is read',
    (sent) => {
      expect(text(sent).pressures).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
    },
  );

  it.each([
    ['BP: 180/115 mmHg, left arm', 180, 115],
    ['24,0/15,0 kPa', 180, 113],
    ['taken 2026-02-01: 180 / 115', 180, 115],
  ])('among words, "%s" is kept for urgency', (sent, s, d) => {
    expect(text(sent).pressures).toEqual([]);
    expect(text(sent).unusablePressures).toMatchObject([{ systolic: s, diastolic: d }]);
  });

  it.each(['on 12/10/2025', '152/98/70', '1/2', '1520/980'])('%j holds none', (sent) => {
    expect(text(sent).pressures).toEqual([]);
    expect(text(sent).unusablePressures.flatMap(({ systolic: s }) => s ?? [])).toEqual([]);
  });
});

describe('a lower bound (F-V09)', () => {
  const bound = (code: string, value: number, comparator?: '>' | '>=') => ({
    code: loinc(code),
    valueQuantity: { ...quantity(value, 'mm[Hg]'), ...(comparator === undefined ? {} : { comparator }) },
  });

  it.each<['>' | '>=' | undefined, '>' | '>=' | undefined, object | undefined]>([
    ['>', undefined, { systolic: '>' }],
    [undefined, '>=', { diastolic: '>=' }],
    ['>=', '>', { systolic: '>=', diastolic: '>' }],
    [undefined, undefined, undefined],
  ])('%s for the systolic and %s for the diastolic', (s, d, expected) => {
    const [reading] = pressures([panel([bound('8480-6', 150, s), bound('8462-4', 95, d)])]);
    expect(reading?.lowerBounds).toEqual(expected);
  });

  it('is reported, and a pressure without one is not', () => {
    expect(built([panel([bound('8480-6', 150, '>'), bound('8462-4', 95)])]).issues).toHaveLength(1);
    expect(built([panel([bound('8480-6', 150), bound('8462-4', 95)])]).issues).toEqual([]);
  });

  it('of half an average is kept with the average', () => {
    const sent = observation(loinc('96607-7'), at, { component: [bound('96609-3', 95, '>')] });
    const { meanPressures } = built([sent]).timeline;
    expect(meanPressures).toMatchObject([{ diastolicMmHg: 95, lowerBounds: { diastolic: '>' } }]);
    expect(meanPressures[0]).not.toHaveProperty('systolicMmHg');
  });
});
