// Published risk equations: a figure about groups of women, shown only when asked for, never a reassurance.
import type { Assessment, RiskEstimate } from '../findings/finding.ts';
import type { RiskInput, RiskModel } from '../guidelines/risk-model.ts';
import { numberText } from './answer.ts';
import { satisfies } from './compare.ts';
import { findInput, type FoundInput } from './risk-inputs.ts';
import type { View } from './view.ts';

/**
 * The probability an equation gives.
 *
 * Given    model   intercept and terms
 *          values  every input of the model, in its unit
 * Returns  probability, 0 to 1
 * Throws   when an input is not given: a programmer's error
 * Notes    1. No range is checked here.
 */
export function probabilityOf(
  model: Pick<RiskModel, 'intercept' | 'terms'>,
  values: Readonly<Partial<Record<RiskInput, number>>>,
): number {
  const valueOf = (input: RiskInput): number => {
    const value = values[input];
    if (value === undefined) throw new Error(`An equation lacks its input: ${input}`);
    return value;
  };
  const logit = model.terms.reduce((sum, { coefficient, of, logarithm }) => {
    const product = of.reduce((value, input) => value * valueOf(input), 1);
    return sum + coefficient * (logarithm === true ? Math.log(product) : product);
  }, model.intercept);
  return 1 / (1 + Math.exp(-logit));
}

/**
 * What the equations say of this woman.
 *
 * Given    view        her facts
 *          models      the equations
 *          assessment  of the guideline: to whom an equation applies, and what forbids reassurance
 * Returns  one estimate for each model: met from its high figure on, not-met below it; cannot-tell when an input is
 *          missing, a bound, too old or out of range; not-applicable when it was not made for such women
 * Throws   never
 * Notes    1. Nothing here enters the class, the urgency or the actions.
 */
export function estimateRisks(
  view: View,
  models: readonly RiskModel[],
  assessment: Pick<Assessment, 'classification' | 'findings'>,
): readonly RiskEstimate[] {
  return models.map((model) => estimate(view, model, assessment));
}

interface GivenInput {
  readonly input: RiskInput;
  readonly found: FoundInput;
}

function estimate(
  view: View,
  model: RiskModel,
  assessment: Pick<Assessment, 'classification' | 'findings'>,
): RiskEstimate {
  const base = {
    model: model.id,
    predicts: model.predicts,
    source: model.citation,
    verified: model.verified,
  };
  if (view.now.daysAfterBirth !== undefined || !isMeantFor(model, assessment))
    return {
      ...base,
      outcome: 'not-applicable',
      sentence: `${model.title}: made for ${model.population}; not used here.`,
      evidence: [],
      missing: [],
    };
  const inputs = inputsOf(model).map((input) => ({
    input,
    found: findInput(view, input, model.freshWithin),
  }));
  const evidence = distinct(inputs);
  const missing = [...new Set(inputs.flatMap(({ found }) => ('missing' in found ? [found.missing] : [])))];
  if (missing.length > 0)
    return {
      ...base,
      outcome: 'cannot-tell',
      sentence: `${model.title}: no figure; missing: ${missing.join(', ')}.`,
      evidence,
      missing,
    };
  const values = Object.fromEntries(
    inputs.flatMap(({ input, found }) => ('value' in found ? [[input, found.value] as const] : [])),
  );
  const outside = outOfRange(model, values);
  if (outside.length > 0)
    return {
      ...base,
      outcome: 'cannot-tell',
      sentence: `${model.title}: no figure; ${outside.join('; ')}.`,
      evidence,
      missing: [],
    };
  const percent = Math.round(probabilityOf(model, values) * 1000) / 10;
  const isHigh = satisfies({ value: percent }, model.high) === true;
  return {
    ...base,
    outcome: isHigh ? 'met' : 'not-met',
    percent,
    sentence: sentenceOf(model, percent, assessment),
    evidence,
    missing: [],
  };
}

const inputsOf = (model: RiskModel): readonly RiskInput[] => [
  ...new Set(model.terms.flatMap(({ of }) => of)),
];

function distinct(inputs: readonly GivenInput[]): RiskEstimate['evidence'] {
  const evidence = inputs.flatMap(({ found }) => ('evidence' in found ? found.evidence : []));
  const known = new Set<string>();
  return evidence.filter(({ reference, what }) => {
    const key = `${reference} ${what}`;
    return !known.has(key) && known.add(key).has(key);
  });
}

const isMeantFor = (model: RiskModel, { classification }: Pick<Assessment, 'classification'>): boolean =>
  classification.some((one) => model.appliesTo.includes(one));

function outOfRange(
  model: RiskModel,
  values: Readonly<Partial<Record<RiskInput, number>>>,
): readonly string[] {
  return model.ranges.flatMap(({ input, low, high }) => {
    const value = values[input];
    if (value === undefined) return [];
    if (satisfies({ value }, low) === true && satisfies({ value }, high) === true) return [];
    const span = `${numberText(low.value)} to ${numberText(high.value)} ${low.unit}`;
    return [`${input.replaceAll('-', ' ')} ${numberText(value)} lies outside ${span}`];
  });
}

function sentenceOf(
  model: RiskModel,
  percent: number,
  assessment: Pick<Assessment, 'classification' | 'findings'>,
): string {
  const alarms = isAlarming(model, assessment)
    ? ' She has a severe feature or danger sign: this figure must not reassure, whatever it is.'
    : ' A low figure is no reassurance.';
  return [
    `${model.title}: ${percent.toFixed(1)} % (${model.predicts}).`,
    `It describes groups of women, not this one.${alarms}`,
    ...(model.verified ? [] : ['The equation is from memory and was not compared with the printed one.']),
    ...model.remarks,
  ].join(' ');
}

function isAlarming(
  { neverReassuresWith }: RiskModel,
  { classification, findings }: Pick<Assessment, 'classification' | 'findings'>,
): boolean {
  return (
    classification.some((one) => neverReassuresWith.classes.includes(one)) ||
    findings.some(
      ({ question, outcome }) => outcome === 'met' && neverReassuresWith.questions.includes(question),
    )
  );
}
