// A risk estimate as a FHIR RiskAssessment.
import type { RiskAssessment } from 'fhir/r4.js';
import type { Evaluation } from '../evaluation.ts';
import type { RiskEstimate } from '../findings/finding.ts';
import { referencesIn } from './class-findings.ts';
import { caution } from './caution.ts';
import { subjectReference } from './reference.ts';
import { someMapped } from './some.ts';
import { stableUuid } from './stable-uuid.ts';
import { traced } from './trace-back.ts';

/**
 * The estimates that gave a figure, as RiskAssessments.
 *
 * Given    evaluation  with or without estimates
 * Returns  one preliminary resource for each estimate with a figure; none when the equations were not asked for
 * Throws   never
 * Notes    1. Preliminary always: no equation was compared with print, and a clinician has not looked at it.
 *          2. `probabilityDecimal` is in percent, as the element is defined.
 * Source   FHIR R4 RiskAssessment, ras-2
 */
export function toRiskAssessments(
  evaluation: Evaluation,
): readonly (RiskAssessment & { readonly id: string })[] {
  return (evaluation.riskEstimates ?? []).flatMap((estimate) => {
    const { percent } = estimate;
    return percent === undefined ? [] : [toRiskAssessment(evaluation, estimate, percent)];
  });
}

function toRiskAssessment(
  evaluation: Evaluation,
  estimate: RiskEstimate,
  percent: number,
): RiskAssessment & { readonly id: string } {
  const references = referencesIn([estimate]);
  return {
    resourceType: 'RiskAssessment',
    id: stableUuid([
      'RiskAssessment',
      estimate.model,
      evaluation.stamp.fingerprint,
      evaluation.subject ?? '',
      evaluation.asOf,
      references,
    ]),
    meta: traced(evaluation.stamp, 'risk-estimate'),
    status: 'preliminary',
    method: { text: methodText(estimate) },
    subject: subjectReference(evaluation.subject),
    occurrenceDateTime: evaluation.asOf,
    basis: someMapped(references, (reference) => ({ reference })),
    prediction: [
      {
        ...(estimate.predicts === undefined ? {} : { outcome: { text: estimate.predicts } }),
        probabilityDecimal: percent,
      },
    ],
    note: [{ text: estimate.sentence }, { text: caution.join(' ') }],
  };
}

const methodText = ({ model, source, verified }: RiskEstimate): string =>
  [
    `${model}: ${source.publication}, ${String(source.year)}`,
    ...(verified ? [] : ['equation not verified against print']),
  ].join('; ');
