// Is an organ involved: blood, kidney, liver, brain, lung, placenta? By the criteria of a guideline.
import type { Evidence, Outcome } from '../../findings/finding.ts';
import type { OrganCriterion, Period, QuestionCheck, Threshold } from '../../guidelines/guideline.ts';
import type { LaboratoryResult } from '../../timeline/timeline.ts';
import {
  cannotTell,
  met,
  notApplicable,
  notMet,
  numberText,
  ofFact,
  ofResult,
  type Answer,
} from '../answer.ts';
import { inUnitOf, satisfies } from '../compare.ts';
import type { View } from '../view.ts';
import { baselineResult, newestResult, resultsOf } from './laboratory-values.ts';
import { isOfThisPregnancy } from './records.ts';
import { named, presentSymptoms } from './symptoms.ts';

type Options = Extract<QuestionCheck, { check: 'organ-involvement' }>;

interface Judged {
  readonly outcome: Outcome;
  readonly text: string;
  readonly evidence: readonly Evidence[];
  readonly thresholds: readonly Threshold[];
  /** Analytes that would have to be measured. */
  readonly wanting: readonly string[];
}

/**
 * Is an organ involved?
 *
 * Given    options.criteria   one is enough
 *          options.newOnset   a value already beyond the limit before 20 weeks is not new
 * Returns  met; not-met when every laboratory criterion has a value and none is met; cannot-tell when a test is
 *          missing; not-applicable when the guideline has no such criteria
 * Throws   never
 * Notes    1. The newest result of each analyte decides; a haemolysed sample counts and is to be repeated.
 *          2. A criterion that is not for her, or not for her gestational age, is not met; an adjunct is never asked for.
 * Source   the criteria come from the guideline
 */
export function organInvolvement(view: View, options: Options): Answer {
  if (options.criteria.length === 0) return notApplicable('This publication has no such criteria.');
  const judged = options.criteria.map((criterion) => judge(view, criterion, options));
  const positive = judged.filter((item) => item.outcome === 'met');
  if (positive.length > 0)
    return met(positive.map((item) => item.text).join(' '), {
      evidence: unique(positive.flatMap((item) => item.evidence)),
      thresholds: positive.flatMap((item) => item.thresholds),
    });
  const evidence = unique(judged.flatMap((item) => item.evidence));
  const thresholds = judged.flatMap((item) => item.thresholds);
  const wanting = [
    ...new Set(judged.filter((item) => item.outcome === 'cannot-tell').flatMap((item) => item.wanting)),
  ];
  if (wanting.length > 0)
    return cannotTell(`Not measured: ${wanting.map(named).join(', ')}.`, {
      evidence,
      thresholds,
      missing: { what: wanting.map(named).join(', ') },
    });
  const old = judged.filter((item) => item.text !== '').map((item) => item.text);
  return notMet(old.length > 0 ? old.join(' ') : 'No sign of organ involvement in what was measured.', {
    evidence,
    thresholds,
  });
}

function judge(view: View, criterion: OrganCriterion, options: Options): Judged {
  switch (criterion.kind) {
    case 'laboratory':
      return best(criterion.analytes, (analyte) => ofLimit(view, criterion, analyte, options));
    case 'multiple-of-upper-limit':
      return best(criterion.analytes, (analyte) => ofUpperLimit(view, criterion, analyte, options.periods));
    case 'multiple-of-baseline':
      return best(criterion.analytes, (analyte) => ofBaseline(view, criterion, analyte, options.periods));
    case 'symptom': {
      const evidence = presentSymptoms(view, criterion.symptoms, options.symptomsFreshWithin);
      return evidence.length > 0 ? yes(`${sentence(criterion.id)}.`, evidence) : no();
    }
    case 'condition': {
      const found = view.timeline.conditions.filter(
        (item) => criterion.conditions.includes(item.condition) && isOfThisPregnancy(view, item),
      );
      return found.length > 0
        ? yes(
            `${sentence(criterion.id)}.`,
            found.map((item) => ofFact(`condition, ${item.condition}`, item, item.recorded)),
          )
        : no();
    }
  }
}

const sentence = (id: string): string => named(id.charAt(0).toUpperCase() + id.slice(1));

const yes = (text: string, evidence: readonly Evidence[], thresholds: readonly Threshold[] = []): Judged => ({
  outcome: 'met',
  text,
  evidence,
  thresholds,
  wanting: [],
});
const no = (
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
const open = (analyte: string, evidence: readonly Evidence[] = []): Judged => ({
  outcome: 'cannot-tell',
  text: '',
  evidence,
  thresholds: [],
  wanting: [analyte],
});

/** Of several analytes one met is enough; one measured and negative answers for the others. */
function best<A extends string>(analytes: readonly A[], judgeOne: (analyte: A) => Judged): Judged {
  const judged = analytes.map(judgeOne);
  const order: readonly Outcome[] = ['met', 'not-met', 'cannot-tell'];
  for (const outcome of order) {
    const found = judged.find((item) => item.outcome === outcome);
    if (found !== undefined) return { ...found, evidence: judged.flatMap((item) => item.evidence) };
  }
  return no();
}

type Laboratory = Extract<OrganCriterion, { kind: 'laboratory' }>;

function ofLimit(
  view: View,
  criterion: Laboratory,
  analyte: Laboratory['analytes'][number],
  options: Options,
): Judged {
  if (!isForHer(view, criterion)) return no();
  const result = newestResult(view, analyte, options.periods);
  if (result !== undefined && !isForAge(view.place(result.at).gestationalAgeDays, criterion)) return no();
  const compared =
    result === undefined ? undefined : inUnitOf(result.measured, result.byUnit, criterion.limit);
  if (result === undefined || compared === undefined)
    return criterion.isAdjunct === true ? no() : open(analyte);
  const text = `${numberText(compared.measured.value)} ${compared.threshold.unit}`;
  const evidence = [ofResult(result, text)];
  const verdict = satisfies(compared.measured, compared.threshold);
  if (verdict === undefined) return open(analyte, evidence);
  if (!verdict) return no(evidence, [compared.threshold]);
  const before = options.newOnset ? baselineResult(view, analyte) : undefined;
  if (before !== undefined && alreadyBeyond(before, criterion.limit))
    return no(
      [...evidence, ofResult(before)],
      [compared.threshold],
      `${sentence(analyte)} was already beyond the limit before 20 weeks.`,
    );
  return yes(
    `${sentence(analyte)} ${result.asSent}${result.haemolysed ? ' (haemolysed sample: repeat now)' : ''}.`,
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

function ofUpperLimit(
  view: View,
  criterion: UpperLimit,
  analyte: UpperLimit['analytes'][number],
  periods: readonly Period[],
): Judged {
  const result = newestResult(view, analyte, periods);
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
    ? yes(`${sentence(analyte)} ${text}.`, [ofResult(result, text)], [criterion.limit])
    : no([ofResult(result, text)], [criterion.limit]);
}

function statedUpperLimit(result: LaboratoryResult, criterion: UpperLimit): number | undefined {
  if (result.upperReference === undefined) return undefined;
  const stated = { value: result.upperReference };
  const { low, high } = criterion.plausibleUpperLimit;
  return satisfies(stated, low) === true && satisfies(stated, high) === true ? stated.value : undefined;
}

type Baseline = Extract<OrganCriterion, { kind: 'multiple-of-baseline' }>;

function ofBaseline(
  view: View,
  criterion: Baseline,
  analyte: Baseline['analytes'][number],
  periods: readonly Period[],
): Judged {
  const result = newestResult(view, analyte, periods);
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
    ? yes(`${sentence(analyte)} ${text}.`, evidence, [criterion.limit])
    : no(evidence, [criterion.limit]);
}

function lowestBefore(
  view: View,
  analyte: Baseline['analytes'][number],
  newest: LaboratoryResult,
): LaboratoryResult | undefined {
  const unit = newest.byUnit.sentUnit;
  const value = (result: LaboratoryResult): number => result.byUnit.values[unit] ?? Number.POSITIVE_INFINITY;
  const earlier = [baselineResult(view, analyte), ...resultsOf(view, analyte)].filter(
    (result): result is LaboratoryResult => result !== undefined && result.at.earliest < newest.at.earliest,
  );
  return earlier.reduce<LaboratoryResult | undefined>(
    (lowest, result) => (lowest === undefined || value(result) < value(lowest) ? result : lowest),
    undefined,
  );
}

function unique(evidence: readonly Evidence[]): readonly Evidence[] {
  const seen = new Set<string>();
  return evidence.filter((item) => {
    const key = `${item.reference} ${item.what} ${item.asCompared ?? ''}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
