// Reasons for prevention, each found, absent, or never asked.
import type { Evidence, Outcome } from '../findings/finding.ts';
import type { PreventionFactor, Threshold } from '../guidelines/guideline.ts';
import { formatDay } from '../timeline/calendar.ts';
import type { KnownCondition, LaboratoryResult } from '../timeline/timeline.ts';
import { numberText, ofFact, ofResult } from './answer.ts';
import { isOfThisPregnancy } from './checks/records.ts';
import { resultsOf } from './checks/laboratory-values.ts';
import { combine, lookUp } from './combine.ts';
import { inUnitOf, satisfies } from './compare.ts';
import { uniqueEvidence } from './unique-evidence.ts';
import type { View } from './view.ts';

/** One place in the record where a factor may stand. */
interface Trace {
  readonly verdict: 'found' | 'absent' | 'never-asked';
  readonly evidence: readonly Evidence[];
}

export interface JudgedFactor extends Trace {
  readonly factor: PreventionFactor;
  /** Another publication would judge it otherwise. */
  readonly elsewhere?: string;
}

const neverAsked: Trace = { verdict: 'never-asked', evidence: [] };
const verdictOf = (isFound: boolean, evidence: readonly Evidence[]): Trace => ({
  verdict: isFound ? 'found' : 'absent',
  evidence,
});

/**
 * Is this factor there?
 *
 * Given    factor    where it may stand in the record
 *          outcomes  of questions and classes
 * Returns  found as soon as one place shows it; absent when a place shows that it is not; else never asked
 * Throws   when the data names an unknown question
 * Notes    1. A condition that is not on record was never asked; only a resolved one is absent. A history stays.
 *          2. Body mass index: the earliest of this pregnancy, else the newest before it.
 *          3. Age and the years since the last birth are counted up to the due date, or to today where it is not known.
 * Source   clinical-rules 2.10; notes ours
 */
export function judgeFactor(
  view: View,
  factor: PreventionFactor,
  outcomes: ReadonlyMap<string, Outcome>,
): JudgedFactor {
  const traces = tracesOf(view, factor, outcomes);
  const found = traces.filter((trace) => trace.verdict === 'found');
  const told = traces.filter((trace) => trace.verdict !== 'never-asked');
  const whole: Trace =
    told.length === 0
      ? neverAsked
      : verdictOf(
          found.length > 0,
          uniqueEvidence((found.length > 0 ? found : told).flatMap((trace) => trace.evidence)),
        );
  const elsewhere = elsewhereOf(view, factor, whole);
  return { factor, ...whole, ...(elsewhere === undefined ? {} : { elsewhere }) };
}

function tracesOf(
  view: View,
  factor: PreventionFactor,
  outcomes: ReadonlyMap<string, Outcome>,
): readonly Trace[] {
  return [
    onRecord(view, factor),
    byState(factor, outcomes),
    byNoEarlierBirth(view, factor),
    byParity(view, factor),
    byFetuses(view, factor.fetuses),
    byAge(view, factor.ageAtDueDate),
    byBodyMass(view, factor),
    sinceLastBirth(view, factor.sinceLastBirth),
  ];
}

function elsewhereOf(view: View, factor: PreventionFactor, here: Trace): string | undefined {
  const { elsewhere } = factor;
  if (elsewhere === undefined || here.verdict === 'never-asked') return undefined;
  if (elsewhere.limit === undefined) return here.verdict === 'found' ? elsewhere.sentence : undefined;
  const own = byBodyMass(view, factor);
  const other = byBodyMass(view, factor, elsewhere.limit);
  return own.verdict === other.verdict ? undefined : elsewhere.sentence;
}

function onRecord(view: View, factor: PreventionFactor): Trace {
  const { conditions = [], beforeThisPregnancy = [], ever } = factor;
  const stated = view.timeline.conditions.filter((item) => conditions.includes(item.condition));
  const earlier = view.timeline.conditions.filter(
    (item) => beforeThisPregnancy.includes(item.condition) && isEarlier(view, item),
  );
  const counting = stated.filter((item) => ever === true || countsNow(view, item));
  const found = [...counting, ...earlier];
  if (found.length > 0) return verdictOf(true, found.map(ofCondition));
  return stated.length > 0 ? verdictOf(false, stated.map(ofCondition)) : neverAsked;
}

/** Several fetuses of an earlier pregnancy are no reason in this one. */
const countsNow = (view: View, item: KnownCondition): boolean =>
  item.condition === 'multiple-pregnancy' || item.condition === 'assisted-conception'
    ? isOfThisPregnancy(view, item)
    : item.state === 'active';

function isEarlier(view: View, item: KnownCondition): boolean {
  const at = item.onset ?? item.recorded;
  return at !== undefined && view.place(at).outside === 'earlier';
}

const ofCondition = (item: KnownCondition): Evidence =>
  ofFact(`condition, ${item.condition}`, item, item.onset ?? item.recorded);

function byState({ when, deniedBy }: PreventionFactor, outcomes: ReadonlyMap<string, Outcome>): Trace {
  if (when === undefined) return neverAsked;
  if (combine(when, lookUp(outcomes)) === 'met') return verdictOf(true, []);
  return deniedBy !== undefined && outcomes.get(deniedBy) === 'not-met' ? verdictOf(false, []) : neverAsked;
}

/** Who never gave birth had no pre-eclampsia in an earlier pregnancy. */
function byNoEarlierBirth(view: View, { beforeThisPregnancy }: PreventionFactor): Trace {
  const { parity, previousBirths } = view.timeline.woman;
  return beforeThisPregnancy !== undefined && parity?.count === 0 && previousBirths.length === 0
    ? verdictOf(false, [ofFact('parity', { asSent: '0', source: parity.source })])
    : neverAsked;
}

/** A first pregnancy is a first birth to come; a later one tells nothing without the number of births. */
function byParity(view: View, { firstBirth }: PreventionFactor): Trace {
  const { parity, gravidity, previousBirths } = view.timeline.woman;
  if (firstBirth !== true) return neverAsked;
  const born = previousBirths.at(-1);
  if (born !== undefined)
    return verdictOf(false, [
      ofFact('earlier birth', { asSent: born.at.text, source: born.source }, born.at),
    ]);
  if (parity === undefined)
    return gravidity?.count === 1
      ? verdictOf(true, [ofFact('gravidity', { asSent: '1', source: gravidity.source })])
      : neverAsked;
  return verdictOf(parity.count === 0, [
    ofFact('parity', { asSent: String(parity.count), source: parity.source }),
  ]);
}

function byFetuses(view: View, limit: Threshold | undefined): Trace {
  const { fetuses } = view.timeline.pregnancy;
  if (limit === undefined || fetuses === undefined) return neverAsked;
  return verdictOf(satisfies({ value: fetuses.count }, limit) === true, [
    ofFact('number of fetuses', { asSent: String(fetuses.count), source: fetuses.source }),
  ]);
}

/** Day on which the baby is due; today when undated. */
function dueDay(view: View): number {
  const { dating } = view.timeline.pregnancy;
  return dating === undefined
    ? Math.floor(view.timeline.asOf / millisecondsPerDay)
    : dating.startDay + view.values.pregnancyLengthDays.value;
}

const millisecondsPerDay = 86_400_000;

/** Whole years between two days, by the calendar. */
function wholeYears(from: number, to: number): number {
  const [start, end] = [formatDay(from), formatDay(to)];
  const years = Number(end.slice(0, 4)) - Number(start.slice(0, 4));
  return end.slice(5) < start.slice(5) ? years - 1 : years;
}

function byAge(view: View, limit: Threshold | undefined): Trace {
  const { birthDay, reference } = view.timeline.woman;
  if (limit === undefined || birthDay === undefined) return neverAsked;
  const age = wholeYears(birthDay, dueDay(view));
  return verdictOf(satisfies({ value: age }, limit) === true, [
    {
      reference: reference ?? 'Patient',
      what: 'age on the due date',
      asSent: `born ${formatDay(birthDay)}`,
      asCompared: `${numberText(age)} years`,
    },
  ]);
}

function byBodyMass(view: View, factor: PreventionFactor, limit = factor.bodyMassIndex): Trace {
  if (limit === undefined) return neverAsked;
  const isPlausible = (result: LaboratoryResult): boolean =>
    [factor.plausibleBodyMassIndex?.low, factor.plausibleBodyMassIndex?.high].every(
      (bound) => bound === undefined || reachesLimit(result, bound) !== false,
    );
  const result =
    resultsOf(view, 'body-mass-index').find(isPlausible) ??
    view.timeline.laboratory.filter((one) => one.analyte === 'body-mass-index' && isPlausible(one)).at(-1);
  const verdict = result === undefined ? undefined : reachesLimit(result, limit);
  return result === undefined || verdict === undefined ? neverAsked : verdictOf(verdict, [ofResult(result)]);
}

/** Undefined when the unit or a bound ("<30") leaves it open. */
function reachesLimit({ measured, byUnit }: LaboratoryResult, limit: Threshold): boolean | undefined {
  const compared = inUnitOf(measured, byUnit, limit);
  return compared === undefined ? undefined : satisfies(compared.measured, compared.threshold);
}

/** More than so many whole years, and a day, count as more. */
function sinceLastBirth(view: View, limit: Threshold | undefined): Trace {
  const { parity, previousBirths } = view.timeline.woman;
  if (limit === undefined) return neverAsked;
  const born = previousBirths.at(-1);
  if (born === undefined) return parity?.count === 0 ? verdictOf(false, []) : neverAsked;
  const due = dueDay(view);
  const years = wholeYears(born.at.localDay, due);
  const isMore = wholeYears(born.at.localDay + 1, due) >= years;
  const value = isMore ? years + 0.5 : years;
  return verdictOf(satisfies({ value }, limit) === true, [
    ofFact('last birth', { asSent: born.at.text, source: born.source }, born.at),
  ]);
}
