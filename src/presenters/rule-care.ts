// What we advise, as tables: steps, medicines, treatment, prevention, measuring, risk equations. Wording only.
import type { Guideline, PreventionFactor, PreventionRule } from '../guidelines/guideline.ts';
import type { RiskModel } from '../guidelines/risk-model.ts';
import { limitWords } from '../findings/limit-words.ts';
import { markdownTable } from './markdown-table.ts';
import { citationWords } from './rule-sources.ts';
import { idWords, needLine } from './rule-words.ts';

/** A rule with the guidelines that have it word for word. */
interface Shared<T> {
  readonly rule: T;
  readonly guideline: Guideline;
  readonly whose: string;
}

/** Rules of one kind over all guidelines; those that are the same stand once. */
function shared<T>(
  guidelines: readonly Guideline[],
  rulesOf: (guideline: Guideline) => readonly T[],
): readonly Shared<T>[] {
  const found = new Map<string, { readonly rule: T; readonly of: readonly Guideline[] }>();
  for (const guideline of guidelines)
    for (const rule of rulesOf(guideline)) {
      const key = JSON.stringify(rule);
      found.set(key, { rule, of: [...(found.get(key)?.of ?? []), guideline] });
    }
  return [...found.values()].flatMap(({ rule, of }) => {
    const [guideline] = of;
    const whose = of.length === guidelines.length ? 'all' : of.map(({ id }) => id).join(', ');
    return guideline === undefined ? [] : [{ rule, guideline, whose }];
  });
}

/** Where to. */
export const referralLines = (guidelines: readonly Guideline[]): readonly string[] =>
  markdownTable(
    ['where to', 'what we say', 'when', 'guidelines', 'source'],
    shared(guidelines, (each) => each.referralRules).map(({ rule, guideline, whose }) => [
      idWords(rule.level),
      rule.sentence,
      needLine(rule.when, guideline),
      whose,
      citationWords(rule.citation),
    ]),
  );

/** Steps by kind, in the order in which they are shown. */
export function stepLines(guidelines: readonly Guideline[]): readonly string[] {
  const steps = shared(guidelines, (each) => each.actionRules);
  const kinds = [...new Set(steps.map(({ rule }) => rule.kind))];
  return kinds.flatMap((kind) => [
    `### Steps: ${idWords(kind)}`,
    '',
    ...markdownTable(
      ['step', 'what we say', 'when', 'guidelines', 'source'],
      steps
        .filter(({ rule }) => rule.kind === kind)
        .sort((a, b) => a.rule.order - b.rule.order)
        .map(({ rule, guideline, whose }) => [
          `\`${rule.id}\``,
          rule.sentence.replace('{time}', 'the time by the clock'),
          needLine(rule.when, guideline),
          whose,
          citationWords(rule.citation),
        ]),
    ),
  ]);
}

/** Medicines to avoid or to use with care. */
export const medicineLines = (guidelines: readonly Guideline[]): readonly string[] =>
  markdownTable(
    ['rule', 'medicines', 'when', 'what we say', 'named instead', 'guidelines', 'source'],
    shared(guidelines, (each) => each.medicineRules ?? []).map(({ rule, guideline, whose }) => [
      `\`${rule.id}\` (${rule.severity})`,
      rule.medicines.map(idWords).join(', '),
      [
        needLine(rule.when, guideline),
        ...(rule.conditions ?? []).map((item) => `${idWords(item)} recorded`),
      ].join('; '),
      rule.sentence,
      rule.alternative === undefined ? '' : rule.alternative.sentence,
      whose,
      citationWords(rule.citation),
    ]),
  );

/** Reference doses. */
export const treatmentLines = (guidelines: readonly Guideline[]): readonly string[] =>
  markdownTable(
    ['option', 'for', 'dose as printed', 'when', 'what speaks against it', 'guidelines', 'source'],
    shared(guidelines, (each) => each.treatmentRules ?? []).map(({ rule, guideline, whose }) => [
      `${rule.medicine} \`${rule.id}\``,
      idWords(rule.purpose),
      rule.dose,
      needLine(rule.when, guideline),
      rule.against.map(({ sentence }) => sentence).join(' '),
      whose,
      citationWords(rule.citation),
    ]),
  );

/** Aspirin and calcium. */
export function preventionLines(guidelines: readonly Guideline[]): readonly string[] {
  return shared(guidelines, (each) => each.preventionRules ?? []).flatMap(({ rule, whose }) => [
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

/** What makes a measurement doubtful. */
export const qualityLines = (guidelines: readonly Guideline[]): readonly string[] =>
  markdownTable(
    ['number', 'rule', 'grade', 'what we say', 'guidelines', 'source'],
    shared(guidelines, (each) => each.qualityRules ?? []).map(({ rule, whose }) => [
      rule.number,
      `\`${rule.id}\``,
      rule.grade,
      rule.sentence,
      whose,
      citationWords(rule.citation),
    ]),
  );

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
