// What a user of the package may import. Pure and free of Node: it runs in a browser too.
export { answerFor as evaluate } from './answer-for.ts';
export { evaluate as evaluateInFull, type EvaluateOptions } from './evaluate.ts';
export { evaluateEach } from './evaluate-each.ts';
export { compareGuidelines, differingGuidelines, type CompareOptions } from './compare-guidelines.ts';
export { RequestError, type Issue, type SetAsideCode } from './errors.ts';
export { defaultGuidelineId, guidelineIds } from './guidelines/registry.ts';
export { toAnswer } from './presenters/answer.ts';
export type * from './presenters/answer-types.ts';
export { toCards } from './presenters/cds-cards.ts';
export type * from './presenters/card-types.ts';
export { toFhirBundle, toFhirBundleOfMany } from './presenters/fhir-result.ts';
export { toOperationOutcome } from './presenters/operation-outcome.ts';
export { toSuggestions, type Suggestions, type SuggestedCondition } from './presenters/suggestions.ts';
export { toText } from './presenters/text.ts';
export { caution } from './presenters/caution.ts';
export { toComparisonAnswer, toComparisonText } from './presenters/comparison.ts';
export type {
  Account,
  AccountEntry,
  Comparison,
  Difference,
  Evaluation,
  GestationalAge,
  GuidelineStamp,
  Parting,
} from './evaluation.ts';
export type {
  Action,
  Assessment,
  Evidence,
  Finding,
  Missing,
  Outcome,
  Referral,
} from './findings/finding.ts';
export type { Citation, Classification, Threshold, Urgency } from './guidelines/guideline.ts';
