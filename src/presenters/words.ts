// Small wordings shared by the presenters.
import type { GestationalAge } from '../evaluation.ts';

/** First letter in upper case. */
export function sentenceCase(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

/** Gestational age or time since birth in words; "not known" when neither can be told. */
export function ageWords({ text, daysAfterBirth }: GestationalAge): string {
  if (daysAfterBirth !== undefined)
    return `${daysAfterBirth} ${daysAfterBirth === 1 ? 'day' : 'days'} after birth`;
  return text === undefined ? 'not known' : `${text} weeks`;
}
