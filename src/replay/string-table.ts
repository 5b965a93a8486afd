// Wanted texts as tables that a loop over bytes can ask: folded to letters and digits, lower case.
import type { WantedStrings } from './wanted-strings.ts';

const alphabet = 37;
const firstLetters = 3;
export const tableBits = 1 << 16;

/** Byte to 1-10 (digit), 11-36 (letter of either case), 0 (any other sign: left out when folding). */
export const foldOf: Uint8Array = Uint8Array.from({ length: 256 }, (_, byte) => foldedByte(byte));

function foldedByte(byte: number): number {
  const text = String.fromCharCode(byte).toLowerCase();
  if (byte > 127) return 0;
  if (/[0-9]/.test(text)) return Number(text) + 1;
  return /[a-z]/.test(text) ? text.charCodeAt(0) - 'a'.charCodeAt(0) + 11 : 0;
}

export interface StringTable {
  /** Bit per combination of the first three folded signs: some wanted string begins so. */
  readonly begins: Uint8Array;
  /** The same for wanted beginnings: any string that begins so is wanted. */
  readonly suffices: Uint8Array;
  /** Bit per hash of a whole folded string. */
  readonly whole: Uint8Array;
  /** 1 where a string that begins with this byte may be wanted. */
  readonly firstBytes: Uint8Array;
}

const bitTable = (bits: number): Uint8Array => new Uint8Array(Math.ceil(bits / 8));
const setBit = (table: Uint8Array, bit: number): void => {
  table[bit >> 3] = (table[bit >> 3] ?? 0) | (1 << (bit & 7));
};
export const hasBit = (table: Uint8Array, bit: number): boolean =>
  ((table[bit >> 3] ?? 0) & (1 << (bit & 7))) !== 0;

/** One step of the hash over folded signs; 16 bits at the end. */
export const hashStep = (hash: number, folded: number): number => Math.imul(hash ^ folded, 0x01000193);
export const hashStart = 0x811c9dc5 | 0;
export const hashEnd = (hash: number): number => ((hash >>> 16) ^ hash) & (tableBits - 1);

const foldedText = (text: string): readonly number[] =>
  [...Buffer.from(text)].map((byte) => foldOf[byte] ?? 0).filter((folded) => folded > 0);

/** First three folded signs as one number; shorter strings are filled with 0. */
const beginningOf = (folded: readonly number[]): number =>
  Array.from({ length: firstLetters }).reduce<number>((sum, _, at) => sum * alphabet + (folded[at] ?? 0), 0);

export const beginningStep = (sum: number, folded: number): number => sum * alphabet + folded;

/** The tables for these strings. A string of fewer than three letters and digits is always wanted by its hash. */
export function buildStringTable({ whole, beginnings }: WantedStrings): StringTable {
  const table: StringTable = {
    begins: bitTable(alphabet ** firstLetters),
    suffices: bitTable(alphabet ** firstLetters),
    whole: bitTable(tableBits),
    firstBytes: new Uint8Array(256),
  };
  for (const text of whole) {
    const folded = foldedText(text);
    setBit(table.begins, beginningOf(folded));
    setBit(table.whole, hashEnd(folded.reduce(hashStep, hashStart)));
  }
  for (const text of beginnings) setBit(table.suffices, beginningOf(foldedText(text)));
  const first = new Set([...whole, ...beginnings].map((text) => foldedText(text)[0]));
  for (let byte = 0; byte < 256; byte += 1) {
    const folded = foldOf[byte] ?? 0;
    const isEndOfKey = [':', ',', '}', ']'].includes(String.fromCharCode(byte));
    table.firstBytes[byte] = folded === 0 ? Number(!isEndOfKey) : Number(first.has(folded));
  }
  return table;
}
