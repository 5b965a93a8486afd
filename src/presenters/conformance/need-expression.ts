// Conditions of rules as FHIRPath: the expression of a PlanDefinition condition, and criteria of measures.
import type { Expression } from 'fhir/r4.js';
import type { Guideline, Need } from '../../guidelines/guideline.ts';
import { needLine } from '../need-line.ts';

/**
 * A need as FHIRPath over one variable.
 *
 * Given    need   all / any / none over ids of questions and rules
 * Returns  `('raised-now' in %met) and ('strip' in %met or 'ratio' in %met)`, where `%met` is the collection of the
 *          ids answered met; what is not met, not applicable or cannot be told is absent from it.
 * Source   ours; FHIRPath 2.0: `in`, `and`, `or`, `not()`, external constants.
 */
export function needPath(need: Need): string {
  if (typeof need === 'string') return `'${need}' in %met`;
  if ('all' in need) return joined(need.all, ' and ');
  if ('any' in need) return joined(need.any, ' or ');
  return `(${joined(need.none, ' or ')}).not()`;
}

function joined(parts: readonly Need[], word: string): string {
  return parts.map((part) => `(${needPath(part)})`).join(word);
}

/** A condition of a rule: for people in `description`, for programs in `expression`. */
export function needExpression(need: Need, guideline: Guideline): Expression {
  return { description: needLine(need, guideline), language: 'text/fhirpath', expression: needPath(need) };
}
