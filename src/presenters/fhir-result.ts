// The answer of $assess-hypertension: one collection Bundle that holds everything said about each woman.
import type { Bundle, BundleEntry, FhirResource, GuidanceResponse, ServiceRequest } from 'fhir/r4.js';
import type { Comparison, Evaluation } from '../evaluation.ts';
import { toAnswer } from './answer.ts';
import type { ComparisonAnswer } from './answer-types.ts';
import { caution } from './caution.ts';
import { toComparisonAnswer } from './comparison.ts';
import { toDataRequirement } from './data-requirements.ts';
import { toAccountOutcome } from './operation-outcome.ts';
import { toDetectedIssues } from './detected-issue.ts';
import { toOutputParameters } from './output-parameters.ts';
import { toRiskAssessments } from './risk-assessment.ts';
import { toReference } from './reference.ts';
import { someMapped } from './some.ts';
import { stableUuid } from './stable-uuid.ts';
import { toSuggestions } from './suggestions.ts';
import { toProvenance, traced } from './trace-back.ts';
import { canonicalBase } from './vocabulary.ts';

const outputId = 'output';

/**
 * The answer about one woman as a collection Bundle.
 *
 * Returns  in this order: one GuidanceResponse (its output Parameters contained), the suggested Conditions, the
 *          referral, DetectedIssues about medicines and blocked measurements, the RiskAssessments asked for, one OperationOutcome that accounts for every entry received, and the Provenance of them all.
 * Throws   never
 * Notes    1. Every entry has a `urn:uuid:` fullUrl; references between entries use it.
 *          2. The same evaluation gives the same bytes.
 */
export function toFhirBundle(evaluation: Evaluation): Bundle<FhirResource> {
  return collection([{ evaluation }]);
}

/** The same for several women: their result sets one after the other, in the order given. */
export function toFhirBundleOfMany(evaluations: readonly Evaluation[]): Bundle<FhirResource> {
  return collection(evaluations.map((evaluation) => ({ evaluation })));
}

/** The same under every guideline: each answer as always, with a parameter `comparison` beside it. */
export function toFhirBundleOfComparisons(comparisons: readonly Comparison[]): Bundle<FhirResource> {
  return collection(
    comparisons.map((comparison) => ({
      evaluation: comparison.evaluation,
      compared: toComparisonAnswer(comparison),
    })),
  );
}

interface Told {
  readonly evaluation: Evaluation;
  readonly compared?: ComparisonAnswer;
}

function collection(told: readonly Told[]): Bundle<FhirResource> {
  const timestamp = told[0]?.evaluation.asOf;
  return {
    resourceType: 'Bundle',
    type: 'collection',
    ...(timestamp === undefined ? {} : { timestamp }),
    entry: someMapped(told.flatMap(resourcesOf), toEntry),
  };
}

type Identified = FhirResource & { readonly id: string };

function toEntry(resource: Identified): BundleEntry<FhirResource> {
  return { fullUrl: urn(resource.id), resource };
}

function urn(id: string): string {
  return `urn:uuid:${id}`;
}

function resourcesOf({ evaluation, compared }: Told): readonly Identified[] {
  const { conditions, referral } = toSuggestions(evaluation);
  const suggested = conditions.map((condition) => condition.resource);
  const outcomeId = identifier(evaluation, 'OperationOutcome');
  const told = [
    toGuidanceResponse(evaluation, outcomeId, compared),
    ...suggested,
    ...(referral === undefined
      ? []
      : [linked(referral, new Set(suggested.map((condition) => condition.id)))]),
    ...toDetectedIssues(evaluation),
    ...toRiskAssessments(evaluation),
    { ...toAccountOutcome(evaluation.account), id: outcomeId, meta: traced(evaluation.stamp) },
  ];
  const provenance = toProvenance(
    evaluation,
    told.map(({ id }) => urn(id)),
  );
  return [...told, provenance];
}

/** Depends on what was received and answered, so that a replay can be compared. */
function identifier(evaluation: Evaluation, kind: string): string {
  const { stamp, subject, asOf, account } = evaluation;
  return stableUuid([
    kind,
    stamp.fingerprint,
    subject ?? '',
    asOf,
    account.entries.map((entry) => entry.path),
  ]);
}

/** The referral with its reasons addressed as they stand in this Bundle. */
function linked<R extends ServiceRequest>(referral: R, inBundle: ReadonlySet<string>): R {
  const reasonReference = someMapped(referral.reasonReference, (reason) => {
    const id = reason.reference?.replace(/^Condition\//, '') ?? '';
    return inBundle.has(id) ? { reference: urn(id) } : reason;
  });
  return { ...referral, reasonReference };
}

function toGuidanceResponse(
  evaluation: Evaluation,
  outcomeId: string,
  compared: ComparisonAnswer | undefined,
): GuidanceResponse & { id: string } {
  const { stamp, subject } = evaluation;
  return {
    resourceType: 'GuidanceResponse',
    id: identifier(evaluation, 'GuidanceResponse'),
    meta: traced(stamp, 'hypertension-guidance'),
    contained: [toOutputParameters(toAnswer(evaluation), outputId, compared)],
    moduleCanonical: `${canonicalBase}/PlanDefinition/${stamp.id}|${stamp.version}`,
    status: statusOf(evaluation),
    ...(subject === undefined ? {} : { subject: toReference(subject) }),
    occurrenceDateTime: evaluation.asOf,
    note: [{ text: caution.join(' ') }],
    evaluationMessage: [{ reference: urn(outcomeId) }],
    outputParameters: { reference: `#${outputId}` },
    dataRequirement: someMapped(evaluation.assessment.missing, toDataRequirement),
  };
}

/** data-required: no class could be given. data-requested: answered, and more data would help. */
function statusOf({ assessment }: Evaluation): GuidanceResponse['status'] {
  if (assessment.classification[0] === 'cannot-classify') return 'data-required';
  return assessment.missing.length > 0 ? 'data-requested' : 'success';
}
