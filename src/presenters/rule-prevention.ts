// Prevention and risk equations in words. Wording only.
import type { Guideline, PreventionFactor, PreventionRule } from '../guidelines/guideline.ts';
import type { RiskModel } from '../guidelines/risk-model.ts';
import { limitWords } from '../findings/limit-words.ts';
import { citationWords } from './rule-sources.ts';
import { idWords } from '../id-words.ts';
import { sharedRules } from './shared-rules.ts';

/** Aspirin and calcium. */
export function preventionLines(guidelines: readonly Guideline[]): readonly string[] {
  return sharedRules(
    guidelines,
    (each) => each.preventionRules ?? [],
    (rule) => [JSON.stringify(rule)],
  ).flatMap(({ rule, whose }) => [
    `### ${rule.id}: ${whose}`,
    '',
    ...(rule.notAdvised === undefined ? [] : [rule.notAdvised, '']),
    ...(rule.advice === undefined ? [] : [rule.advice, '']),
    ...factorLines(rule),
    ...(rule.dose === '' ? [] : [`- dose as printed: ${rule.dose}`]),
    ...(rule.window === undefined ? [] : [`- when: ${rule.window.sentence}`]),
    ...(rule.contraindications.length === 0
      ? []
      : [`- not with: ${rule.contraindications.map(idWords).join(', ')}`]),
    ...(rule.toAsk === undefined ? [] : [`- to ask, for no record holds it: ${rule.toAsk.join('; ')}`]),
    `- source: ${citationWords(rule.citation)}`,
    '',
  ]);
}

function factorLines({ factors, enough }: PreventionRule): readonly string[] {
  const level = (name: 'high' | 'moderate'): readonly string[] => {
    const found = factors.filter((factor) => factor.level === name);
    const need = enough[name];
    if (found.length === 0) return [];
    const count = need === undefined ? 'not enough by themselves' : `${limitWords(need)} of them`;
    return [`- ${name} factors (${count}): ${found.map(factorWords).join('; ')}`];
  };
  return [...level('high'), ...level('moderate')];
}

function factorWords({
  factor,
  ageAtDueDate,
  bodyMassIndex,
  sinceLastBirth,
  fetuses,
}: PreventionFactor): string {
  const limits = [ageAtDueDate, bodyMassIndex, sinceLastBirth, fetuses].flatMap((limit) =>
    limit === undefined ? [] : [limitWords(limit)],
  );
  return limits.length === 0 ? factor : `${factor} (${limits.join(', ')})`;
}

/** Published equations, off unless asked for. */
export const riskLines = (models: readonly RiskModel[]): readonly string[] =>
  models.flatMap((model) => [
    `### ${model.id}`,
    '',
    `${model.title}: ${model.predicts}`,
    '',
    `- made among: ${model.population}`,
    `- constant: ${model.intercept}`,
    ...model.terms.map(
      ({ coefficient, of, logarithm }) =>
        `- ${coefficient} × ${logarithm === true ? 'natural logarithm of ' : ''}${of.map(idWords).join(' × ')}`,
    ),
    ...model.ranges.map(
      ({ input, low, high }) => `- ${idWords(input)} only ${limitWords(low)} and ${limitWords(high)}`,
    ),
    ...model.remarks.map((remark) => `- ${remark}`),
    `- compared with print: ${model.verified ? 'yes' : 'no, from memory'}`,
    `- source: ${citationWords(model.citation)}`,
    '',
  ]);
