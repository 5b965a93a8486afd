// One urine result against the accepted measures of a guideline.
import type { ProteinuriaCriteria, Threshold } from '../../guidelines/guideline.ts';
import type { UrineProtein } from '../../timeline/timeline.ts';
import { numberText } from '../answer.ts';
import { inUnitOf, satisfies } from '../compare.ts';

/** What one urine result says: significant, not, open until quantified, or of a kind this publication does not use. */
export type UrineVerdict = 'significant' | 'not-significant' | 'open' | 'not-used';

export interface JudgedUrine {
  readonly result: UrineProtein;
  readonly verdict: UrineVerdict;
  readonly threshold?: Threshold;
  readonly compared?: string;
}

/**
 * Judges one urine result.
 *
 * Given    result    one measurement
 *          criteria  the accepted measures of a guideline
 * Returns  the verdict, with the limit and the number compared
 * Throws   never
 * Notes    1. A ratio is compared in the unit of each published cut-off; one met is enough.
 *          2. "Positive" without a grade follows `ungradedPositive`.
 * Source   the limits come from the guideline
 */
export function judgeUrine(result: UrineProtein, criteria: ProteinuriaCriteria): JudgedUrine {
  switch (result.kind) {
    case 'strip':
      return judgeStrip(result, criteria);
    case 'protein-creatinine-ratio':
      return judgeQuantity(result, criteria.proteinCreatinineRatio);
    case 'albumin-creatinine-ratio':
      return judgeQuantity(result, criteria.albuminCreatinineRatio);
    case 'excretion-24h':
      return judgeQuantity(result, criteria.excretion24h);
    case 'concentration':
      return { result, verdict: 'not-used' };
  }
}

function judgeStrip(
  result: Extract<UrineProtein, { kind: 'strip' }>,
  criteria: ProteinuriaCriteria,
): JudgedUrine {
  const { strip, stripAsksForRatio } = criteria;
  if (strip === undefined) return { result, verdict: 'not-used' };
  if (result.grade === 'positive-ungraded')
    return {
      result,
      verdict: criteria.ungradedPositive === 'counts' ? 'significant' : 'open',
      threshold: strip,
    };
  const measured = { value: result.grade };
  if (satisfies(measured, strip) === true) return { result, verdict: 'significant', threshold: strip };
  if (stripAsksForRatio !== undefined && satisfies(measured, stripAsksForRatio) === true)
    return { result, verdict: 'open', threshold: strip };
  return { result, verdict: 'not-significant', threshold: strip };
}

function judgeQuantity(
  result: Exclude<UrineProtein, { kind: 'strip' }>,
  limits: readonly Threshold[],
): JudgedUrine {
  const judged = limits.flatMap((limit) => {
    const same = inUnitOf(result.measured, result.byUnit, limit);
    return same === undefined ? [] : [{ ...same, verdict: satisfies(same.measured, same.threshold) }];
  });
  const decisive =
    judged.find((item) => item.verdict === true) ??
    judged.find((item) => item.verdict === undefined) ??
    judged[0];
  if (decisive === undefined) return { result, verdict: 'not-used' };
  const verdict =
    decisive.verdict === true ? 'significant' : decisive.verdict === false ? 'not-significant' : 'open';
  return {
    result,
    verdict,
    threshold: decisive.threshold,
    compared: `${numberText(decisive.measured.value)} ${decisive.threshold.unit}`,
  };
}
