import { describe, expect, it } from 'vitest';
import {
  loinc,
  observation,
  quantity,
  snomed,
  pressure,
  systolicOnly,
  diastolicOnly,
} from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { at, pressures, panel, systolic, diastolic } from './pressure-support.ts';

describe('a panel with components (F-P01, F-P02)', () => {
  it.each(['85354-9', '55284-4', '35094-2', '55417-0'])('%s is one reading', (panelCode) => {
    expect(pressures([pressure(at, 152, 98, { panelCode })])).toMatchObject([
      { systolicMmHg: 152, diastolicMmHg: 98, asSent: '152/98 mm[Hg]', setting: 'unknown', remarks: [] },
    ]);
  });

  it.each([
    ['SNOMED CT panel', snomed('75367002')],
    ['a local code', { coding: [{ system: 'http://example.org', code: 'bp' }] }],
    ['only text', { text: 'BP' }],
  ])('under %s counts by its component codes', (_, code) => {
    expect(pressures([{ ...pressure(at, 152, 98), code }])).toMatchObject([
      { systolicMmHg: 152, diastolicMmHg: 98 },
    ]);
  });

  it('is read by code, not by order, and keeps decimals (QUIRKS: Synthea)', () => {
    expect(pressures([panel([diastolic(114.96244492813044), systolic(169.39532974585742)])])).toMatchObject([
      { systolicMmHg: 169.39532974585742, diastolicMmHg: 114.96244492813044 },
    ]);
  });

  it('finds the LOINC code behind a device code in the same component', () => {
    const coding = [
      { system: 'urn:iso:std:iso:11073:10101', code: '150021' },
      { system: 'http://loinc.org', code: '8480-6' },
    ];
    expect(pressures([panel([{ code: { coding }, valueQuantity: quantity(150, 'mm[Hg]') }])])).toMatchObject([
      { systolicMmHg: 150 },
    ]);
  });
});

describe('half a pair (F-P01, F-P05)', () => {
  it('is evaluated alone and says what is missing', () => {
    const absent = { code: loinc('8462-4'), dataAbsentReason: { coding: [{ code: 'unknown' }] } };
    const [reading] = pressures([panel([systolic(168), absent])]);
    expect(reading).toMatchObject({
      systolicMmHg: 168,
      asSent: '168/- mm[Hg]',
      remarks: ['the diastolic pressure is missing'],
    });
    expect(reading).not.toHaveProperty('diastolicMmHg');
  });

  it('with both halves absent for a reason is set aside as that', () => {
    const absent = (code: string) => ({
      code: loinc(code),
      dataAbsentReason: { coding: [{ code: 'not-asked' }] },
    });
    expect(codesOf(built([panel([absent('8480-6'), absent('8462-4')])]))).toEqual([
      'value-absent-with-reason',
    ]);
  });

  it('whose other half has an unknown unit is used, with an issue', () => {
    const odd = { code: loinc('8462-4'), valueQuantity: quantity(98, 'mg/dL') };
    const result = built([panel([systolic(168), odd])]);
    expect(result.timeline.pressures).toMatchObject([{ systolicMmHg: 168 }]);
    expect(result.setAside).toEqual([]);
    expect(result.issues).toMatchObject([{ code: 'unit-unknown' }]);
  });

  it('of palpation is systolic only, with its method; nothing is missing', () => {
    const result = built([systolicOnly(at, 150, true)]);
    expect(result.timeline.pressures).toMatchObject([
      { systolicMmHg: 150, technique: { method: 'palpation' } },
    ]);
    expect(result.issues).toEqual([]);
  });

  it.each([
    ['in a panel', panel([systolic(168)]), 'diastolic', 'component'],
    ['in a panel', panel([diastolic(98)]), 'systolic', 'component'],
    ['by itself', systolicOnly(at, 152), 'diastolic', 'code'],
    ['by itself', diastolicOnly(at, 98), 'systolic', 'code'],
  ])('%s gets an issue that names the missing half and the mend', (_, sent, missing, element) => {
    const { issues } = built([sent]);
    expect(issues).toMatchObject([{ severity: 'warning', type: 'required', code: 'pressure-half-missing' }]);
    expect(issues[0]?.expression).toBe(`Bundle.entry[1].resource.${element}`);
    expect(issues[0]?.message).toContain(`The ${missing} pressure is missing: send `);
  });

  it.each([
    ['diastolic', panel([systolic(168)]), diastolicOnly(at, 98)],
    ['systolic', panel([diastolic(98)]), systolicOnly(at, 168)],
  ])('of a panel is completed by a stand-alone %s of the same time', (_, sent, other) => {
    const result = built([sent, other]);
    expect(result.timeline.pressures).toMatchObject([
      { systolicMmHg: 168, diastolicMmHg: 98, asSent: '168/98 mm[Hg]', remarks: [] },
    ]);
    expect(result.timeline.pressures[0]?.sources).toHaveLength(2);
    expect(result.issues).toEqual([]);
  });

  it('of a panel stays alone beside another half of a panel, or of another time', () => {
    expect(pressures([panel([systolic(168)]), panel([diastolic(98)])])).toHaveLength(2);
    expect(pressures([panel([systolic(168)]), diastolicOnly('2026-02-01T10:01:00Z', 98)])).toHaveLength(2);
  });
});

describe('separate systolic and diastolic observations (F-P03)', () => {
  it('at the same time are one reading with both sources', () => {
    const found = pressures([systolicOnly(at, 152), diastolicOnly(at, 98)]);
    expect(found).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98, asSent: '152/98 mm[Hg]' }]);
    expect(found[0]?.sources.map(({ reference }) => reference)).toEqual(['Observation/r0', 'Observation/r1']);
  });

  it.each([
    ['2026-02-01T10:05:00Z', 1],
    ['2026-02-01T09:55:00Z', 1],
    ['2026-02-01T10:05:01Z', 2],
  ])('taken at 10:00 and %s are %i reading(s): five minutes is the tolerance', (other, count) => {
    expect(pressures([systolicOnly(at, 152), diastolicOnly(other, 98)])).toHaveLength(count);
  });

  it('of the same date pair, when there is only one of each', () => {
    expect(pressures([systolicOnly('2026-02-01', 152), diastolicOnly('2026-02-01', 98)])).toHaveLength(1);
  });

  it('stay alone when it is ambiguous which belong together', () => {
    const found = pressures([
      systolicOnly('2026-02-01T10:00:00Z', 152),
      systolicOnly('2026-02-01T10:02:00Z', 148),
      diastolicOnly('2026-02-01T10:01:00Z', 98),
    ]);
    expect(found.map((reading) => [reading.systolicMmHg, reading.diastolicMmHg])).toEqual([
      [152, undefined],
      [undefined, 98],
      [148, undefined],
    ]);
  });

  it('of different encounters or arms do not pair', () => {
    const encounter = (id: string) => ({ encounter: { reference: `Encounter/${id}` } });
    expect(
      pressures([
        { ...systolicOnly(at, 152), ...encounter('1') },
        { ...diastolicOnly(at, 98), ...encounter('2') },
      ]),
    ).toHaveLength(2);
    const arm = (code: string) => ({ bodySite: snomed(code) });
    expect(
      pressures([
        { ...systolicOnly(at, 152), ...arm('368208006') },
        { ...diastolicOnly(at, 98), ...arm('368209003') },
      ]),
    ).toHaveLength(2);
  });

  it('beside a panel of the same values and time are copies, not another reading', () => {
    const found = pressures([pressure(at, 152, 98), systolicOnly(at, 152), diastolicOnly(at, 98)]);
    expect(found).toHaveLength(1);
    expect(found[0]?.sources).toHaveLength(3);
  });
});

describe('a panel with members (F-P04)', () => {
  const members = (...ids: string[]) => ({
    hasMember: ids.map((id) => ({ reference: `Observation/${id}` })),
  });

  it('is one reading at the time of its members', () => {
    const result = built([
      panel(undefined, { id: 'p', ...members('s', 'd') }),
      { ...systolicOnly('2026-02-01T09:00:00Z', 152), id: 's' },
      { ...diastolicOnly('2026-02-01T09:20:00Z', 98), id: 'd' },
    ]);
    expect(result.timeline.pressures).toMatchObject([
      { systolicMmHg: 152, diastolicMmHg: 98, at: { text: '2026-02-01T09:00:00Z' } },
    ]);
    expect(result.timeline.pressures[0]?.sources).toHaveLength(3);
    expect(result.setAside).toEqual([]);
  });

  it('lends its time to members that have none', () => {
    const timeless = (code: string, value: number, id: string) =>
      observation(loinc(code), undefined, { id, valueQuantity: quantity(value, 'mm[Hg]') });
    const found = pressures([
      panel(undefined, { id: 'p', ...members('s', 'd') }),
      timeless('8480-6', 152, 's'),
      timeless('8462-4', 98, 'd'),
    ]);
    expect(found).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98, at: { text: at } }]);
  });

  it('does not count again what its panel of vital signs also names', () => {
    const result = built([
      { ...observation(loinc('85353-1'), at), id: 'v', ...members('p') },
      { ...pressure(at, 152, 98), id: 'p' },
    ]);
    expect(result.timeline.pressures).toHaveLength(1);
    expect(result.notNeeded.map(({ reference }) => reference)).toEqual(['Observation/v']);
  });

  it('whose members were not sent is set aside', () => {
    expect(codesOf(built([panel(undefined, members('s', 'd'))]))).toEqual(['reference-unresolved']);
  });
});
