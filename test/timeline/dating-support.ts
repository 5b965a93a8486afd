// Datings as the tests of this folder build and read them.
import type { FhirResource, Observation } from 'fhir/r4.js';
import { formatDay } from '../../src/timeline/calendar.ts';
import { formatGestation } from '../../src/timeline/gestation-text.ts';
import { momentAt } from '../../src/timeline/moment.ts';
import { placeOf } from '../../src/timeline/place.ts';
import type { Pregnancy } from '../../src/timeline/timeline.ts';
import { loinc, observation, quantity } from '../support/resources.ts';
import { built, defaultAsOf } from './build.ts';
import { values } from './values.ts';

export const pregnancyOf = (resources: readonly FhirResource[]): Pregnancy =>
  built(resources).timeline.pregnancy;

/** Weeks and days at the time of the evaluation. */
export function ageNow(resources: readonly FhirResource[]): string | undefined {
  const place = placeOf(momentAt(Date.parse(defaultAsOf), 0), pregnancyOf(resources), values);
  return place.gestationalAgeDays === undefined ? undefined : formatGestation(place.gestationalAgeDays);
}

/** Days since 1970-01-01 of a date. */
export const day = (text: string): number => Date.parse(text) / 86_400_000;

/** The date so many days after the day of the evaluation. */
export const date = (offset: number): string => formatDay(day(defaultAsOf.slice(0, 10)) + offset);

/** A gestational age found by ultrasound. */
export const scanAge = (at: string, days: number): Observation =>
  observation(loinc('11888-5'), at, { valueQuantity: quantity(days, 'd') });
