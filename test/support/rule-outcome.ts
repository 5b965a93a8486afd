// The outcome of one class or urgency rule in an answer.
import type { Evaluation } from '../../src/evaluation.ts';
import type { Finding, Outcome } from '../../src/findings/finding.ts';
import { combine, lookUp } from '../../src/rules/combine.ts';

/**
 * How a rule came out.
 *
 * Given    rule  `class:hellp` or `urgency:hellp`
 * Returns  its outcome; `undefined` when the guideline has no such rule
 * Notes    1. An urgency rule that held is among the reasons of the urgency. One that did not is worked out from the
 *             findings; there a class whose place another class took counts as not met.
 */
export function ruleOutcome(
  { guideline, assessment }: Pick<Evaluation, 'guideline' | 'assessment'>,
  findings: readonly Finding[],
  rule: string,
): Outcome | undefined {
  const found = findings.find(({ question }) => question === rule);
  if (found !== undefined) return found.outcome;
  const urgencyRule = guideline.urgencyRules.find(({ id }) => `urgency:${id}` === rule);
  if (urgencyRule === undefined) return undefined;
  if (assessment.urgencyBecause.some((because) => because.rule === urgencyRule.id)) return 'met';
  const outcome = combine(
    urgencyRule.when,
    lookUp(new Map(findings.map((finding) => [finding.question, finding.outcome]))),
  );
  return outcome === 'met' ? 'not-met' : outcome;
}
