import type { FhirResource, Observation } from 'fhir/r4.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  diastolicOnly,
  homeMean,
  loinc,
  observation,
  pressure,
  quantity,
  snomed,
  systolicOnly,
} from '../support/resources.ts';
import { built, codesOf } from './build.ts';

const at = '2026-02-01T10:00:00Z';
const pressures = (resources: readonly FhirResource[]) => built(resources).timeline.pressures;

function panel(components: Observation['component'], fields: Partial<Observation> = {}): Observation {
  return observation(loinc('85354-9'), at, {
    ...(components === undefined ? {} : { component: components }),
    ...fields,
  });
}
const systolic = (value: number) => ({ code: loinc('8480-6'), valueQuantity: quantity(value, 'mm[Hg]') });
const diastolic = (value: number) => ({ code: loinc('8462-4'), valueQuantity: quantity(value, 'mm[Hg]') });

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

  it('of palpation is systolic only, with its method', () => {
    expect(pressures([systolicOnly(at, 150, true)])).toMatchObject([
      { systolicMmHg: 150, technique: { method: 'palpation' } },
    ]);
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
    expect(result.issues).toMatchObject([{ code: 'component-repeats-value' }]);
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

describe('properties', () => {
  const pairOfPressures = fc.record({
    s: fc.integer({ min: 100, max: 200 }),
    d: fc.integer({ min: 50, max: 99 }),
    hour: fc.integer({ min: 8, max: 16 }),
  });

  it('the order of entries does not matter', () => {
    fc.assert(
      fc.property(fc.array(pairOfPressures, { minLength: 2, maxLength: 6 }), fc.nat(), (readings, seed) => {
        const resources = readings.flatMap(({ s, d, hour }, index): Observation[] => {
          const time = `2026-02-01T${String(hour).padStart(2, '0')}:00:00Z`;
          return index % 2 === 0
            ? [{ ...pressure(time, s, d), id: `p${String(index)}` }]
            : [
                { ...systolicOnly(time, s), id: `s${String(index)}` },
                { ...diastolicOnly(time, d), id: `d${String(index)}` },
              ];
        });
        const turned = [
          ...resources.slice(seed % resources.length),
          ...resources.slice(0, seed % resources.length),
        ].reverse();
        expect(built(turned).timeline).toEqual(built(resources).timeline);
      }),
    );
  });

  it('the zone a time is written in does not matter', () => {
    const readingOf = (time: string) =>
      pressures([pressure(time, 150, 95)]).map((reading) => reading.at.earliest);
    expect(readingOf('2026-02-01T15:30:00+05:30')).toEqual(readingOf('2026-02-01T10:00:00Z'));
    expect(readingOf('2026-02-01T07:00:00-03:00')).toEqual(readingOf('2026-02-01T10:00:00Z'));
  });

  it('a reading in kPa is the reading a conversion by hand gives', () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 340 }), (tenths) => {
        const [reading] = pressures([
          observation(loinc('8480-6'), at, { valueQuantity: quantity(tenths / 10, 'kPa') }),
        ]);
        expect(reading?.systolicMmHg).toBe(Math.floor((tenths * 750_062) / 1_000_000 + 0.5));
      }),
    );
  });
});
