// The pregnancy of a timeline: dating, birth, number of fetuses, size of the uterus; and the woman's history.
import type { Received } from '../bundle/read-bundle-types.ts';
import { notPregnantCodes, pregnantCodes } from '../terminology/pregnancy-codes.ts';
import { readBirths } from './birth.ts';
import { formatDay } from './calendar.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import type { TimelineContext } from './context.ts';
import { newestCount, readCount } from './counts.ts';
import type { Count } from './counts.ts';
import { readDatingFacts } from './dating-pairs.ts';
import { daysOf } from './duration.ts';
import { effectiveMoment, isInFuture } from './effective-moment.ts';
import type { Coding } from './fields.ts';
import { codingsOf, fieldsOf, textOf } from './fields.ts';
import { compareMoments, parseMoment } from './moment.ts';
import { asOfDay, currentPregnancy } from './pregnancy.ts';
import type { CurrentPregnancy } from './pregnancy.ts';
import type { KnownCondition, LaboratoryResult, Moment, Pregnancy, Woman } from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';
import { readWeeksCodes } from './weeks-code.ts';

export interface PregnancyInput {
  readonly dating: readonly Received[];
  readonly births: readonly Received[];
  readonly counts: readonly Received[];
  readonly statuses: readonly Received[];
  /** Conditions whose code names the weeks of gestation; they are also among `conditions`. */
  readonly weeksCodes: readonly Received[];
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
  const statuses = readStatuses(input.statuses, context);
  const counts = input.counts.flatMap((received) => usableCount(received, context));
  const current = currentPregnancy(
    {
      dating: [...readDatingFacts(input.dating, context), ...readWeeksCodes(input.weeksCodes, context)],
      births: readBirths(input.births, context),
      lossDays: input.conditions.flatMap((condition) => dayOf(condition, 'miscarriage')),
      signDays: signDaysOf(input, counts, statuses, context),
    },
    context,
  );
  const own = withoutEarlierFetuses(counts, current, context);
  const fetuses = newestCount(own, 'fetuses', context);
  const size = sizeOf(input.laboratory, current, context);
  const remarks = [...current.pregnancy.remarks, ...notPregnantRemarks(statuses)];
  return {
    pregnancy: {
      ...current.pregnancy,
      remarks,
      ...(fetuses === undefined ? {} : { fetuses: { count: fetuses.count, source: fetuses.source } }),
      ...(size === undefined ? {} : { assumedFrom20Weeks: size }),
    },
    woman: readWoman(own, current, context),
  };
}

function dayOf(
  { condition, onset, recorded }: KnownCondition,
  wanted: KnownCondition['condition'],
): readonly number[] {
  const at = onset ?? recorded;
  return condition === wanted && at !== undefined ? [at.localDay] : [];
}

function usableCount(received: Received, context: TimelineContext): readonly Count[] {
  const count = readCount(received, context);
  if (!isUnusable(count)) return [count];
  context.setAside(received, count);
  return [];
}

function withoutEarlierFetuses(
  counts: readonly Count[],
  { firstDay }: CurrentPregnancy,
  context: TimelineContext,
): readonly Count[] {
  const isEarlier = (count: Count): boolean => count.counts === 'fetuses' && count.at.localDay < firstDay;
  for (const { received } of counts.filter(isEarlier))
    context.setAside(
      received,
      unusable('previous-pregnancy', 'value', 'It counts the fetuses of an earlier pregnancy.'),
    );
  return counts.filter((count) => !isEarlier(count));
}

/** Days on which she was known to be pregnant, without a dating. */
function signDaysOf(
  { laboratory, conditions }: PregnancyInput,
  counts: readonly Count[],
  statuses: readonly Status[],
  context: TimelineContext,
): readonly number[] {
  return [
    ...laboratory.filter((result) => isLarge(result, context)).map(({ at }) => at.localDay),
    ...conditions.flatMap((condition) => (condition.state === 'active' ? dayOf(condition, 'pregnant') : [])),
    ...counts.filter(({ counts: kind }) => kind === 'fetuses').map(({ at }) => at.localDay),
    ...statuses.filter(({ says }) => says === 'pregnant').map(({ at }) => at.localDay),
  ];
}

function isLarge({ analyte, measured, byUnit }: LaboratoryResult, { values }: TimelineContext): boolean {
  const limit = values.fundalHeightFrom20Weeks;
  const isOnlyAbove = measured.comparator !== '<' && measured.comparator !== '<=';
  return analyte === 'fundal-height' && isOnlyAbove && (byUnit.values[limit.unit] ?? 0) >= limit.value;
}

function sizeOf(
  laboratory: readonly LaboratoryResult[],
  { pregnancy, firstDay }: CurrentPregnancy,
  context: TimelineContext,
): Pregnancy['assumedFrom20Weeks'] {
  if (pregnancy.dating !== undefined || pregnancy.birth !== undefined) return undefined;
  const { longestGestationDays, startOfSecondHalfDays } = context.values;
  const since = asOfDay(context) - (daysOf(longestGestationDays) - daysOf(startOfSecondHalfDays));
  const large = laboratory.find(
    (result) => isLarge(result, context) && result.at.localDay >= Math.max(since, firstDay),
  );
  if (large === undefined) return undefined;
  return { asSent: `fundal height ${large.asSent}`, source: large.source, measuredDay: large.at.localDay };
}

const notPregnantIndex = indexCodes(notPregnantCodes);
const pregnantIndex = indexCodes(pregnantCodes);

interface Status {
  readonly at: Moment;
  readonly says: 'pregnant' | 'not-pregnant' | undefined;
}

function readStatuses(observations: readonly Received[], context: TimelineContext): readonly Status[] {
  return observations.flatMap((received) => {
    const at = effectiveMoment(received, context);
    if (isUnusable(at)) {
      context.setAside(received, at);
      return [];
    }
    context.notNeeded(received, 'the state of the pregnancy follows from dating and birth');
    return [{ at, says: statusIn(codingsOf(fieldsOf(received.resource)['valueCodeableConcept'])) }];
  });
}

function statusIn(codings: readonly Coding[]): Status['says'] {
  if (rowsFor(codings, notPregnantIndex).length > 0) return 'not-pregnant';
  return rowsFor(codings, pregnantIndex).length > 0 ? 'pregnant' : undefined;
}

function notPregnantRemarks(statuses: readonly Status[]): readonly string[] {
  const newest = [...statuses].sort((one, other) => compareMoments(one.at, other.at)).at(-1);
  if (newest?.says !== 'not-pregnant') return [];
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
    ...(hasDied(context) ? { hasDied: true } : {}),
    ...(parity === undefined ? {} : { parity: { count: parity.count, source: parity.source } }),
    ...(gravidity === undefined ? {} : { gravidity: { count: gravidity.count, source: gravidity.source } }),
    previousBirths: current.previousBirths.map(({ at, source }) => ({ at, source })),
  };
}

/** F-M03: recorded as deceased, by flag or by a time not after the evaluation. */
function hasDied(context: TimelineContext): boolean {
  const fields = fieldsOf(context.bundle.patient?.resource);
  const text = textOf(fields['deceasedDateTime']);
  const at = text === undefined ? undefined : parseMoment(text, context.facilityOffsetMinutes);
  return fields['deceasedBoolean'] === true || (at !== undefined && at.earliest <= context.asOf);
}

function birthDayOf(context: TimelineContext): number | undefined {
  const { patient } = context.bundle;
  const text = textOf(fieldsOf(patient?.resource)['birthDate']);
  if (patient === undefined || text === undefined) return undefined;
  const date = parseMoment(text, context.facilityOffsetMinutes);
  if (date?.precision === 'day' && !isInFuture(date, context)) return date.localDay;
  context.issue(patient, {
    severity: 'warning',
    code: 'birth-date-not-used',
    type: 'value',
    element: 'birthDate',
    message: 'Her age needs the whole date of birth, in the past: send YYYY-MM-DD.',
  });
  return undefined;
}
