// The measures as FHIR: one MeasureReport (summary) for each, of sums, so that parts can be added before.
import { scoreOf } from '../../evaluate-measure.ts';
import { measureDefinitions, stratifierIds, type MeasureId } from '../../guidelines/measures.ts';
import { guidelineOf } from '../../guidelines/registry.ts';
import type { Counts } from '../../measures/membership.ts';
import type { MeasureTotals, Strata } from '../../measures/sum-reports.ts';
import { stampOf } from '../../opinions.ts';
import { toSummaryReport } from '../../presenters/measure-report.ts';
import type { AssessOptions } from '../assess-woman.ts';
import { below, countOf, type Tally } from './tally.ts';

export interface NamedReport {
  readonly name: string;
  readonly text: string;
}

/**
 * One report for each measure.
 *
 * Given    tally    sums over every woman
 *          options  guideline and window
 * Returns  name of the file and its text; none where the window is open: a measure needs its period
 * Throws   never
 * Notes    1. The date of a report is the end of the period: the same data give the same bytes whenever they are run.
 */
export function measureReports(
  tally: Tally,
  { guidelines, from, to }: Omit<AssessOptions, 'site'>,
): readonly NamedReport[] {
  const guideline = guidelineOf(guidelines[0] ?? '');
  if (from === undefined || to === undefined || guideline === undefined) return [];
  return measureDefinitions.map((definition) => {
    const frame = {
      definition,
      periodStart: written(from),
      periodEnd: written(to),
      date: new Date(to).toISOString(),
      guideline: guideline.id,
      stamp: stampOf(guideline),
    };
    const report = toSummaryReport(totalsOf(tally, definition.id), frame, scoreOf);
    return { name: `measure-${definition.id}.json`, text: `${JSON.stringify(report, null, 2)}\n` };
  });
}

/** A day where the moment begins or ends one, as it was asked for. */
function written(at: number): string {
  const text = new Date(at).toISOString();
  return /T(?:00:00:00\.000|23:59:59\.999)Z$/.test(text) ? text.slice(0, text.indexOf('T')) : text;
}

function totalsOf(tally: Tally, measure: MeasureId): MeasureTotals {
  const strata = (id: string): Strata =>
    new Map(
      [...below(tally, 'measure-stratum', measure, id).keys()]
        .sort()
        .map((stratum) => [stratum, countsOf(tally, 'measure-stratum', measure, id, stratum)]),
    );
  const [first, second, third] = stratifierIds;
  return {
    measure,
    counts: countsOf(tally, 'measure', measure),
    strata: { [first]: strata(first), [second]: strata(second), [third]: strata(third) },
    failed: countOf(tally, 'failed'),
  };
}

function countsOf(tally: Tally, ...under: readonly string[]): Counts {
  const count = (population: keyof Counts): number => countOf(tally, ...under, population);
  return {
    'initial-population': count('initial-population'),
    denominator: count('denominator'),
    'denominator-exclusion': count('denominator-exclusion'),
    'denominator-exception': count('denominator-exception'),
    numerator: count('numerator'),
    'data-missing': count('data-missing'),
  };
}
