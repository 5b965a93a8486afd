// Coded, Boolean and written answers as present or absent.
import { presenceCodes, presenceWords, type PresenceCode } from '../terminology/presence.ts';
import { indexCodes } from './code-index.ts';
import { agreedRow, readValue } from './coded-value.ts';
import type { Unusable } from './context.ts';
import { fieldsOf, listOf, textOf, wordingOf, type Fields } from './fields.ts';
import { unusable } from './unusable.ts';

export interface Presence {
  readonly kind: 'usable';
  readonly presence: 'present' | 'absent';
  readonly asSent: string;
}

const presenceIndex = indexCodes(presenceCodes);

/**
 * Is it present or absent?
 *
 * Given    holder   an Observation, or one of its components, whose code names a finding
 *          element  path of the holder inside the resource, empty for the resource itself
 * Returns  usable    present or absent, and what was sent
 *          unusable  value-ambiguous, value-absent-with-reason (unknown, not asked), value-not-readable,
 *                    value-type-not-usable, value-missing
 * Throws   never
 * Notes    1. Read in this order: the value; without one, the interpretation.
 *          2. A code that contradicts the text beside it is refused, not resolved.
 * Source   terminology.md sections 2 and 5; fhir checklist 4.4.
 */
export function readPresence(holder: unknown, element = ''): Presence | Unusable {
  const sole = readValue(holder, element);
  if (sole.kind === 'unusable') {
    if (sole.code !== 'value-missing') return sole;
    return presenceFromInterpretation(fieldsOf(holder)) ?? sole;
  }
  const place = `${element}${sole.name}`;
  switch (sole.name) {
    case 'valueBoolean':
      return presenceFromBoolean(sole.value, place);
    case 'valueString':
      return presenceFromText(sole.value, place);
    case 'valueCodeableConcept':
      return presenceFromConcept(sole.value, place);
    default:
      return unusable(
        'value-type-not-usable',
        place,
        'This kind of value does not say present or absent. Send valueBoolean.',
      );
  }
}

function presenceFromBoolean(value: unknown, place: string): Presence | Unusable {
  if (typeof value !== 'boolean') return notReadable(place);
  return { kind: 'usable', presence: value ? 'present' : 'absent', asSent: String(value) };
}

function presenceFromText(value: unknown, place: string): Presence | Unusable {
  const text = textOf(value);
  const says = text === undefined ? undefined : presenceSaid(text);
  return answer(says, text, place);
}

function presenceFromConcept(value: unknown, place: string): Presence | Unusable {
  const row = agreedRow(value, presenceIndex, (each) => each.says);
  if (row === 'conflict') return contradiction(place);
  const text = textOf(fieldsOf(value)['text']);
  const said = text === undefined ? undefined : presenceSaid(text);
  if (row !== undefined && said !== undefined && said !== row.says) return contradiction(place);
  return answer(row?.says ?? said, wordingOf(value) ?? row?.code, place);
}

function presenceFromInterpretation(fields: Fields): Presence | undefined {
  for (const concept of listOf(fields['interpretation'])) {
    const row = agreedRow(concept, presenceIndex, (each) => each.says);
    if (row === undefined || row === 'conflict' || row.says === 'unknown') continue;
    return { kind: 'usable', presence: row.says, asSent: wordingOf(concept) ?? row.code };
  }
  return undefined;
}

function answer(
  says: PresenceCode['says'] | undefined,
  text: string | undefined,
  place: string,
): Presence | Unusable {
  if (says === undefined) return notReadable(place);
  if (says === 'unknown') {
    return unusable('value-absent-with-reason', place, 'The sender states that this is not known.');
  }
  return { kind: 'usable', presence: says, asSent: text ?? says };
}

const notReadable = (place: string): Unusable =>
  unusable(
    'value-not-readable',
    place,
    'The value does not say present or absent. Send valueBoolean, or a coded yes or no.',
  );

const contradiction = (place: string): Unusable =>
  unusable(
    'value-ambiguous',
    place,
    'The codings and the text of the value contradict each other. Correct one of them.',
  );

const wordMeanings: ReadonlyMap<string, PresenceCode['says']> = new Map(
  (['present', 'absent', 'unknown'] as const).flatMap((says) =>
    presenceWords[says].map((word): [string, PresenceCode['says']] => [word, says]),
  ),
);

/** What a word says about presence; undefined when it is no such word. */
export function presenceSaid(text: string): PresenceCode['says'] | undefined {
  return wordMeanings.get(text.trim().toLowerCase().replace(/\.$/, ''));
}
