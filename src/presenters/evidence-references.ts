// Which facts an answer rests on, as references that may stand in a FHIR resource.
import type { Classification } from '../guidelines/guideline.ts';
import type { Finding } from '../findings/finding.ts';
import type { Evaluation } from '../evaluation.ts';

const literalReference = /^(?:[A-Z][A-Za-z]+\/[A-Za-z0-9\-.]{1,64}|urn:(?:uuid|oid):\S+|https?:\/\/\S+)$/;

/**
 * References behind one class, or behind everything that holds when no class is named.
 *
 * Given    evaluation       the answer
 *          classification   the class whose reasons are asked for; absent: every finding that is met
 * Returns  `Type/id`, urn or absolute references, each once, in the order of the findings.
 * Notes    1. A resource without identity has no reference and cannot be named here; the trace names its place.
 */
export function evidenceReferences(
  evaluation: Evaluation,
  classification?: Classification,
): readonly string[] {
  const met = evaluation.assessment.findings.filter((finding) => finding.outcome === 'met');
  const own = classification === undefined ? met : behindClass(evaluation, met, classification);
  const references = (own.length === 0 ? met : own).flatMap((finding) =>
    finding.evidence.map((evidence) => evidence.reference),
  );
  return [...new Set(references)].filter((reference) => literalReference.test(reference));
}

function behindClass(
  evaluation: Evaluation,
  met: readonly Finding[],
  classification: Classification,
): readonly Finding[] {
  const rules = evaluation.guideline.classRules.filter((rule) => rule.classification === classification);
  const heads = met.filter((finding) => rules.some((rule) => rule.id === finding.question));
  const restsOn = new Set(heads.flatMap((finding) => finding.restsOn ?? []));
  return met.filter((finding) => heads.includes(finding) || restsOn.has(finding.question));
}
