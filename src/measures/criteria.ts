// The criteria of each proportion measure, one function for each; the words are in the guideline data.
import type { PreventionAdvice } from '../findings/finding.ts';
import type { MeasureId } from '../guidelines/measures.ts';
import {
  firstCheckWithin,
  raisedResolvedWithin,
  secondCheckFrom,
  secondCheckUntil,
  severeTreatedWithin,
} from '../guidelines/measures.ts';
import type { Classification, Question } from '../guidelines/guideline.ts';
import { severeRepeat } from '../guidelines/shared-values.ts';
import { pressureDrugs } from '../rules/checks/pressure-drugs.ts';
import { severePairs } from '../rules/checks/severe-pressure.ts';
import { milliseconds, reaches, satisfies } from '../rules/compare.ts';
import { isAtLeastAfter, isRaised, type PlacedReading } from '../rules/view.ts';
import { referralCodes } from '../terminology/suggested-codes.ts';
import { gapAtMost, isBefore, isSameLocalDay } from '../timeline/moment.ts';
import type { Moment } from '../timeline/timeline.ts';
import { isWithin } from './gather-pregnancies.ts';
import type { Criteria } from './membership.ts';
import type { PregnancyRecord } from './pregnancy-record.ts';

export type ProportionId = Exclude<MeasureId, 'terminal-digit-preference'>;
type Asked = Omit<Criteria, 'initial'>;

/** For each measure: is she in the denominator, and did it happen? */
export const criteriaOf: Readonly<Record<ProportionId, (record: PregnancyRecord) => Asked>> = {
  'pressure-at-every-contact': pressureAtEveryContact,
  'urine-protein-when-raised': urineProteinWhenRaised,
  'severe-pressure-repeated': severePressureRepeated,
  'severe-pressure-treated': severePressureTreated,
  'raised-pressure-resolved': raisedPressureResolved,
  'referral-made': referralMade,
  'pressure-checked-after-birth': pressureCheckedAfterBirth,
  'aspirin-offered': aspirinOffered,
};

const outside: Asked = { denominator: false, numerator: false };

/** True when one is true, unknown when one may be. */
function anyOf(answers: readonly (boolean | undefined)[]): boolean | undefined {
  if (answers.includes(true)) return true;
  return answers.includes(undefined) ? undefined : false;
}

function allOf(answers: readonly (boolean | undefined)[]): boolean | undefined {
  if (answers.includes(false)) return false;
  return answers.includes(undefined) ? undefined : true;
}

const hasTime = (at: Moment): boolean => at.precision === 'minute';

function pressureAtEveryContact({ contacts, view }: PregnancyRecord): Asked {
  const antenatal = contacts.filter(({ at, isInpatient, isVirtual }) => {
    const { period, outside: isOutside } = view.place(at);
    return !isInpatient && !isVirtual && period !== 'after-birth' && isOutside === undefined;
  });
  const measured = antenatal.map(({ at }) =>
    anyOf(view.readings.map(({ reading }) => isSameLocalDay(at, reading.at))),
  );
  return { denominator: antenatal.length > 0, numerator: allOf(measured) };
}

function raisedOccasions({ view, guideline, period }: PregnancyRecord) {
  return view.occasions.filter(
    (occasion) => isWithin(occasion.at, period) && isRaised(occasion, guideline.chartLimits.hypertension),
  );
}

function urineProteinWhenRaised(record: PregnancyRecord): Asked {
  const first = raisedOccasions(record)[0];
  if (first === undefined) return outside;
  const tested = record.view.timeline.urineProteins.map(({ at }) => isSameLocalDay(first.at, at));
  return { denominator: true, numerator: anyOf(tested) };
}

function severeReadings({ view, guideline, period }: PregnancyRecord): readonly PlacedReading[] {
  return view.everyReading.filter(
    ({ reading }) => isWithin(reading.at, period) && reaches(reading, guideline.chartLimits.severe),
  );
}

function severePressureRepeated(record: PregnancyRecord): Asked {
  const first = severeReadings(record)[0]?.reading;
  if (first === undefined) return outside;
  const again = record.view.everyReading
    .filter(({ reading }) => reading !== first)
    .map(({ reading }) =>
      allOf([isBefore(first.at, reading.at), gapAtMost(first.at, reading.at, milliseconds(severeRepeat))]),
    );
  return { denominator: true, exclusion: !hasTime(first.at), numerator: anyOf(again) };
}

type SevereQuestion = Extract<Question, { check: 'severe-pressure-confirmed' }>;

function isSevereQuestion(question: Question): question is SevereQuestion {
  return question.check === 'severe-pressure-confirmed';
}

function severePressureTreated(record: PregnancyRecord): Asked {
  const { view, guideline, period } = record;
  const rule = guideline.questions.find(isSevereQuestion);
  if (rule === undefined) return outside;
  const first = severePairs(view, rule.limits, rule).find(({ first: { reading } }) =>
    isWithin(reading.at, period),
  )?.first.reading.at;
  if (first === undefined) return outside;
  const interval = milliseconds(rule.severeConfirmation.minimumInterval);
  const second = severeReadings(record).find(
    ({ reading }) => isAtLeastAfter(first, reading.at, interval) === true,
  );
  const confirmed = second?.reading.at ?? first;
  const given = view.timeline.medicines
    .filter(({ medicine, status }) => pressureDrugs.has(medicine) && status !== 'ordered')
    .map(({ start }) => isGivenBetween(start, first, confirmed));
  return { denominator: true, exclusion: !hasTime(first), numerator: anyOf(given) };
}

/** After the first severe reading, and within the limit after the one that confirmed it; an untimed drug leaves it open. */
function isGivenBetween(start: Moment | undefined, first: Moment, confirmed: Moment): boolean | undefined {
  if (start === undefined) return undefined;
  const isTooEarly = isBefore(start, first);
  const isAfter = isTooEarly === undefined ? undefined : !isTooEarly;
  return allOf([
    isAfter,
    start.latest <= confirmed.earliest
      ? true
      : gapAtMost(confirmed, start, milliseconds(severeTreatedWithin)),
  ]);
}

function raisedPressureResolved(record: PregnancyRecord): Asked {
  const first = raisedOccasions(record)[0];
  if (first === undefined) return outside;
  const limit = milliseconds(raisedResolvedWithin);
  const later = record.view.occasions
    .filter((occasion) => occasion !== first)
    .map(({ at }) => allOf([isBefore(first.at, at), gapAtMost(first.at, at, limit)]));
  return {
    denominator: true,
    exception: first.at.latest + limit > record.period.to,
    numerator: anyOf(later),
  };
}

const isReferral = new Set(referralCodes.map(({ system, code }) => `${system}|${code}`));
const notMade: readonly string[] = ['revoked', 'entered-in-error', 'unknown'];

function referralMade({ referral, contacts, view }: PregnancyRecord): Asked {
  if (referral === undefined) return outside;
  const requested = view.timeline.requests.some(
    ({ status, codes }) => !notMade.includes(status) && codes.some((code) => isReferral.has(code)),
  );
  return { denominator: true, numerator: requested || contacts.some(({ isInpatient }) => isInpatient) };
}

/** Hypertensive disorders of pregnancy and chronic hypertension, by the classes of the rules. */
const hypertensive: ReadonlySet<Classification> = new Set<Classification>([
  'eclampsia',
  'imminent-eclampsia',
  'hellp',
  'pre-eclampsia-severe-features',
  'superimposed-pre-eclampsia',
  'postpartum-pre-eclampsia',
  'pre-eclampsia',
  'gestational-hypertension-severe-range',
  'postpartum-hypertension',
  'gestational-hypertension',
  'chronic-hypertension',
  'hypertension-timing-unknown',
]);

function pressureCheckedAfterBirth({ classification, view, period }: PregnancyRecord): Asked {
  const birth = view.timeline.pregnancy.birth?.at;
  const hasDisorder = classification.some((each) => hypertensive.has(each));
  if (birth === undefined || !hasDisorder || !isWithin(birth, period)) return outside;
  const readings = view.everyReading
    .map(({ reading }) => reading.at)
    .filter((at) => isBefore(at, birth) !== true);
  const early = readings.map((at) => gapAtMost(birth, at, milliseconds(firstCheckWithin)));
  const late = readings.map((at) => {
    const days = { value: at.localDay - birth.localDay };
    return satisfies(days, secondCheckFrom) === true && satisfies(days, secondCheckUntil) === true;
  });
  const isDue = birth.latest + milliseconds(secondCheckUntil) <= period.to;
  return { denominator: true, exception: !isDue, numerator: allOf([anyOf(early), anyOf(late)]) };
}

/** What was advised when she could still be offered it: indicated at any visit, else as told at the latest one. */
function strongestAspirin(prevention: PregnancyRecord['prevention']): PreventionAdvice | undefined {
  const told = prevention
    .flatMap((each) => each.find(({ id }) => id === 'aspirin') ?? [])
    .filter(({ outcome }) => outcome !== 'not-applicable');
  return told.find(({ outcome }) => outcome === 'met') ?? told.at(-1);
}

function aspirinOffered({ prevention, guideline, view }: PregnancyRecord): Asked {
  const advice = strongestAspirin(prevention);
  if (advice === undefined) return outside;
  const against = guideline.preventionRules?.find(({ id }) => id === 'aspirin')?.contraindications ?? [];
  const isAgainst = view.timeline.conditions.some(
    ({ condition, state }) => state === 'active' && against.includes(condition),
  );
  const isOffered = view.timeline.medicines.some(
    ({ medicine, status }) => medicine === 'aspirin' && status !== 'stopped',
  );
  if (advice.outcome === 'cannot-tell') return { denominator: undefined, numerator: undefined };
  const isIndicated = advice.outcome === 'met' || (isAgainst && advice.found.length > 0);
  return { denominator: isIndicated, exclusion: isAgainst, numerator: isOffered };
}
