// How and where a pressure was taken, from components, references and observations beside it.
import type { FhirResource, Observation, ObservationComponent } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { loinc, observation, pressure, quantity, snomed } from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { at, diastolic, panel, pressures, systolic } from './pressure-support.ts';

const mean = (code: string, value: number) =>
  observation(loinc(code), at, { valueQuantity: quantity(value, 'mm[Hg]') });

describe('technique', () => {
  const techniqueOf = (components: readonly ObservationComponent[], fields: Partial<Observation> = {}) =>
    pressures([panel([systolic(118), diastolic(76), ...components], fields)])[0];
  const coded = (code: string, value: Partial<ObservationComponent>): ObservationComponent => ({
    code: loinc(code),
    ...value,
  });

  it.each<[string, ObservationComponent, object]>([
    ['a cuff in words', coded('8358-4', { valueString: 'large adult' }), { cuff: 'large adult' }],
    ['a cuff without value', coded('8358-4', {}), {}],
    [
      'an arm circumference',
      coded('56072-2', { valueQuantity: quantity(36, 'cm') }),
      { armCircumferenceCm: 36 },
    ],
    ['an arm circumference in words', coded('56072-2', { valueString: 'thick' }), {}],
    ['an arm circumference in kilograms', coded('56072-2', { valueQuantity: quantity(36, 'kg') }), {}],
    ['a position in words only', coded('8361-8', { valueString: 'in bed' }), {}],
    ['a component of something else', { code: { text: 'Mood' }, valueString: 'calm' }, {}],
    ['rest in words', { code: { text: 'Rested' }, valueString: 'yes' }, {}],
    [
      'the rest before, in minutes',
      { code: { text: 'rest before' }, valueQuantity: quantity(5, 'min') },
      { restMinutes: 5 },
    ],
    ['an interest, which is no rest', { code: { text: 'Interest' }, valueQuantity: quantity(5, 'min') }, {}],
    [
      'a rest known by its display',
      { code: { coding: [{ code: 'x', display: 'Resting' }] }, valueQuantity: quantity(5, 'min') },
      { restMinutes: 5 },
    ],
  ])('%s', (_, component, expected) => {
    expect(techniqueOf([component])?.technique).toEqual(expected);
  });

  it('device and site are read from their components, with the arm that the site names', () => {
    const device = '41901-0';
    const site = '41904-4';
    expect(techniqueOf([coded(device, { valueString: 'Aneroid 12' })])?.technique).toEqual({
      device: 'Aneroid 12',
    });
    expect(techniqueOf([coded(site, { valueString: 'Left upper arm' })])).toMatchObject({
      arm: 'left',
      technique: { site: 'Left upper arm' },
    });
    expect(techniqueOf([coded(site, { valueString: 'Wrist' })])).not.toHaveProperty('arm');
    expect(techniqueOf([coded(site, { valueString: 'left, then right arm' })])).not.toHaveProperty('arm');
    expect(techniqueOf([coded(site, {})])?.technique).toEqual({});
  });

  it('the arm of the body site goes before that of a component', () => {
    const site = coded('41904-4', { valueString: 'right arm' });
    expect(techniqueOf([site], { bodySite: { text: 'Left arm' } })?.arm).toBe('left');
    expect(techniqueOf([site], { bodySite: { text: 'Arm' } })?.arm).toBe('right');
  });

  it('home goes before clinic where both are coded', () => {
    const fields = { method: snomed('257585005'), category: [snomed('264362003')] };
    expect(built([{ ...pressure(at, 118, 76), ...fields }]).timeline.homePressures).toHaveLength(1);
  });

  it('of the first code that is recorded counts', () => {
    const fields = { method: snomed('37931006'), category: [snomed('77938009')] };
    expect(techniqueOf([], fields)?.technique.method).toBe('auscultation');
  });

  it.each<[string, Partial<Observation>, object]>([
    ['a device by its reference', { device: { reference: 'Device/9' } }, { device: 'Device/9' }],
    ['an observer by name', { performer: [{ display: 'Midwife A' }] }, { observer: 'Midwife A' }],
    [
      'an observer by reference before the name',
      { performer: [{ reference: 'Practitioner/7', display: 'A' }] },
      { observer: 'Practitioner/7' },
    ],
    ['no observer', { performer: [] }, {}],
  ])('%s', (_, fields, expected) => {
    expect(techniqueOf([], fields)?.technique).toEqual(expected);
  });

  it('a device that was sent too is known by its name, else by its type', () => {
    const device = (fields: object): FhirResource => ({ resourceType: 'Device', id: 'd', ...fields });
    const used = (fields: object) =>
      pressures([device(fields), { ...pressure(at, 118, 76), device: { reference: 'Device/d' } }])[0]
        ?.technique.device;
    expect(
      used({ deviceName: [{ name: 'Monitor M3', type: 'user-friendly-name' }], type: { text: 'Automatic' } }),
    ).toBe('Monitor M3');
    expect(used({ type: { text: 'Automatic' } })).toBe('Automatic');
    expect(used({})).toBe('Device/d');
  });

  it('a disturbance written in a component counts, beside one in a note', () => {
    const component = { code: { text: 'Remark' }, valueString: 'talking' };
    expect(techniqueOf([component])?.technique.disturbances).toEqual(['talking']);
    expect(techniqueOf([component], { note: [{ text: 'had coffee' }] })?.technique.disturbances).toEqual([
      'talking',
      'caffeine',
    ]);
    expect(
      techniqueOf([{ code: { text: 'Remark' }, valueCodeableConcept: { text: 'in pain' } }])?.technique
        .disturbances,
    ).toEqual(['pain']);
  });
});

describe('what was observed beside a pressure', () => {
  const lying = (time: string) =>
    observation(loinc('8361-8'), time, { valueCodeableConcept: snomed('40199007') });

  it('of a date without clock time tells nothing, even of the same date', () => {
    expect(pressures([pressure('2026-02-01', 118, 76), lying('2026-02-01')])[0]?.technique).toEqual({});
    expect(pressures([pressure('2026-02-01T00:00:00Z', 118, 76), lying('2026-02-01')])[0]?.technique).toEqual(
      {},
    );
  });

  it('without a time tells nothing', () => {
    const { effectiveDateTime: _, ...timeless } = lying(at);
    expect(pressures([pressure(at, 118, 76), timeless])[0]?.technique).toEqual({});
  });

  it('said twice alike is said once', () => {
    const again = { ...lying(at), valueCodeableConcept: { ...snomed('40199007'), text: 'on her back' } };
    expect(pressures([pressure(at, 118, 76), lying(at), again])[0]?.technique).toEqual({
      position: 'supine',
    });
  });

  it('differing in the cuff tells nothing of the position either', () => {
    const cuff = (words: string) => observation(loinc('8358-4'), at, { valueString: words });
    expect(pressures([pressure(at, 118, 76), lying(at), cuff('adult'), cuff('large')])[0]?.technique).toEqual(
      {},
    );
    expect(codesOf(built([pressure(at, 118, 76), lying(at)]))).toEqual([]);
  });
});

describe('setting', () => {
  const settingOf = (fields: Partial<Observation>) => {
    const { timeline } = built([{ ...pressure(at, 118, 76), ...fields }]);
    return [...timeline.pressures, ...timeline.homePressures][0]?.setting;
  };
  const meanSettingOf = (fields: Partial<Observation>) =>
    built([{ ...mean('96608-5', 138), ...fields }]).timeline.meanPressures[0]?.setting;

  it.each<[string, Partial<Observation>, string]>([
    ['a relative by reference', { performer: [{ reference: 'RelatedPerson/1' }] }, 'home'],
    ['a relative by type', { performer: [{ type: 'RelatedPerson', display: 'her sister' }] }, 'home'],
    ['the woman by type', { performer: [{ type: 'Patient' }] }, 'home'],
    ['a nurse by type', { performer: [{ type: 'Practitioner' }] }, 'unknown'],
    [
      'one of two who is the woman',
      { performer: [{ reference: 'Practitioner/1' }, { reference: 'Patient/woman' }] },
      'home',
    ],
    ['nobody, of an encounter', { encounter: { display: 'visit 3' } }, 'clinic'],
    ['nobody, of no encounter', {}, 'unknown'],
  ])('an average taken by %s is %s', (_, fields, expected) => {
    expect(meanSettingOf(fields)).toBe(expected);
  });

  it('a reading whose encounter was not sent is not taken at home', () => {
    expect(settingOf({ encounter: { reference: 'Encounter/none' } })).not.toBe('home');
  });
});
