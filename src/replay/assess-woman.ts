// One woman's history as the service would have answered it: at each contact, or at the end.
import { compareGuidelines } from '../compare-guidelines.ts';
import { evaluate, prepare, type EvaluateOptions } from '../evaluate.ts';
import type { Evaluation } from '../evaluation.ts';
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
}

export interface WomanHistory {
  readonly subject: string;
  /** Oldest first; with `end`, one. Empty where nothing of hers lies in the window. */
  readonly visits: readonly Visit[];
  /** Judged at the end of the window, for the account; absent for a person without a sign of a pregnancy. */
  readonly account: Evaluation['account'] | undefined;
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
  const { timeline } = prepare(input, { ...asked, asOf: horizon }).built;
  if (!options.everyone && !hasSignOfPregnancy(timeline))
    return { subject, visits: [], account: undefined, timeline };
  const contacts = contactsOf(timeline).filter(
    (at) => at >= (options.from ?? -Infinity) && at <= (options.to ?? Infinity),
  );
  const moments = options.every === 'visit' ? contacts : contacts.slice(-1);
  const visits = moments.map((asOf) => visitAt(input, asOf, { ...options, asked }));
  const last = visits.at(-1)?.evaluation ?? evaluate(input, { ...asked, asOf: options.to ?? horizon });
  return { subject, visits, account: last.account, timeline };
}

function visitAt(
  input: readonly unknown[],
  asOf: number,
  { guidelines, asked }: AssessOptions & { readonly asked: Omit<EvaluateOptions, 'asOf'> },
): Visit {
  const [evaluation, ...others] = guidelines.map((guideline) =>
    evaluate(input, { ...asked, guideline, asOf }),
  );
  return {
    asOf,
    evaluation: evaluation ?? compareGuidelines(input, { ...asked, asOf }).evaluation,
    others,
  };
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
