// Severe pressure: judged on single readings, never on an average. Open, closed, confirmed, current.
import type { Evidence } from '../../findings/finding.ts';
import type {
  PressureLimits,
  QuestionCheck,
  SevereConfirmation,
  SymptomId,
} from '../../guidelines/guideline.ts';
import { cannotTell, limitsOf, met, notMet, ofReading, pressureText, type Answer } from '../answer.ts';
import { isBelow, milliseconds, reaches } from '../compare.ts';
import { isAtLeastAfter, type PlacedReading, type View } from '../view.ts';
import { pressureDrugBetween } from './pressure-drugs.ts';
import { presentSymptoms } from './symptoms.ts';

type Options<K extends QuestionCheck['check']> = Extract<QuestionCheck, { check: K }>;
interface SevereRule {
  readonly severeConfirmation: SevereConfirmation;
  readonly dangerSymptoms: readonly SymptomId[];
}

export interface SeverePair {
  readonly first: PlacedReading;
  readonly evidence: readonly Evidence[];
  readonly why: string;
}

const severeReadings = (view: View, limits: PressureLimits): readonly PlacedReading[] =>
  view.everyReading.filter(({ reading }) => reaches(reading, limits));

/**
 * Severe readings that are confirmed, and by what.
 *
 * Given    view, limits, rule   interval between two severe readings; danger symptoms
 * Returns  one entry for each severe reading confirmed by a second severe reading, by a danger symptom, or by a
 *          drug for pressure given before any later reading
 * Throws   never
 * Source   the interval comes from the guideline; the two other ways are cautious choices of ours
 */
export function severePairs(view: View, limits: PressureLimits, rule: SevereRule): readonly SeverePair[] {
  const severe = severeReadings(view, limits);
  const interval = milliseconds(rule.severeConfirmation.minimumInterval);
  const danger = presentSymptoms(view, rule.dangerSymptoms)[0];
  return severe.flatMap((first) => {
    const second = severe.find(
      (later) => isAtLeastAfter(first.reading.at, later.reading.at, interval) === true,
    );
    if (second !== undefined)
      return [
        {
          first,
          evidence: [...ofReading(first.reading), ...ofReading(second.reading)],
          why: `seen again as ${pressureText(second.reading)} mm[Hg] at ${second.reading.at.text}`,
        },
      ];
    if (danger !== undefined)
      return [{ first, evidence: [...ofReading(first.reading), danger], why: 'a danger symptom is present' }];
    const drug = treatedAtOnce(view, first);
    return drug === undefined
      ? []
      : [
          {
            first,
            evidence: [...ofReading(first.reading), drug],
            why: 'a drug for pressure followed before any other reading',
          },
        ];
  });
}

const isConfirmedBefore = (
  reading: PlacedReading,
  severe: readonly PlacedReading[],
  interval: number,
): boolean =>
  severe.some((earlier) => isAtLeastAfter(earlier.reading.at, reading.reading.at, interval) === true);

function treatedAtOnce(view: View, severe: PlacedReading): Evidence | undefined {
  const next = view.everyReading.find(({ reading }) => reading.at.earliest > severe.reading.at.earliest);
  return pressureDrugBetween(view, severe.reading.at, next?.reading.at);
}

/** The reading that closes a severe one: below both limits, long enough after, no drug between, no danger symptom. */
function closedBy(
  view: View,
  severe: PlacedReading,
  limits: PressureLimits,
  rule: SevereRule,
): PlacedReading | undefined {
  if (presentSymptoms(view, rule.dangerSymptoms).length > 0) return undefined;
  const wait = milliseconds(rule.severeConfirmation.closedAfter);
  return view.everyReading.find(
    (later) =>
      isAtLeastAfter(severe.reading.at, later.reading.at, wait) === true &&
      isBelow(later.reading, limits) &&
      pressureDrugBetween(view, severe.reading.at, later.reading.at) === undefined,
  );
}

/** Severe readings neither confirmed nor closed. */
function openReadings(view: View, limits: PressureLimits, rule: SevereRule): readonly PlacedReading[] {
  const interval = milliseconds(rule.severeConfirmation.minimumInterval);
  const severe = severeReadings(view, limits);
  const confirmed = new Set(severePairs(view, limits, rule).map(({ first }) => first));
  return severe.filter(
    (item) =>
      !confirmed.has(item) &&
      !isConfirmedBefore(item, severe, interval) &&
      closedBy(view, item, limits, rule) === undefined,
  );
}

const none = (limits: PressureLimits, view: View): Answer =>
  view.everyReading.length === 0
    ? cannotTell('No usable blood pressure was received for this pregnancy.', {
        thresholds: limitsOf(limits),
      })
    : notMet('No reading is in the severe range.', { thresholds: limitsOf(limits) });

/** Is a severe reading waiting for its repeat? */
export function severePressureOpen(view: View, options: Options<'severe-pressure-open'>): Answer {
  if (severeReadings(view, options.limits).length === 0) return none(options.limits, view);
  const thresholds = [...limitsOf(options.limits), options.severeConfirmation.repeatWithin];
  const open = openReadings(view, options.limits, options).at(-1);
  if (open === undefined)
    return notMet('Every severe reading was confirmed or followed by a lower one.', { thresholds });
  const text = `${pressureText(open.reading)} mm[Hg] at ${open.reading.at.text}`;
  return met(`${text} is severe and not yet repeated.`, { thresholds, evidence: ofReading(open.reading) });
}

/** Was a severe reading closed, unconfirmed, by a lower one? It stays in the trace and the card. */
export function severePressureClosed(view: View, options: Options<'severe-pressure-closed'>): Answer {
  const severe = severeReadings(view, options.limits);
  if (severe.length === 0) return none(options.limits, view);
  const thresholds = [...limitsOf(options.limits), options.severeConfirmation.closedAfter];
  const confirmed = new Set(severePairs(view, options.limits, options).map(({ first }) => first));
  for (const item of [...severe].reverse()) {
    const closing = closedBy(view, item, options.limits, options);
    if (closing !== undefined && !confirmed.has(item))
      return met(
        `${pressureText(item.reading)} mm[Hg] at ${item.reading.at.text} was followed by ${pressureText(closing.reading)} mm[Hg] at ${closing.reading.at.text}.`,
        { thresholds, evidence: [...ofReading(item.reading), ...ofReading(closing.reading)] },
      );
  }
  return notMet('No severe reading was closed by a lower one.', { thresholds });
}

/** Is severe pressure confirmed, in one part of the pregnancy or in any? */
export function severePressureConfirmed(view: View, options: Options<'severe-pressure-confirmed'>): Answer {
  const severe = severeReadings(view, options.limits).filter(
    ({ place }) => options.period === 'any' || place.period === options.period,
  );
  if (severe.length === 0) return none(options.limits, view);
  const thresholds = [...limitsOf(options.limits), options.severeConfirmation.minimumInterval];
  const pair = severePairs(view, options.limits, options).find(
    ({ first }) => options.period === 'any' || first.place.period === options.period,
  );
  return pair === undefined
    ? cannotTell('A severe reading has no confirmation.', {
        thresholds,
        evidence: severe.flatMap(({ reading }) => ofReading(reading)),
      })
    : met(`${pressureText(pair.first.reading)} mm[Hg] at ${pair.first.reading.at.text}: ${pair.why}.`, {
        thresholds,
        evidence: pair.evidence,
      });
}

/** Confirmed severe pressure that no later day has settled. */
export function severePressureCurrent(view: View, options: Options<'severe-pressure-current'>): Answer {
  const confirmed = severePressureConfirmed(view, {
    ...options,
    check: 'severe-pressure-confirmed',
    period: 'any',
  });
  if (confirmed.outcome !== 'met') return confirmed;
  const last = severeReadings(view, options.limits).at(-1);
  if (last === undefined) return confirmed;
  const wait = milliseconds(options.settledAfter);
  const settled = view.everyReading.find(
    ({ reading }) =>
      isAtLeastAfter(last.reading.at, reading.at, wait) === true && isBelow(reading, options.limits),
  );
  if (settled === undefined) return confirmed;
  return notMet(`Severe pressure was confirmed and had settled by ${settled.reading.at.text}.`, {
    thresholds: [...limitsOf(options.limits), options.settledAfter],
    evidence: [...ofReading(last.reading), ...ofReading(settled.reading)],
  });
}

/** Did a pressure that was below the severe range rise into it, confirmed, from 20+0 weeks on? */
export function pressureControlLost(view: View, options: Options<'pressure-control-lost'>): Answer {
  const confirmed = severePressureConfirmed(view, {
    ...options,
    check: 'severe-pressure-confirmed',
    period: 'from-20-weeks',
  });
  if (confirmed.outcome !== 'met') return confirmed;
  const first = severeReadings(view, options.limits).find(({ place }) => place.period === 'from-20-weeks');
  const wait = milliseconds(options.earlierBy);
  const before = view.readings.filter(
    ({ reading }) => first !== undefined && isAtLeastAfter(reading.at, first.reading.at, wait) === true,
  );
  const lower = before.filter(({ reading }) => isBelow(reading, options.limits)).at(-1);
  const thresholds = [...limitsOf(options.limits), options.earlierBy];
  if (lower === undefined || first === undefined)
    return cannotTell('Severe pressure is confirmed; no earlier reading shows how it was before.', {
      thresholds,
    });
  return met(
    `${pressureText(lower.reading)} mm[Hg] at ${lower.reading.at.text} rose to ${pressureText(first.reading)} mm[Hg] at ${first.reading.at.text}.`,
    { thresholds, evidence: [...ofReading(lower.reading), ...(confirmed.evidence ?? [])] },
  );
}
