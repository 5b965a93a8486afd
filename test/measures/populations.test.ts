// The arithmetic of populations, strata and sums: F-Q01 to F-Q12.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measurePeriod, scoreOf } from '../../src/evaluate-measure.ts';
import { addCounts, membershipOf, noCounts, type Counts } from '../../src/measures/membership.ts';
import { sumReports } from '../../src/measures/sum-reports.ts';
import { patient, pressure } from '../bundle/make.ts';
import { measured, period, reading, severe } from './make.ts';

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
