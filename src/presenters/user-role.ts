// In which role the reader of a card works, from a Practitioner or PractitionerRole. Nothing clinical hangs on it.
import type { Role } from './card-context.ts';

/** Codes of HL7 tables in which roles are usually sent: practitioner role, and degrees (v2 table 0360). Source: from memory. */
const byCode: Readonly<Record<string, Role>> = {
  doctor: 'physician',
  nurse: 'nurse-midwife',
  MD: 'physician',
  DO: 'physician',
  MBBS: 'physician',
  RN: 'nurse-midwife',
  NP: 'nurse-midwife',
  CNM: 'nurse-midwife',
  RMA: 'nurse-midwife',
};

const byWord: readonly (readonly [words: RegExp, role: Role])[] = [
  [/midwi|nurs|matron|partera|enfermer|comadron|matrona/i, 'nurse-midwife'],
  [/physician|doctor|obstet|gyn(?:a|e)|medical officer|surgeon|consultant|m[eé]dic/i, 'physician'],
];

/** The role of that name; undefined for any other value. */
export function roleNamed(value: unknown): Role | undefined {
  return value === 'physician' || value === 'nurse-midwife' ? value : undefined;
}

/**
 * The role of a user.
 *
 * Given    resource   Practitioner or PractitionerRole as received
 * Returns  by the codes of role, specialty or qualification first, then by their words; undefined when neither is known
 * Throws   never
 */
export function roleOf(resource: unknown): Role | undefined {
  const concepts = ['code', 'specialty', 'qualification'].flatMap((name) => listOf(memberOf(resource, name)));
  const all = concepts.flatMap((concept) => [concept, memberOf(concept, 'code')]);
  const codings = all.flatMap((concept) => listOf(memberOf(concept, 'coding')));
  const coded = codings.flatMap((coding) => knownCode(memberOf(coding, 'code')) ?? []);
  const words = [
    ...all.map((concept) => memberOf(concept, 'text')),
    ...codings.map((coding) => memberOf(coding, 'display')),
  ].join(' ');
  return coded[0] ?? byWord.find(([pattern]) => pattern.test(words))?.[1];
}

function knownCode(code: unknown): Role | undefined {
  return typeof code === 'string' && Object.hasOwn(byCode, code) ? byCode[code] : undefined;
}

function memberOf(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.entries(value).find(([key]) => key === name)?.[1]
    : undefined;
}

function listOf(value: unknown): readonly unknown[] {
  if (Array.isArray(value)) return value;
  return value === undefined ? [] : [value];
}
