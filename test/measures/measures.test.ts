// Measures woman by woman. Expected populations follow the words of src/guidelines/measures.ts and F-Q01 to F-Q12.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateMeasure, measurePeriod, scoreOf } from '../../src/evaluate-measure.ts';
import { guidelineOf } from '../../src/guidelines/registry.ts';
import type { MeasureId } from '../../src/guidelines/measures.ts';
import { addCounts, membershipOf, noCounts, type Counts } from '../../src/measures/membership.ts';
import { sumReports } from '../../src/measures/sum-reports.ts';
import { bundle, half, patient, pressure, type Json } from '../bundle/make.ts';

const frontline = guidelineOf('frontline');
const period = measurePeriod('2026', '2026', undefined);

function measured(measure: MeasureId, resources: readonly Json[], subject?: string) {
  if (frontline === undefined || typeof period === 'string') throw new Error('the fixture is wrong');
  return evaluateMeasure(measure, JSON.parse(JSON.stringify(bundle(resources))), {
    period,
    guideline: frontline,
    ...(subject === undefined ? {} : { subject }),
  });
}

/** `ip den excl excep num missing` of the only woman. */
function countsOf(measure: MeasureId, resources: readonly Json[]): readonly number[] {
  const { counts } = measured(measure, [patient(), ...resources]).totals;
  return [
    counts['initial-population'],
    counts.denominator,
    counts['denominator-exclusion'],
    counts['denominator-exception'],
    counts.numerator,
    counts['data-missing'],
  ];
}

const reading = (id: string, at: string, systolic: number, diastolic: number): Json =>
  pressure(id, { effectiveDateTime: at, component: [half('8480-6', systolic), half('8462-4', diastolic)] });
const about = { subject: { reference: 'Patient/1' } };
const encounter = (id: string, start: string, more: Json = {}): Json => ({
  resourceType: 'Encounter',
  id,
  status: 'finished',
  class: { system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode', code: 'AMB' },
  period: { start },
  ...about,
  ...more,
});
const strip = (id: string, at: string): Json => ({
  resourceType: 'Observation',
  id,
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '20454-5' }] },
  valueCodeableConcept: { text: 'negative' },
  effectiveDateTime: at,
  ...about,
});
const given = (id: string, at: string): Json => ({
  resourceType: 'MedicationAdministration',
  id,
  status: 'completed',
  // RxNorm 7417 nifedipine
  medicationCodeableConcept: {
    coding: [{ system: 'http://www.nlm.nih.gov/research/umls/rxnorm', code: '7417' }],
    text: 'nifedipine',
  },
  effectiveDateTime: at,
  ...about,
});
const dueDate = (on: string): Json => ({
  resourceType: 'Observation',
  id: 'due',
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '11778-8' }] },
  valueDateTime: on,
  effectiveDateTime: '2026-01-05T09:00:00Z',
  ...about,
});

const severe = '2026-03-01T10:00:00Z';

describe('criteria, as ip, denominator, exclusion, exception, numerator, missing', () => {
  it.each<readonly [string, MeasureId, readonly Json[], readonly number[]]>([
    [
      'every contact has a pressure of the same day',
      'pressure-at-every-contact',
      [encounter('e1', '2026-03-01T08:00:00Z'), reading('a', '2026-03-01T09:00:00Z', 120, 70)],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'one contact without a pressure',
      'pressure-at-every-contact',
      [
        encounter('e1', '2026-03-01T08:00:00Z'),
        encounter('e2', '2026-04-01T08:00:00Z'),
        reading('a', '2026-03-01T09:00:00Z', 120, 70),
      ],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'a cancelled contact and a virtual one are none',
      'pressure-at-every-contact',
      [
        encounter('e1', '2026-03-01T08:00:00Z', { status: 'cancelled' }),
        encounter('e2', '2026-04-01T08:00:00Z', { class: { code: 'VR' } }),
        reading('a', '2026-03-01T09:00:00Z', 120, 70),
      ],
      [1, 0, 0, 0, 0, 0],
    ],
    [
      'urine on the day of the first raised pressure',
      'urine-protein-when-raised',
      [reading('a', severe, 150, 95), strip('u', '2026-03-01T11:00:00Z')],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'urine a day later',
      'urine-protein-when-raised',
      [reading('a', severe, 150, 95), strip('u', '2026-03-02T11:00:00Z')],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'urine in an unknown day of the month',
      'urine-protein-when-raised',
      [reading('a', severe, 150, 95), strip('u', '2026-03')],
      [1, 1, 0, 0, 0, 1],
    ],
    ['no raised pressure', 'urine-protein-when-raised', [reading('a', severe, 120, 70)], [1, 0, 0, 0, 0, 0]],
    [
      'severe repeated after exactly 15 minutes',
      'severe-pressure-repeated',
      [reading('a', severe, 170, 112), reading('b', '2026-03-01T10:15:00Z', 150, 90)],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'severe repeated after 16 minutes',
      'severe-pressure-repeated',
      [reading('a', severe, 170, 112), reading('b', '2026-03-01T10:16:00Z', 150, 90)],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'severe with a date only',
      'severe-pressure-repeated',
      [reading('a', '2026-03-01', 170, 112)],
      [1, 1, 1, 0, 0, 0],
    ],
    [
      'treated 60 minutes after the confirming reading',
      'severe-pressure-treated',
      [
        reading('a', severe, 170, 112),
        reading('b', '2026-03-01T10:15:00Z', 168, 110),
        given('m', '2026-03-01T11:15:00Z'),
      ],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'treated 61 minutes after it',
      'severe-pressure-treated',
      [
        reading('a', severe, 170, 112),
        reading('b', '2026-03-01T10:15:00Z', 168, 110),
        given('m', '2026-03-01T11:16:00Z'),
      ],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'treated before the confirming reading',
      'severe-pressure-treated',
      [
        reading('a', severe, 170, 112),
        given('m', '2026-03-01T10:05:00Z'),
        reading('b', '2026-03-01T10:15:00Z', 168, 110),
      ],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'raised and seen again on the seventh day',
      'raised-pressure-resolved',
      [reading('a', severe, 150, 95), reading('b', '2026-03-08T10:00:00Z', 130, 80)],
      [1, 1, 0, 0, 1, 0],
    ],
    [
      'raised and seen again later',
      'raised-pressure-resolved',
      [reading('a', severe, 150, 95), reading('b', '2026-03-08T10:01:00Z', 130, 80)],
      [1, 1, 0, 0, 0, 0],
    ],
    [
      'raised two days before the period ends',
      'raised-pressure-resolved',
      [reading('a', '2026-12-30T10:00:00Z', 150, 95)],
      [1, 1, 0, 1, 0, 0],
    ],
    [
      'the referral is there',
      'referral-made',
      [
        reading('a', severe, 170, 112),
        {
          resourceType: 'ServiceRequest',
          id: 's',
          status: 'active',
          intent: 'order',
          code: { coding: [{ system: 'http://snomed.info/sct', code: '310449005' }] },
          authoredOn: '2026-03-01T10:30:00Z',
          ...about,
        },
      ],
      [1, 1, 0, 0, 1, 0],
    ],
    ['no referral', 'referral-made', [reading('a', severe, 170, 112)], [1, 1, 0, 0, 0, 0]],
    [
      'nothing in the period',
      'referral-made',
      [reading('a', '2025-03-01T10:00:00Z', 170, 112)],
      [0, 0, 0, 0, 0, 0],
    ],
  ])('%s', (_what, measure, resources, expected) => {
    expect(countsOf(measure, [dueDate('2026-07-01'), ...resources]).slice(1)).toEqual(expected.slice(1));
    expect(countsOf(measure, resources)).toEqual(expected);
  });

  it('terminal digits count readings and values, averages and kPa left out', () => {
    expect(
      countsOf('terminal-digit-preference', [
        reading('a', severe, 150, 95),
        reading('b', '2026-03-02T10:00:00Z', 140, 90),
      ]),
    ).toEqual([2, 4, 0, 0, 3, 0]);
  });
});

describe('populations', () => {
  const criteria = fc.record({
    initial: fc.boolean(),
    denominator: fc.constantFrom(true, false, undefined),
    exclusion: fc.boolean(),
    exception: fc.boolean(),
    numerator: fc.constantFrom(true, false, undefined),
  });

  it('F-Q02, F-Q03: are nested, and score N over D, however loosely the criteria are written', () => {
    fc.assert(
      fc.property(fc.array(criteria, { maxLength: 30 }), (women) => {
        const counts = women.map(membershipOf).reduce(addCounts, noCounts);
        expect(counts.numerator).toBeLessThanOrEqual(counts.denominator);
        expect(counts.denominator).toBeLessThanOrEqual(counts['initial-population']);
        // F-Q02 in its own words.
        const inD = women.filter(
          (w) =>
            w.initial && w.denominator === true && !w.exclusion && !(w.exception && w.numerator !== true),
        );
        const inN = women.filter(
          (w) => w.initial && w.denominator === true && !w.exclusion && w.numerator === true,
        );
        expect(scoreOf(counts)).toBe(inD.length === 0 ? undefined : inN.length / inD.length);
      }),
      { seed: 4 },
    );
  });

  it('F-Q04: unknown is never in the numerator, and is counted as missing', () => {
    expect(membershipOf({ initial: true, denominator: true, numerator: undefined })).toMatchObject({
      numerator: 0,
      'data-missing': 1,
    });
    expect(membershipOf({ initial: true, denominator: undefined, numerator: true })).toMatchObject({
      denominator: 0,
      numerator: 0,
      'data-missing': 1,
    });
  });

  it('F-Q02: nobody counted gives no score', () => {
    expect(scoreOf(noCounts)).toBeUndefined();
  });

  const two = [
    patient('1'),
    patient('2'),
    reading('a', severe, 170, 112),
    pressure('b', { subject: { reference: 'Patient/2' } }),
  ];

  it('F-Q05: strata sum to the total, an unknown stratum included; sums do not depend on order', () => {
    const { results, totals } = measured('severe-pressure-repeated', two);
    for (const strata of Object.values(totals.strata))
      expect([...strata.values()].reduce<Counts>(addCounts, noCounts)).toEqual(totals.counts);
    expect([...totals.strata.site.keys()]).toEqual(['unknown']);
    expect(sumReports('severe-pressure-repeated', [...results].reverse())).toEqual(totals);
  });

  it('F-Q09: the ends of a period are inclusive to their precision', () => {
    expect(period).toMatchObject({
      from: Date.parse('2026-01-01T00:00:00Z'),
      to: Date.parse('2026-12-31T23:59:59.999Z'),
    });
    expect(measurePeriod('2026-02', '2026-01', undefined)).toBe('periodEnd');
  });

  it('F-Q12: a woman who cannot be judged is counted and stops nobody', () => {
    const { results, totals } = measured('referral-made', [...two], undefined);
    expect(results.map(({ subject }) => subject)).toEqual(['Patient/1', 'Patient/2']);
    expect(totals.failed).toBe(0);
  });
});
