// What one observation says about pressure: averages over 24 hours, counts, components said twice, and values in odd places.
import type { Observation, ObservationComponent } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { loinc, observation, pressure, quantity, snomed, systolicOnly } from '../support/resources.ts';
import { built, codesOf } from './build.ts';
import { at, diastolic, panel, pressures, systolic } from './pressure-support.ts';

type Code = ObservationComponent['code'];
const part = (code: Code, value: number, unit = 'mm[Hg]'): ObservationComponent => ({
  code,
  valueQuantity: quantity(value, unit),
});
const both = (...codes: readonly Code[]): Code => ({ coding: codes.flatMap(({ coding = [] }) => coding) });

describe('an average over 24 hours (terminology.md section 1)', () => {
  const meansOf = (resource: Observation) => built([resource]).timeline.meanPressures;

  it.each<[string, Code, Code, Code, string]>([
    ['by its panel', loinc('97844-5'), loinc('8480-6'), loinc('8462-4'), 'home'],
    ['by its components', loinc('85354-9'), loinc('8490-5'), loinc('8472-3'), 'home'],
    ['by one of its components', loinc('85354-9'), loinc('8490-5'), loinc('96609-3'), 'home'],
    ['by none of them', loinc('96607-7'), loinc('96608-5'), loinc('96609-3'), 'unknown'],
  ])('%s, sent with one time: no reading, and an ambulatory day counts as home', (_, code, s, d, setting) => {
    const sent = observation(code, at, { component: [part(s, 136), part(d, 84)] });
    expect(pressures([sent])).toEqual([]);
    expect(meansOf(sent)).toMatchObject([{ systolicMmHg: 136, diastolicMmHg: 84, setting }]);
  });

  it('a panel of single readings stays a reading', () => {
    expect(meansOf(pressure(at, 136, 84))).toEqual([]);
    expect(pressures([pressure(at, 136, 84)])).toHaveLength(1);
  });

  it.each(['96607-7', '97844-5'])('the halves of a panel %s are averages, whatever their codes', (code) => {
    const sent = observation(loinc(code), at, { component: [systolic(136), diastolic(84)] });
    expect(pressures([sent])).toEqual([]);
    expect(meansOf(sent)).toHaveLength(1);
  });

  it('a reading and an average in one panel are one of each', () => {
    const { timeline } = built([
      panel([systolic(150), diastolic(95), part(loinc('96608-5'), 138), part(loinc('96609-3'), 87)]),
    ]);
    expect(timeline.pressures).toMatchObject([{ systolicMmHg: 150, diastolicMmHg: 95 }]);
    expect(timeline.meanPressures).toMatchObject([{ systolicMmHg: 138, diastolicMmHg: 87 }]);
  });
});

describe('the number of readings of an average', () => {
  const counted = (...more: readonly ObservationComponent[]) =>
    built([
      observation(loinc('96607-7'), at, {
        component: [part(loinc('96608-5'), 138), part(loinc('96609-3'), 87), ...more],
      }),
    ]).timeline.meanPressures[0]?.numberOfReadings;
  const local: Code = { coding: [{ system: 'http://example.org', code: 'n' }] };

  it.each<[string, Code]>([
    ['SNOMED CT 246432004', snomed('246432004')],
    ['SNOMED CT 246432004 behind a local code', both(local, snomed('246432004'))],
    ['the words "Number of readings"', { text: 'Number of readings' }],
    ['the words "number of measurements"', { text: 'number of measurements' }],
    ['the display "Number of occurrences"', { coding: [{ code: 'x', display: 'Number of occurrences' }] }],
  ])('is known by %s', (_, code) => {
    expect(counted({ code, valueInteger: 6 })).toBe(6);
    expect(counted({ code, valueQuantity: { value: 6 } })).toBe(6);
  });

  it('is found behind components of other things', () => {
    expect(
      counted({ code: local, valueInteger: 3 }, { code: { text: 'number of readings' }, valueInteger: 12 }),
    ).toBe(12);
  });

  it.each<[string, Partial<ObservationComponent>]>([
    ['half a reading', { valueQuantity: { value: 2.5 } }],
    ['a length', { valueQuantity: quantity(6, 'cm') }],
    ['a text', { valueString: '6' }],
    ['nothing', {}],
  ])('is not known from %s', (_, value) => {
    expect(counted({ code: { text: 'number of readings' }, ...value })).toBeUndefined();
  });

  it('is not taken from another component, or from none', () => {
    expect(counted({ code: local, valueInteger: 6 })).toBeUndefined();
    expect(counted()).toBeUndefined();
  });
});

describe('a half said twice in one observation', () => {
  it.each([
    [[systolic(152), systolic(152), diastolic(90)]],
    [[systolic(152), diastolic(90), diastolic(90)]],
    [[diastolic(90), systolic(152), diastolic(90), systolic(152)]],
  ])('with the same value is one', (components) => {
    const result = built([panel(components)]);
    expect(result.timeline.pressures).toMatchObject([
      { systolicMmHg: 152, diastolicMmHg: 90, asSent: '152/90 mm[Hg]' },
    ]);
    expect(result.issues).toEqual([]);
  });

  it.each([
    [172, 130],
    [130, 172],
  ])('with %i and %i is not used; the higher is kept for urgency, and both are shown', (one, other) => {
    const { timeline, issues } = built([panel([systolic(one), systolic(other), diastolic(90)])]);
    expect(timeline.pressures).toMatchObject([{ diastolicMmHg: 90 }]);
    expect(timeline.unusablePressures).toMatchObject([
      { systolic: 172, asSent: `${String(one)} or ${String(other)}/90 mm[Hg]` },
    ]);
    expect(issues.map(({ code }) => code)).toEqual(['value-ambiguous']);
  });

  it('with three values, two of them the same, shows each once', () => {
    const { timeline } = built([panel([systolic(152), systolic(130), systolic(152)])]);
    expect(timeline.unusablePressures).toMatchObject([{ systolic: 152, asSent: '152 or 130/- mm[Hg]' }]);
  });

  it('with one number in a unit of pressure and the same without is that number', () => {
    const bare = { code: loinc('8480-6'), valueQuantity: { value: 152 } };
    for (const components of [
      [systolic(152), bare, diastolic(90)],
      [bare, systolic(152), diastolic(90)],
    ])
      expect(built([panel(components)]).setAside.map(({ code }) => code)).not.toContain('value-ambiguous');
  });

  it('beside a half that cannot be read says both', () => {
    const odd = { code: loinc('8462-4'), valueBoolean: true };
    const { timeline, issues, setAside } = built([panel([systolic(152), systolic(130), odd])]);
    expect(timeline.pressures).toEqual([]);
    expect(timeline.unusablePressures).toMatchObject([{ systolic: 152 }]);
    expect([...issues, ...setAside].map(({ code }) => code)).toContain('value-ambiguous');
  });

  it('of two averages, or of an average and a reading, are told apart', () => {
    const { timeline } = built([panel([systolic(152), part(loinc('96608-5'), 138), diastolic(90)])]);
    expect(timeline.pressures).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 90 }]);
    expect(timeline.meanPressures).toMatchObject([{ systolicMmHg: 138 }]);
    expect(timeline.unusablePressures).toEqual([]);
  });
});

describe('an observation of one half with components (obs-7)', () => {
  it('takes the other half from a component', () => {
    const result = built([{ ...systolicOnly(at, 152), component: [diastolic(98)] }]);
    expect(result.timeline.pressures).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
    expect(result.issues).toEqual([]);
  });

  it('whose own number has a foreign unit uses the sound one of a component', () => {
    const own = { ...systolicOnly(at, 180), valueQuantity: quantity(180, 'mg/dL') };
    const { timeline } = built([{ ...own, component: [systolic(152), diastolic(98)] }]);
    expect(timeline.pressures).toMatchObject([{ systolicMmHg: 152, diastolicMmHg: 98 }]);
    expect(timeline.unusablePressures).toEqual([]);
  });

  it('whose own number has a foreign unit keeps it for urgency beside a sound diastolic', () => {
    const own = { ...systolicOnly(at, 180), valueQuantity: quantity(180, 'mg/dL') };
    const { timeline } = built([{ ...own, component: [diastolic(98)] }]);
    expect(timeline.pressures).toMatchObject([{ diastolicMmHg: 98 }]);
    expect(timeline.unusablePressures).toMatchObject([{ why: 'unit-unknown', systolic: 180 }]);
  });

  it('without a value of its own is read from its components', () => {
    const { valueQuantity: _own, ...bare } = systolicOnly(at, 152);
    expect(pressures([{ ...bare, component: [systolic(148), diastolic(98)] }])).toMatchObject([
      { systolicMmHg: 148, diastolicMmHg: 98 },
    ]);
  });

  it('with an average among its components keeps both', () => {
    const { timeline, issues } = built([
      { ...systolicOnly(at, 152), component: [part(loinc('96608-5'), 138)] },
    ]);
    expect(timeline.pressures).toMatchObject([{ systolicMmHg: 152 }]);
    expect(timeline.meanPressures).toMatchObject([{ systolicMmHg: 138 }]);
    expect(issues.map(({ code }) => code)).not.toContain('component-repeats-value');
  });
});

describe('a pressure no classification may rest on', () => {
  it.each<[string, Observation, string]>([
    [
      'a standing panel',
      { ...pressure(at, 150, 95), code: snomed('163034007') },
      'A pressure taken standing is not used for classification.',
    ],
    [
      'a standing component',
      panel([part(loinc('8460-8'), 150)]),
      'A pressure taken standing is not used for classification.',
    ],
    [
      'an invasive reading',
      { ...pressure(at, 150, 95), method: snomed('77938009') },
      'An invasive pressure is not a cuff pressure.',
    ],
  ])('%s is set aside, and the reason is said', (_, sent, message) => {
    const { setAside, timeline } = built([sent]);
    expect(timeline.pressures).toEqual([]);
    expect(setAside).toMatchObject([{ code: 'method-not-usable', message }]);
  });

  it('one component with the codes of both halves is ambiguous', () => {
    const code = both(loinc('8480-6'), loinc('8462-4'));
    expect(codesOf(built([panel([part(code, 150)])]))).toEqual(['value-ambiguous']);
  });

  it('a mean arterial pressure with halves beside it gives the halves', () => {
    const sent = observation(loinc('8478-0'), at, { component: [systolic(150), diastolic(95)] });
    expect(pressures([sent])).toMatchObject([{ systolicMmHg: 150, diastolicMmHg: 95 }]);
  });
});

describe('a panel without components', () => {
  it.each<[string, Partial<Observation>, string]>([
    [
      'with a reason why',
      { dataAbsentReason: { coding: [{ code: 'unknown' }] } },
      'value-absent-with-reason',
    ],
    ['and without a value', {}, 'value-missing'],
    ['with one quantity', { valueQuantity: quantity(150, 'mm[Hg]') }, 'value-type-not-usable'],
    ['with a note but no value', { note: [{ text: '150/95' }] }, 'value-missing'],
  ])('%s is set aside as %s', (_, fields, code) => {
    expect(codesOf(built([panel(undefined, fields)]))).toEqual([code]);
  });
});

describe('what the code of a pressure tells of how it was taken', () => {
  const half = (code: Code, value: number, fields: Partial<Observation> = {}) =>
    observation(code, at, { valueQuantity: quantity(value, 'mm[Hg]'), ...fields });

  it('position: sitting by code; a position recorded beside goes before', () => {
    const [plain] = pressures([half(loinc('8459-0'), 150)]);
    expect(plain?.technique).toEqual({ position: 'sitting' });
    const position = { code: loinc('8361-8'), valueCodeableConcept: snomed('40199007') };
    expect(pressures([half(loinc('8459-0'), 150, { component: [position] })])[0]?.technique.position).toBe(
      'supine',
    );
  });

  it('method: felt by code; a method recorded beside goes before', () => {
    expect(pressures([half(loinc('8479-8'), 150)])[0]?.technique).toEqual({ method: 'palpation' });
    expect(pressures([half(loinc('8479-8'), 150, { method: snomed('37931006') })])[0]?.technique.method).toBe(
      'auscultation',
    );
  });

  it('place: an average taken at home by code; a clinic recorded beside goes before', () => {
    const mean = (fields: Partial<Observation> = {}) =>
      built([half(snomed('413606001'), 138, fields)]).timeline.meanPressures;
    expect(mean()).toMatchObject([{ systolicMmHg: 138, setting: 'home' }]);
    expect(mean({ method: snomed('257585005') })).toMatchObject([{ setting: 'clinic' }]);
  });

  it('nothing, for a code that says nothing', () => {
    expect(pressures([half(loinc('8480-6'), 150)])[0]?.technique).toEqual({});
  });
});
