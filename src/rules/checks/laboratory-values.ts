// Finding the laboratory value a rule should look at.
import type { Analyte, Period } from '../../guidelines/guideline.ts';
import type { LaboratoryResult } from '../../timeline/timeline.ts';
import type { View } from '../view.ts';

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

/** The newest result from before 20 weeks, this pregnancy or earlier: what later ones are compared with. */
export function baselineResult(view: View, analyte: Analyte): LaboratoryResult | undefined {
  return view.timeline.laboratory
    .filter((result) => result.analyte === analyte)
    .filter((result) => {
      const place = view.place(result.at);
      return place.outside === 'earlier' || place.period === 'before-20-weeks';
    })
    .at(-1);
}
