// Which pregnancy is the current one: its dating, its birth, and what belongs to earlier ones.
import { offsetAt } from './moment.ts';
import type { Birth } from './birth.ts';
import { daysPerWeek, millisecondsPerDay, millisecondsPerMinute } from './calendar.ts';
import type { TimelineContext } from './context.ts';
import type { DatingFact } from './dating-facts.ts';
import { daysOf } from './duration.ts';
import { formatGestation } from './gestation-text.ts';
import { chooseDating } from './gestational-age.ts';
import { sourceOf } from './source.ts';
import type { Dating, Pregnancy, Woman } from './timeline.ts';
import { unusable } from './unusable.ts';

export interface PregnancyFacts {
  readonly dating: readonly DatingFact[];
  /** Oldest first. */
  readonly births: readonly Birth[];
  /** Days on which a pregnancy ended without a birth. */
  readonly lossDays: readonly number[];
  /** Days on which something showed that she was pregnant, without saying how far. */
  readonly signDays: readonly number[];
}

export interface CurrentPregnancy {
  readonly pregnancy: Pick<Pregnancy, 'dating' | 'birth' | 'remarks'>;
  readonly previousBirths: Woman['previousBirths'];
  /** First day that may belong to it. */
  readonly firstDay: number;
}

/**
 * Which pregnancy is the current one, and how far is it dated?
 *
 * Given    facts    dating facts, births and losses of all pregnancies
 *          context  time of the evaluation, lengths in days, where to say what belongs to an earlier pregnancy
 * Returns  dating and birth of the current pregnancy, why it has no dating although one was sent, and earlier births
 * Throws   never
 * Notes    1. The fact with the latest first day of gestation names the pregnancy; facts that begin less than
 *             20 weeks before it, with no birth or loss between, are of the same one.
 *          2. A birth belongs to it from 20 to 44 weeks of its dating. A later birth without a dating of its
 *             own is the current one, and the dating is history.
 *          3. A dating that would have passed 44 weeks without a birth is not used, and a remark says so.
 *          4. A gestational age stated after a birth, and reaching back before it, is the age at that birth.
 *          5. A birth long ago is kept as the birth: the place of a later moment says `later`. A sign of
 *             pregnancy more than six weeks after it is of a new pregnancy, which is undated.
 * Source   clinical-rules 2.2 rules 12 and 14; decision 27; notes 1 and 4 ours.
 */
export function currentPregnancy(facts: PregnancyFacts, context: TimelineContext): CurrentPregnancy {
  const dating = facts.dating.map((fact) => atBirth(fact, facts.births, context));
  const current = ofOnePregnancy(dating, facts, context);
  const chosen = chooseDating(current, context.values);
  const ending = unlessPregnantAgain(endingOf(chosen, facts, context), facts, context);
  const isKept = chosen !== undefined && ending.dropped === undefined;
  setAsideHistory(
    isKept ? dating.filter((fact) => !current.includes(fact)) : dating,
    isKept ? chosen : undefined,
    context,
  );
  const firstDay = isKept ? chosen.startDay : firstDayWithout(ending.birth, facts, context);
  return {
    pregnancy: {
      ...(isKept ? { dating: chosen } : {}),
      ...(ending.birth === undefined ? {} : { birth: birthFact(ending.birth) }),
      remarks: ending.remarks,
    },
    previousBirths: facts.births.filter((birth) => birth !== ending.birth).map(birthFact),
    firstDay,
  };
}

function birthFact({ at, asSent, received }: Birth) {
  return { at, asSent, source: sourceOf(received) };
}

function atBirth(fact: DatingFact, births: readonly Birth[], { values }: TimelineContext): DatingFact {
  const { statedAge, observedDay } = fact;
  if (
    statedAge === undefined ||
    observedDay === undefined ||
    statedAge < daysOf(values.startOfSecondHalfDays)
  )
    return fact;
  const birth = births.find(({ at }) => fact.startDay < at.localDay && at.localDay < observedDay);
  if (birth === undefined) return fact;
  const remark = 'the gestational age was stated after the birth: taken as the age at birth';
  return { ...fact, startDay: birth.at.localDay - statedAge, remarks: [...fact.remarks, remark] };
}

function ofOnePregnancy(
  dating: readonly DatingFact[],
  { births, lossDays }: PregnancyFacts,
  { values }: TimelineContext,
): readonly DatingFact[] {
  const newest = Math.max(...dating.map((fact) => fact.startDay));
  const ends = [...births.map(({ at }) => at.localDay), ...lossDays];
  return dating.filter(({ startDay }) => {
    const isApart = newest - startDay >= daysOf(values.startOfSecondHalfDays);
    return !isApart && !ends.some((end) => startDay < end && end <= newest);
  });
}

interface Ending {
  readonly birth?: Birth;
  /** The dating does not hold any more. */
  readonly dropped?: true;
  readonly remarks: readonly string[];
}

function endingOf(chosen: Dating | undefined, facts: PregnancyFacts, context: TimelineContext): Ending {
  const lastBirth = facts.births.at(-1);
  const lastLoss = Math.max(...facts.lossDays);
  const loss = 'A pregnancy loss is recorded: the dating before it is not used.';
  if (chosen === undefined) {
    if (lastBirth === undefined || lastLoss > lastBirth.at.localDay) return { remarks: [] };
    return { birth: lastBirth, remarks: [] };
  }
  const own = facts.births.filter((birth) => belongs(birth, chosen, context)).at(-1);
  if (own !== undefined) return { birth: own, remarks: [] };
  if (lastLoss >= chosen.startDay) return { dropped: true, remarks: [loss] };
  if (lastBirth !== undefined && ageAt(lastBirth, chosen) > daysOf(context.values.longestGestationDays))
    return {
      birth: lastBirth,
      dropped: true,
      remarks: ['The dating sent is of a pregnancy before the last birth.'],
    };
  return withoutBirth(chosen, lastBirth, context);
}

function unlessPregnantAgain(
  ending: Ending,
  { signDays }: PregnancyFacts,
  { values }: TimelineContext,
): Ending {
  const { birth } = ending;
  if (birth === undefined) return ending;
  const windowEnd = birth.at.localDay + daysOf(values.afterBirthDays);
  if (!signDays.some((day) => day > windowEnd)) return ending;
  return { dropped: true, remarks: ['Pregnant again since the last birth recorded: send a dating.'] };
}

function withoutBirth(chosen: Dating, lastBirth: Birth | undefined, context: TimelineContext): Ending {
  const ageNow = asOfDay(context) - chosen.startDay;
  if (ageNow > daysOf(context.values.longestGestationDays)) {
    const weeks = String(Math.floor(ageNow / daysPerWeek));
    return {
      dropped: true,
      remarks: [`Birth not recorded: the last dated pregnancy would be ${weeks} weeks.`],
    };
  }
  const early = lastBirth === undefined ? -1 : ageAt(lastBirth, chosen);
  return early < 0
    ? { remarks: [] }
    : {
        remarks: [
          `A birth is recorded at ${formatGestation(early)} by the dating: not taken as its end. Check both.`,
        ],
      };
}

function belongs(birth: Birth, chosen: Dating, { values }: TimelineContext): boolean {
  const age = ageAt(birth, chosen);
  return age >= daysOf(values.startOfSecondHalfDays) && age <= daysOf(values.longestGestationDays);
}

function ageAt({ at }: Birth, chosen: Dating): number {
  return at.localDay - chosen.startDay;
}

/** Calendar day of the evaluation, in the facility's zone. */
export function asOfDay({ asOf, facilityOffsetMinutes }: TimelineContext): number {
  const offset = offsetAt(
    facilityOffsetMinutes,
    asOf + offsetAt(facilityOffsetMinutes, asOf) * millisecondsPerMinute,
  );
  return Math.floor((asOf + offset * millisecondsPerMinute) / millisecondsPerDay);
}

/** Undated: not before the last end, nor longer ago than a pregnancy lasts. */
function firstDayWithout(birth: Birth | undefined, facts: PregnancyFacts, context: TimelineContext): number {
  const until = birth?.at.localDay ?? asOfDay(context);
  const earliest = until - daysOf(context.values.longestGestationDays);
  const ends = [
    ...facts.births.filter((one) => one !== birth).map(({ at }) => at.localDay),
    ...facts.lossDays,
  ];
  return Math.max(earliest, ...ends.filter((end) => end < until));
}

function setAsideHistory(
  history: readonly DatingFact[],
  chosen: Dating | undefined,
  context: TimelineContext,
): void {
  for (const { received, startDay, observedDay } of history) {
    // A code for the weeks stays on record as a condition.
    if (received.resource.resourceType === 'Condition') continue;
    const dueDay = startDay + daysOf(context.values.pregnancyLengthDays);
    const isImpossible =
      chosen !== undefined &&
      observedDay !== undefined &&
      observedDay >= chosen.startDay &&
      dueDay < chosen.startDay;
    const why = isImpossible
      ? unusable('value-out-of-range', 'value', 'The due date lies before the beginning of this pregnancy.')
      : unusable('previous-pregnancy', 'value', 'It dates an earlier pregnancy than the current one.');
    context.setAside(received, why);
  }
}
