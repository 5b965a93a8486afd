// A measure over every woman an input holds: one result for each of her pregnancies, and their sum.
import { subjectsOf } from './bundle/read-bundle.ts';
import { RequestError } from './errors.ts';
import type { MeasureId } from './guidelines/measures.ts';
import { gatherPregnancies, type GatherOptions } from './measures/gather-pregnancies.ts';
import { measurePregnancy, type PregnancyResult } from './measures/measure-pregnancy.ts';
import type { MeasurePeriod } from './measures/pregnancy-record.ts';
import { parseMoment } from './timeline/moment.ts';
import { addTotals, failedTotals, noTotals, sumReports, type MeasureTotals } from './measures/sum-reports.ts';

export interface MeasureResults {
  /** In the order of the subjects; of one woman, the newest pregnancy first. */
  readonly results: readonly PregnancyResult[];
  readonly totals: MeasureTotals;
}

/**
 * A measure over the women of an input.
 *
 * Given    measure  id
 *          input    a Bundle with the resources of any number of women
 *          options  period, guideline; with `subject` only that woman
 * Returns  one result for each pregnancy of a woman whose data can be judged, and the sum; other women are counted as
 *          failed
 * Throws   RequestError when the input is no resource at all
 */
export function evaluateMeasure(measure: MeasureId, input: unknown, options: GatherOptions): MeasureResults {
  const named = options.subject === undefined ? subjectsOf(input) : [options.subject];
  const subjects = named.length === 0 ? [undefined] : named;
  const each = subjects.map((subject) =>
    judged(measure, input, subject === undefined ? options : { ...options, subject }),
  );
  return {
    results: each.flatMap(({ results }) => results),
    totals: each.reduce((sum, { totals }) => addTotals(sum, totals), noTotals(measure)),
  };
}

interface Judged {
  readonly results: readonly PregnancyResult[];
  readonly totals: MeasureTotals;
}

/** One woman who cannot be judged does not stop the others. */
function judged(measure: MeasureId, input: unknown, options: GatherOptions): Judged {
  try {
    const results = gatherPregnancies(input, options).map((record) => measurePregnancy(measure, record));
    return { results, totals: sumReports(measure, results) };
  } catch (error) {
    if (!(error instanceof RequestError)) throw error;
    return { results: [], totals: failedTotals(measure) };
  }
}

export { scoreOf } from './measures/membership.ts';

/**
 * A measurement period; both ends inclusive to the precision they are written with (F-Q09): `2026` ends with its last
 * millisecond.
 *
 * Given    startText, endText   FHIR dates or instants
 *          offset               of the facility, for dates
 * Returns  the period; the name of the parameter at fault when one is no date, or the end lies before the start
 * Throws   never
 */
export function measurePeriod(
  startText: string,
  endText: string,
  offset: GatherOptions['facilityOffsetMinutes'],
): MeasurePeriod | 'periodStart' | 'periodEnd' {
  const start = parseMoment(startText, offset);
  const end = parseMoment(endText, offset);
  if (start === undefined) return 'periodStart';
  if (end === undefined || start.earliest > end.latest) return 'periodEnd';
  return { from: start.earliest, to: end.latest, startText, endText };
}
