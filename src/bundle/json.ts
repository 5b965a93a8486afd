// Looking into untrusted JSON: each reader checks the JSON type before it answers.
import type { Resource } from 'fhir/r4.js';

export type JsonObject = Readonly<Record<string, unknown>>;
/** A JSON object with a resourceType; every other member is still unknown. */
export type ResourceJson = Resource & JsonObject;

const NOTHING: readonly unknown[] = [];
/** Deeper than any resource of R4 nests; stops hostile input. */
const DEEPEST = 64;

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function isResource(value: unknown): value is ResourceJson {
  return isObject(value) && typeof value.resourceType === 'string' && value.resourceType !== '';
}

/** The text, or undefined when it is no text or empty (FHIR strings are never empty). */
export function textOf(value: unknown): string | undefined {
  return typeof value === 'string' && value !== '' ? value : undefined;
}

/** The list; anything else counts as an empty one. */
export function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : NOTHING;
}

/** A member of what may not be an object. */
export function memberOf(value: unknown, name: string): unknown {
  return isObject(value) ? value[name] : undefined;
}

/** `system|value` of an Identifier that has both; an identifier without a system identifies nothing. */
export function identifierKey(value: unknown): string | undefined {
  const system = textOf(memberOf(value, 'system'));
  const text = textOf(memberOf(value, 'value'));
  return system === undefined || text === undefined ? undefined : `${system}|${text}`;
}

/** The value as text with sorted members, so that equal values have equal text; too deep a value ends in `...`. */
export function canonicalText(value: unknown, omit: ReadonlySet<string> = NO_NAMES, depth = 0): string {
  if (depth > DEEPEST) return '...';
  if (Array.isArray(value)) return `[${value.map((item) => canonicalText(item, omit, depth + 1)).join()}]`;
  if (!isObject(value)) return typeof value === 'string' ? JSON.stringify(value) : String(value);
  const names = Object.keys(value).filter((name) => !omit.has(name));
  return `{${names
    .sort()
    .map((name) => `${JSON.stringify(name)}:${canonicalText(value[name], omit, depth + 1)}`)
    .join()}}`;
}

const NO_NAMES: ReadonlySet<string> = new Set();
