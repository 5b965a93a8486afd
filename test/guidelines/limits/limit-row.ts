// One limit of a publication: the woman whose one value varies, and how the question about it must come out.
import type { FhirResource } from 'fhir/r4.js';
import type { Outcome } from '../../../src/findings/finding.ts';
import type { LaboratoryName } from '../../support/codes.ts';
import * as build from '../../support/resources.ts';

export type Edition =
  'frontline' | 'who-2020' | 'isshp-2021' | 'acog-2020' | 'nice-2023' | 'india-mohfw' | 'sogc-2022';

/** `from` 140 counts 140; `over` 160 does not count 160; `below` 150 does not count 150; `up-to` 50 counts 50. */
export type Counts = 'from' | 'over' | 'below' | 'up-to';

export interface LimitRow {
  readonly what: string;
  /** Where the number stands: section of the clinical rules or decision, and how it is known (R read, M memory, D ours). */
  readonly source: string;
  readonly editions: readonly Edition[];
  readonly question: string;
  readonly counts: Counts;
  /** Just below, at, and just above the limit: less than one in a hundred away. */
  readonly values: readonly [below: number, at: number, above: number];
  readonly unit: string;
  /** The answer on the far side of the limit, and short of it. */
  readonly beyond?: Outcome;
  readonly short?: Outcome;
  readonly woman: (value: number) => readonly FhirResource[];
}

export const everyEdition: readonly Edition[] = [
  'frontline',
  'who-2020',
  'isshp-2021',
  'acog-2020',
  'nice-2023',
  'india-mohfw',
  'sogc-2022',
];
export const except = (...left: readonly Edition[]): readonly Edition[] =>
  everyEdition.filter((id) => !left.includes(id));

const reached: Readonly<Record<Counts, readonly [boolean, boolean, boolean]>> = {
  from: [false, true, true],
  over: [false, false, true],
  below: [true, false, false],
  'up-to': [true, true, false],
};

/** Each value with the outcome it must give. */
export function stepsOf(row: LimitRow): readonly (readonly [value: number, outcome: Outcome])[] {
  const { beyond = 'met', short = 'not-met' } = row;
  return row.values.map((value, index) => [value, reached[row.counts][index] === true ? beyond : short]);
}

/** All of these women are looked at on this afternoon. */
export const asOf = '2025-03-10T15:00:00Z';
const asOfMs = Date.parse(asOf);
export const morning = '2025-03-10T09:00:00Z';
export const noon = '2025-03-10T13:30:00Z';
export const hour = 3600;
export const day = 24 * hour;

const written = (ms: number): string => new Date(ms).toISOString().replace('.000Z', 'Z');
export const secondsBefore = (seconds: number): string => written(asOfMs - seconds * 1000);
export const secondsAfter = (at: string, seconds: number): string => written(Date.parse(at) + seconds * 1000);

export const dated = (days: number): FhirResource => build.gestationalAge('2025-03-10T08:00:00Z', days);
/** 30 weeks and 4 days. */
export const thirtyWeeks = dated(214);
export const sixDaysAfterBirth = build.birth('2025-03-04T06:00:00Z');
/** Raised twice, more than four hours apart. */
export const raisedTwice: readonly FhirResource[] = [
  build.pressure(morning, 146, 92),
  build.pressure(noon, 148, 94),
];
/** The laboratory tests every edition may ask for, normal; `instead` takes the place of its own kind. */
export function laboratory(...instead: readonly (readonly [LaboratoryName, number, string, number?])[]) {
  const normal: readonly (readonly [LaboratoryName, number, string, number?])[] = [
    ['platelets', 250, '10*9/L'],
    ['creatinine', 60, 'umol/L'],
    ['alt', 20, 'U/L'],
    ['ast', 20, 'U/L'],
  ];
  const given = new Set(instead.map(([name]) => name));
  return [...normal.filter(([name]) => !given.has(name)), ...instead].map(([name, value, unit, upper]) =>
    build.lab(morning, name, value, unit, upper),
  );
}
