// One woman's part of the measures.
import { guidelineOf } from '../../guidelines/registry.ts';
import { gatherPrepared } from '../../measures/gather-woman.ts';
import { measureWomanByAll, type WomanResult } from '../../measures/measure-woman.ts';
import type { WomanRecord } from '../../measures/woman-record.ts';
import { prepareAgain } from '../../prepare-again.ts';
import type { AssessOptions, WomanHistory } from '../assess-woman.ts';
import type { Counter } from './tally.ts';

/**
 * Counts her in each measure, and for a window in the strata of each; hands on the site her record names.
 *
 * Notes    1. The period is the window where both of its ends are given, so that it is the same for every woman; else it
 *             ends with her last visit.
 */
export function countMeasures(counter: Counter, history: WomanHistory, options: AssessOptions): string {
  const record = recordOf(history, options);
  if (record === undefined) return unknownSite;
  const isReported = isWindow(options);
  for (const result of measureWomanByAll(record)) countMeasure(counter, result, isReported);
  return record.site ?? unknownSite;
}

const unknownSite = 'unknown';

/** A measure needs a period that is the same for every woman. */
export const isWindow = ({ from, to }: Pick<AssessOptions, 'from' | 'to'>): boolean =>
  from !== undefined && to !== undefined;

function recordOf(history: WomanHistory, options: AssessOptions): WomanRecord | undefined {
  const last = history.visits.at(-1);
  const guideline = guidelineOf(options.guidelines[0] ?? '');
  const to = isWindow(options) ? options.to : last?.asOf;
  if (to === undefined || guideline === undefined) return undefined;
  const asked = { ...options.site, subject: history.subject };
  const period = { from: options.from ?? -Infinity, to, startText: '', endText: '' };
  const [prepared, opinion] =
    to === last?.asOf
      ? [last.prepared, last.opinion]
      : [prepareAgain(last?.prepared ?? history.prepared, to, asked), undefined];
  return gatherPrepared(prepared, { ...asked, period, guideline }, opinion);
}

function countMeasure(counter: Counter, { measure, counts, strata }: WomanResult, isReported: boolean): void {
  for (const [population, count] of Object.entries(counts)) {
    counter.add(['measure', measure, population], Number(count));
    // Nobody's stratum is counted who is not in the measure.
    if (!isReported || counts['initial-population'] === 0) continue;
    for (const [stratifier, stratum] of Object.entries(strata))
      counter.add(['measure-stratum', measure, stratifier, stratum, population], Number(count));
  }
}
