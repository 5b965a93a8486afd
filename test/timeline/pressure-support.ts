// Blood pressures as the tests of this folder build and read them.
import type { FhirResource, Observation, ObservationComponent } from 'fhir/r4.js';
import type { PressureReading } from '../../src/timeline/timeline.ts';
import { loinc, observation, quantity } from '../support/resources.ts';
import { built } from './build.ts';

export const at = '2026-02-01T10:00:00Z';

export const pressures = (resources: readonly FhirResource[]): readonly PressureReading[] =>
  built(resources).timeline.pressures;

export function panel(
  component: ObservationComponent[] | undefined,
  fields: Partial<Observation> = {},
): Observation {
  return observation(loinc('85354-9'), at, { ...(component === undefined ? {} : { component }), ...fields });
}

export const systolic = (value: number): ObservationComponent => half('8480-6', value);
export const diastolic = (value: number): ObservationComponent => half('8462-4', value);

function half(code: string, value: number): ObservationComponent {
  return { code: loinc(code), valueQuantity: quantity(value, 'mm[Hg]') };
}
