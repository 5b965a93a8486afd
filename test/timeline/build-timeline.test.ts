import { readFileSync } from 'node:fs';
import type { FhirResource } from 'fhir/r4.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readBundle, subjectsOf } from '../../src/bundle/read-bundle.ts';
import type { ReadBundle } from '../../src/bundle/read-bundle-types.ts';
import type { BuiltTimeline } from '../../src/timeline/build-timeline.ts';
import { buildTimeline } from '../../src/timeline/build-timeline.ts';
import type { Timeline } from '../../src/timeline/timeline.ts';
import * as make from '../support/resources.ts';
import { built, codesOf, defaultAsOf } from './build.ts';
import { values } from './values.ts';

/** References of everything that became a fact. */
function factReferences({ woman, pregnancy, ...lists }: Timeline): ReadonlySet<string | undefined> {
  const { dating, birth, assumedFrom20Weeks, fetuses } = pregnancy;
  const single = [dating, birth, assumedFrom20Weeks, fetuses, woman.parity, woman.gravidity];
  const bySource = [
    ...lists.urineProteins,
    ...lists.urineSigns,
    ...lists.laboratory,
    ...lists.symptoms,
    ...lists.conditions,
    ...lists.medicines,
    ...lists.requests,
    ...(dating?.others ?? []),
    ...woman.previousBirths,
    ...single.filter((fact) => fact !== undefined),
  ];
  const bySources = [...lists.pressures, ...lists.homePressures, ...lists.meanPressures];
  return new Set([
    woman.reference,
    ...bySource.map(({ source }) => source.reference),
    ...bySources.flatMap(({ sources }) => sources.map(({ reference }) => reference)),
  ]);
}

/** Each usable resource is the source of a fact, or set aside, or not needed: exactly one of these. */
function expectNothingLost(bundle: ReadBundle, { timeline, setAside, notNeeded }: BuiltTimeline): void {
  const facts = factReferences(timeline);
  const aside = new Set(setAside.map(({ index }) => index));
  const unneeded = new Set(notNeeded.map(({ index }) => index));
  for (const { index, reference, path } of bundle.usable) {
    const ends = [facts.has(reference), aside.has(index), unneeded.has(index)].filter(Boolean);
    expect(ends, `${path} (${reference}) ends once`).toHaveLength(1);
  }
  expect(aside.size).toBe(setAside.length);
  expect(unneeded.size).toBe(notNeeded.length);
}

const day = fc.integer({ min: 1, max: 28 }).map((number) => `2026-01-${String(number).padStart(2, '0')}`);
const time = fc.oneof(
  day,
  day.map((date) => `${date}T09:00:00Z`),
  fc.constantFrom('2026-02', '2026-02-31', '2027-01-01'),
);
const number = fc.oneof(fc.integer({ min: 0, max: 300 }), fc.double({ min: 1, max: 50, noNaN: true }));

const resource: fc.Arbitrary<FhirResource> = fc.oneof(
  fc.tuple(time, number, number).map(([at, s, d]) => make.pressure(at, s, d)),
  fc.tuple(time, number).map(([at, s]) => make.systolicOnly(at, s)),
  fc.tuple(time, number).map(([at, d]) => make.diastolicOnly(at, d)),
  fc.tuple(time, fc.integer({ min: 0, max: 330 })).map(([at, days]) => make.gestationalAge(at, days)),
  fc.tuple(time, day).map(([at, due]) => make.dueDate(at, due)),
  fc.tuple(time, day).map(([at, start]) => make.lastPeriod(at, start)),
  time.map((at) => make.birth(at)),
  fc.tuple(time, number).map(([at, value]) => make.lab(at, 'fundal-height', value, 'cm')),
  fc
    .tuple(time, number, fc.constantFrom('umol/L', 'mg/dL', 'wk'))
    .map(([at, value, unit]) => make.lab(at, 'creatinine', value, unit)),
  fc
    .tuple(time, fc.constantFrom('1+', 'trace', 'negative'))
    .map(([at, answer]) => make.strip(at, answer as '1+')),
  fc.tuple(time, fc.boolean()).map(([at, present]) => make.symptom(at, 'headache', present)),
  time.map((at) => make.condition('pre-eclampsia', at)),
  time.map((at) => make.takes('labetalol', at)),
  fc.tuple(time, fc.integer({ min: -1, max: 5 })).map(([at, count]) => make.count(at, 'parity', count)),
  time.map((at) => make.observation({ text: 'shoe size' }, at)),
);

describe('nothing received is lost', () => {
  it('each usable resource ends as a fact, set aside, or not needed', () => {
    fc.assert(
      fc.property(fc.array(resource, { maxLength: 12 }), (resources) => {
        const bundle = readBundle(make.bundleOf(resources));
        expectNothingLost(bundle, buildTimeline(bundle, { asOf: Date.parse(defaultAsOf), values }));
      }),
      { numRuns: 300 },
    );
  });

  it.each([
    ['ecqm-test-bundles/cms1028-obstetric-part-a.bundles.ndjson'],
    ['ecqm-test-bundles/cms22-bp-screening.bundles.ndjson'],
    ['synthea-bundles/patient-a.transaction.json'],
  ])('in the public files of %s', (file) => {
    const text = readFileSync(new URL(`../data/${file}`, import.meta.url), 'utf8');
    const bundles: unknown[] = file.endsWith('.ndjson')
      ? text
          .split('\n')
          .filter(Boolean)
          .map((line): unknown => JSON.parse(line))
      : [JSON.parse(text)];
    for (const input of bundles)
      for (const subject of subjectsOf(input)) {
        const bundle = readBundle(input, { subject });
        expectNothingLost(
          bundle,
          buildTimeline(bundle, { asOf: Date.parse('2027-01-01T00:00:00Z'), values }),
        );
      }
  });

  it('reads every blood pressure of a Synthea patient (QUIRKS: 55284-4, diastolic first)', () => {
    const input: unknown = JSON.parse(
      readFileSync(new URL('../data/synthea-bundles/patient-a.transaction.json', import.meta.url), 'utf8'),
    );
    const bundle = readBundle(input);
    const { timeline } = buildTimeline(bundle, { asOf: Date.parse('2027-01-01T00:00:00Z'), values });
    const panels = bundle.usable.filter(({ resource: { ...fields } }) =>
      JSON.stringify(fields).includes('"8480-6"'),
    );
    expect(panels.length).toBeGreaterThan(0);
    expect(timeline.pressures.length + timeline.unusablePressures.length).toBe(panels.length);
  });
});

describe('the order of entries', () => {
  it('does not change the timeline', () => {
    const identified = fc
      .array(resource, { minLength: 2, maxLength: 10 })
      .map((resources) => resources.map((one, index): FhirResource => ({ ...one, id: `x${String(index)}` })));
    fc.assert(
      fc.property(
        identified.chain((list) =>
          fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length })),
        ),
        ([list, shuffled]) => {
          expect(built(shuffled).timeline).toEqual(built(list).timeline);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('facts after the time of the evaluation', () => {
  it.each<[string, FhirResource]>([
    ['pressure', make.pressure('2026-02-02T10:00:00Z', 150, 95)],
    ['strip', make.strip('2026-02-03', '2+')],
    ['condition', make.condition('pre-eclampsia', '2026-02-03')],
    ['medicine', make.takes('labetalol', '2026-02-03')],
    ['birth', make.birth('2026-02-03')],
    ['symptom', make.symptom('2026-02-03', 'headache', true)],
  ])('a %s is set aside', (_, later) => {
    expect(codesOf(built([later]))).toEqual(['time-in-future']);
  });
});

describe('the woman', () => {
  it('is named, with her day of birth, parity and gravidity: the newest counts', () => {
    const { timeline, notNeeded } = built([
      make.count('2026-01-01', 'parity', 1),
      make.count('2026-01-20', 'parity', 2),
      make.count('2026-01-01', 'gravidity', 3),
    ]);
    expect(timeline.woman).toMatchObject({
      reference: 'Patient/woman',
      birthDay: Date.parse('1996-04-02') / 86_400_000,
      parity: { count: 2 },
      gravidity: { count: 3 },
    });
    expect(notNeeded.map(({ why }) => why)).toEqual(['a newer count was used']);
  });

  it('recorded as not pregnant is said', () => {
    const status = make.observation(make.loinc('82810-3'), '2026-01-20', {
      valueCodeableConcept: make.snomed('60001007'),
    });
    expect(built([status]).timeline.pregnancy.remarks).toEqual(['Recorded as not pregnant on 2026-01-20.']);
  });

  it('expects the number of fetuses counted in this pregnancy, not in an earlier one', () => {
    const fetuses = (at: string) => make.observation(make.loinc('55281-0'), at, { valueInteger: 2 });
    const dating = make.lastPeriod('2026-01-20', '2025-09-01');
    expect(built([dating, fetuses('2025-12-01')]).timeline.pregnancy.fetuses).toMatchObject({ count: 2 });
    const earlier = built([dating, fetuses('2025-08-31')]);
    expect(earlier.timeline.pregnancy.fetuses).toBeUndefined();
    expect(codesOf(earlier)).toEqual(['previous-pregnancy']);
  });

  it.each(['1996-04', '1996', 'unknown'])(
    'born %s has no day of birth, and an issue says why',
    (birthDate) => {
      const bundle = readBundle(make.bundleOf([], make.patient({ birthDate })));
      const { timeline, issues } = buildTimeline(bundle, { asOf: Date.parse(defaultAsOf), values });
      expect(timeline.woman).not.toHaveProperty('birthDay');
      expect(issues).toMatchObject([
        {
          severity: 'warning',
          code: 'birth-date-not-used',
          expression: 'Bundle.entry[0].resource.birthDate',
        },
      ]);
    },
  );
});
