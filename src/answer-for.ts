// The answer of the package: the evaluation as the public JSON that every door gives.
import { evaluate, type EvaluateOptions } from './evaluate.ts';
import { toAnswer } from './presenters/answer.ts';
import type { Answer } from './presenters/answer-types.ts';

/**
 * What a guideline says about one woman at one moment, as the public answer.
 *
 * Given    input    a FHIR R4 Bundle, Parameters, resource, or array of resources, as parsed JSON
 *          options  the moment (`asOf`, required: no clock is read), the guideline, the woman
 * Returns  the same members, in the same order, as `--format json` of the command line
 * Throws   RequestError when the request as a whole cannot be answered; one bad resource never does
 */
export const answerFor = (input: unknown, options: EvaluateOptions): Answer =>
  toAnswer(evaluate(input, { compare: true, ...options }));
