// What a single organ criterion is answered, and which results count for it.
import type { Evidence, Outcome } from '../../findings/finding.ts';
import type { Analyte, QuestionCheck, Threshold } from '../../guidelines/guideline.ts';
import type { LaboratoryResult } from '../../timeline/timeline.ts';
import { milliseconds } from '../compare.ts';
import type { View } from '../view.ts';
import { newestResult } from './laboratory-values.ts';

export type OrganOptions = Extract<QuestionCheck, { check: 'organ-involvement' }>;

export interface Judged {
  readonly outcome: Outcome;
  readonly text: string;
  readonly evidence: readonly Evidence[];
  readonly thresholds: readonly Threshold[];
  /** Analytes that would have to be measured. */
  readonly wanting: readonly string[];
}

export const yes = (
  text: string,
  evidence: readonly Evidence[],
  thresholds: readonly Threshold[] = [],
): Judged => ({
  outcome: 'met',
  text,
  evidence,
  thresholds,
  wanting: [],
});
export const no = (
  evidence: readonly Evidence[] = [],
  thresholds: readonly Threshold[] = [],
  text = '',
): Judged => ({
  outcome: 'not-met',
  text,
  evidence,
  thresholds,
  wanting: [],
});
export const open = (analyte: string, evidence: readonly Evidence[] = []): Judged => ({
  outcome: 'cannot-tell',
  text: '',
  evidence,
  thresholds: [],
  wanting: [analyte],
});

const isOlderThan = (view: View, result: LaboratoryResult, span: Threshold | undefined): boolean =>
  span !== undefined && view.timeline.asOf - result.at.latest > milliseconds(span);

/** The newest result; where only recent ones count, none that is older. */
export function currentResult(
  view: View,
  analyte: Analyte,
  { periods, freshWithin }: OrganOptions,
): LaboratoryResult | undefined {
  const result = newestResult(view, analyte, periods);
  return result !== undefined && isOlderThan(view, result, freshWithin) ? undefined : result;
}

/** A result within the limit is an answer while it is fresh; later it has to be measured again. */
export const notBeyond = (
  view: View,
  {
    analyte,
    result,
    options,
  }: { readonly analyte: Analyte; readonly result: LaboratoryResult; readonly options: OrganOptions },
  answer: Judged,
): Judged =>
  isOlderThan(view, result, options.negativeFreshWithin) ? open(analyte, answer.evidence) : answer;
