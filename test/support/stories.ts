// Invented women for the property tests: a period of pregnancy, readings, urine, blood, symptoms.
import fc from 'fast-check';
import type { FhirResource, Observation } from 'fhir/r4.js';
import type { StripAnswer } from './codes.ts';
import type { SymptomName } from './codes.ts';
import * as build from './resources.ts';

export interface Story {
  /** Dating, if any, and what was found. Each resource has its own id. */
  readonly resources: readonly FhirResource[];
  readonly asOf: string;
  readonly period: 'before-20-weeks' | 'from-20-weeks' | 'after-birth' | 'unknown';
}

const firstDay = Date.parse('2025-03-10T00:00:00Z');
const minute = 60_000;
const day = 1440 * minute;
export const storyAsOf = '2025-03-13T12:00:00Z';

/** A time on one of three days, far enough from midnight that no usual zone changes the day. */
const moments = fc
  .tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 6 * 60, max: 17 * 60 }))
  .map(([days, minutes]) =>
    new Date(firstDay + days * day + minutes * minute).toISOString().replace('.000Z', 'Z'),
  );

export interface Pair {
  readonly at: string;
  readonly systolic: number;
  readonly diastolic: number;
}

/** Pressures inside the plausible range of the clinical rules (Q2: 60 to 260 and 30 to 160), systolic above diastolic. */
export const highestSystolic = 260;
export const highestDiastolic = 160;
const pairs: fc.Arbitrary<Pair> = fc
  .tuple(moments, fc.integer({ min: 100, max: 190 }), fc.integer({ min: 60, max: 125 }))
  .filter(([, systolic, diastolic]) => diastolic + 20 < systolic)
  .map(([at, systolic, diastolic]) => ({ at, systolic, diastolic }));

const strips = fc
  .tuple(moments, fc.constantFrom<StripAnswer>('negative', 'trace', '1+', '2+'))
  .map(([at, answer]) => build.strip(at, answer));

const labs = fc.oneof(
  fc
    .tuple(moments, fc.integer({ min: 60, max: 300 }))
    .map(([at, value]) => build.lab(at, 'platelets', value, '10*9/L')),
  fc
    .tuple(moments, fc.integer({ min: 40, max: 130 }))
    .map(([at, value]) => build.lab(at, 'creatinine', value, 'umol/L')),
  fc
    .tuple(moments, fc.integer({ min: 10, max: 120 }))
    .map(([at, value]) => build.lab(at, 'alt', value, 'U/L')),
);

const symptoms = fc
  .tuple(
    moments,
    fc.constantFrom<SymptomName>('headache', 'visual-disturbance', 'epigastric-pain'),
    fc.boolean(),
  )
  .map(([at, name, present]) => build.symptom(at, name, present));

const datings: fc.Arbitrary<{
  readonly period: Story['period'];
  readonly resources: readonly Observation[];
}> = fc.oneof(
  fc.integer({ min: 70, max: 130 }).map((days) => dated('before-20-weeks', days)),
  fc.integer({ min: 140, max: 285 }).map((days) => dated('from-20-weeks', days)),
  fc.integer({ min: 0, max: 38 }).map((days) => ({
    period: 'after-birth' as const,
    resources: [
      build.birth(new Date(firstDay - days * day + 5 * 60 * minute).toISOString().replace('.000Z', 'Z')),
    ],
  })),
  fc.constant({ period: 'unknown' as const, resources: [] }),
);

const dated = (
  period: Story['period'],
  days: number,
): { period: Story['period']; resources: Observation[] } => ({
  period,
  resources: [build.gestationalAge('2025-03-10T06:00:00Z', days)],
});

export interface StoryParts {
  readonly pairs: readonly Pair[];
  readonly others: readonly FhirResource[];
  readonly period: Story['period'];
}

/** The readings apart from the rest, so that a property can change a pressure. */
export const storyParts: fc.Arbitrary<StoryParts> = fc
  .tuple(
    fc.array(pairs, { minLength: 1, maxLength: 5 }),
    datings,
    fc.array(fc.oneof(strips, labs, symptoms), { maxLength: 4 }),
  )
  .map(([readings, dating, found]) => ({
    pairs: readings,
    others: [...dating.resources, ...found],
    period: dating.period,
  }));

/** Readings in the unit asked for: kPa to two decimals, which rounds back to the same whole mm[Hg]. */
export function toStory(parts: StoryParts, unit: 'mm[Hg]' | 'kPa' = 'mm[Hg]'): Story {
  const kPaPerMmHg = 0.133322;
  const sent = (mmHg: number): number => (unit === 'kPa' ? Math.round(mmHg * kPaPerMmHg * 100) / 100 : mmHg);
  const readings = parts.pairs.map(({ at, systolic, diastolic }) =>
    build.pressure(at, sent(systolic), sent(diastolic), { unit }),
  );
  const resources = [...readings, ...parts.others].map((resource, index) => ({
    ...resource,
    id: `r${index}`,
  }));
  return { resources, asOf: storyAsOf, period: parts.period };
}

export const stories: fc.Arbitrary<Story> = storyParts.map((parts) => toStory(parts));
