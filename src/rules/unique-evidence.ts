// The same fact is shown once.
import type { Evidence } from '../findings/finding.ts';

/** Each fact once, in the order in which it first appears. */
export function uniqueEvidence(evidence: readonly Evidence[]): readonly Evidence[] {
  const seen = new Map<string, Evidence>();
  for (const item of evidence) {
    const key = `${item.reference} ${item.what}`;
    if (!seen.has(key)) seen.set(key, item);
  }
  return [...seen.values()];
}
