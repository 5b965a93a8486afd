// One woman under every registered guideline, side by side. Pure.
import { subjectsOf } from './bundle/read-bundle.ts';
import { comparedEvaluation, prepare, type EvaluateOptions } from './evaluate.ts';
import type { Comparison, Difference, Evaluation } from './evaluation.ts';
import { differencesFrom } from './findings/differences.ts';
import { partingsOf } from './findings/partings.ts';
import { defaultGuidelineId } from './guidelines/registry.ts';
import { opinionOf, opinionsOf } from './opinions.ts';

export type CompareOptions = Omit<EvaluateOptions, 'guideline' | 'compare'>;

/** What a door takes for `guideline` to mean every one, side by side. */
export const everyGuideline = 'all';

/**
 * One woman under every guideline.
 *
 * Given    input, options   as for `evaluate`; the input is read and the timeline built once
 * Returns  the evaluation under the default guideline; class, own and final urgency and referral of each; the
 *          questions on which they part, with the limit and the evidence of each
 * Throws   RequestError as `evaluate` does
 * Notes    1. Each guideline answers as it does alone.
 */
export function compareGuidelines(input: unknown, options: CompareOptions): Comparison {
  const prepared = prepare(input, options);
  const opinions = opinionsOf(prepared.built.timeline, prepared.site);
  return {
    evaluation: comparedEvaluation(prepared, defaultGuidelineId, opinions),
    guidelines: opinions.map(({ stamp, own, assessment }) => ({
      stamp,
      classification: assessment.classification,
      ownUrgency: own.urgency,
      urgency: assessment.urgency,
      ...(assessment.referral === undefined ? {} : { referral: assessment.referral }),
    })),
    partings: partingsOf(opinions),
  };
}

/** The same for every woman of the input, or for the one named, in the order in which they appear. */
export function compareEach(input: unknown, options: CompareOptions): readonly Comparison[] {
  const subjects = options.subject === undefined ? subjectsOf(input) : [];
  if (subjects.length < 2) return [compareGuidelines(input, options)];
  return subjects.map((subject) => compareGuidelines(input, { ...options, subject }));
}

/** The guidelines that would differ in class or urgency from an evaluation; empty: none. */
export function differingGuidelines(evaluation: Evaluation): readonly Difference[] {
  if (evaluation.differs !== undefined) return evaluation.differs;
  const { timeline, guideline } = evaluation;
  return differencesFrom(opinionOf(timeline, guideline), opinionsOf(timeline));
}
