// Which pressures sent apart are one reading: copies, halves, their time, arm, device, encounter and setting.
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
  withoutUnit,
} from '../support/resources.ts';
import type { PressureOptions } from '../support/resources.ts';
import { built } from './build.ts';
import { at, diastolic, panel, pressures, systolic } from './pressure-support.ts';

/** "152/98" for each reading, oldest first; "-" for a half that is missing. */
const readings = (resources: readonly FhirResource[]): readonly string[] =>
  pressures(resources).map(
    ({ systolicMmHg, diastolicMmHg }) => `${String(systolicMmHg ?? '-')}/${String(diastolicMmHg ?? '-')}`,
  );

const withArm = (resource: Observation, arm: 'left' | 'right'): Observation => ({
  ...resource,
  bodySite: snomed(arm === 'left' ? '368208006' : '368209003'),
});
const withEncounter = (resource: Observation, id: string): Observation => ({
  ...resource,
  encounter: { reference: `Encounter/${id}` },
});
const withDevice = (resource: Observation, display: string): Observation => ({
  ...resource,
  device: { display },
});
const atHome = (resource: Observation): Observation => ({ ...resource, method: snomed('413153004') });
const inClinic = (resource: Observation): Observation => ({ ...resource, method: snomed('257585005') });

/** The same pressure under another code for the panel: no copy of the resource, the same taking. */
const again = (time: string, s: number | undefined, d: number | undefined, more: PressureOptions = {}) =>
  pressure(time, s, d, { ...more, panelCode: '55284-4' });

describe('a pressure sent twice, under two codes (F-M07)', () => {
  it('with the same time and values is one reading with both sources', () => {
    const found = pressures([pressure(at, 152, 98), again(at, 152, 98)]);
    expect(found).toHaveLength(1);
    expect(found[0]?.sources.map(({ reference }) => reference)).toEqual(['Observation/r0', 'Observation/r1']);
  });

  it('half of it, twice, is one half', () => {
    expect(readings([pressure(at, 152, undefined), again(at, 152, undefined)])).toEqual(['152/-']);
    expect(readings([pressure(at, undefined, 98), again(at, undefined, 98)])).toEqual(['-/98']);
  });

  it.each<[string, Observation, Observation]>([
    ['time', pressure(at, 152, 98), again('2026-02-01T10:00:01Z', 152, 98)],
    ['systolic value', pressure(at, 152, 98), again(at, 150, 98)],
    ['diastolic value', pressure(at, 152, 98), again(at, 152, 96)],
    ['arm', pressure(at, 152, 98, { arm: 'left' }), again(at, 152, 98, { arm: 'right' })],
  ])('with another %s is another reading', (_, one, other) => {
    expect(pressures([one, other])).toHaveLength(2);
  });

  it('at home and elsewhere is two', () => {
    const { timeline } = built([pressure(at, 152, 98), again(at, 152, 98, { setting: 'home' })]);
    expect(timeline.pressures).toHaveLength(1);
    expect(timeline.homePressures).toHaveLength(1);
  });

  it('once without a unit leaves the reading as it is and the bare numbers set aside', () => {
    const { timeline } = built([pressure(at, 152, 98), withoutUnit(again(at, 152, 98))]);
    expect(timeline.pressures).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
    expect(timeline.pressures[0]?.sources).toHaveLength(1);
    expect(timeline.unusablePressures).toMatchObject([{ why: 'unit-missing', systolic: 152, diastolic: 98 }]);
  });

  it('without a time is two pressures set aside: nothing says they are one', () => {
    const undated = ({ effectiveDateTime: _, ...rest }: Observation): Observation => rest;
    const { timeline, setAside } = built([undated(pressure(at, 152, 98)), undated(again(at, 152, 98))]);
    expect(timeline.pressures).toEqual([]);
    expect(timeline.unusablePressures).toHaveLength(2);
    expect(setAside.map(({ code }) => code)).toEqual(['time-missing', 'time-missing']);
  });

  it('as a reading and as the average of that time is one of each', () => {
    const average = observation(loinc('96607-7'), at, {
      component: [
        { code: loinc('96608-5'), valueQuantity: quantity(152, 'mm[Hg]') },
        { code: loinc('96609-3'), valueQuantity: quantity(98, 'mm[Hg]') },
      ],
    });
    const { timeline } = built([pressure(at, 152, 98), average]);
    expect(timeline.pressures).toHaveLength(1);
    expect(timeline.meanPressures).toHaveLength(1);
  });

  it('is found among readings of other times, which stay', () => {
    expect(
      readings([
        pressure('2026-02-01T12:00:00Z', 140, 90),
        pressure(at, 152, 98),
        pressure('2026-02-01T08:00:00Z', 138, 88),
        again(at, 152, 98),
      ]),
    ).toEqual(['138/88', '152/98', '140/90']);
  });
});

describe('a half that repeats part of a full reading (F-P03)', () => {
  it.each<[string, Observation]>([
    ['systolic', systolicOnly(at, 152)],
    ['diastolic', diastolicOnly(at, 98)],
  ])('%s, of the same time and value, is a copy', (_, half) => {
    const found = pressures([pressure(at, 152, 98), half]);
    expect(found).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
    expect(found[0]?.sources).toHaveLength(2);
  });

  it.each<[string, Observation, Observation, readonly string[]]>([
    ['value', pressure(at, 152, 98), systolicOnly(at, 150), ['150/-', '152/98']],
    ['half', pressure(at, 152, 98), diastolicOnly(at, 90), ['-/90', '152/98']],
    ['time', pressure(at, 152, 98), systolicOnly('2026-02-01T10:03:00Z', 152), ['152/98', '152/-']],
    [
      'arm',
      pressure(at, 152, 98, { arm: 'left' }),
      withArm(systolicOnly(at, 152), 'right'),
      ['152/-', '152/98'],
    ],
  ])('of another %s stays a half by itself', (_, full, half, expected) => {
    expect(readings([full, half])).toEqual(expected);
  });

  it('gives the reading the arm that it names, and keeps the arm of the reading', () => {
    expect(pressures([pressure(at, 152, 98), withArm(systolicOnly(at, 152), 'right')])).toMatchObject([
      { arm: 'right' },
    ]);
    expect(pressures([pressure(at, 152, 98, { arm: 'left' }), systolicOnly(at, 152)])).toMatchObject([
      { arm: 'left' },
    ]);
  });

  it('does not take the systolic 98 of one half for the diastolic 98 of a reading', () => {
    expect(readings([pressure(at, 152, 98), systolicOnly(at, 98)])).toEqual(['152/98', '98/-']);
  });

  it('belongs to the first of two readings that hold its value, and each reading stays', () => {
    const found = pressures([pressure(at, 152, 98), pressure(at, 152, 90), systolicOnly(at, 152)]);
    expect(found.map(({ diastolicMmHg, sources }) => [diastolicMmHg, sources.length])).toEqual([
      [90, 1],
      [98, 2],
    ]);
  });
});

describe('two halves of one reading (F-P03)', () => {
  it.each<[string, (one: Observation) => Observation, (other: Observation) => Observation]>([
    ['encounters', (one) => withEncounter(one, '1'), (other) => withEncounter(other, '2')],
    ['arms', (one) => withArm(one, 'left'), (other) => withArm(other, 'right')],
    ['devices', (one) => withDevice(one, 'Aneroid 12'), (other) => withDevice(other, 'Aneroid 13')],
  ])('of different %s stay apart; the same, or one that is not named, does not part them', (_, a, b) => {
    const [s, d] = [systolicOnly(at, 152), diastolicOnly(at, 98)];
    expect(pressures([a(s), b(d)])).toHaveLength(2);
    expect(readings([a(s), a(d)])).toEqual(['152/98']);
    expect(readings([a(s), d])).toEqual(['152/98']);
    expect(readings([s, b(d)])).toEqual(['152/98']);
  });

  it('at home and in the clinic stay apart; a half of unknown setting joins either', () => {
    const [s, d] = [systolicOnly(at, 152), diastolicOnly(at, 98)];
    const apart = built([inClinic(s), atHome(d)]).timeline;
    expect([apart.pressures.length, apart.homePressures.length]).toEqual([1, 1]);
    expect(built([s, atHome(d)]).timeline.homePressures).toMatchObject([
      { systolicMmHg: 152, diastolicMmHg: 98 },
    ]);
    expect(pressures([inClinic(s), d])).toMatchObject([{ systolicMmHg: 152, setting: 'clinic' }]);
  });

  it.each([
    ['one with a clock time and one with its date only', '2026-02-01', at, 2],
    ['of two days', '2026-01-31', '2026-02-01', 2],
    ['of one day', '2026-02-01', '2026-02-01', 1],
    ['of one month, without days', '2026-01', '2026-01', 1],
  ])('%s: %s and %s are %i reading(s)', (_, one, other, count) => {
    expect(pressures([systolicOnly(one, 152), diastolicOnly(other, 98)])).toHaveLength(count);
    expect(pressures([diastolicOnly(one, 98), systolicOnly(other, 152)])).toHaveLength(count);
  });

  it('a few minutes apart are one reading at the earlier time, whichever half came first', () => {
    const later = '2026-02-01T10:04:00Z';
    for (const sent of [
      [systolicOnly(at, 152), diastolicOnly(later, 98)],
      [systolicOnly(later, 152), diastolicOnly(at, 98)],
    ])
      expect(pressures(sent)).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98, at: { text: at } }]);
  });

  it('of the same time pair before a half that is only near', () => {
    expect(
      readings([systolicOnly(at, 152), diastolicOnly(at, 98), diastolicOnly('2026-02-01T10:03:00Z', 90)]),
    ).toEqual(['152/98', '-/90']);
  });

  it('stay apart when either has a second possible partner', () => {
    expect(pressures([systolicOnly(at, 152), diastolicOnly(at, 98), diastolicOnly(at, 96)])).toHaveLength(3);
    expect(pressures([systolicOnly(at, 152), systolicOnly(at, 150), diastolicOnly(at, 98)])).toHaveLength(3);
  });

  it('pair within a long series, each with the half of its own time', () => {
    const hours = ['06', '07', '08', '09', '10', '11', '12', '13', '14'];
    const sent = hours.flatMap((hour, index) => [
      systolicOnly(`2026-02-01T${hour}:00:00Z`, 140 + index),
      diastolicOnly(`2026-02-01T${hour}:03:00Z`, 80 + index),
    ]);
    const expected = hours.map((_, index) => `${String(140 + index)}/${String(80 + index)}`);
    expect(readings(sent)).toEqual(expected);
    expect(readings([...sent].reverse())).toEqual(expected);
  });

  it('without a time are two numbers set aside, not a pair', () => {
    const undated = (code: string, value: number) =>
      observation(loinc(code), undefined, { valueQuantity: quantity(value, 'mm[Hg]') });
    const { timeline, setAside } = built([undated('8480-6', 152), undated('8462-4', 98)]);
    expect(timeline.pressures).toEqual([]);
    expect(setAside.map(({ code }) => code)).toEqual(['time-missing', 'time-missing']);
    expect(
      timeline.unusablePressures.every((one) => one.systolic === undefined || one.diastolic === undefined),
    ).toBe(true);
  });

  it('of two panels stay apart at the same minute, and two halves of panels near in time as well', () => {
    const later = '2026-02-01T10:02:00Z';
    expect(readings([panel([systolic(152)]), panel([diastolic(98)], { effectiveDateTime: later })])).toEqual([
      '152/-',
      '-/98',
    ]);
  });

  it('leave a full reading of the same minute with other values as it is', () => {
    expect(readings([pressure(at, 120, 76), systolicOnly(at, 152), diastolicOnly(at, 98)])).toEqual([
      '120/76',
      '152/98',
    ]);
  });
});

describe('two halves of one average', () => {
  const half = (code: string, value: number, fields: Partial<Observation>) =>
    observation(loinc(code), undefined, { valueQuantity: quantity(value, 'mm[Hg]'), ...fields });
  const week = { effectivePeriod: { start: '2026-01-25T07:00:00Z', end: '2026-01-31T20:00:00Z' } };
  const means = (resources: readonly FhirResource[]) => built(resources).timeline.meanPressures;

  it('of the same span are one average', () => {
    expect(means([half('96608-5', 138, week), half('96609-3', 87, week)])).toMatchObject([
      { systolicMmHg: 138, diastolicMmHg: 87 },
    ]);
  });

  it('of spans with another end, or times a minute apart, stay two', () => {
    const other = { effectivePeriod: { start: week.effectivePeriod.start, end: '2026-01-31T21:00:00Z' } };
    expect(means([half('96608-5', 138, week), half('96609-3', 87, other)])).toHaveLength(2);
    const minuteApart = { effectiveDateTime: '2026-02-01T10:01:00Z' };
    expect(
      means([half('96608-5', 138, { effectiveDateTime: at }), half('96609-3', 87, minuteApart)]),
    ).toHaveLength(2);
  });

  it('does not pair with half of a reading', () => {
    const { timeline } = built([half('96608-5', 138, { effectiveDateTime: at }), diastolicOnly(at, 87)]);
    expect(timeline.meanPressures).toHaveLength(1);
    expect(timeline.pressures).toHaveLength(1);
  });
});
