// Filling and finding texts. Nothing is decided here.
import type { Messages } from './messages.ts';

/** The template with `{name}` replaced by the value of that name; an unknown place stays as it is. */
export function fill(template: string, values: Readonly<Record<string, string | number>>): string {
  return template.replace(/\{(\w+)\}/g, (place, name: string) => String(values[name] ?? place));
}

const number = /\d+(?:\.\d+)?/g;

/**
 * A sentence of the guideline data in another language.
 *
 * Given    messages   a language
 *          english    the sentence as the data have it, with its numbers
 * Returns  the translation with the same numbers; part by part where the whole is not known; the English text when
 *          a part is not known
 * Throws   never
 * Notes    1. Found by the English text, so a sentence that changed in the data is shown in English, never told wrong.
 *          2. Numbers are carried over and never written in a translation.
 */
export function translated(messages: Messages, english: string): string {
  return found(messages, english) ?? english;
}

/** Is there a translation for all of it? */
export function isTranslated(messages: Messages, english: string): boolean {
  return found(messages, english) !== undefined;
}

function found(messages: Messages, english: string): string | undefined {
  const whole = lookUp(messages, english);
  if (whole !== undefined) return whole;
  return (
    inParts(messages, english.split(/(?<=[.?!]) (?=[A-Z])/), ' ') ??
    inParts(messages, english.split(', '), ', ')
  );
}

/** Sentence by sentence, or term by term of a list. */
function inParts(messages: Messages, parts: readonly string[], joint: string): string | undefined {
  const said = parts.flatMap((part) => lookUp(messages, part) ?? []);
  return said.length === parts.length ? said.join(joint) : undefined;
}

function lookUp({ sentences }: Messages, english: string): string | undefined {
  const template = Object.hasOwn(sentences, masked(english)) ? sentences[masked(english)] : undefined;
  if (template === undefined) return undefined;
  const numbers = english.match(number) ?? [];
  return template.replace(/#(\d+)/g, (place, at: string) => numbers[Number(at) - 1] ?? place);
}

const masked = (english: string): string => english.replace(number, '#');
