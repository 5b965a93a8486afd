// The filter in WebAssembly with SIMD: as safe, some times faster; where it cannot be had, the plain one.
import { openLineFilter, type LineFilter } from './line-filter.ts';
import { simdModule } from './simd-module.ts';
import { buildStringTable, foldOf } from './string-table.ts';
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
const bytes = 256;
/** A sign, ten digits, 26 letters. */
const foldedSigns = 37;
const isSignificantAt = 256;
const beginsAt = 1024;
const sufficesAt = 8192;
const wholeAt = 16_384;
const pairsAt = 32_768;
const foursAt = 40_960;
const hitsAt = 65_536;
const blockAt = 1 << 20;
/** Read past the end of a block, never used. */
const padding = 128;
const roomBytes = 1 << 20;
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
  const scanner = openScanner(localCodes);
  return scanner === undefined
    ? openLineFilter(localCodes)
    : withFallback(scanner, () => openLineFilter(localCodes));
}

type Scan = (from: number, to: number, hits: number, hitsEnd: number) => number;

interface Scanner {
  readonly scan: Scan;
  readonly memory: Memory;
}

function withFallback({ scan, memory }: Scanner, openPlain: () => LineFilter): LineFilter {
  let plain: LineFilter | undefined;
  let found = new Uint32Array(0);
  let last: LineFilter | undefined;
  return {
    hits: () => last?.hits() ?? found,
    room: () => Buffer.from(memory.buffer, blockAt, roomBytes),
    scan: (block, length) => {
      last = undefined;
      if (length <= largestBlock) {
        if (block.buffer !== memory.buffer || block.byteOffset !== blockAt) {
          makeRoom(memory, length);
          new Uint8Array(memory.buffer).set(block.subarray(0, length), blockAt);
        }
        const count = scan(blockAt, blockAt + length, hitsAt, blockAt);
        found = new Uint32Array(memory.buffer, hitsAt, Math.max(0, count));
        if (count >= 0) return count;
      }
      plain ??= openPlain();
      last = plain;
      return plain.scan(block, length);
    },
  };
}

function makeRoom(memory: Memory, length: number): void {
  const missing = blockAt + length + padding - memory.buffer.byteLength;
  if (missing > 0) memory.grow(Math.ceil(missing / pageBytes));
}

function openScanner(localCodes: readonly string[]): Scanner | undefined {
  try {
    const { module, tables } = preparedFor(localCodes);
    const instance = new WebAssembly.Instance(module);
    const { memory, scan } = instance.exports;
    if (!(memory instanceof WebAssembly.Memory) || !isScan(scan)) return undefined;
    makeRoom(memory, roomBytes);
    new Uint8Array(memory.buffer).set(tables);
    return { scan, memory };
  } catch {
    return undefined;
  }
}

interface PreparedScanner {
  readonly codes: string;
  readonly module: object;
  readonly tables: Uint8Array;
}

let lastPrepared: PreparedScanner | undefined;

/** Compiling and filling tables takes longer than scanning a small file: it is done once for the same codes. */
function preparedFor(localCodes: readonly string[]): PreparedScanner {
  const codes = localCodes.join('\n');
  if (lastPrepared?.codes === codes) return lastPrepared;
  const module = new WebAssembly.Module(Buffer.from(simdModule, 'base64'));
  const tables = new Uint8Array(hitsAt);
  fillTables(tables, wantedStrings(localCodes));
  lastPrepared = { codes, module, tables };
  return lastPrepared;
}

/** Its parameters are those of scan.wat. */
function isScan(value: unknown): value is Scan {
  return typeof value === 'function';
}

function fillTables(memory: Uint8Array, wanted: WantedStrings): void {
  const table = buildStringTable(wanted);
  memory.set(foldOf, 0);
  memory.set(
    foldOf.map((sign) => Number(sign > 0)),
    isSignificantAt,
  );
  memory.set(table.begins, beginsAt);
  memory.set(table.suffices, sufficesAt);
  memory.set(table.whole, wholeAt);
  memory.set(pairTable(wanted), pairsAt);
  memory.set(foursTable(wanted), foursAt);
}

/** Letters of either case and digits. */
const significantBytes = [...foldOf.keys()].filter((byte) => (foldOf[byte] ?? 0) > 0);

const foldedBytes = (text: string): readonly number[] =>
  [...Buffer.from(text)].map((byte) => foldOf[byte] ?? 0).filter((sign) => sign > 0);

/**
 * A bit for each pair of bytes with which a string that may be wanted begins.
 *
 * Notes    1. After a sign (a space, a backslash) nothing is decided; after a letter a sign decides nothing.
 */
function pairTable({ whole, beginnings }: WantedStrings): Uint8Array {
  const [firsts, pairs] = [new Uint8Array(foldedSigns), new Uint8Array(foldedSigns ** 2)];
  for (const [first = 0, second = 0] of [...whole, ...beginnings].map(foldedBytes)) {
    firsts[first] = 1;
    pairs[first * foldedSigns + second] = 1;
  }
  const table = new Uint8Array(bytes * (bytes / 8)).fill(255);
  for (const first of significantBytes)
    for (let second = 0; second < bytes; second += 1) {
      const [one, two] = [foldOf[first] ?? 0, foldOf[second] ?? 0];
      if ((two === 0 ? firsts[one] : pairs[one * foldedSigns + two]) === 1) continue;
      // As a little-endian number of 16 bits, the first byte is the low one.
      const bit = second * bytes + first;
      table[bit >> 3] = (table[bit >> 3] ?? 0) & ~(1 << (bit & 7));
    }
  return table;
}

/** Letters in lower case and digits, by their folded sign. */
const signs = '0123456789abcdefghijklmnopqrstuvwxyz';

/**
 * A bit for each hash of four letters or digits with which a string that may be wanted begins.
 *
 * Notes    1. A whole string of fewer than four has another sign, or its end, among the first four bytes.
 */
function foursTable({ whole, beginnings }: WantedStrings): Uint8Array {
  const fours = [
    ...whole.map(foldedBytes).filter(({ length }) => length >= 4),
    ...beginnings
      .map(foldedBytes)
      .flatMap((folded) =>
        folded.length >= 4 ? [folded] : Array.from(signs, (_, at) => [...folded, at + 1]),
      ),
  ];
  const table = new Uint8Array(8192);
  for (const folded of fours) {
    const text = folded.slice(0, 4).map((sign) => signs[sign - 1] ?? '');
    const bit = Math.imul(Buffer.from(text.join('')).readInt32LE(), 0x9e3779b1) >>> 16;
    table[bit >> 3] = (table[bit >> 3] ?? 0) | (1 << (bit & 7));
  }
  return table;
}
