// One woman's part of the measures.
import { guidelineOf } from '../../guidelines/registry.ts';
import { gatherPrepared } from '../../measures/gather-pregnancies.ts';
import { measureByAll, type PregnancyResult } from '../../measures/measure-pregnancy.ts';
import type { PregnancyRecord } from '../../measures/pregnancy-record.ts';
import type { AssessOptions, WomanHistory } from '../assess-woman.ts';
import type { Counter } from './tally.ts';

/**
 * Counts her in each measure, and for a window in the strata of each; hands on the site her record names.
 *
 * Notes    1. The period is the window where both of its ends are given, so that it is the same for every woman; else it
 *             ends with her last visit.
 */
export function countMeasures(counter: Counter, history: WomanHistory, options: AssessOptions): string {
  const records = recordsOf(history, options);
  const isReported = isWindow(options);
  for (const result of records.flatMap(measureByAll)) countMeasure(counter, result, isReported);
  return records[0]?.site ?? unknownSite;
}

const unknownSite = 'unknown';

/** A measure needs a period that is the same for every woman. */
export const isWindow = ({ from, to }: Pick<AssessOptions, 'from' | 'to'>): boolean =>
  from !== undefined && to !== undefined;

function recordsOf(history: WomanHistory, options: AssessOptions): readonly PregnancyRecord[] {
  const guideline = guidelineOf(options.guidelines[0] ?? '');
  const to = isWindow(options) ? options.to : history.visits.at(-1)?.asOf;
  if (to === undefined || guideline === undefined) return [];
  const asked = { ...options.site, subject: history.subject };
  const period = { from: options.from ?? -Infinity, to, startText: '', endText: '' };
  const told = new Map(history.visits.map(({ asOf, opinion }) => [asOf, opinion]));
  return gatherPrepared(history.prepared, { ...asked, period, guideline }, told);
}

function countMeasure(
  counter: Counter,
  { measure, counts, strata }: PregnancyResult,
  isReported: boolean,
): void {
  for (const [population, count] of Object.entries(counts)) {
    counter.add(['measure', measure, population], Number(count));
    // Nobody's stratum is counted who is not in the measure.
    if (!isReported || counts['initial-population'] === 0) continue;
    for (const [stratifier, stratum] of Object.entries(strata))
      counter.add(['measure-stratum', measure, stratifier, stratum, population], Number(count));
  }
}
