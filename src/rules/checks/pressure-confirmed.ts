// Was a raised pressure seen again after the interval, inside one part of the pregnancy?
import type { Confirmation, PressureLimits, QuestionCheck } from '../../guidelines/guideline.ts';
import type { Moment } from '../../timeline/timeline.ts';
import {
  cannotTell,
  limitsOf,
  met,
  notApplicable,
  notMet,
  ofOccasion,
  pressureText,
  type Answer,
} from '../answer.ts';
import { isBelow, milliseconds, reaches } from '../compare.ts';
import { isAtLeastAfter, isRaised, type Occasion, type View } from '../view.ts';
import { formatInstant } from '../../timeline/moment.ts';
import { pressureDrugBetween } from './pressure-drugs.ts';
import { severePairs } from './severe-pressure.ts';

type Options<K extends QuestionCheck['check']> = Extract<QuestionCheck, { check: K }>;

/** Two raised contacts far enough apart, older first. */
export interface Pair {
  readonly first: Occasion;
  readonly second: Occasion;
}

/**
 * Pairs that confirm.
 *
 * Given    occasions     of one period, oldest first
 *          limits        either half reaching its own limit counts
 *          confirmation  interval (none: any later occasion), occasions or single readings, same arm or not
 * Returns  every pair whose interval is certain, oldest first
 * Throws   never
 * Notes    1. The interval counts from the first reading of each occasion; equal to the interval confirms.
 *          2. A partial date that leaves the interval open confirms nothing.
 * Source   the interval comes from the guideline
 */
export function pairsIn(
  occasions: readonly Occasion[],
  limits: PressureLimits,
  confirmation: Confirmation,
): readonly Pair[] {
  const raised = contactsFor(occasions, confirmation).filter((occasion) => isRaised(occasion, limits));
  const interval =
    confirmation.minimumInterval === undefined ? 1 : milliseconds(confirmation.minimumInterval);
  return raised.flatMap((second, index) =>
    raised
      .slice(0, index)
      .filter((first) => isAtLeastAfter(first.at, second.at, interval) === true)
      .filter((first) => !confirmation.sameArm || isSameArm(first, second))
      .map((first) => ({ first, second })),
  );
}

/** Occasions, or each single reading as a contact of its own where the publication pairs readings. */
function contactsFor(occasions: readonly Occasion[], confirmation: Confirmation): readonly Occasion[] {
  if (confirmation.between === 'occasions') return occasions;
  return occasions.flatMap((occasion) =>
    occasion.readings.map((reading) => ({
      at: reading.at,
      place: occasion.place,
      readings: [reading],
      value: reading,
      cautiousValue: reading,
    })),
  );
}

function isSameArm(first: Occasion, second: Occasion): boolean {
  const arms = [first, second].map((occasion) => occasion.readings[0]?.arm);
  return arms[0] === undefined || arms[1] === undefined || arms[0] === arms[1];
}

/** Is hypertension confirmed in one part of the pregnancy? */
export function pressureConfirmed(view: View, options: Options<'pressure-confirmed'>): Answer {
  const minimum = options.confirmation.minimumInterval;
  const thresholds = [...limitsOf(options.limits), ...(minimum === undefined ? [] : [minimum])];
  const occasions = view.occasions.filter(
    (occasion) => occasion.place.period === options.period && occasion.place.outside === undefined,
  );
  if (occasions.length === 0)
    return notApplicable('No blood pressure belongs to this part of the pregnancy.');
  const pair = pairsIn(occasions, options.limits, options.confirmation).at(-1);
  if (pair !== undefined) return met(pairText(pair), { thresholds, evidence: evidenceOf(pair) });
  const severe = severePairs(view, options.severe, options).find(
    ({ first }) => first.place.period === options.period,
  );
  if (severe !== undefined)
    return met(
      `Severe pressure ${pressureText(severe.first.reading)} mm[Hg] at ${severe.first.reading.at.text}: ${severe.why}.`,
      {
        thresholds: [...limitsOf(options.severe), options.severeConfirmation.minimumInterval],
        evidence: severe.evidence,
      },
    );
  const treated = treatedBetween(view, occasions, options.limits);
  if (treated !== undefined) return met(treated.because, { thresholds, evidence: treated.evidence });
  return unconfirmed(occasions, options, thresholds);
}

function unconfirmed(
  occasions: readonly Occasion[],
  options: Options<'pressure-confirmed'>,
  thresholds: NonNullable<Answer['thresholds']>,
): Answer {
  const raised = occasions.filter((occasion) => isRaised(occasion, options.limits));
  const first = raised[0];
  if (first === undefined)
    return notMet('No contact reached the limits.', {
      thresholds,
      evidence: occasions.slice(-1).flatMap(ofOccasion),
    });
  return cannotTell(shortText(first, raised.at(-1) ?? first, options.confirmation), {
    thresholds,
    evidence: raised.flatMap(ofOccasion),
    missing: whatIsMissing(first, occasions.at(-1) ?? first, options),
  });
}

/** The repeat by the clock; once it was done and was below the limits, the pressure of the visits to come. */
function whatIsMissing(
  first: Occasion,
  newest: Occasion,
  { limits, confirmation }: Options<'pressure-confirmed'>,
): NonNullable<Answer['missing']> {
  const { minimumInterval } = confirmation;
  const interval = minimumInterval === undefined ? 1 : milliseconds(minimumInterval);
  if (isBelow(newest.value, limits) && isAtLeastAfter(first.at, newest.at, interval) === true)
    return {
      what: 'the pressure of the visits to come',
      how: 'Measure at every visit: one more raised contact confirms.',
      by: 'within-7-days',
    };
  const repeatAt = repeatTime(first.at, confirmation);
  return repeatAt === undefined ? {} : { at: repeatAt };
}

function shortText(first: Occasion, last: Occasion, confirmation: Confirmation): string {
  const text = `${pressureText(first.value)} mm[Hg] at ${first.at.text}`;
  if (first === last) return `${text} is raised and has no second raised contact yet.`;
  const minimum = confirmation.minimumInterval;
  const short = minimum === undefined ? 0 : milliseconds(minimum) - (last.at.earliest - first.at.earliest);
  if (short > 0 && first.at.precision === 'minute' && last.at.precision === 'minute')
    return `${text} and ${pressureText(last.value)} mm[Hg] at ${last.at.text} are ${minutes(short)} short of the interval.`;
  const why =
    confirmation.sameArm && !isSameArm(first, last)
      ? 'the arms differ'
      : 'the times do not show the interval';
  return `${text} and ${pressureText(last.value)} mm[Hg] at ${last.at.text}: ${why}.`;
}

const minutes = (ms: number): string => {
  const count = Math.ceil(ms / 60_000);
  return `${String(count)} minute${count === 1 ? '' : 's'}`;
};

/** The clock time from which a repeat confirms, in the zone of the first reading. */
export function repeatTime(first: Moment, confirmation: Confirmation): string | undefined {
  const minimum = confirmation.minimumInterval;
  if (minimum === undefined || first.precision !== 'minute') return undefined;
  return formatInstant(first.earliest + milliseconds(minimum), first.offsetMinutes ?? 0);
}

const pairText = ({ first, second }: Pair): string =>
  `${pressureText(first.value)} mm[Hg] at ${first.at.text} and ${pressureText(second.value)} mm[Hg] at ${second.at.text}.`;

const evidenceOf = (pair: Pair) => [...ofOccasion(pair.first), ...ofOccasion(pair.second)];

/** A raised contact, then a drug for pressure, then any later contact: the second may be low because of the drug. */
function treatedBetween(view: View, occasions: readonly Occasion[], limits: PressureLimits) {
  for (const [index, first] of occasions.entries()) {
    const second = occasions[index + 1];
    if (second === undefined || !reaches(first.value, limits)) continue;
    const drug = pressureDrugBetween(view, first.at, second.at);
    if (drug !== undefined)
      return {
        because: `${pressureText(first.value)} mm[Hg] at ${first.at.text}, then a drug for pressure was given before the next reading.`,
        evidence: [...ofOccasion(first), drug, ...ofOccasion(second)],
      };
  }
  return undefined;
}

/** Does the newest confirming pair lie further apart than the limit, with no fresh pair beside it? */
export function pressurePairStale(view: View, options: Options<'pressure-pair-stale'>): Answer {
  const pairs = pairsIn(
    view.occasions.filter((o) => o.place.outside === undefined),
    options.limits,
    options.confirmation,
  ).filter((pair) => pair.first.place.period === pair.second.place.period);
  const thresholds = [options.freshWithin];
  const newest = pairs.at(-1);
  if (newest === undefined) return notApplicable('There is no confirming pair.');
  const width = milliseconds(options.freshWithin);
  const fresh = pairs.find((pair) => pair.second.at.earliest - pair.first.at.latest <= width);
  return fresh === undefined
    ? met(`The confirming readings lie further apart than the limit: ${pairText(newest)}`, {
        thresholds,
        evidence: evidenceOf(newest),
      })
    : notMet(pairText(fresh), { thresholds, evidence: evidenceOf(fresh) });
}
