// What is read about how something was measured: disturbances of a pressure, and what is known of a urine sample.
import { describe, expect, it } from 'vitest';
import type { Observation } from 'fhir/r4.js';
import { loinc, observation, pressure, quantity, strip } from '../support/resources.ts';
import { built } from './build.ts';

const at = '2026-02-01T09:00:00Z';
const noted = (resource: Observation, text: string): Observation => ({ ...resource, note: [{ text }] });

describe('what raised a pressure', () => {
  it.each([
    ['Talking during measurement', ['talking']],
    ['had coffee, smoked just before', ['smoking', 'caffeine']],
    ['walked from the bus', ['walking']],
    ['no coffee, not in pain', undefined],
    ['feels well', undefined],
  ])('"%s": %j', (text, disturbances) => {
    const { timeline } = built([noted(pressure(at, 124, 78), text)]);
    expect(timeline.pressures[0]?.technique.disturbances).toEqual(disturbances);
  });
});

describe('a urine sample', () => {
  const sampleOf = (resource: Observation) => built([resource]).timeline.urineProteins[0]?.sample;
  it.each([
    ['First morning urine', { isFirstMorning: true, readBy: 'eye' }],
    ['specimen contaminated', { isContaminated: true, readBy: 'eye' }],
    ['chlorhexidine was used', { hasAntiseptic: true, readBy: 'eye' }],
    ['not contaminated', undefined],
    ['clean catch', undefined],
  ])('noted "%s": %j', (text, sample) => {
    expect(sampleOf(noted(strip(at, '1+'), text))).toEqual(sample);
  });

  it('of a hospital encounter, read by an automated reader', () => {
    const encounter = {
      resourceType: 'Encounter' as const,
      id: 'stay',
      status: 'in-progress' as const,
      class: { system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode', code: 'IMP' },
      subject: { reference: 'Patient/woman' },
    };
    const tested = (code: string): Observation => ({
      ...observation(loinc(code), at, { valueCodeableConcept: { text: '1+' } }),
      encounter: { reference: 'Encounter/stay' },
    });
    const sampleIn = (code: string) => built([encounter, tested(code)]).timeline.urineProteins[0]?.sample;
    expect(sampleIn('57735-3')).toEqual({ isFromHospital: true, readBy: 'analyser' });
    expect(sampleIn('20454-5')).toEqual({ isFromHospital: true, readBy: 'eye' });
  });

  it('has a specific gravity, with or without unit, and a pH; 1015 is refused, not guessed', () => {
    const gravity = (valueQuantity: Observation['valueQuantity']) =>
      built([
        observation(loinc('5811-5'), at, { ...(valueQuantity === undefined ? {} : { valueQuantity }) }),
      ]);
    for (const sent of [quantity(1.005, '1'), { value: 1.005 }])
      expect(gravity(sent).timeline.laboratory[0]?.byUnit.values['1']).toBe(1.005);
    expect(gravity({ value: 1015 }).setAside.map(({ code }) => code)).toEqual(['value-out-of-range']);
    const acidity = built([observation(loinc('5803-2'), at, { valueQuantity: quantity(8.5, '[pH]') })]);
    expect(acidity.timeline.laboratory[0]?.byUnit.values['[pH]']).toBe(8.5);
  });
});
