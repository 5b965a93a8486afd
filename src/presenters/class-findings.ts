// The findings that give the classes of the answer, and the facts behind them.
import type { Classification } from '../guidelines/guideline.ts';
import type { Finding } from '../findings/finding.ts';
import type { Evaluation } from '../evaluation.ts';

const literalReference = /^(?:[A-Z][A-Za-z]+\/[A-Za-z0-9\-.]{1,64}|urn:(?:uuid|oid):\S+|https?:\/\/\S+)$/;

/**
 * The findings behind the classes of the answer, leading class first.
 *
 * Notes    1. The finding of a class is named `class:` and its code.
 */
export function classFindings(
  { assessment }: Evaluation,
  classes: readonly Classification[] = assessment.classification,
): readonly Finding[] {
  return classes.flatMap((each) =>
    assessment.findings.filter(
      (finding) => finding.outcome === 'met' && finding.question === `class:${each}`,
    ),
  );
}

/**
 * References to the facts behind the classes of the answer, for use in FHIR resources.
 *
 * Given    evaluation   the answer
 *          classes      those whose facts are asked for; absent: all of the answer
 * Returns  `Type/id`, urn or absolute references, each once; those of every finding that is met when the classes
 *          name none.
 * Notes    1. A resource without identity has no reference and cannot be named here; the trace names its place.
 */
export function evidenceReferences(
  evaluation: Evaluation,
  classes?: readonly Classification[],
): readonly string[] {
  const behind = referencesIn(classFindings(evaluation, classes));
  return behind.length > 0 ? behind : referencesIn(evaluation.assessment.findings.filter(isMet));
}

function isMet(finding: Finding): boolean {
  return finding.outcome === 'met';
}

/** References among the evidence that may stand in a FHIR resource, each once. */
export function referencesIn(findings: readonly Pick<Finding, 'evidence'>[]): readonly string[] {
  const references = findings.flatMap((finding) => finding.evidence.map((evidence) => evidence.reference));
  return [...new Set(references)].filter((reference) => literalReference.test(reference));
}

/** References to everything that was met, usable in a resource or not: what makes two answers rest on the same facts. */
export function evidenceMet({ assessment }: Evaluation): readonly string[] {
  const references = assessment.findings
    .filter(isMet)
    .flatMap((finding) => finding.evidence.map((each) => each.reference));
  return [...new Set(references)];
}
