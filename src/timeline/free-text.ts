// What people write beside a result: notes and wording, as one text to search in.
import { fieldsOf, listOf, textOf } from './fields.ts';

/** The notes of a resource, joined; empty when there are none. */
export function notesOf(resource: unknown): string {
  const { note } = fieldsOf(resource);
  if (note === undefined) return '';
  return listOf(note)
    .flatMap((each) => textOf(each['text']) ?? [])
    .join('; ');
}

/** Is the word written, and not denied? `denied` is tried on the same text. */
export function isWritten(text: string, word: RegExp, denied: RegExp): boolean {
  return word.test(text) && !denied.test(text);
}
