// One pregnancy against one measure: the populations it is in, and the strata it belongs to.
import { measureIds, type MeasureId, type StratifierId } from '../guidelines/measures.ts';
import { secondTrimesterFrom, thirdTrimesterFrom } from '../guidelines/trimesters.ts';
import { satisfies } from '../rules/compare.ts';
import { criteriaOf, type ProportionId } from './criteria.ts';
import { isWithin } from './gather-pregnancies.ts';
import { membershipOf, type Counts } from './membership.ts';
import type { PregnancyRecord } from './pregnancy-record.ts';

export interface PregnancyResult {
  readonly measure: MeasureId;
  readonly subject: string | undefined;
  readonly counts: Counts;
  /** The stratum it is in, `unknown` included (F-Q05). */
  readonly strata: Readonly<Record<StratifierId, string>>;
}

/** One pregnancy against every measure, in the order in which measures are reported. */
export function measureByAll(record: PregnancyRecord): readonly PregnancyResult[] {
  return measureIds.map((measure) => measurePregnancy(measure, record));
}

/**
 * One pregnancy against one measure.
 *
 * Given    measure  id
 *          record   gathered for the measurement period
 * Returns  counts of 0 or 1; for the ratio of terminal digits, counts of readings and values
 * Throws   never
 */
export function measurePregnancy(measure: MeasureId, record: PregnancyRecord): PregnancyResult {
  const counts =
    measure === 'terminal-digit-preference' ? terminalDigits(record) : proportionCounts(measure, record);
  return { measure, subject: record.subject, counts, strata: strataOf(record) };
}

function proportionCounts(measure: ProportionId, record: PregnancyRecord): Counts {
  return membershipOf({ ...criteriaOf[measure](record), initial: record.hasData });
}

const decimalBase = 10;

/** Single clinic readings sent in mm[Hg] as whole numbers; a value converted from kPa has no last digit. */
function terminalDigits({ view, period }: PregnancyRecord): Counts {
  const readings = view.timeline.pressures.filter(
    ({ at, asSent }) =>
      isWithin(at, period) && view.place(at).outside !== 'earlier' && !asSent.includes('kPa'),
  );
  const values = readings
    .flatMap(({ systolicMmHg, diastolicMmHg }) => [systolicMmHg ?? NaN, diastolicMmHg ?? NaN])
    .filter(Number.isInteger);
  return {
    'initial-population': readings.length,
    denominator: values.length,
    'denominator-exclusion': 0,
    'denominator-exception': 0,
    numerator: values.filter((value) => value % decimalBase === 0).length,
    'data-missing': 0,
  };
}

function strataOf({ classification, site, view }: PregnancyRecord): PregnancyResult['strata'] {
  return {
    'guideline-class': classification[0] ?? 'unknown',
    trimester: trimesterOf(view.now.period, view.now.gestationalAgeDays),
    site: site ?? 'unknown',
  };
}

function trimesterOf(period: string, days: number | undefined): string {
  if (period === 'after-birth') return 'after-birth';
  if (days === undefined) return 'unknown';
  if (satisfies({ value: days }, thirdTrimesterFrom) === true) return 'third';
  return satisfies({ value: days }, secondTrimesterFrom) === true ? 'second' : 'first';
}
