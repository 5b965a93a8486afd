// Where in a block of bytes stands a JSON string that may be wanted. Never misses one; may name too many.
import {
  beginningStep,
  buildStringTable,
  foldOf,
  hasBit,
  hashEnd,
  hashStart,
  hashStep,
  type StringTable,
} from './string-table.ts';
import { wantedStrings } from './wanted-strings.ts';

export interface LineFilter {
  /**
   * Positions, ascending, of strings that may be wanted.
   *
   * Given    block   bytes of whole lines
   *          length  how many of them
   * Returns  how many positions were written to `hits`
   */
  readonly scan: (block: Uint8Array, length: number) => number;
  /** Filled by `scan`; valid until the next one. */
  readonly hits: () => Uint32Array;
  /** Memory of its own: a block that begins there is scanned without being copied. */
  readonly room?: () => Buffer;
}

const quote = 34;
const backslash = 92;
const letterU = 117;
/** Longer than any wanted string: what goes on is none. */
const longest = 96;

/**
 * Is the string that begins at `start` one of the wanted ones?
 *
 * Given    start   the byte after its opening quote
 * Returns  true also where it cannot be decided: `\u` stands in it
 * Notes    1. Case, and every sign that is no letter and no digit, count for nothing, so that spaces around a
 *             name, dots in a code and spellings of hyphens cannot hide one.
 */
export function mayBeWanted(table: StringTable, block: Uint8Array, start: number, end: number): boolean {
  let hash = hashStart;
  let beginning = 0;
  let letters = 0;
  const last = Math.min(end, start + longest);
  for (let at = start; at < last; at += 1) {
    const byte = block[at] ?? quote;
    if (byte === quote) return isWhole(table, beginning, letters, hash);
    if (byte === backslash) {
      // Every other escape stands for a sign that is no letter.
      if (block[at + 1] === letterU) return true;
      at += 1;
      continue;
    }
    const folded = foldOf[byte] ?? 0;
    if (folded === 0) continue;
    hash = hashStep(hash, folded);
    letters += 1;
    if (letters > 3) continue;
    beginning = beginningStep(beginning, folded);
    if (letters < 3) continue;
    if (hasBit(table.suffices, beginning)) return true;
    if (!hasBit(table.begins, beginning)) return false;
  }
  // Neither its end nor an escape within reach: only a text full of other signs could still be wanted.
  return letters < 3;
}

function isWhole(table: StringTable, beginning: number, letters: number, hash: number): boolean {
  if (letters === 0) return false;
  let filled = beginning;
  for (let at = letters; at < 3; at += 1) filled = beginningStep(filled, 0);
  return hasBit(table.begins, filled) && hasBit(table.whole, hashEnd(hash));
}

/** The filter in plain TypeScript: every quote is looked at. */
export function openLineFilter(localCodes: readonly string[] = []): LineFilter {
  const table = buildStringTable(wantedStrings(localCodes));
  let found = new Uint32Array(1 << 14);
  return {
    hits: () => found,
    scan: (block, length) => {
      let count = 0;
      for (let at = 0; at < length; at += 1) {
        if (block[at] !== quote || table.firstBytes[block[at + 1] ?? 0] === 0) continue;
        if (!mayBeWanted(table, block, at + 1, length)) continue;
        if (count === found.length) found = grown(found);
        found[count] = at;
        count += 1;
      }
      return count;
    },
  };
}

function grown(hits: Uint32Array): Uint32Array<ArrayBuffer> {
  const larger = new Uint32Array(hits.length * 2);
  larger.set(hits);
  return larger;
}
