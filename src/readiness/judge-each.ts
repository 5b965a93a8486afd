// Each woman of an integrator's data, judged at the time of her own data.
import { subjectsOf } from '../bundle/read-bundle.ts';
import { evaluate, prepare, type EvaluateOptions, type Prepared } from '../evaluate.ts';
import type { Evaluation } from '../evaluation.ts';
import type { Timeline } from '../timeline/timeline.ts';

export interface ReadinessOptions extends EvaluateOptions {
  /** Judge each woman at the time of her newest fact up to `asOf`: old data are checked as of their own time. */
  readonly atNewestFact?: boolean;
}

export interface Judged {
  readonly prepared: Prepared;
  readonly evaluation: Evaluation;
}

/**
 * Given    input    as for `evaluate`
 *          options  as for `evaluate`; every woman is looked at unless one is named
 * Returns  at least one, in the order in which the women appear
 * Throws   RequestError as `evaluate` does
 */
export function judgeEach(input: unknown, options: ReadinessOptions): readonly Judged[] {
  const subjects = options.subject === undefined ? subjectsOf(input) : [options.subject];
  return (subjects.length === 0 ? [undefined] : subjects).map((subject) =>
    judged(input, subject === undefined ? options : { ...options, subject }),
  );
}

function judged(input: unknown, { atNewestFact, ...options }: ReadinessOptions): Judged {
  const newest = atNewestFact === true ? newestFact(prepare(input, options).built.timeline) : undefined;
  const dated = newest === undefined ? options : { ...options, asOf: newest };
  return { prepared: prepare(input, dated), evaluation: evaluate(input, dated) };
}

/** Time of the newest measurement, in milliseconds; undefined when there is none. */
function newestFact(timeline: Timeline): number | undefined {
  const { pressures, homePressures, urineProteins, laboratory, symptoms } = timeline;
  const times = [...pressures, ...homePressures, ...urineProteins, ...laboratory, ...symptoms].flatMap(
    ({ at }) => (at === undefined ? [] : [at.latest]),
  );
  return times.length === 0 ? undefined : times.reduce((newest, time) => Math.max(newest, time));
}
