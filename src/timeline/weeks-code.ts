// Weeks of gestation in a diagnosis code, with the day they were recorded. Hands on dating facts.
import type { Received } from '../bundle/read-bundle-types.ts';
import { weeksOfGestationCode } from '../terminology/pregnancy-codes.ts';
import { daysPerWeek, formatDay } from './calendar.ts';
import { canonicalSystem } from './coded-value.ts';
import { conditionStateOf } from './condition-state.ts';
import type { TimelineContext } from './context.ts';
import type { DatingFact } from './dating-facts.ts';
import { isInFuture } from './effective-moment.ts';
import { codingsOf, fieldsOf } from './fields.ts';

interface WeeksInCode {
  readonly weeks: number;
  readonly code: string;
}

/** The completed weeks that a code of the concept names; undefined when none does. */
export function weeksInCode(concept: unknown): WeeksInCode | undefined {
  for (const { system, code } of codingsOf(concept)) {
    const found = code === undefined ? null : weeksOfGestationCode.shape.exec(code);
    if (code === undefined || found === null) continue;
    const weeks = Number(found[1]);
    const isOne = weeks >= weeksOfGestationCode.fewest && weeks <= weeksOfGestationCode.most;
    if (isOne && (system === undefined || canonicalSystem(system) === weeksOfGestationCode.system))
      return { weeks, code };
  }
  return undefined;
}

/**
 * The dating facts of conditions whose code names the weeks of gestation.
 *
 * Given    conditions  those for which `weeksInCode` finds weeks
 *          context     time of the evaluation, zone of the facility
 * Returns  an age stated on the day the condition was recorded; nothing for one that is refuted, recorded later
 *          than the evaluation, or without the day of recording
 * Throws   never
 * Notes    1. The weeks are whole: the days are unknown, and a remark says so.
 * Source   terminology.md section 3 (Z3A); the day that counts is ours.
 */
export function readWeeksCodes(
  conditions: readonly Received[],
  context: TimelineContext,
): readonly DatingFact[] {
  return conditions.flatMap((received) => {
    const found = weeksInCode(fieldsOf(received.resource)['code']);
    const { certainty, recorded } = conditionStateOf(received.resource, context);
    const isDay = recorded?.precision === 'minute' || recorded?.precision === 'day';
    if (found === undefined || !isDay || certainty === 'refuted' || isInFuture(recorded, context)) return [];
    const statedAge = found.weeks * daysPerWeek;
    const observedDay = recorded.localDay;
    return [
      {
        received,
        method: 'stated-age' as const,
        startDay: observedDay - statedAge,
        observedDay,
        statedAge,
        asSent: `${found.code} on ${formatDay(observedDay)}`,
        remarks: ['the weeks are from a code: whole weeks, their days unknown'],
      },
    ];
  });
}
