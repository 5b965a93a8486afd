// Lines that name their woman by an identifier only: to the woman whose Patient line carries it.
import type { SpooledLine } from './spool.ts';

/** Key of a woman of whom only an identifier is known: `Patient?identifier=system|value`. */
const byIdentifier = 'Patient?identifier=';
/** Before such a key: a line that says whose identifier it is, and nothing else. */
const index = '#';

export const isByIdentifier = (key: string): boolean => key.startsWith(byIdentifier);
export const isIndex = (key: string): boolean => key.startsWith(index + byIdentifier);

/** Key and text of the line that says whose identifier this is. */
export const indexLine = (identifier: string, woman: string): readonly [key: string, json: string] => [
  `${index}${byIdentifier}${identifier}`,
  JSON.stringify(woman),
];

/**
 * Whose each of some identifiers is.
 *
 * Given    asked    keys by identifier
 *          indexed  lines as `indexLine` makes them, of any identifiers
 * Returns  key to the reference of the woman; nothing for an identifier that nobody has, or that several have
 * Throws   never
 */
export function ownersOf(
  asked: ReadonlySet<string>,
  indexed: Iterable<SpooledLine>,
): ReadonlyMap<string, string> {
  const owners = new Map<string, string>();
  const disputed = new Set<string>();
  for (const { key, json } of indexed) {
    const identifier = key.slice(index.length);
    if (!asked.has(identifier)) continue;
    const owner = String(JSON.parse(json));
    if ((owners.get(identifier) ?? owner) !== owner) disputed.add(identifier);
    owners.set(identifier, owner);
  }
  for (const identifier of disputed) owners.delete(identifier);
  return owners;
}
