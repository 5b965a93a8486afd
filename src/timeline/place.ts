// Where on the pregnancy does a moment lie? Hands on period, gestational age and days after birth.
import type { Period } from '../guidelines/guideline.ts';
import { daysOf } from './duration.ts';
import { isBefore, lastLocalDay } from './moment.ts';
import type { Moment, Place, Pregnancy, TimelineValues } from './timeline.ts';

/**
 * Where on this pregnancy does a moment lie?
 *
 * Given    moment     of a reading or of the evaluation
 *          pregnancy  its dating and birth, as far as known
 *          values     lengths in days
 * Returns  the period; the gestational age in days when dated and not after birth; days after birth, the
 *          day of birth being 0; `earlier` or `later` when outside the pregnancy and the six weeks after it,
 *          and then the period is `unknown`
 * Throws   never
 * Notes    1. 20+0 weeks, that is 140 days, counts as from 20 weeks. Day 42 after birth is the last.
 *          2. A birth with its time splits its day; of a birth with only a date the whole day is after it.
 *          3. A moment that may lie on either side of a boundary is `unknown`.
 *          4. Undated: the day of birth up to the birth is from 20 weeks, and a uterus of that size puts the
 *             day it was measured, and later ones, there.
 * Source   clinical-rules 2.2 rules 9 and 12; decision 27; notes 2 to 4 ours.
 */
export function placeOf(moment: Moment, pregnancy: Pregnancy, values: TimelineValues): Place {
  const { birth, dating } = pregnancy;
  if (birth !== undefined) {
    const isUnborn = isBeforeBirth(moment, birth.at);
    if (isUnborn === undefined) return { period: 'unknown' };
    if (!isUnborn) return placeAfterBirth(moment, birth.at, values);
  }
  if (dating !== undefined) return placeByDating(moment, dating.startDay, values);
  if (birth !== undefined) return placeBeforeUndatedBirth(moment, birth.at, values);
  return placeBySize(moment, pregnancy, values);
}

function isBeforeBirth(moment: Moment, birth: Moment): boolean | undefined {
  if (birth.precision === 'minute' && moment.precision === 'minute') return isBefore(moment, birth);
  if (lastLocalDay(moment) < birth.localDay) return true;
  const isWholeDay = birth.precision === 'day';
  if (moment.localDay > lastLocalDay(birth) || (isWholeDay && moment.localDay === birth.localDay))
    return false;
  return undefined;
}

function placeAfterBirth(moment: Moment, birth: Moment, values: TimelineValues): Place {
  const fewest = Math.max(0, moment.localDay - lastLocalDay(birth));
  const most = Math.max(0, lastLocalDay(moment) - birth.localDay);
  const window = daysOf(values.afterBirthDays);
  if (fewest !== most) return most <= window ? { period: 'after-birth' } : { period: 'unknown' };
  if (fewest > window) return { period: 'unknown', daysAfterBirth: fewest, outside: 'later' };
  return { period: 'after-birth', daysAfterBirth: fewest };
}

function placeByDating(moment: Moment, startDay: number, values: TimelineValues): Place {
  const first = moment.localDay - startDay;
  const last = lastLocalDay(moment) - startDay;
  if (last < 0) return { period: 'unknown', outside: 'earlier' };
  if (first < 0) return { period: 'unknown' };
  const period = periodAt(first, values);
  if (first === last) return { period, gestationalAgeDays: first };
  return { period: period === periodAt(last, values) ? period : 'unknown' };
}

function periodAt(gestationalAgeDays: number, values: TimelineValues): Period {
  return gestationalAgeDays < daysOf(values.startOfSecondHalfDays) ? 'before-20-weeks' : 'from-20-weeks';
}

function placeBeforeUndatedBirth(moment: Moment, birth: Moment, values: TimelineValues): Place {
  if (moment.localDay === birth.localDay && moment.precision === 'minute') return { period: 'from-20-weeks' };
  return lastLocalDay(moment) < birth.localDay - daysOf(values.longestGestationDays)
    ? { period: 'unknown', outside: 'earlier' }
    : { period: 'unknown' };
}

function placeBySize(moment: Moment, { assumedFrom20Weeks }: Pregnancy, values: TimelineValues): Place {
  if (assumedFrom20Weeks === undefined) return { period: 'unknown' };
  const { measuredDay } = assumedFrom20Weeks;
  if (measuredDay === undefined || moment.localDay >= measuredDay) return { period: 'from-20-weeks' };
  return lastLocalDay(moment) < measuredDay - daysOf(values.longestGestationDays)
    ? { period: 'unknown', outside: 'earlier' }
    : { period: 'unknown' };
}
