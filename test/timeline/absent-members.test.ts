// What is not recorded is absent from a fact: no member holds `undefined`, so a fact is the same as an object and as JSON.
import type { FhirResource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import {
  allergy,
  birth,
  condition,
  count,
  diastolicOnly,
  dueDate,
  gestationalAge,
  given,
  homeMean,
  lab,
  lastPeriod,
  loinc,
  observation,
  ordered,
  pressure,
  quantity,
  ratio,
  running,
  snomed,
  strip,
  stripSign,
  symptom,
  systolicOnly,
  takes,
  withoutUnit,
} from '../support/resources.ts';
import { built } from './build.ts';
import { panel, systolic, diastolic } from './pressure-support.ts';

const at = '2026-02-01T10:00:00Z';
const time = (clock: string): string => `2026-02-01T${clock}:00Z`;
const bound = { ...quantity(150, 'mm[Hg]'), comparator: '>=' as const };

const stories: Readonly<Record<string, readonly FhirResource[]>> = {
  'a whole pressure, and each half of one': [
    pressure(time('08:00'), 150, 95),
    pressure(time('09:00'), 150, undefined),
    pressure(time('10:00'), undefined, 95),
  ],
  'halves of their own, alone and paired': [
    systolicOnly(time('07:00'), 150),
    diastolicOnly(time('08:00'), 95),
    systolicOnly(time('09:00'), 150),
    diastolicOnly(time('09:03'), 95),
  ],
  'averages, whole and half': [
    homeMean({
      from: '2026-01-25T07:00:00Z',
      to: '2026-01-31T20:00:00Z',
      systolicMmHg: 138,
      diastolicMmHg: 87,
      readings: 12,
    }),
    observation(loinc('96609-3'), at, { valueQuantity: quantity(87, 'mm[Hg]') }),
    observation(loinc('96608-5'), time('12:00'), { valueQuantity: quantity(138, 'mm[Hg]') }),
  ],
  'lower bounds of each half': [
    panel([{ code: loinc('8480-6'), valueQuantity: bound }, diastolic(95)]),
    panel([systolic(180), { code: loinc('8462-4'), valueQuantity: { ...bound, value: 110 } }], {
      effectiveDateTime: time('12:00'),
    }),
  ],
  'pressures that cannot be used': [
    withoutUnit(pressure(time('08:00'), 150, 95)),
    withoutUnit(pressure(time('09:00'), 150, undefined)),
    withoutUnit(pressure(time('09:30'), undefined, 95)),
    pressure(time('10:00'), 90, 140),
    panel([{ code: loinc('8480-6'), valueQuantity: quantity(180, 'mg/dL') }, diastolic(98)]),
    panel([systolic(180), { code: loinc('8462-4'), valueQuantity: quantity(98, 'mg/dL') }]),
    panel(undefined, { valueString: 'BP 180/115' }),
    observation(loinc('8480-6'), undefined, { valueQuantity: quantity(180, 'mm[Hg]') }),
  ],
  'how a pressure was taken': [
    panel([
      systolic(150),
      diastolic(95),
      { code: loinc('8358-4'), valueString: 'adult' },
      { code: loinc('56072-2'), valueString: 'thick' },
      { code: loinc('41904-4'), valueString: 'wrist' },
      { code: { text: 'rest' }, valueString: 'yes' },
      { code: loinc('8361-8'), valueCodeableConcept: snomed('33586001') },
    ]),
    observation(loinc('8358-4'), at, {}),
  ],
  'the pregnancy and the woman': [
    gestationalAge(at, 210),
    lastPeriod('2025-09-01', '2025-07-06'),
    dueDate('2025-09-01', '2026-04-12'),
    birth('2023-01-01'),
    count(at, 'parity', 1),
    count(at, 'gravidity', 2),
  ],
  'a birth': [birth('2026-01-30T04:00:00Z')],
  'an undated pregnancy with a large uterus': [lab(at, 'fundal-height', 30, 'cm')],
  'urine and laboratory': [
    strip(at, '2+'),
    stripSign(at, 'nitrite', 'positive'),
    ratio(at, 40, 'mg/mmol'),
    lab(at, 'platelets', 200, '10*9/L'),
    lab(at, 'alt', 40, 'U/L', 35),
  ],
  'symptoms and conditions, with and without a time': [
    symptom(at, 'headache', true),
    symptom(undefined, 'dyspnoea', false),
    condition('chronic-hypertension'),
    condition('epilepsy', '2020-01-01'),
    { ...condition('epilepsy'), code: snomed('25064002') },
    observation(snomed('22033007'), undefined, { valueBoolean: true }),
  ],
  'medicines and allergies': [
    takes('labetalol', '2026-01-01'),
    given('nifedipine', at),
    running('magnesium-sulfate', at),
    ordered('methyldopa', at),
    allergy('aspirin'),
    { ...takes('labetalol', '2026-01-02'), effectivePeriod: {} },
  ],
};

describe('no member of the timeline holds undefined', () => {
  it.each(Object.entries(stories))('for %s', (_, resources) => {
    const { timeline, setAside, notNeeded, issues } = built(resources);
    const parts = { timeline, setAside, notNeeded, issues: [...issues] };
    const asJson: unknown = JSON.parse(
      JSON.stringify(parts, (key, value: unknown) => (key === 'resource' ? 0 : value)),
    );
    const asObject: unknown = JSON.parse(JSON.stringify(parts, mark));
    expect(asObject).toEqual(asJson);
  });
});

/** Writes `undefined` as a word, so that a member that holds it is seen. */
function mark(key: string, value: unknown): unknown {
  if (key === 'resource') return 0;
  return value === undefined ? 'undefined' : value;
}
