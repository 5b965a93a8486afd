// How a pressure was taken, where a component, a code, a device or an encounter each could say it.
import type { FhirResource, Observation, ObservationComponent } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { homeMean, loinc, observation, pressure, quantity, snomed, woman } from '../support/resources.ts';
import { built } from './build.ts';
import { at, diastolic, panel, pressures, systolic } from './pressure-support.ts';

const withParts = (...parts: ObservationComponent[]) =>
  pressures([panel([systolic(118), diastolic(76), ...parts])])[0];
const cm = (value: number) => ({ valueQuantity: quantity(value, 'cm') });

describe('a component that tells how', () => {
  it.each<[string, ObservationComponent, object]>([
    [
      'the arm in the middle',
      { code: { text: 'Mid arm circumference' }, ...cm(31) },
      { armCircumferenceCm: 31 },
    ],
    [
      'the arm first',
      { code: { text: 'Left arm, mid circumference' }, ...cm(31) },
      { armCircumferenceCm: 31 },
    ],
    ['the arm last', { code: { text: 'Circumference of left arm' }, ...cm(31) }, { armCircumferenceCm: 31 }],
    ['an arm as part of a word', { code: { text: 'Alarm circumference' }, ...cm(31) }, {}],
    ['a circumference of the head', { code: { text: 'Head circumference' }, ...cm(31) }, {}],
    [
      'the display of a local code',
      { code: { coding: [{ code: 'x', display: 'Arm circumference' }] }, ...cm(31) },
      { armCircumferenceCm: 31 },
    ],
    ['no name at all', { code: {}, ...cm(31) }, {}],
    ['rest in seconds', { code: { text: 'Rest' }, valueQuantity: quantity(300, 's') }, { restMinutes: 5 }],
    ['rest in centimetres', { code: { text: 'Rest' }, ...cm(5) }, {}],
    ['a cuff in centimetres', { code: loinc('8358-4'), ...cm(32) }, { cuffCm: 32 }],
    ['a cuff in inches', { code: loinc('8358-4'), valueQuantity: quantity(10, '[in_i]') }, { cuffCm: 25.4 }],
    [
      'a cuff without words',
      { code: loinc('8358-4'), valueCodeableConcept: { coding: [{ code: 'x' }] } },
      {},
    ],
    ['a device without words', { code: loinc('41901-0') }, {}],
  ])('%s', (_, part, technique) => {
    expect(withParts(part)?.technique).toEqual(technique);
  });

  it('of several the first that names an arm counts', () => {
    const position = { code: loinc('8361-8'), valueCodeableConcept: snomed('33586001') };
    const site = { code: loinc('41904-4'), valueString: 'Left upper arm' };
    expect(withParts(position, site)).toMatchObject({ arm: 'left', technique: { position: 'sitting' } });
    expect(withParts(position)).not.toHaveProperty('arm');
  });
});

describe('a device', () => {
  const taken = (device: object, ...others: readonly FhirResource[]) =>
    built([...others, { ...pressure(at, 118, 76), device }]).timeline.pressures[0]?.technique.device;
  const cuff: FhirResource = {
    resourceType: 'Device',
    id: 'd',
    patient: { reference: woman },
    deviceName: [{ name: 'Aneroid 12', type: 'user-friendly-name' }],
    type: { text: 'Sphygmomanometer' },
  };
  const { deviceName: _, ...nameless } = cuff;

  it.each([
    ['the display of the reference', { reference: 'Device/d', display: 'Cuff 3' }, [cuff], 'Cuff 3'],
    ['its name', { reference: 'Device/d' }, [cuff], 'Aneroid 12'],
    ['its type', { reference: 'Device/d' }, [nameless], 'Sphygmomanometer'],
    ['the reference', { reference: 'Device/e' }, [], 'Device/e'],
    ['nothing', {}, [], undefined],
  ] as const)('is named by %s', (_name, device, others, expected) => {
    expect(taken(device, ...others)).toBe(expected);
  });
});

describe('where an average was taken', () => {
  const series = (from: string, to: string, fields: Partial<Observation> = {}): Observation => {
    const { method: _method, ...mean } = homeMean({
      from,
      to,
      systolicMmHg: 138,
      diastolicMmHg: 87,
      readings: 6,
    });
    return { ...mean, ...fields };
  };
  const visit = (code: string): FhirResource => ({
    resourceType: 'Encounter',
    id: 'e',
    status: 'finished',
    class: { code },
    subject: { reference: woman },
  });
  const settingOf = (mean: Observation, ...others: readonly FhirResource[]) =>
    built([...others, mean]).timeline.meanPressures[0]?.setting;
  const encounter = { encounter: { reference: 'Encounter/e' } };
  const [from, day, more] = ['2026-01-25T07:00:00Z', '2026-01-26T07:00:00Z', '2026-01-26T07:00:01Z'];

  it('over more than a day is at home; over a day it is not known', () => {
    expect([settingOf(series(from, day)), settingOf(series(from, more))]).toEqual(['unknown', 'home']);
  });

  it.each([
    ['IMP', 'clinic'],
    ['ACUTE', 'clinic'],
    ['NONAC', 'clinic'],
    ['EMER', 'clinic'],
    ['OBSENC', 'clinic'],
    ['SS', 'clinic'],
    ['AMB', 'home'],
    ['HH', 'home'],
    ['VR', 'home'],
  ])('over days of an encounter of class %s is at %s', (code, setting) => {
    expect(settingOf(series(from, '2026-01-30T07:00:00Z', encounter), visit(code))).toBe(setting);
  });

  it.each([
    ['the woman', { reference: woman }, 'home'],
    ['the woman by her address', { reference: 'https://example.org/fhir/Patient/woman' }, 'home'],
    ['a relative by type', { type: 'RelatedPerson', display: 'husband' }, 'home'],
    ['a relative', { reference: 'RelatedPerson/1' }, 'home'],
    ['a midwife', { reference: 'Practitioner/Patient' }, 'unknown'],
  ])('by %s within a day: %j %s', (_name, performer, setting) => {
    expect(settingOf(series(from, day, { performer: [performer] }))).toBe(setting);
  });

  it('in one contact with a clinic is there', () => {
    expect(settingOf(series(from, day, encounter), visit('AMB'))).toBe('clinic');
    expect(settingOf(series(from, day, { encounter: { display: 'visit' } }))).toBe('clinic');
  });
});

describe('what is observed beside a pressure', () => {
  const beside = (code: string, fields: Partial<Observation>, time = at) =>
    observation(loinc(code), time, fields);
  const techniqueWith = (...others: readonly Observation[]) =>
    pressures([pressure(at, 118, 76), ...others])[0]?.technique;
  const sitting = beside('8361-8', { valueCodeableConcept: snomed('33586001') });

  it('at its instant tells how it was taken; several tell each their own', () => {
    const arm = beside('56072-2', { valueQuantity: quantity(31, 'cm') });
    expect(techniqueWith(sitting, arm)).toEqual({ position: 'sitting', armCircumferenceCm: 31 });
    expect(built([sitting]).notNeeded.map(({ why }) => why)).toEqual(['read for how a pressure was taken']);
  });

  it.each([
    ['at another time', [{ ...sitting, effectiveDateTime: '2026-02-01T10:00:01Z' }]],
    ['on its date', [{ ...sitting, effectiveDateTime: '2026-02-01' }]],
    ['in two ways', [sitting, beside('8361-8', { valueCodeableConcept: snomed('40199007') })]],
  ])('%s it tells nothing', (_name, others) => {
    expect(techniqueWith(...others)).toEqual({});
  });

  it('gives way to what the pressure itself records', () => {
    const own = { ...pressure(at, 118, 76), method: snomed('40199007') };
    expect(pressures([own, sitting])[0]?.technique.position).toBe('supine');
  });

  it('tells nothing of a pressure without a clock', () => {
    expect(pressures([pressure('2026-02-01', 118, 76), sitting])[0]?.technique).toEqual({});
  });
});

describe('what disturbed it', () => {
  const disturbed = (fields: Partial<Observation>) =>
    pressures([
      panel([systolic(150), diastolic(95), ...(fields.component ?? [])], { note: fields.note ?? [] }),
    ])[0]?.technique.disturbances;
  it('is read from notes and components together', () => {
    const said = { component: [{ code: { text: 'Remark' }, valueString: 'walked here' }] };
    expect(disturbed({ ...said, note: [{ text: 'talking' }] })).toEqual(['talking', 'walking']);
    expect(disturbed(said)).toEqual(['walking']);
    expect(disturbed({ note: [{ text: 'no coffee. Smoking before' }] })).toEqual(['smoking']);
    expect(disturbed({ note: [{ text: 'calm' }] })).toBeUndefined();
  });
});
