// The filter in WebAssembly with SIMD: as safe, some times faster; where it cannot be had, the plain one.
import { openLineFilter, type LineFilter } from './line-filter.ts';
import { simdModule } from './simd-module.ts';
import { buildStringTable, foldOf, type StringTable } from './string-table.ts';
import { wantedStrings, type WantedStrings } from './wanted-strings.ts';

/** What is used of it: the type libraries of Node and of ECMAScript do not describe it. */
interface Memory {
  readonly buffer: ArrayBuffer;
  readonly grow: (pages: number) => number;
}
declare const WebAssembly: {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object) => { readonly exports: Readonly<Record<string, unknown>> };
  readonly Memory: new () => Memory;
};

const pageBytes = 65_536;
const nibblesAt = 512;
const beginsAt = 1024;
const sufficesAt = 8192;
const wholeAt = 16_384;
const eitherAt = 24_576;
const hitsAt = 32_768;
const blockAt = 1 << 20;
/** Read past the end of a block, never used. */
const padding = 64;
/** Larger blocks (one very long line) go to the plain filter. */
const largestBlock = 16 << 20;

/**
 * The fastest filter that can be had here.
 *
 * Given    localCodes  codes of a site, as for `openLineFilter`
 * Returns  a filter that misses none either; it decides a little more than the plain one from the second letter
 * Throws   never
 */
export function openFastFilter(localCodes: readonly string[] = []): LineFilter {
  const plain = openLineFilter(localCodes);
  const wanted = wantedStrings(localCodes);
  const folded = [...wanted.whole, ...wanted.beginnings].map(foldedBytes);
  // SIMD looks at three bytes; a wanted string of one letter shows only one.
  if (folded.some(({ length }) => length < 2)) return plain;
  const scanner = openScanner(wanted, folded);
  return scanner === undefined ? plain : withFallback(scanner, plain);
}

type Scan = (from: number, to: number, hits: number, hitsEnd: number) => number;

interface Scanner {
  readonly scan: Scan;
  readonly memory: Memory;
}

function withFallback({ scan, memory }: Scanner, plain: LineFilter): LineFilter {
  let found = new Uint32Array(0);
  let last: LineFilter | undefined;
  return {
    hits: () => last?.hits() ?? found,
    scan: (block, length) => {
      last = undefined;
      if (length <= largestBlock) {
        makeRoom(memory, length);
        new Uint8Array(memory.buffer).set(block.subarray(0, length), blockAt);
        const count = scan(blockAt, blockAt + length, hitsAt, blockAt);
        found = new Uint32Array(memory.buffer, hitsAt, Math.max(0, count));
        if (count >= 0) return count;
      }
      last = plain;
      return plain.scan(block, length);
    },
  };
}

function makeRoom(memory: Memory, length: number): void {
  const missing = blockAt + length + padding - memory.buffer.byteLength;
  if (missing > 0) memory.grow(Math.ceil(missing / pageBytes));
}

function openScanner(wanted: WantedStrings, folded: readonly (readonly number[])[]): Scanner | undefined {
  try {
    const instance = new WebAssembly.Instance(new WebAssembly.Module(Buffer.from(simdModule, 'base64')));
    const { memory, scan } = instance.exports;
    if (!(memory instanceof WebAssembly.Memory) || !isScan(scan)) return undefined;
    makeRoom(memory, 0);
    fillTables(new Uint8Array(memory.buffer), buildStringTable(wanted), folded);
    return { scan, memory };
  } catch {
    return undefined;
  }
}

/** Its parameters are those of scan.wat. */
function isScan(value: unknown): value is Scan {
  return typeof value === 'function';
}

function fillTables(memory: Uint8Array, table: StringTable, folded: readonly (readonly number[])[]): void {
  memory.set(foldOf, 0);
  memory.set(table.begins, beginsAt);
  memory.set(table.suffices, sufficesAt);
  memory.set(table.whole, wholeAt);
  memory.set(
    table.begins.map((bits, at) => bits | (table.suffices[at] ?? 0)),
    eitherAt,
  );
  nibbleTables(folded).forEach((each, at) => memory.set(each, nibblesAt + at * 16));
}

const foldedBytes = (text: string): readonly number[] =>
  [...Buffer.from(text)].map((byte) => foldOf[byte] ?? 0).filter((sign) => sign > 0);

/** First letters that share a bucket: bit to folded signs (1-10 digits, 11-36 letters). */
const buckets: readonly (readonly [from: number, to: number])[] = [
  [1, 5],
  [6, 10],
  [11, 12],
  [13, 15],
  [16, 23],
  [24, 27],
  [28, 29],
  [30, 36],
];
const escapeLetters = Buffer.from('bfnrtu');

/**
 * For the first, second and third byte of a string: low and high nibble to the buckets in which it may stand.
 *
 * Notes    1. A sign between the letters pushes the second letter to the third place; after a backslash any of its
 *             letters may follow. Signs themselves are let through by the scanner.
 */
function nibbleTables(folded: readonly (readonly number[])[]): readonly Uint8Array[] {
  const tables = Array.from({ length: 6 }, () => new Uint8Array(16));
  const allow = (place: number, byte: number, bucket: number): void => {
    const [low, high] = [tables[place * 2], tables[place * 2 + 1]];
    if (low === undefined || high === undefined) return;
    low[byte & 15] = (low[byte & 15] ?? 0) | (1 << bucket);
    high[byte >> 4] = (high[byte >> 4] ?? 0) | (1 << bucket);
  };
  buckets.forEach(([from, to], bucket) => {
    const own = folded.filter(([first = 0]) => first >= from && first <= to);
    if (own.length === 0) return;
    for (const byte of escapeLetters) allow(2, byte, bucket);
    for (let byte = 0; byte < 256; byte += 1) {
      const sign = foldOf[byte] ?? 0;
      if (sign === 0) continue;
      if (own.some(([first]) => first === sign)) allow(0, byte, bucket);
      if (own.some(([, second]) => second === sign)) allow(1, byte, bucket);
      if (own.some(([, second, third]) => second === sign || third === sign)) allow(2, byte, bucket);
    }
  });
  return tables;
}
