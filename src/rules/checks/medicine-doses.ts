// Doses of a medicine: given lately or running, and what may have been given.
import type { QuestionCheck } from '../../guidelines/guideline.ts';
import type { Medicine } from '../../timeline/timeline.ts';
import { met, notApplicable, notMet, numberText, ofResult, type Answer } from '../answer.ts';
import { inUnitOf, milliseconds, satisfies } from '../compare.ts';
import { givenWithin, perhapsGiven } from '../doses.ts';
import type { View } from '../view.ts';
import { resultsOf } from './laboratory-values.ts';
import { ofMedicine } from './pressure-drugs.ts';
import { idWords } from '../../id-words.ts';

type Options<K extends QuestionCheck['check']> = Extract<QuestionCheck, { check: K }>;

/** Was one of these given within the time, or is it running? */
export const medicineGiven = (view: View, options: Options<'medicine-given'>): Answer =>
  recorded('Given or running', givenWithin(view, options.medicines, options.within), options);

/** Is one of these on order, or given at a time not recorded? */
export const medicinePerhapsGiven = (view: View, options: Options<'medicine-perhaps-given'>): Answer =>
  recorded('Perhaps given', perhapsGiven(view, options.medicines, options.within), options);

function recorded(
  words: string,
  found: readonly Medicine[],
  { within }: Options<'medicine-given' | 'medicine-perhaps-given'>,
): Answer {
  const thresholds = [within];
  if (found.length === 0) return notMet('Not recorded.', { thresholds });
  const names = [...new Set(found.map((item) => idWords(item.medicine)))].join(', ');
  return met(`${words}: ${names}.`, { thresholds, evidence: found.map(ofMedicine) });
}

/** Does the newest value since one of these was given reach the limit? Not applicable: none was given. */
export function laboratoryOnMedicine(view: View, options: Options<'laboratory-on-medicine'>): Answer {
  const thresholds = [options.limit];
  const given = givenWithin(view, options.medicines, options.within);
  if (given.length === 0)
    return notApplicable(`Not given: ${options.medicines.map(idWords).join(', ')}.`, { thresholds });
  const begun = Math.min(...given.map(({ start }) => start?.earliest ?? Number.NEGATIVE_INFINITY));
  const from = Math.max(begun, view.timeline.asOf - milliseconds(options.within));
  const result = resultsOf(view, options.analyte)
    .filter(({ at }) => at.latest >= from)
    .at(-1);
  const compared = result && inUnitOf(result.measured, result.byUnit, options.limit);
  if (result === undefined || compared === undefined)
    return notMet(`No ${idWords(options.analyte)} is recorded since.`, {
      thresholds,
      evidence: given.map(ofMedicine),
    });
  const evidence = [
    ofResult(result, `${numberText(compared.measured.value)} ${compared.threshold.unit}`),
    ...given.map(ofMedicine),
  ];
  const text = `${idWords(options.analyte)} ${result.asSent} at ${result.at.text}.`;
  // A bound that leaves it open counts as reached: she is on the medicine now.
  return satisfies(compared.measured, compared.threshold) !== false
    ? met(text, { thresholds, evidence })
    : notMet(text, { thresholds, evidence });
}
