// The pregnancies of one woman in a measurement period, from what was submitted.
import type { ReadBundle } from '../bundle/read-bundle-types.ts';
import { prepare, type EvaluateOptions, type Prepared } from '../evaluate.ts';
import type { Assessment } from '../findings/finding.ts';
import { classifications, type Classification, type Guideline } from '../guidelines/guideline.ts';
import { opinionOf, type ViewedOpinion } from '../opinions.ts';
import { prepareAgain } from '../prepare-again.ts';
import type { View } from '../rules/view.ts';
import type { Moment, Timeline } from '../timeline/timeline.ts';
import { contactsIn, organizationOf } from './contacts.ts';
import type { Contact, MeasurePeriod, PregnancyRecord } from './pregnancy-record.ts';

export interface GatherOptions extends Omit<EvaluateOptions, 'asOf' | 'guideline' | 'compare'> {
  readonly period: MeasurePeriod;
  readonly guideline: Guideline;
}

/**
 * What the measures look at.
 *
 * Given    input    a Bundle with the woman's resources
 *          options  the period, both ends inclusive; the guideline; the woman
 * Returns  one record for each of her pregnancies with data in the period, the newest first; one record without data
 *          when there is none
 * Throws   RequestError as `evaluate` does
 * Notes    1. A pregnancy is seen as at its last fact up to the end of the period: a year after the birth nothing of
 *             it would be judged any more.
 *          2. Facts that this view places in an earlier pregnancy make the next record.
 */
export function gatherPregnancies(input: unknown, options: GatherOptions): readonly PregnancyRecord[] {
  const { period, guideline: _guideline, ...asked } = options;
  return gatherPrepared(prepare(input, { ...asked, asOf: period.to }), options);
}

/** Opinions of the guideline that are known already, by the moment they were made at. */
export type Told = ReadonlyMap<number, ViewedOpinion>;

/** The same for an input that was prepared, at any moment. */
export function gatherPrepared(
  prepared: Prepared,
  options: GatherOptions,
  told: Told = new Map(),
): readonly PregnancyRecord[] {
  const look = lookFrom(prepared, options, told);
  const records: PregnancyRecord[] = [];
  let until = options.period.to;
  for (;;) {
    const { record, earlierUntil } = gatherNewest(look, until, options);
    if (record.hasData || records.length === 0) records.push(record);
    if (earlierUntil === undefined || earlierUntil < options.period.from || earlierUntil >= until) break;
    until = earlierUntil;
  }
  const withData = records.filter(({ hasData }) => hasData);
  return withData.length === 0 ? records.slice(0, 1) : withData;
}

interface Look {
  readonly bundle: ReadBundle;
  readonly opinion: ViewedOpinion;
  readonly contacts: readonly Contact[];
}

/** Her record as known at a moment. */
type LookAt = (asOf: number) => Look;

function lookFrom(
  prepared: Prepared,
  { period: _period, guideline, ...asked }: GatherOptions,
  told: Told,
): LookAt {
  const { bundle } = prepared;
  const every = contactsIn(bundle, asked);
  return (asOf) => ({
    bundle,
    opinion:
      told.get(asOf) ?? opinionOf(prepareAgain(prepared, asOf, asked).built.timeline, guideline, asked.site),
    contacts: every.filter(({ at }) => at.latest <= asOf),
  });
}

interface Newest {
  readonly record: PregnancyRecord;
  /** The last moment of the pregnancy before it; absent when there is none. */
  readonly earlierUntil?: number;
}

/** The newest pregnancy as known at a moment. */
function gatherNewest(look: LookAt, until: number, options: GatherOptions): Newest {
  const all = look(until);
  const isEarlier = (at: Moment): boolean => all.opinion.view.place(at).outside === 'earlier';
  const known = [...momentsOf(all.opinion.view.timeline), ...all.contacts.map(({ at }) => at)].filter(
    ({ latest }) => latest <= until,
  );
  const own = known.filter((at) => !isEarlier(at));
  const earlier = known.filter(isEarlier).map(({ latest }) => latest);
  const end = own.reduce((last, { latest }) => Math.max(last, latest), -Infinity);
  const record = recordOf(own.length === 0 || end === until ? all : look(end), own, {
    options,
    judge: (at) => look(at).opinion.assessment,
  });
  return earlier.length === 0 ? { record } : { record, earlierUntil: Math.max(...earlier) };
}

interface Judging {
  readonly options: GatherOptions;
  readonly judge: (at: number) => Assessment;
}

function recordOf(
  { bundle, opinion: { view, assessment }, contacts: every }: Look,
  own: readonly Moment[],
  { options: { period, guideline }, judge }: Judging,
): PregnancyRecord {
  const contacts = every.filter(({ at }) => isWithin(at, period) && view.place(at).outside !== 'earlier');
  const visits = visitsOf(view).map((at) => ({ at, assessment: judge(at) }));
  const inPeriod = visits.filter(({ at }) => at >= period.from);
  const told = inPeriod.length === 0 ? [assessment] : inPeriod.map((visit) => visit.assessment);
  return {
    subject: bundle.subject,
    period,
    guideline,
    view,
    classification: mostSevereFirst([assessment, ...visits.map((visit) => visit.assessment)]),
    referral: told.find(({ referral }) => referral !== undefined)?.referral,
    prevention: told.map(({ prevention }) => prevention),
    contacts,
    site: contacts.findLast(({ site }) => site !== undefined)?.site ?? organizationOf(bundle.patient),
    hasData: own.some((at) => isWithin(at, period)),
  };
}

/** Every class told at any visit of the pregnancy. */
function mostSevereFirst(told: readonly Assessment[]): readonly Classification[] {
  const held = new Set(told.flatMap(({ classification }) => classification));
  return classifications.filter((each) => held.has(each));
}

/** The end of each day of this pregnancy on which something was measured, tested or asked, oldest first. */
function visitsOf(view: View): readonly number[] {
  const { timeline } = view;
  const days = new Map<number, number>();
  for (const { at } of [
    ...timeline.pressures,
    ...timeline.homePressures,
    ...timeline.urineProteins,
    ...timeline.laboratory,
    ...timeline.symptoms,
  ])
    if (at !== undefined && view.place(at).outside !== 'earlier')
      days.set(at.localDay, Math.max(days.get(at.localDay) ?? -Infinity, at.latest));
  return [...days].sort(([a], [b]) => a - b).map(([, latest]) => latest);
}

/** May the moment lie in the period? Both ends are inclusive. */
export function isWithin(at: Moment, { from, to }: MeasurePeriod): boolean {
  return at.latest >= from && at.earliest <= to;
}

function momentsOf(timeline: Timeline): readonly Moment[] {
  const { birth } = timeline.pregnancy;
  return [
    ...timeline.pressures,
    ...timeline.homePressures,
    ...timeline.urineProteins,
    ...timeline.laboratory,
    ...timeline.symptoms,
    ...timeline.requests,
    ...timeline.conditions.map(({ onset, recorded }) => ({ at: recorded ?? onset })),
    ...timeline.medicines.map(({ start }) => ({ at: start })),
    ...(birth === undefined ? [] : [birth]),
    ...timeline.woman.previousBirths,
  ].flatMap(({ at }) => at ?? []);
}
