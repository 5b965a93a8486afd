// One woman against one measure: the populations she is in, and the strata she belongs to.
import { measureIds, type MeasureId, type StratifierId } from '../guidelines/measures.ts';
import { secondTrimesterFrom, thirdTrimesterFrom } from '../guidelines/trimesters.ts';
import { satisfies } from '../rules/compare.ts';
import { criteriaOf, type ProportionId } from './criteria.ts';
import { isWithin } from './gather-woman.ts';
import { membershipOf, type Counts } from './membership.ts';
import type { WomanRecord } from './woman-record.ts';

export interface WomanResult {
  readonly measure: MeasureId;
  readonly subject: string | undefined;
  readonly counts: Counts;
  /** The stratum she is in, `unknown` included (F-Q05). */
  readonly strata: Readonly<Record<StratifierId, string>>;
}

/** One woman against every measure, in the order in which measures are reported. */
export function measureWomanByAll(record: WomanRecord): readonly WomanResult[] {
  return measureIds.map((measure) => measureWoman(measure, record));
}

/**
 * One woman against one measure.
 *
 * Given    measure  id
 *          record   gathered for the measurement period
 * Returns  counts of 0 or 1; for the ratio of terminal digits, counts of readings and values
 * Throws   never
 */
export function measureWoman(measure: MeasureId, record: WomanRecord): WomanResult {
  const counts =
    measure === 'terminal-digit-preference' ? terminalDigits(record) : proportionCounts(measure, record);
  return { measure, subject: record.subject, counts, strata: strataOf(record) };
}

function proportionCounts(measure: ProportionId, record: WomanRecord): Counts {
  return membershipOf({ ...criteriaOf[measure](record), initial: record.hasData });
}

const decimalBase = 10;

/** Single clinic readings sent in mm[Hg] as whole numbers; a value converted from kPa has no last digit. */
function terminalDigits({ view, period }: WomanRecord): Counts {
  const readings = view.timeline.pressures.filter(
    ({ at, asSent }) => isWithin(at, period) && !asSent.includes('kPa'),
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

function strataOf({ classification, site, view }: WomanRecord): WomanResult['strata'] {
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
