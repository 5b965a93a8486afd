// Weeks and remaining days of one gestational age in two observations. Hands on dating facts.
import type { Received } from '../bundle/read-bundle-types.ts';
import { loinc } from '../terminology/loinc.ts';
import { systems } from '../terminology/systems.ts';
import { daysPerWeek } from './calendar.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import { readValue } from './coded-value.ts';
import type { TimelineContext } from './context.ts';
import type { DatingFact } from './dating-facts.ts';
import { readDatingFact } from './dating-facts.ts';
import { codingsOf, fieldsOf } from './fields.ts';
import { isUnusable } from './unusable.ts';

const daysIndex = indexCodes(loinc['gestational-age-days'].map((row) => ({ ...row, system: systems.loinc })));

/**
 * The dating facts of these observations.
 *
 * Given    observations  those for which `isDating` holds, in any order
 *          context       where to say what was not used
 * Returns  a fact for each one that can be used; the others are set aside
 * Throws   never
 * Notes    1. LOINC 49052-4 with 0 to 6 is the rest of an age in weeks stated at the same time; with more it
 *             is the whole age in days.
 * Source   terminology.md section 3.
 */
export function readDatingFacts(
  observations: readonly Received[],
  context: TimelineContext,
): readonly DatingFact[] {
  const remaining = new Map<string, { readonly received: Received; readonly days: number }>();
  const whole: Received[] = [];
  for (const received of observations) {
    const days = remainingDays(received);
    if (days === undefined) whole.push(received);
    else remaining.set(timeText(received), { received, days });
  }
  const facts = whole.flatMap((received) => {
    const beside = remaining.get(timeText(received));
    const fact = readDatingFact(received, beside?.days, context);
    if (isUnusable(fact)) {
      context.setAside(received, fact);
      return [];
    }
    if (beside !== undefined && fact.statedAge !== undefined && remaining.delete(timeText(received)))
      context.notNeeded(beside.received, 'the days beside an age in weeks, read together with it');
    return [fact];
  });
  return [...facts, ...unpaired(remaining, context)];
}

function unpaired(
  remaining: ReadonlyMap<string, { readonly received: Received }>,
  context: TimelineContext,
): readonly DatingFact[] {
  return [...remaining.values()].flatMap(({ received }) => {
    const fact = readDatingFact(received, undefined, context);
    if (!isUnusable(fact)) return [fact];
    context.setAside(received, fact);
    return [];
  });
}

/** 0 to 6 days under the code for days; undefined for anything else. */
function remainingDays(received: Received): number | undefined {
  const fields = fieldsOf(received.resource);
  if (rowsFor(codingsOf(fields['code']), daysIndex).length === 0) return undefined;
  const sole = readValue(fields);
  if (isUnusable(sole)) return undefined;
  const value = sole.name === 'valueQuantity' ? fieldsOf(sole.value)['value'] : sole.value;
  return typeof value === 'number' && Number.isInteger(value) && value >= 0 && value < daysPerWeek
    ? value
    : undefined;
}

function timeText({ resource }: Received): string {
  const fields = fieldsOf(resource);
  return JSON.stringify([fields['effectiveDateTime'], fields['effectivePeriod'], fields['effectiveInstant']]);
}
