// What a question measures, limit by limit, so that guidelines can be laid side by side. Reads data; decides nothing.
import type {
  OrganCriterion,
  PressureLimits,
  ProteinuriaCriteria,
  Question,
  Threshold,
} from '../guidelines/guideline.ts';

/** One limit of a question, under a name that is the same in every guideline. */
export interface Measure {
  readonly name: string;
  readonly threshold: Threshold;
  /** Names under which evidence for it appears (`Evidence.what`). */
  readonly evidence: readonly string[];
  /** What the limit multiplies, where it is a multiple: "the upper limit of normal". */
  readonly multipleOf?: string;
}

const measure = (name: string, threshold: Threshold | undefined, evidence = [name]): readonly Measure[] =>
  threshold === undefined ? [] : [{ name, threshold, evidence }];

const pressure = ['blood pressure'];

const ofLimits = (limits: PressureLimits, kind = ''): readonly Measure[] => [
  ...measure(`${kind}systolic pressure`, limits.systolic, pressure),
  ...measure(`${kind}diastolic pressure`, limits.diastolic, pressure),
];

/**
 * The limits of a question, each with a name shared by all guidelines.
 *
 * Returns  in reading order; empty for questions about the record or symptoms
 * Throws   never
 */
export function measuresOf(question: Question): readonly Measure[] {
  if (question.check === 'proteinuria') return ofProteinuria(question.criteria);
  if (question.check === 'organ-involvement') return question.criteria.flatMap(ofCriterion);
  if (question.check === 'laboratory-reaches') return measure(question.analyte, question.limit);
  return question.check === 'hellp' ? ofHellp(question) : ofPressure(question);
}

function ofPressure(question: Question): readonly Measure[] {
  return [
    ...('limits' in question ? ofLimits(question.limits) : []),
    ...('severe' in question ? ofLimits(question.severe, 'severe ') : []),
    ...('confirmation' in question
      ? measure('time between raised contacts', question.confirmation.minimumInterval, pressure)
      : []),
    ...('severeConfirmation' in question
      ? measure('time between severe readings', question.severeConfirmation.minimumInterval, pressure)
      : []),
  ];
}

function ofProteinuria(criteria: ProteinuriaCriteria): readonly Measure[] {
  const byUnit = (name: string, limits: readonly Threshold[]): readonly Measure[] =>
    limits.flatMap((limit) => measure(`${name}, ${limit.unit}`, limit, [name]));
  return [
    ...measure('urine protein, strip', criteria.strip),
    ...byUnit('urine protein/creatinine ratio', criteria.proteinCreatinineRatio),
    ...byUnit('urine albumin/creatinine ratio', criteria.albuminCreatinineRatio),
    ...criteria.excretion24h.flatMap((limit) => measure('urine protein in 24 hours', limit)),
  ];
}

function ofCriterion(criterion: OrganCriterion): readonly Measure[] {
  switch (criterion.kind) {
    case 'laboratory': {
      const age = criterion.fromAge ?? criterion.beforeAge;
      const name = criterion.analytes.join(' or ');
      return measure(age === undefined ? name : `${name}, ${criterion.id}`, criterion.limit, [
        ...criterion.analytes,
      ]);
    }
    case 'multiple-of-upper-limit':
      return multiple(criterion.analytes, criterion.limit, 'the upper limit of normal');
    case 'multiple-of-baseline':
      return multiple(criterion.analytes, criterion.limit, 'the earlier value');
    case 'symptom':
    case 'condition':
      return [];
  }
}

const multiple = (analytes: readonly string[], threshold: Threshold, of: string): readonly Measure[] => [
  {
    name: `${analytes.join(' or ')}, times ${of}`,
    threshold,
    evidence: [...analytes],
    multipleOf: of,
  },
];

function ofHellp({ definition }: Extract<Question, { check: 'hellp' }>): readonly Measure[] {
  const { tennessee, mississippi } = definition;
  return [
    ...measure('ldh, Tennessee', tennessee.ldh, ['ldh']),
    ...measure('bilirubin, Tennessee', tennessee.bilirubin, ['bilirubin']),
    ...measure('ast, Tennessee', tennessee.ast, ['ast']),
    ...measure('platelets, Tennessee', tennessee.platelets, ['platelets']),
    ...mississippi.flatMap((row) => [
      ...measure(`platelets, Mississippi ${row.name}`, row.platelets, ['platelets']),
      ...measure(`alt or ast, Mississippi ${row.name}`, row.transaminase, ['alt', 'ast']),
      ...measure(`ldh, Mississippi ${row.name}`, row.ldh, ['ldh']),
    ]),
  ];
}
