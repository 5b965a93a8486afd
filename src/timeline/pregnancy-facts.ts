// The pregnancy of a timeline: dating, birth, number of fetuses, size of the uterus; and the woman's history.
import type { Received } from '../bundle/read-bundle-types.ts';
import { notPregnantCodes } from '../terminology/pregnancy-codes.ts';
import { readBirths } from './birth.ts';
import { formatDay } from './calendar.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import type { TimelineContext } from './context.ts';
import { newestCount, readCount } from './counts.ts';
import type { Count } from './counts.ts';
import { readDatingFacts } from './dating-pairs.ts';
import { daysOf } from './duration.ts';
import { effectiveMoment, isInFuture } from './effective-moment.ts';
import { codingsOf, fieldsOf, textOf } from './fields.ts';
import { compareMoments, parseMoment } from './moment.ts';
import { asOfDay, currentPregnancy } from './pregnancy.ts';
import type { CurrentPregnancy } from './pregnancy.ts';
import type { KnownCondition, LaboratoryResult, Pregnancy, Woman } from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';

export interface PregnancyInput {
  readonly dating: readonly Received[];
  readonly births: readonly Received[];
  readonly counts: readonly Received[];
  readonly statuses: readonly Received[];
  readonly conditions: readonly KnownCondition[];
  /** In time order. */
  readonly laboratory: readonly LaboratoryResult[];
}

/**
 * The current pregnancy and the woman's history.
 *
 * Given    input    observations and procedures that speak of a pregnancy, with conditions and results already read
 *          context  time of the evaluation, and where to say what was not used
 * Returns  pregnancy and woman, as in the timeline
 * Throws   never
 * Notes    1. A number of fetuses counts only from the beginning of the current pregnancy on.
 *          2. A size of the uterus is used only while there is neither dating nor birth.
 * Source   clinical-rules 2.2; the size for an undated pregnancy is ours.
 */
export function readPregnancy(
  input: PregnancyInput,
  context: TimelineContext,
): { readonly pregnancy: Pregnancy; readonly woman: Woman } {
  const current = currentPregnancy(
    {
      dating: readDatingFacts(input.dating, context),
      births: readBirths(input.births, context),
      lossDays: input.conditions.flatMap((condition) => lossDayOf(condition)),
    },
    context,
  );
  const counts = readCounts(input.counts, current, context);
  const fetuses = newestCount(counts, 'fetuses', context);
  const size = sizeOf(input.laboratory, current, context);
  const remarks = [...current.pregnancy.remarks, ...notPregnantRemarks(input.statuses, context)];
  return {
    pregnancy: {
      ...current.pregnancy,
      remarks,
      ...(fetuses === undefined ? {} : { fetuses: { count: fetuses.count, source: fetuses.source } }),
      ...(size === undefined ? {} : { assumedFrom20Weeks: size }),
    },
    woman: readWoman(counts, current, context),
  };
}

function lossDayOf({ condition, onset, recorded }: KnownCondition): readonly number[] {
  const at = onset ?? recorded;
  return condition === 'miscarriage' && at !== undefined ? [at.localDay] : [];
}

function readCounts(
  observations: readonly Received[],
  { firstDay }: CurrentPregnancy,
  context: TimelineContext,
): readonly Count[] {
  return observations.flatMap((received) => {
    const count = readCount(received, context);
    const isOld =
      !isUnusable(count) && count.counts === 'fetuses' && count.at.localDay < (firstDay ?? -Infinity);
    if (!isUnusable(count) && !isOld) return [count];
    context.setAside(
      received,
      isUnusable(count)
        ? count
        : unusable('previous-pregnancy', 'value', 'It counts the fetuses of an earlier pregnancy.'),
    );
    return [];
  });
}

function sizeOf(
  laboratory: readonly LaboratoryResult[],
  { pregnancy, firstDay }: CurrentPregnancy,
  context: TimelineContext,
): Pregnancy['assumedFrom20Weeks'] {
  if (pregnancy.dating !== undefined || pregnancy.birth !== undefined) return undefined;
  const { fundalHeightFrom20Weeks: limit, longestGestationDays, startOfSecondHalfDays } = context.values;
  const since = asOfDay(context) - (daysOf(longestGestationDays) - daysOf(startOfSecondHalfDays));
  const large = laboratory.find(
    ({ analyte, at, measured, byUnit }) =>
      analyte === 'fundal-height' &&
      at.localDay >= Math.max(since, firstDay ?? since) &&
      measured.comparator !== '<' &&
      measured.comparator !== '<=' &&
      (byUnit.values[limit.unit] ?? 0) >= limit.value,
  );
  if (large === undefined) return undefined;
  return { asSent: `fundal height ${large.asSent}`, source: large.source, measuredDay: large.at.localDay };
}

const notPregnantIndex = indexCodes(notPregnantCodes);

function notPregnantRemarks(statuses: readonly Received[], context: TimelineContext): readonly string[] {
  const dated = statuses.flatMap((received) => {
    const at = effectiveMoment(received, context);
    const value = codingsOf(fieldsOf(received.resource)['valueCodeableConcept']);
    if (isUnusable(at)) context.setAside(received, at);
    else context.notNeeded(received, 'the state of the pregnancy follows from dating and birth');
    return isUnusable(at) ? [] : [{ at, isNotPregnant: rowsFor(value, notPregnantIndex).length > 0 }];
  });
  const newest = dated.sort((one, other) => compareMoments(one.at, other.at)).at(-1);
  if (newest === undefined || !newest.isNotPregnant) return [];
  return [`Recorded as not pregnant on ${formatDay(newest.at.localDay)}.`];
}

function readWoman(counts: readonly Count[], current: CurrentPregnancy, context: TimelineContext): Woman {
  const parity = newestCount(counts, 'parity', context);
  const gravidity = newestCount(counts, 'gravidity', context);
  const birthDay = birthDayOf(context);
  const reference = context.bundle.subject;
  return {
    ...(reference === undefined ? {} : { reference }),
    ...(birthDay === undefined ? {} : { birthDay }),
    ...(parity === undefined ? {} : { parity: { count: parity.count, source: parity.source } }),
    ...(gravidity === undefined ? {} : { gravidity: { count: gravidity.count, source: gravidity.source } }),
    previousBirths: current.previousBirths.map(({ at, source }) => ({ at, source })),
  };
}

function birthDayOf(context: TimelineContext): number | undefined {
  const text = textOf(fieldsOf(context.bundle.patient?.resource)['birthDate']);
  const date = text === undefined ? undefined : parseMoment(text, context.facilityOffsetMinutes);
  return date === undefined || date.precision !== 'day' || isInFuture(date, context)
    ? undefined
    : date.localDay;
}
