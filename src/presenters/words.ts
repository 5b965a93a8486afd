// Small wordings shared by the presenters.
import type { GestationalAge } from '../evaluation.ts';
import { english } from '../messages/en.ts';
import type { Messages } from '../messages/messages.ts';
import { fill } from '../messages/say.ts';

/** First letter in upper case. */
export function sentenceCase(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

/** Gestational age or time since birth in words; "not known" when neither can be told. */
export function ageWords(
  { text, daysAfterBirth }: GestationalAge,
  { phrases }: Pick<Messages, 'phrases'> = english,
): string {
  if (daysAfterBirth === 1) return phrases['one-day-after-birth'];
  if (daysAfterBirth !== undefined) return fill(phrases['days-after-birth'], { days: daysAfterBirth });
  return text === undefined ? phrases['age-unknown'] : fill(phrases['age-weeks'], { weeks: text });
}

/** "gestational age 30+0 weeks", "4 days after birth". */
export const whenInPregnancy = (age: GestationalAge): string =>
  age.daysAfterBirth === undefined ? `gestational age ${ageWords(age)}` : ageWords(age);

/** Enzymes are named by capitals: "Creatinine, alt" becomes "Creatinine, ALT". */
export const withCapitals = (text: string): string =>
  text.replaceAll(/\b(?:alt|ast|ldh)\b/gi, (name) => name.toUpperCase());
