// What is written beside a blood pressure that raises it: talking, walking, pain, tobacco, caffeine.
import { fieldsOf, listOf, textOf, wordingOf } from './fields.ts';
import { isWritten, notesOf } from './free-text.ts';
import type { Disturbance } from './timeline.ts';

const named = (disturbance: Disturbance, words: string) => ({
  disturbance,
  word: new RegExp(`\\b(?:${words})\\b`, 'i'),
  denied: new RegExp(`\\b(?:no|not|non|nil|without|never)\\b[^.;]{0,24}(?:${words})`, 'i'),
});

const disturbances = [
  named('talking', 'talking|speaking'),
  named('walking', 'walking|walked|climb(?:ed|ing)|hurried'),
  named('pain', 'in pain|painful'),
  named('smoking', 'smok(?:ed|ing)|tobacco|cigarette'),
  named('caffeine', 'caffeine|coffee'),
];

const none: readonly Disturbance[] = [];

/**
 * What disturbed this measurement, as far as written?
 *
 * Given    resource  an observation of blood pressure
 * Returns  each disturbance that a note or a component names and does not deny
 * Throws   never
 * Notes    1. Words only; a word beside "no" or "not" does not count.
 * Source   clinical-rules Q5
 */
export function disturbancesIn(resource: unknown): readonly Disturbance[] {
  let text = notesOf(resource);
  for (const component of listOf(fieldsOf(resource)['component'])) {
    const words = wordingOf(component['valueCodeableConcept']) ?? textOf(component['valueString']);
    if (words !== undefined) text = text === '' ? words : `${text}; ${words}`;
  }
  if (text === '') return none;
  return disturbances
    .filter(({ word, denied }) => isWritten(text, word, denied))
    .map(({ disturbance }) => disturbance);
}
