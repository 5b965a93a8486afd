// Results of many pregnancies as totals: addition only, so that parts can be summed in any order and any grouping.
import { stratifierIds, type MeasureId, type StratifierId } from '../guidelines/measures.ts';
import { addCounts, noCounts, type Counts } from './membership.ts';
import type { PregnancyResult } from './measure-pregnancy.ts';

/** By stratum, sorted by name. */
export type Strata = ReadonlyMap<string, Counts>;

export interface MeasureTotals {
  readonly measure: MeasureId;
  readonly counts: Counts;
  readonly strata: Readonly<Record<StratifierId, Strata>>;
  /** Women whose data could not be judged at all (F-Q12). */
  readonly failed: number;
}

/** Nothing counted yet. */
export function noTotals(measure: MeasureId): MeasureTotals {
  const empty = new Map<string, Counts>();
  return {
    measure,
    counts: noCounts,
    strata: { 'guideline-class': empty, trimester: empty, site: empty },
    failed: 0,
  };
}

/** The sum of two totals of one measure. */
export function addTotals(a: MeasureTotals, b: MeasureTotals): MeasureTotals {
  const added = (id: StratifierId): Strata => {
    const sum = new Map(a.strata[id]);
    for (const [stratum, counts] of b.strata[id])
      sum.set(stratum, addCounts(sum.get(stratum) ?? noCounts, counts));
    return new Map([...sum].sort(([x], [y]) => (x < y ? -1 : 1)));
  };
  return {
    measure: a.measure,
    counts: addCounts(a.counts, b.counts),
    strata: {
      'guideline-class': added('guideline-class'),
      trimester: added('trimester'),
      site: added('site'),
    },
    failed: a.failed + b.failed,
  };
}

/**
 * The totals of one measure.
 *
 * Given    measure  id
 *          results  of that measure, one for each pregnancy, in any order
 * Returns  counts, and the same by stratum; strata of each stratifier sum to the counts
 * Throws   never
 */
export function sumReports(measure: MeasureId, results: readonly PregnancyResult[]): MeasureTotals {
  return results
    .filter((result) => result.measure === measure)
    .reduce((sum, result) => addTotals(sum, toTotals(result)), noTotals(measure));
}

/** One pregnancy's result as totals. */
export function toTotals({ measure, counts, strata }: PregnancyResult): MeasureTotals {
  if (counts['initial-population'] === 0) return noTotals(measure);
  const [first, second, third] = stratifierIds.map((id) => new Map([[strata[id], counts]]));
  const empty = new Map<string, Counts>();
  return {
    measure,
    counts,
    strata: { 'guideline-class': first ?? empty, trimester: second ?? empty, site: third ?? empty },
    failed: 0,
  };
}

/** One woman who could not be judged. */
export function failedTotals(measure: MeasureId): MeasureTotals {
  return { ...noTotals(measure), failed: 1 };
}
