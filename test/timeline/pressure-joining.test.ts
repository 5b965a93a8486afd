// Which pressures are one taking, and which are not: members, copies, halves near each other, and what joins them.
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
import { built, codesOf } from './build.ts';
import { at, diastolic, panel, pressures, systolic } from './pressure-support.ts';

const withMembers = (...ids: readonly string[]): Partial<Observation> => ({
  hasMember: ids.map((id) => ({ reference: `Observation/${id}` })),
});
const named = <R extends FhirResource>(id: string, resource: R): R => ({ ...resource, id });
const s = (time: string) => named('s', systolicOnly(`2026-02-01T${time}:00Z`, 152));
const d = (time: string) => named('d', diastolicOnly(`2026-02-01T${time}:00Z`, 98));
const timeless = <R extends Observation>(resource: R): R => {
  const { effectiveDateTime: _, ...rest } = resource;
  return rest as R;
};
const halvesOf = (sent: readonly FhirResource[]) =>
  pressures(sent).map(({ systolicMmHg, diastolicMmHg }) => [systolicMmHg, diastolicMmHg]);
const meansOf = (sent: readonly FhirResource[]) =>
  built(sent).timeline.meanPressures.map((mean) => [mean.systolicMmHg, mean.diastolicMmHg]);
const mean = (code: string, time: string, value: number) =>
  observation(loinc(code), `2026-02-01T${time}:00Z`, { valueQuantity: quantity(value, 'mm[Hg]') });

describe('members of a panel (F-P04)', () => {
  it('of vital signs are read by themselves: twenty minutes apart they are two readings', () => {
    const vitalSigns = { ...observation(loinc('85353-1'), at), ...withMembers('s', 'd') };
    const result = built([vitalSigns, s('09:00'), d('09:20')]);
    expect(result.timeline.pressures).toHaveLength(2);
    expect(result.notNeeded.map(({ why }) => why)).toEqual(['a panel; its members are read by themselves']);
    expect(built([vitalSigns]).notNeeded).toHaveLength(1);
    expect(codesOf(built([vitalSigns]))).toEqual([]);
  });

  it('of a panel with values of its own are read by themselves', () => {
    const own = named('p', panel([systolic(130), diastolic(80)], withMembers('s', 'd')));
    expect(halvesOf([own, s('11:00'), d('11:20')])).toEqual([
      [130, 80],
      [152, undefined],
      [undefined, 98],
    ]);
  });

  it('of two panels are one reading', () => {
    const panels = ['p', 'q'].map((id, index) =>
      named(id, {
        ...panel(undefined, withMembers('s', 'd')),
        issued: `2026-02-01T1${String(index)}:30:00Z`,
      }),
    );
    const result = built([...panels, s('09:00'), d('09:20')]);
    expect(result.timeline.pressures).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
  });

  it.each([
    ['the systolic', timeless(s('09:00')), d('09:20'), '2026-02-01T09:20:00Z'],
    ['the diastolic', s('09:00'), timeless(d('09:20')), '2026-02-01T09:00:00Z'],
    ['neither, and the earlier one counts', s('09:40'), d('09:20'), '2026-02-01T09:20:00Z'],
    ['both', timeless(s('09:00')), timeless(d('09:20')), at],
  ])('of which %s has no time take the time there is', (_, one, other, text) => {
    expect(pressures([panel(undefined, withMembers('s', 'd')), one, other])).toMatchObject([
      { at: { text } },
    ]);
  });

  it('with a time that is none do not take the time of the panel', () => {
    const wrong = { ...s('09:00'), effectiveDateTime: '2026-02-31' };
    const { timeline } = built([panel(undefined, withMembers('s')), wrong]);
    expect(timeline.pressures).toEqual([]);
    expect(timeline.unusablePressures).toMatchObject([{ why: 'time-unusable', systolic: 152 }]);
  });

  it('that were not sent are missed only where the panel says nothing else', () => {
    const reason = { dataAbsentReason: { coding: [{ code: 'unknown' }] } };
    expect(codesOf(built([panel(undefined, { ...withMembers('x'), ...reason })]))).toEqual([
      'value-absent-with-reason',
    ]);
    expect(codesOf(built([panel(undefined, { ...withMembers('x'), valueBoolean: true })]))).toEqual([
      'value-type-not-usable',
    ]);
    expect(codesOf(built([panel(undefined, withMembers('x'))]))).toEqual(['reference-unresolved']);
  });
});

describe('two halves as one reading', () => {
  it('keep what each records of how it was taken', () => {
    const one = { ...s('10:00'), method: snomed('37931006') };
    const other = { ...d('10:00'), device: { display: 'Aneroid' } };
    expect(pressures([one, other])[0]?.technique).toEqual({ method: 'auscultation', device: 'Aneroid' });
  });

  it('name their sources by reference, whatever the order received', () => {
    const sent = [named('z', systolicOnly(at, 152)), named('a', diastolicOnly(at, 98))];
    for (const each of [sent, [...sent].reverse()])
      expect(pressures(each)[0]?.sources.map(({ reference }) => reference)).toEqual([
        'Observation/a',
        'Observation/z',
      ]);
  });

  it('are found among halves without a time', () => {
    const undated = [
      timeless(named('u', systolicOnly(at, 170))),
      timeless(named('v', diastolicOnly(at, 110))),
    ];
    for (const sent of [
      [...undated, s('10:00'), d('10:03')],
      [s('10:00'), ...undated, d('10:03')],
      [d('10:03'), s('10:00'), ...undated],
    ]) {
      const { timeline } = built(sent);
      expect(timeline.pressures).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
      expect(timeline.unusablePressures).toHaveLength(2);
    }
  });

  it('are not a date and a time of that date', () => {
    const dated = named('s', systolicOnly('2026-02-01', 152));
    expect(pressures([dated, d('00:03')])).toHaveLength(2);
    expect(pressures([named('d', diastolicOnly('2026-02-01', 98)), s('00:03')])).toHaveLength(2);
  });

  it('are not two halves of panels, even where other halves stand alone', () => {
    const halves = [named('p', panel([systolic(152)])), named('q', panel([diastolic(98)]))];
    expect(pressures([...halves, named('x', systolicOnly('2026-02-01T08:00:00Z', 140))])).toHaveLength(3);
  });

  it('of an average must be of the same time; of a reading may be minutes apart', () => {
    expect(meansOf([mean('96608-5', '10:00', 138), mean('96609-3', '10:00', 87)])).toEqual([[138, 87]]);
    expect(meansOf([mean('96608-5', '10:00', 138), mean('96609-3', '10:03', 87)])).toEqual([
      [138, undefined],
      [undefined, 87],
    ]);
    expect(halvesOf([s('10:00'), d('10:03')])).toEqual([[152, 98]]);
  });

  it.each([
    ['an average and a reading', mean('96608-5', '10:00', 138), d('10:00')],
    [
      'of two settings',
      { ...s('10:00'), method: snomed('413153004') },
      { ...d('10:00'), method: snomed('257585005') },
    ],
    [
      'of two devices',
      { ...s('10:00'), device: { display: 'A' } },
      { ...d('10:00'), device: { display: 'B' } },
    ],
    [
      'of two encounters',
      { ...s('10:00'), encounter: { display: 'A' } },
      { ...d('10:00'), encounter: { display: 'B' } },
    ],
  ])('are not %s', (_, one, other) => {
    const { pressures: found, homePressures, meanPressures } = built([one, other]).timeline;
    expect(found.length + homePressures.length + meanPressures.length).toBe(2);
  });
});

describe('equal readings of one instant', () => {
  it('of which one has no unit, or a fault, are not copies', () => {
    const bare = built([pressure(at, 150, 95), { ...withoutUnit(pressure(at, 150, 95)), id: 'bare' }]);
    expect(bare.timeline).toMatchObject({ pressures: [{}], unusablePressures: [{ why: 'unit-missing' }] });
    const odd = pressure(at, 150, 95);
    const faulty = (odd.component ?? []).map(({ code, valueQuantity }) => ({
      code,
      valueInteger: valueQuantity?.value ?? 0,
    }));
    const both = built([pressure(at, 150, 95), { ...odd, id: 'odd', component: faulty }]);
    expect(both.timeline).toMatchObject({ pressures: [{}], unusablePressures: [{ why: 'faulty-form' }] });
  });

  it.each([
    ['systolic has no unit', { value: 150 }, { value: 95, unit: 'mmHg' }],
    ['diastolic has no unit', { value: 150, unit: 'mmHg' }, { value: 95 }],
    ['systolic has a fault', { value: 150, unit: 'mg/dL' }, { value: 95, unit: 'mmHg' }],
    ['diastolic has a fault', { value: 150, unit: 'mmHg' }, { value: 95, unit: 'mg/dL' }],
  ])('are not copies where one %s', (_, first, second) => {
    const other = panel([
      { code: loinc('8480-6'), valueQuantity: first },
      { code: loinc('8462-4'), valueQuantity: second },
    ]);
    for (const ids of [
      ['a', 'b'],
      ['b', 'a'],
    ] as const) {
      const { timeline } = built([named(ids[0], pressure(at, 150, 95)), named(ids[1], other)]);
      expect(timeline.unusablePressures).toHaveLength(1);
      expect(timeline.pressures.map(({ sources }) => sources.length).sort()).toEqual([1, 1]);
    }
  });

  it('take a copy of one half to the first of two that hold it', () => {
    const sent = [
      named('a', pressure(at, 150, 95)),
      named('b', pressure(at, 150, 90)),
      named('c', systolicOnly(at, 150)),
    ];
    const found = pressures(sent).map(({ diastolicMmHg, sources }) => [diastolicMmHg, sources.length]);
    expect(found).toEqual([
      [90, 1],
      [95, 2],
    ]);
  });

  it('are one; what the first by reference records goes before, whatever the order received', () => {
    // 20 and 12 kPa are 150 and 90 mm[Hg]
    const sitting = named('b', { ...pressure(at, 150, 90), method: snomed('33586001') });
    const supine = named('a', { ...pressure(at, 20, 12, { unit: 'kPa' }), method: snomed('40199007') });
    for (const sent of [
      [sitting, supine],
      [supine, sitting],
    ]) {
      const found = pressures(sent);
      expect(found).toHaveLength(1);
      expect(found[0]?.technique.position).toBe('supine');
      expect(found[0]?.sources).toHaveLength(2);
    }
  });

  it('with other values, arms or times are two', () => {
    const left = { ...pressure(at, 150, 95), bodySite: snomed('368208006') };
    const right = { ...pressure(at, 150, 95), bodySite: snomed('368209003') };
    expect(pressures([left, right])).toHaveLength(2);
    expect(pressures([pressure(at, 150, 95), pressure(at, 151, 95)])).toHaveLength(2);
    expect(pressures([pressure(at, 150, 95), pressure('2026-02-01T10:01:00Z', 150, 95)])).toHaveLength(2);
  });
});
