import type { FhirResource, Observation } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { loinc, observation, quantity, snomed, pressure, homeMean } from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { at, pressures, panel, systolic, diastolic } from './pressure-support.ts';

describe('position and method by code (terminology.md section 1)', () => {
  it.each([
    ['8459-0', 'sitting'],
    ['8461-6', 'supine'],
    ['89268-7', 'left-lateral'],
  ])('%s is used, with position %s', (code, position) => {
    expect(
      pressures([observation(loinc(code), at, { valueQuantity: quantity(150, 'mm[Hg]') })]),
    ).toMatchObject([{ systolicMmHg: 150, technique: { position } }]);
  });

  it.each(['8460-8', '76215-3', '75997-7'])('%s is not used for classification', (code) => {
    expect(
      codesOf(built([observation(loinc(code), at, { valueQuantity: quantity(150, 'mm[Hg]') })])),
    ).toEqual(['method-not-usable']);
  });

  it('an invasive pressure by its method is not used', () => {
    expect(codesOf(built([{ ...pressure(at, 150, 90), method: snomed('77938009') }]))).toEqual([
      'method-not-usable',
    ]);
  });

  it('a mean arterial pressure is understood and not needed', () => {
    const result = built([observation(loinc('8478-0'), at, { valueQuantity: quantity(101, 'mm[Hg]') })]);
    expect(result.notNeeded).toHaveLength(1);
    expect(result.timeline.pressures).toEqual([]);
  });

  it('records arm, cuff, device, observer, rest and position', () => {
    const [reading] = pressures([
      panel(
        [
          systolic(150),
          diastolic(90),
          { code: loinc('8358-4'), valueQuantity: quantity(32, 'cm') },
          { code: loinc('8361-8'), valueCodeableConcept: snomed('33586001') },
          { code: { text: 'Arm circumference' }, valueQuantity: quantity(29, 'cm') },
          { code: { text: 'Minutes of rest' }, valueQuantity: quantity(5, 'min') },
        ],
        {
          bodySite: snomed('368208006', 'Left arm'),
          method: snomed('37931006'),
          device: { display: 'Aneroid 12' },
          performer: [{ reference: 'Practitioner/7' }],
        },
      ),
    ]);
    expect(reading).toMatchObject({
      arm: 'left',
      technique: {
        position: 'sitting',
        method: 'auscultation',
        device: 'Aneroid 12',
        cuffCm: 32,
        armCircumferenceCm: 29,
        restMinutes: 5,
        observer: 'Practitioner/7',
        site: 'Left arm',
      },
    });
  });
});

describe('cuff and arm (Q4)', () => {
  const techniqueOf = (...more: NonNullable<Observation['component']>) =>
    pressures([panel([systolic(118), diastolic(76), ...more])])[0]?.technique;
  const coded = (code: string) => ({ code: loinc('8358-4'), valueCodeableConcept: snomed(code) });

  it.each([
    ['720737000', 'adult'],
    ['720736009', 'paediatric'],
  ])('the cuff %s without its term is "%s"', (code, cuff) => {
    expect(techniqueOf(coded(code))?.cuff).toBe(cuff);
  });

  it.each([
    ['the code', loinc('56072-2')],
    ['"Circumference Upper arm"', { text: 'Circumference Upper arm' }],
    ['"Mid-arm circumference"', { text: 'Mid-arm circumference' }],
  ])('the arm is known by %s', (_, code) => {
    expect(techniqueOf({ code, valueQuantity: quantity(36, 'cm') })?.armCircumferenceCm).toBe(36);
  });

  it('the head has no arm', () => {
    const code = { text: 'Head circumference' };
    expect(techniqueOf({ code, valueQuantity: quantity(36, 'cm') })).not.toHaveProperty('armCircumferenceCm');
  });
});

describe('what was observed beside a pressure', () => {
  const beside = (code: string, fields: Partial<Observation>, time = at): Observation =>
    observation(loinc(code), time, fields);
  const lying = beside('8361-8', { valueCodeableConcept: snomed('40199007') });
  const seated = beside('8361-8', { valueCodeableConcept: snomed('33586001') });

  it('at the same time tells position, cuff and arm', () => {
    const result = built([
      pressure(at, 118, 76),
      lying,
      beside('8358-4', { valueCodeableConcept: { text: 'adult' } }),
      beside('56072-2', { valueQuantity: quantity(36, 'cm') }),
    ]);
    expect(result.timeline.pressures[0]?.technique).toMatchObject({
      position: 'supine',
      cuff: 'adult',
      armCircumferenceCm: 36,
    });
    expect(result.notNeeded.map(({ why }) => why)).toEqual(
      Array(3).fill('read for how a pressure was taken'),
    );
  });

  it('at another time, or differing, tells nothing; what the pressure itself says goes before', () => {
    const later = { ...lying, effectiveDateTime: '2026-02-01T10:01:00Z' };
    expect(pressures([pressure(at, 118, 76), later])[0]?.technique).toEqual({});
    expect(pressures([pressure(at, 118, 76), lying, seated])[0]?.technique).toEqual({});
    const sitting = panel([
      systolic(118),
      diastolic(76),
      { code: loinc('8361-8'), valueCodeableConcept: snomed('33586001') },
    ]);
    expect(pressures([sitting, lying])[0]?.technique.position).toBe('sitting');
  });
});

describe('setting', () => {
  it('is home by a code in the method, and such readings are kept apart', () => {
    const { timeline } = built([pressure(at, 138, 88, { setting: 'home' }), pressure(at, 150, 95)]);
    expect(timeline.homePressures).toMatchObject([{ systolicMmHg: 138, setting: 'home' }]);
    expect(timeline.pressures).toMatchObject([{ systolicMmHg: 150, setting: 'unknown' }]);
  });

  it.each([
    ['category', { category: [snomed('264362003')] }],
    [
      'extension',
      { extension: [{ url: 'http://example.org/where', valueCodeableConcept: snomed('264362003') }] },
    ],
    [
      'extension coding',
      { extension: [{ url: 'x', valueCoding: { system: 'http://snomed.info/sct', code: '264362003' } }] },
    ],
  ])('is home by a code in the %s', (_, fields) => {
    expect(built([{ ...pressure(at, 138, 88), ...fields }]).timeline.homePressures).toHaveLength(1);
  });

  it.each([
    ['HH', 'home'],
    ['VR', 'home'],
    ['AMB', 'clinic'],
  ])('of an encounter of class %s is %s', (code, setting) => {
    const encounter: FhirResource = {
      resourceType: 'Encounter',
      id: 'e',
      status: 'finished',
      class: { system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode', code },
      subject: { reference: 'Patient/woman' },
    };
    const { timeline } = built([
      encounter,
      { ...pressure(at, 138, 88), encounter: { reference: 'Encounter/e' } },
    ]);
    expect([...timeline.pressures, ...timeline.homePressures]).toMatchObject([{ setting }]);
  });
});

describe('averages (terminology.md section 1; QUIRKS)', () => {
  const series = {
    from: '2026-01-25T07:00:00Z',
    to: '2026-01-31T20:00:00Z',
    systolicMmHg: 138,
    diastolicMmHg: 87,
    readings: 12,
  };

  it('are no readings, keep their span and number, and are home when a code says so', () => {
    const { timeline } = built([homeMean(series)]);
    expect(timeline.pressures).toEqual([]);
    expect(timeline.meanPressures).toMatchObject([
      {
        systolicMmHg: 138,
        diastolicMmHg: 87,
        numberOfReadings: 12,
        setting: 'home',
        from: { text: series.from },
        to: { text: series.to },
      },
    ]);
  });

  it('count as an average when one component carries both codes (QUIRKS: Inferno)', () => {
    const both = (one: string, other: string, value: number) => ({
      code: { coding: [...(loinc(one).coding ?? []), ...(loinc(other).coding ?? [])] },
      valueQuantity: quantity(value, 'mm[Hg]'),
    });
    const { timeline } = built([panel([both('8480-6', '96608-5', 138), both('8462-4', '96609-3', 87)])]);
    expect(timeline.pressures).toEqual([]);
    expect(timeline.meanPressures).toMatchObject([
      { systolicMmHg: 138, diastolicMmHg: 87, setting: 'unknown' },
    ]);
  });

  it('are home when the woman took them, or they span more than a day', () => {
    const mean = (fields: Partial<Observation>) =>
      observation(loinc('96607-7'), at, {
        component: [{ code: loinc('96608-5'), valueQuantity: quantity(138, 'mm[Hg]') }],
        ...fields,
      });
    const settings = (fields: Partial<Observation>) =>
      built([mean(fields)]).timeline.meanPressures.map(({ setting }) => setting);
    expect(settings({ performer: [{ reference: 'Patient/woman' }] })).toEqual(['home']);
    expect(settings({ performer: [{ reference: 'Practitioner/1' }] })).toEqual(['unknown']);
    expect(settings({ method: snomed('257585005') })).toEqual(['clinic']);
    const { effectiveDateTime: _unused, ...timeless } = mean({});
    const spanning = { ...timeless, effectivePeriod: { start: series.from, end: series.to } };
    expect(built([spanning]).timeline.meanPressures).toMatchObject([{ setting: 'home' }]);
  });
});
