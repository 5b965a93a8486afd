// Finding the laboratory value a rule should look at, and whether it was measured lately.
import type { Analyte, Period, QuestionCheck } from '../../guidelines/guideline.ts';
import type { LaboratoryResult } from '../../timeline/timeline.ts';
import { met, notMet, ofResult, type Answer } from '../answer.ts';
import { milliseconds } from '../compare.ts';
import type { View } from '../view.ts';
import { idWords } from '../../id-words.ts';

/** The newest result of an analyte in the given parts of this pregnancy. */
export function newestResult(
  view: View,
  analyte: Analyte,
  periods?: readonly Period[],
): LaboratoryResult | undefined {
  return resultsOf(view, analyte, periods).at(-1);
}

export function resultsOf(
  view: View,
  analyte: Analyte,
  periods?: readonly Period[],
): readonly LaboratoryResult[] {
  return view.timeline.laboratory.filter((result) => {
    if (result.analyte !== analyte) return false;
    const place = view.place(result.at);
    return place.outside !== 'earlier' && (periods === undefined || periods.includes(place.period));
  });
}

/** The newest result from before 20 weeks, this pregnancy or earlier, that another one is compared with. */
export function baselineResult(
  view: View,
  analyte: Analyte,
  compared: LaboratoryResult,
): LaboratoryResult | undefined {
  return view.timeline.laboratory
    .filter((result) => result.analyte === analyte && result !== compared)
    .filter((result) => {
      const place = view.place(result.at);
      return place.outside === 'earlier' || place.period === 'before-20-weeks';
    })
    .at(-1);
}

/** Was one analyte of each group measured lately, whatever the result? */
export function bloodTested(view: View, options: Extract<QuestionCheck, { check: 'blood-tested' }>): Answer {
  const oldest = view.timeline.asOf - milliseconds(options.freshWithin);
  const thresholds = [options.freshWithin];
  const newest = options.groups.map((group) =>
    group.flatMap((analyte) => newestResult(view, analyte) ?? []).find(({ at }) => at.latest >= oldest),
  );
  const evidence = newest.flatMap((result) => (result === undefined ? [] : [ofResult(result)]));
  const wanting = options.groups.filter((_, index) => newest[index] === undefined);
  if (wanting.length === 0) return met('Measured within the last day.', { thresholds, evidence });
  const names = wanting.map((group) => group.map(idWords).join(' or ')).join(', ');
  return notMet(`Not measured within the last day: ${names}.`, { thresholds, evidence });
}
