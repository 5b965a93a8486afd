// Which facts the measurement rules and the risk equations looked at, by the reference they came from.
import type { Evidence } from '../../findings/finding.ts';
import type { QualityCheck, QualityRule } from '../../guidelines/quality-rule.ts';
import type { Timeline } from '../../timeline/timeline.ts';

interface Telling {
  readonly by: string;
  readonly evidence: readonly Evidence[];
}

/**
 * The rules that looked at each reference no question looked at.
 *
 * Given    timeline  of the woman
 *          rules     the measurement rules
 *          tellings  notices and estimates: who tells, and on what evidence
 * Returns  rules by reference; signs and properties of urine count as looked at even when nothing is doubtful
 * Throws   never
 */
export function factsJudged(
  timeline: Timeline,
  rules: readonly QualityRule[],
  tellings: readonly Telling[],
): ReadonlyMap<string, readonly string[]> {
  const judged = new Map<string, readonly string[]>();
  const consider = (references: readonly string[], check: QualityCheck['check']): void => {
    const by = rules.filter((rule) => rule.check === check).map(({ id }) => id);
    if (by.length > 0) for (const reference of references) judged.set(reference, by);
  };
  consider(
    timeline.urineSigns.map(({ source }) => source.reference),
    'strip-doubtful',
  );
  consider(
    timeline.laboratory
      .filter(({ analyte }) => analyte === 'urine-ph' || analyte === 'urine-specific-gravity')
      .map(({ source }) => source.reference),
    'strip-doubtful',
  );
  for (const { by, evidence } of tellings)
    for (const { reference } of evidence)
      judged.set(reference, [...new Set([...(judged.get(reference) ?? []), by])]);
  return judged;
}
