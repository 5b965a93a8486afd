// One evaluation for each woman an input holds.
import { subjectsOf } from './bundle/read-bundle.ts';
import { evaluate, type EvaluateOptions } from './evaluate.ts';
import type { Evaluation } from './evaluation.ts';

/**
 * The answers about every woman of the input, or about the one named.
 *
 * Given    input     as for `evaluate`
 *          options   as for `evaluate`; with `subject` only that woman is judged
 * Returns  at least one evaluation, in the order in which the women appear.
 * Throws   RequestError as `evaluate` does.
 */
export function evaluateEach(input: unknown, options: EvaluateOptions): readonly Evaluation[] {
  const subjects = options.subject === undefined ? subjectsOf(input) : [];
  if (subjects.length < 2) return [evaluate(input, options)];
  return subjects.map((subject) => evaluate(input, { ...options, subject }));
}
