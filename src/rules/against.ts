// What the record holds against a drug: a condition, or an allergy to it. Nothing clinical inside.
import type { Evidence } from '../findings/finding.ts';
import type { ConditionId, Guideline, MedicineId, TreatmentRule } from '../guidelines/guideline.ts';
import type { KnownCondition } from '../timeline/timeline.ts';
import { ofFact } from './answer.ts';
import { idWords } from '../id-words.ts';
import type { View } from './view.ts';

const ofCondition = (item: KnownCondition): Evidence =>
  ofFact(`condition, ${item.condition}`, item, item.onset ?? item.recorded);

/** Active conditions on record. */
export const conditionsOnRecord = (view: View, conditions: readonly ConditionId[]): readonly Evidence[] =>
  view.timeline.conditions
    .filter((item) => item.state === 'active' && conditions.includes(item.condition))
    .map(ofCondition);

/** Active allergies to one of the agents or classes. */
export const allergiesOnRecord = (view: View, medicines: readonly MedicineId[]): readonly Evidence[] =>
  view.timeline.conditions
    .filter((item) => item.state === 'active' && item.allergicTo?.some((one) => medicines.includes(one)))
    .map(ofCondition);

/** Conditions and allergies on record that a reason names. */
export const recordAgainst = (
  view: View,
  { conditions = [], allergyTo = [] }: TreatmentRule['against'][number],
): readonly Evidence[] => [...conditionsOnRecord(view, conditions), ...allergiesOnRecord(view, allergyTo)];

/**
 * A sentence that names drugs, with what the record holds against each of them.
 *
 * Given    guideline  its treatment rules hold the reasons
 *          sentence   names drugs as the data name them
 * Returns  the sentence, followed by one more for each drug and reason: "Not labetalol: asthma is on record."
 * Throws   never
 */
export function markedAgainst(view: View, guideline: Guideline, sentence: string): string {
  const marks = (guideline.treatmentRules ?? []).flatMap(({ medicines, alsoCalled = [], against }) => {
    const words = [...medicines.map(idWords), ...alsoCalled].filter((word) => isNamed(word, sentence));
    if (words.length === 0) return [];
    const reasons = against.filter((reason) => recordAgainst(view, reason).length > 0);
    return words.flatMap((word) => reasons.map((reason) => `Not ${word}: ${begunSmall(reason.sentence)}`));
  });
  return [sentence, ...new Set(marks)].join(' ');
}

const isNamed = (word: string, sentence: string): boolean => new RegExp(`\\b${word}\\b`, 'iu').test(sentence);

const begunSmall = (sentence: string): string => `${sentence.charAt(0).toLowerCase()}${sentence.slice(1)}`;
