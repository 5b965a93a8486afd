// Organ criteria that rest on a laboratory value: a limit, the upper limit of normal, an earlier value.
import { idSentence } from '../../id-words.ts';
import type { OrganCriterion, Threshold } from '../../guidelines/guideline.ts';
import type { LaboratoryResult } from '../../timeline/timeline.ts';
import { numberText, ofResult } from '../answer.ts';
import { inUnitOf, satisfies } from '../compare.ts';
import type { View } from '../view.ts';
import { baselineResult, resultsOf } from './laboratory-values.ts';
import { currentResult, no, notBeyond, open, yes, type Judged, type OrganOptions } from './organ-verdict.ts';

type Laboratory = Extract<OrganCriterion, { kind: 'laboratory' }>;

export function ofLimit(
  view: View,
  criterion: Laboratory,
  analyte: Laboratory['analytes'][number],
  options: OrganOptions,
): Judged {
  if (!isForHer(view, criterion)) return no();
  const result = currentResult(view, analyte, options);
  if (result !== undefined && !isForAge(view.place(result.at).gestationalAgeDays, criterion)) return no();
  const compared =
    result === undefined ? undefined : inUnitOf(result.measured, result.byUnit, criterion.limit);
  if (result === undefined || compared === undefined)
    return criterion.isAdjunct === true ? no() : open(analyte);
  const text = `${numberText(compared.measured.value)} ${compared.threshold.unit}`;
  const evidence = [ofResult(result, text)];
  const verdict = satisfies(compared.measured, compared.threshold);
  if (verdict === undefined) return open(analyte, evidence);
  if (!verdict) return notBeyond(view, { analyte, result, options }, no(evidence, [compared.threshold]));
  const before = options.newOnset ? baselineResult(view, analyte, result) : undefined;
  if (before !== undefined && alreadyBeyond(before, criterion.limit))
    return no(
      [...evidence, ofResult(before)],
      [compared.threshold],
      `${idSentence(analyte)} was already beyond the limit before 20 weeks.`,
    );
  return yes(
    `${idSentence(analyte)} ${result.asSent}${result.haemolysed ? ' (haemolysed sample: repeat now)' : ''}.`,
    evidence,
    [compared.threshold],
  );
}

const isForHer = (view: View, criterion: Laboratory): boolean => {
  const { conditions, pregnancy } = view.timeline;
  const reasons = criterion.unlessRecorded ?? [];
  if (reasons.includes('multiple-pregnancy') && (pregnancy.fetuses?.count ?? 1) > 1) return false;
  return !conditions.some((item) => reasons.includes(item.condition) && item.state === 'active');
};

/** A criterion tied to an age says nothing about a result of unknown age. */
function isForAge(days: number | undefined, { fromAge, beforeAge }: Laboratory): boolean {
  if (fromAge === undefined && beforeAge === undefined) return true;
  if (days === undefined) return false;
  return (
    (fromAge === undefined || days >= fromAge.value) && (beforeAge === undefined || days < beforeAge.value)
  );
}

function alreadyBeyond(before: LaboratoryResult, limit: Threshold): boolean {
  const compared = inUnitOf(before.measured, before.byUnit, limit);
  return compared !== undefined && satisfies(compared.measured, compared.threshold) === true;
}

type UpperLimit = Extract<OrganCriterion, { kind: 'multiple-of-upper-limit' }>;

export function ofUpperLimit(
  view: View,
  criterion: UpperLimit,
  analyte: UpperLimit['analytes'][number],
  options: OrganOptions,
): Judged {
  const result = currentResult(view, analyte, options);
  if (result === undefined) return open(analyte);
  const upper = statedUpperLimit(result, criterion) ?? criterion.assumedUpperLimit.value;
  const value = result.byUnit.values[criterion.assumedUpperLimit.unit];
  if (value === undefined) return open(analyte);
  const { comparator } = result.measured;
  const multiple = comparator === undefined ? { value: value / upper } : { value: value / upper, comparator };
  const text = `${numberText(multiple.value)} times the upper limit of ${numberText(upper)} ${criterion.assumedUpperLimit.unit}`;
  const verdict = satisfies(multiple, criterion.limit);
  if (verdict === undefined) return open(analyte, [ofResult(result, text)]);
  return verdict
    ? yes(`${idSentence(analyte)} ${text}.`, [ofResult(result, text)], [criterion.limit])
    : notBeyond(view, { analyte, result, options }, no([ofResult(result, text)], [criterion.limit]));
}

function statedUpperLimit(result: LaboratoryResult, criterion: UpperLimit): number | undefined {
  if (result.upperReference === undefined) return undefined;
  const stated = { value: result.upperReference };
  const { low, high } = criterion.plausibleUpperLimit;
  return satisfies(stated, low) === true && satisfies(stated, high) === true ? stated.value : undefined;
}

type Baseline = Extract<OrganCriterion, { kind: 'multiple-of-baseline' }>;

export function ofBaseline(
  view: View,
  criterion: Baseline,
  analyte: Baseline['analytes'][number],
  options: OrganOptions,
): Judged {
  const result = currentResult(view, analyte, options);
  if (result === undefined) return open(analyte);
  const explained = view.timeline.conditions.some(
    (item) => criterion.unlessRecorded.includes(item.condition) && item.state === 'active',
  );
  if (explained) return no([ofResult(result)]);
  const earlier = lowestBefore(view, analyte, result);
  const unit = result.byUnit.sentUnit;
  const [before, after] = [earlier?.byUnit.values[unit], result.byUnit.values[unit]];
  if (earlier === undefined || before === undefined || after === undefined || before <= 0)
    return no([ofResult(result)]);
  const text = `${numberText(after / before)} times ${earlier.asSent} of ${earlier.at.text}`;
  const verdict = satisfies({ value: after / before }, criterion.limit);
  const evidence = [ofResult(earlier), ofResult(result, text)];
  return verdict === true
    ? yes(`${idSentence(analyte)} ${text}.`, evidence, [criterion.limit])
    : no(evidence, [criterion.limit]);
}

function lowestBefore(
  view: View,
  analyte: Baseline['analytes'][number],
  newest: LaboratoryResult,
): LaboratoryResult | undefined {
  const unit = newest.byUnit.sentUnit;
  const value = (result: LaboratoryResult): number => result.byUnit.values[unit] ?? Number.POSITIVE_INFINITY;
  const earlier = [baselineResult(view, analyte, newest), ...resultsOf(view, analyte)].filter(
    (result): result is LaboratoryResult => result !== undefined && result.at.earliest < newest.at.earliest,
  );
  return earlier.reduce<LaboratoryResult | undefined>(
    (lowest, result) => (lowest === undefined || value(result) < value(lowest) ? result : lowest),
    undefined,
  );
}
