// Conditions of rules as one line of text: the expression of a PlanDefinition condition.
import type { Expression } from 'fhir/r4.js';
import type { Guideline, Need } from '../../guidelines/guideline.ts';
import { needLine } from '../rule-words.ts';

/** Media type of our expressions: all(...), any(...), none(...) over ids of questions and rules of the Library. */
export const needLanguage = 'text/x-pregnancy-htn-need';

/** Media type of measure criteria: names of counts that the evaluation implements. */
export const criterionLanguage = 'text/x-pregnancy-htn-criterion';

/** `all(raised-now, any(strip, none(known-before)))` */
export function needText(need: Need): string {
  if (typeof need === 'string') return need;
  if ('all' in need) return `all(${need.all.map(needText).join(', ')})`;
  if ('any' in need) return `any(${need.any.map(needText).join(', ')})`;
  return `none(${need.none.map(needText).join(', ')})`;
}

/** A condition of a rule: for people in `description`, for programs in `expression`. */
export function needExpression(need: Need, guideline: Guideline): Expression {
  return { description: needLine(need, guideline), language: needLanguage, expression: needText(need) };
}
