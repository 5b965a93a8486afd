// One woman's lines, from whatever files, to the input of `evaluate`.
import { restTail, withoutVersion } from '../bundle/addresses.ts';
import { isObject, listOf, memberOf, textOf } from '../bundle/json.ts';
import { deletedBy } from './judge-line.ts';
import type { SpooledLine } from './spool.ts';

/** What every woman may need: what has no woman of its own, and what was deleted. */
export interface SharedLines {
  readonly byReference: ReadonlyMap<string, unknown>;
  readonly deleted: ReadonlySet<string>;
}

export interface AssembledWoman {
  /** `Patient/1`. */
  readonly subject: string;
  /** Resources and Bundles in a fixed order, as `evaluate` takes them. */
  readonly input: readonly unknown[];
  /** For each of the input, the file whose line it was; undefined: not counted with her. */
  readonly files: readonly (number | undefined)[];
  /** Files of lines that were deleted or came twice. */
  readonly dropped: readonly number[];
}

/** Reads the shared lines. */
export function readShared(jsons: readonly string[]): SharedLines {
  const byReference = new Map<string, unknown>();
  const deleted = new Set<string>();
  for (const json of [...jsons].sort()) {
    const value: unknown = JSON.parse(json);
    const reference = referenceOf(value);
    if (memberOf(value, 'resourceType') === 'Bundle') for (const each of deletedBy(value)) deleted.add(each);
    else if (reference !== undefined) byReference.set(reference, value);
  }
  return { byReference, deleted };
}

function referenceOf(value: unknown): string | undefined {
  const id = textOf(memberOf(value, 'id'));
  return id === undefined ? undefined : `${String(memberOf(value, 'resourceType'))}/${id}`;
}

/**
 * The input for one woman.
 *
 * Given    key     her reference
 *          lines   hers, in any order
 *          shared  what she may refer to, and what was deleted
 * Returns  her resources sorted by their text, then what they refer to; nothing that was deleted
 * Throws   never for lines that were judged before
 * Notes    1. The order is that of the text of the lines: it does not depend on files or ranges.
 *          2. Absolute references become relative ones: an export is about one server (F-K02).
 *          3. A line that came twice counts once.
 */
export function assembleWoman(
  key: string,
  lines: readonly SpooledLine[],
  shared: SharedLines,
): AssembledWoman {
  const input: unknown[] = [];
  const files: (number | undefined)[] = [];
  const dropped: number[] = [];
  const wanted = new Set<string>();
  let before: string | undefined;
  for (const { json, file } of [...lines].sort(byText)) {
    const value = json === before ? undefined : relative(json);
    before = json;
    const reference = value === undefined ? undefined : referenceOf(value);
    if (value === undefined || (reference !== undefined && shared.deleted.has(reference))) {
      if (file >= 0) dropped.push(file);
      continue;
    }
    input.push(value);
    files.push(file < 0 ? undefined : file);
    if (shared.byReference.size > 0) addWanted(json, wanted);
  }
  for (const reference of [...wanted].sort()) {
    const value = shared.byReference.get(reference);
    if (value === undefined || shared.deleted.has(reference)) continue;
    input.push(value);
    files.push(undefined);
  }
  return { subject: key, input, files, dropped };
}

const byText = (a: SpooledLine, b: SpooledLine): number =>
  a.json === b.json ? a.file - b.file : a.json < b.json ? -1 : 1;

function addWanted(json: string, wanted: Set<string>): void {
  for (const [, text = ''] of json.matchAll(
    /"reference"\s*:\s*"([^"\\]*(?:Medication|Device|Specimen)\/[^"\\]*)"/g,
  ))
    wanted.add(restTail(withoutVersion(text)) ?? text);
}

function relative(json: string): unknown {
  const value: unknown = JSON.parse(json);
  const isBundle = memberOf(value, 'resourceType') === 'Bundle';
  // An escape may hide either word: then every member is looked at.
  const mayBeAbsolute = absoluteReference.test(json) || json.includes('\\');
  return isBundle || !mayBeAbsolute ? value : withRelative(value);
}

const absoluteReference = /"reference"\s*:\s*"https?:/i;

function withRelative(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withRelative);
  if (!isObject(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, part]) => [
      name,
      name === 'reference' && typeof part === 'string' && /^https?:/i.test(part)
        ? (restTail(withoutVersion(part)) ?? part)
        : withRelative(part),
    ]),
  );
}

/** The same input without some resources, also inside Bundles. */
export function without(input: readonly unknown[], references: ReadonlySet<string>): readonly unknown[] {
  if (references.size === 0) return input;
  return input.flatMap((item) => {
    const reference = referenceOf(item);
    if (reference !== undefined && references.has(reference)) return [];
    if (!isObject(item) || item['resourceType'] !== 'Bundle') return [item];
    const entry = listOf(item['entry']).filter((each) => {
      const inside = referenceOf(memberOf(each, 'resource'));
      return inside === undefined || !references.has(inside);
    });
    return [{ ...item, entry }];
  });
}
