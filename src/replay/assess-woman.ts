// One woman's history as the service would have answered it: at each contact, or at the end.
import { comparedEvaluation, prepare, type EvaluateOptions, type Prepared } from '../evaluate.ts';
import type { Evaluation } from '../evaluation.ts';
import { defaultGuidelineId, guidelineOf } from '../guidelines/registry.ts';
import { opinionOf, type ViewedOpinion } from '../opinions.ts';
import { prepareAgain } from '../prepare-again.ts';
import type { Timeline } from '../timeline/timeline.ts';

export type Every = 'visit' | 'end';

export interface AssessOptions {
  /** The first one decides; the others are set beside it. */
  readonly guidelines: readonly string[];
  readonly every: Every;
  /** Both ends inclusive, milliseconds since 1970-01-01T00:00Z; contacts outside are not answered. */
  readonly from?: number;
  readonly to?: number;
  /** Also persons whose record shows no sign of a pregnancy. */
  readonly everyone: boolean;
  /** Zone and unit of the site, as for `evaluate`. */
  readonly site?: Omit<EvaluateOptions, 'asOf' | 'guideline' | 'subject' | 'compare'>;
}

/** One answer: by the leading guideline, and by those set beside it. */
export interface Visit {
  readonly asOf: number;
  readonly evaluation: Evaluation;
  readonly others: readonly Evaluation[];
  /** What the leading answer was made from. */
  readonly prepared: Prepared;
  readonly opinion: ViewedOpinion;
}

export interface WomanHistory {
  readonly subject: string;
  /** Oldest first; with `end`, one. Empty where nothing of hers lies in the window. */
  readonly visits: readonly Visit[];
  /** Judged at the end of the window, for the account; absent for a person without a sign of a pregnancy. */
  readonly account: Evaluation['account'] | undefined;
  /** As later than any record: every fact is in it. */
  readonly prepared: Prepared;
  readonly timeline: Timeline;
}

/** Later than any record, so that every fact is seen when contacts are looked for. */
const horizon = Date.UTC(9999, 0, 1);

/**
 * What would have been said to her.
 *
 * Given    input    her resources
 *          subject  her reference
 *          options  guidelines, view, window
 * Returns  her answers; each is what `evaluate` gives for the same input and that moment
 * Throws   RequestError as `evaluate` does
 * Notes    1. A contact is a calendar day on which something was measured, tested or asked; its moment is the latest
 *             of that day's facts, so that the answer sees the whole visit.
 *          2. `end` answers once, at her last contact in the window.
 */
export function assessWoman(
  input: readonly unknown[],
  subject: string,
  options: AssessOptions,
): WomanHistory {
  const asked = { ...options.site, subject };
  const prepared = prepare(input, { ...asked, asOf: horizon });
  const { timeline } = prepared.built;
  if (!options.everyone && !hasSignOfPregnancy(timeline))
    return { subject, visits: [], account: undefined, prepared, timeline };
  const contacts = contactsOf(timeline).filter(
    (at) => at >= (options.from ?? -Infinity) && at <= (options.to ?? Infinity),
  );
  const moments = options.every === 'visit' ? contacts : contacts.slice(-1);
  const answer = (asOf: number): Visit => visitAt(prepareAgain(prepared, asOf, asked), options);
  const visits = moments.map(answer);
  const { account } = (visits.at(-1) ?? answer(options.to ?? horizon)).evaluation;
  return { subject, visits, account, prepared, timeline };
}

/** By each guideline what `evaluate` gives, from one timeline. */
function visitAt(prepared: Prepared, { guidelines, site }: AssessOptions): Visit {
  const [leading = defaultGuidelineId, ...others] = guidelines;
  const opinion = opinionUnder(leading, prepared, site);
  return {
    asOf: prepared.asOf,
    evaluation: evaluationOf(prepared, opinion),
    others: others.map((id) => evaluationOf(prepared, opinionUnder(id, prepared, site))),
    prepared,
    opinion,
  };
}

function opinionUnder(id: string, { built }: Prepared, site: AssessOptions['site']): ViewedOpinion {
  const guideline = guidelineOf(id);
  if (guideline === undefined) throw new Error('The guideline was checked before.');
  return opinionOf(built.timeline, guideline, site?.site);
}

function evaluationOf(prepared: Prepared, opinion: ViewedOpinion): Evaluation {
  const { differs: _differs, ...evaluation } = comparedEvaluation(prepared, opinion.stamp.id, [opinion]);
  return evaluation;
}

/** The moments to answer for, oldest first. */
export function contactsOf(timeline: Timeline): readonly number[] {
  const lists: readonly (readonly {
    readonly at?: { readonly localDay: number; readonly latest: number };
  }[])[] = [
    timeline.pressures,
    timeline.homePressures,
    timeline.unusablePressures,
    timeline.meanPressures.map(({ to }) => ({ at: to })),
    timeline.urineProteins,
    timeline.laboratory,
    timeline.symptoms,
  ];
  const days = new Map<number, number>();
  for (const list of lists)
    for (const { at } of list)
      if (at !== undefined) days.set(at.localDay, Math.max(days.get(at.localDay) ?? -Infinity, at.latest));
  return [...days].sort(([a], [b]) => a - b).map(([, latest]) => latest);
}

const obstetric: ReadonlySet<string> = new Set([
  'pregnant',
  'post-partum-state',
  'gestational-hypertension',
  'pre-eclampsia',
  'pre-eclampsia-severe',
  'superimposed-pre-eclampsia',
  'hellp',
  'eclampsia',
  'postpartum-hypertension',
  'hypertension-in-pregnancy-unspecified',
  'gestational-diabetes',
  'multiple-pregnancy',
  'fetal-growth-restriction',
  'fetal-death',
  'placental-abruption',
]);

/** Anything by which the record knows of a pregnancy, past or present. */
function hasSignOfPregnancy({ pregnancy, woman, conditions }: Timeline): boolean {
  return (
    pregnancy.dating !== undefined ||
    pregnancy.birth !== undefined ||
    pregnancy.assumedFrom20Weeks !== undefined ||
    pregnancy.fetuses !== undefined ||
    // Something was sent, and by now is too old to date anything.
    pregnancy.remarks.length > 0 ||
    woman.gravidity !== undefined ||
    woman.parity !== undefined ||
    woman.previousBirths.length > 0 ||
    conditions.some(({ condition }) => obstetric.has(condition))
  );
}
