// Where the pressure stands: raised once, raised now, still open, settled, normal.
import type { Confirmation, PressureLimits, QuestionCheck } from '../../guidelines/guideline.ts';
import type { UnusablePressure } from '../../timeline/timeline.ts';
import {
  cannotTell,
  limitsOf,
  met,
  notApplicable,
  notMet,
  ofOccasion,
  ofReading,
  pressureText,
  whatIsOpen,
  type Answer,
} from '../answer.ts';
import { isBelow, milliseconds, reaches } from '../compare.ts';
import { isAtLeastAfter, isRaised, type Occasion, type View } from '../view.ts';
import { pairsIn } from './pressure-confirmed.ts';

type Options<K extends QuestionCheck['check']> = Extract<QuestionCheck, { check: K }>;

const noReading = (): Answer => cannotTell('No usable blood pressure was received for this pregnancy.');

/** Did any single reading, recent enough, reach the limits? Once is enough: for danger signs only. */
export function pressureRaisedOnce(view: View, options: Options<'pressure-raised-once'>): Answer {
  const thresholds = limitsOf(options.limits);
  if (view.everyReading.length === 0) return noReading();
  const oldest = view.timeline.asOf - milliseconds(options.freshWithin);
  const fresh = view.everyReading.filter(({ reading }) => reading.at.latest >= oldest);
  if (fresh.length === 0)
    return cannotTell('The newest blood pressure is too old to speak for today.', { thresholds });
  const raised = fresh.filter(({ reading }) => reaches(reading, options.limits)).at(-1);
  if (raised !== undefined)
    return met(`Blood pressure ${pressureText(raised.reading)} mm[Hg] at ${raised.reading.at.text}.`, {
      thresholds,
      evidence: ofReading(raised.reading),
    });
  const newest = fresh.at(-1);
  if (newest === undefined) return noReading();
  if (!isBelow(newest.reading, options.limits))
    return cannotTell(
      `Newest reading ${pressureText(newest.reading)} mm[Hg]: ${whatIsOpen(newest.reading)}.`,
      {
        thresholds,
      },
    );
  return notMet('No recent reading reached the limits.', { thresholds, evidence: ofReading(newest.reading) });
}

/** Is the value of the newest contact at or above the limits? Judged by the cautious value: it feeds urgency. */
export function pressureRaisedNow(view: View, options: Options<'pressure-raised-now'>): Answer {
  const thresholds = limitsOf(options.limits);
  const newest = view.occasions.at(-1);
  if (newest === undefined) return noReading();
  if (options.period !== undefined && newest.place.period !== options.period)
    return notApplicable('The newest reading belongs to another part of the pregnancy.');
  const evidence = ofOccasion(newest);
  const text = `${pressureText(newest.cautiousValue)} mm[Hg] at ${newest.at.text}`;
  if (reaches(newest.cautiousValue, options.limits))
    return met(`Newest contact: ${text}.`, { thresholds, evidence });
  if (isBelow(newest.value, options.limits))
    return notMet(`Newest contact: ${text}.`, { thresholds, evidence });
  return cannotTell(`Newest contact: ${text}; ${whatIsOpen(newest.value)}.`, { thresholds, evidence });
}

/** Are both halves of the newest contact below the limits, with nothing newer that could not be used? */
export function pressureNormalNow(view: View, options: Options<'pressure-normal-now'>): Answer {
  const thresholds = limitsOf(options.limits);
  const newest = view.occasions.at(-1);
  if (newest === undefined) return noReading();
  const evidence = ofOccasion(newest);
  const last = newest.readings.at(-1)?.at ?? newest.at;
  const isOpen = (item: UnusablePressure): boolean =>
    (item.at === undefined || item.at.latest >= last.earliest) && !isOnlyFaultyBelow(item, options.limits);
  if (view.timeline.unusablePressures.some(isOpen))
    return cannotTell('A newer blood pressure was received that cannot be used.', { thresholds, evidence });
  if (isRaised(newest, options.limits))
    return notMet(`Newest contact ${pressureText(newest.value)} mm[Hg].`, { thresholds, evidence });
  if (!isBelow(newest.value, options.limits))
    return cannotTell(`Newest contact ${pressureText(newest.value)} mm[Hg]: ${whatIsOpen(newest.value)}.`, {
      thresholds,
      evidence,
    });
  if (newestContact(view) - newest.at.latest > milliseconds(options.freshWithin))
    return cannotTell(
      `The newest pressure, ${pressureText(newest.value)} mm[Hg] at ${newest.at.text}, says nothing of the newest contact.`,
      { thresholds, evidence },
    );
  return met(`Newest contact ${pressureText(newest.value)} mm[Hg] at ${newest.at.text}.`, {
    thresholds,
    evidence,
  });
}

/** When the urine was last tested or a symptom last asked: she was there then. */
function newestContact({ timeline }: View): number {
  const moments = [...timeline.urineProteins, ...timeline.symptoms].flatMap(({ at }) => at?.latest ?? []);
  return moments.reduce((newest, at) => Math.max(newest, at), -Infinity);
}

/** Below the limits, and at fault only in its time or form: it takes nothing away from the readings there are. */
const isOnlyFaultyBelow = ({ why, systolic, diastolic }: UnusablePressure, limits: PressureLimits): boolean =>
  (why === 'time-unusable' || why === 'faulty-form') &&
  systolic !== undefined &&
  diastolic !== undefined &&
  isBelow({ systolicMmHg: systolic, diastolicMmHg: diastolic }, limits);

/** Is there a raised contact that no later one, long enough after, has answered? */
export function pressureRaisedOpen(view: View, options: Options<'pressure-raised-open'>): Answer {
  const thresholds = [...limitsOf(options.limits), ...intervalOf(options.confirmation)];
  if (view.occasions.length === 0) return noReading();
  const raised = lastRaised(view.occasions, options.limits);
  if (raised === undefined) return notMet('No contact of this pregnancy reached the limits.', { thresholds });
  const answer = answeredBy(view.occasions, raised, options);
  const text = `${pressureText(raised.value)} mm[Hg] at ${raised.at.text}`;
  if (answer !== undefined)
    return notMet(`${text} was followed by ${pressureText(answer.value)} mm[Hg] at ${answer.at.text}.`, {
      thresholds,
      evidence: [...ofOccasion(raised), ...ofOccasion(answer)],
    });
  return met(`${text}, not yet answered by a repeat.`, { thresholds, evidence: ofOccasion(raised) });
}

/** Raised once, then below the limits on repeat after the interval, and never confirmed. */
export function pressureTransient(view: View, options: Options<'pressure-transient'>): Answer {
  const thresholds = [...limitsOf(options.limits), ...intervalOf(options.confirmation)];
  if (view.occasions.length === 0) return noReading();
  const raised = lastRaised(view.occasions, options.limits);
  if (raised === undefined) return notMet('No contact of this pregnancy reached the limits.', { thresholds });
  if (pairsIn(view.occasions, options.limits, options.confirmation).length > 0)
    return notMet('The raised pressure was confirmed.', { thresholds });
  const answer = answeredBy(view.occasions, raised, options);
  if (answer === undefined)
    return cannotTell('The raised pressure has no repeat yet.', { thresholds, evidence: ofOccasion(raised) });
  return met(
    `${pressureText(raised.value)} mm[Hg] at ${raised.at.text} settled to ${pressureText(answer.value)} mm[Hg] at ${answer.at.text}.`,
    { thresholds, evidence: [...ofOccasion(raised), ...ofOccasion(answer)] },
  );
}

/** Has the newest contact been below the limits for long enough after the last raised one? */
export function pressureSettled(view: View, options: Options<'pressure-settled'>): Answer {
  const thresholds = [...limitsOf(options.limits), options.after];
  const newest = view.occasions.at(-1);
  if (newest === undefined) return noReading();
  const raised = view.occasions.filter((occasion) => reaches(occasion.cautiousValue, options.limits)).at(-1);
  if (raised === undefined)
    return met('No contact reached the limits.', { thresholds, evidence: ofOccasion(newest) });
  const isLater = isAtLeastAfter(raised.at, newest.at, milliseconds(options.after)) === true;
  return isLater && isBelow(newest.value, options.limits)
    ? met(`Below the limits at ${newest.at.text}.`, { thresholds, evidence: ofOccasion(newest) })
    : notMet(`Raised at ${raised.at.text}, not settled since.`, { thresholds, evidence: ofOccasion(raised) });
}

const lastRaised = (
  occasions: readonly Occasion[],
  limits: Options<'pressure-raised-open'>['limits'],
): Occasion | undefined => occasions.filter((occasion) => isRaised(occasion, limits)).at(-1);

function answeredBy(
  occasions: readonly Occasion[],
  raised: Occasion,
  options: {
    readonly limits: Options<'pressure-raised-open'>['limits'];
    readonly confirmation: Confirmation;
  },
): Occasion | undefined {
  const minimum = options.confirmation.minimumInterval;
  const interval = minimum === undefined ? 1 : milliseconds(minimum);
  return occasions.find(
    (later) => isAtLeastAfter(raised.at, later.at, interval) === true && isBelow(later.value, options.limits),
  );
}

const intervalOf = (confirmation: Confirmation) =>
  confirmation.minimumInterval === undefined ? [] : [confirmation.minimumInterval];
