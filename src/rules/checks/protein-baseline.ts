// Urine protein known before 20 weeks: what later protein is compared with.
import type { Evidence } from '../../findings/finding.ts';
import type { ProteinuriaCriteria, Threshold } from '../../guidelines/guideline.ts';
import { ofFact, ofUrine } from '../answer.ts';
import { satisfies } from '../compare.ts';
import type { View } from '../view.ts';
import { judgeUrine, type JudgedUrine } from './judge-urine.ts';

export interface Baseline {
  readonly evidence: readonly Evidence[];
  /** Significant results before 20 weeks, oldest first; empty when only a condition is recorded. */
  readonly results: readonly JudgedUrine[];
}

/** Protein, or kidney disease, known before 20 weeks; undefined when nothing speaks for it. */
export function baselineOf(view: View, criteria: ProteinuriaCriteria): Baseline | undefined {
  const early = view.timeline.urineProteins.filter(
    (result) => view.place(result.at).period === 'before-20-weeks',
  );
  const judged = early
    .map((result) => judgeUrine(result, criteria))
    .filter((item) => item.verdict === 'significant');
  const kidney = view.timeline.conditions.filter(
    (item) => item.condition === 'chronic-kidney-disease' && item.state === 'active',
  );
  if (judged.length === 0 && kidney.length === 0) return undefined;
  return {
    results: judged,
    evidence: [
      ...judged.map((item) => ofUrine(item.result, item.compared)),
      ...kidney.map((item) => ofFact('kidney disease, recorded', item, item.recorded)),
    ],
  };
}

/** Has the protein reached the given multiple of the baseline? Undefined when the two are not of one kind. */
export function isNewAgainst(
  baseline: Baseline,
  now: readonly JudgedUrine[],
  multiple: Threshold,
): boolean | undefined {
  const before = baseline.results.at(-1)?.result;
  const after = now.at(-1)?.result;
  if (before === undefined || after === undefined) return undefined;
  if (before.kind === 'strip' || after.kind === 'strip' || before.kind !== after.kind) return undefined;
  const unit = before.byUnit.sentUnit;
  const [earlier, later] = [before.byUnit.values[unit], after.byUnit.values[unit]];
  if (earlier === undefined || later === undefined || earlier <= 0) return undefined;
  return satisfies({ value: later / earlier }, multiple);
}
