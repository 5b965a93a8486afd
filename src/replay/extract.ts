// First stage: bytes of a file to the lines that may matter, each with the key of its woman.
import { READ_TYPES } from '../bundle/read-types.ts';
import { openLineCutter } from './cut-lines.ts';
import { indexLine } from './join-by-identifier.ts';
import { judgeLine, type LineFate } from './judge-line.ts';
import type { LineFilter } from './line-filter.ts';
import type { Sink } from './read-source.ts';

/** Lines by what became of them here; `kept` is settled when the women are assessed. */
export interface LineCounts {
  readonly bytes: number;
  readonly lines: number;
  readonly blank: number;
  readonly kept: number;
  readonly notNeeded: number;
  readonly setAside: number;
  readonly rejected: number;
}

/** `line` counts from 1 at the start of what was read. */
export interface NotedLine {
  readonly line: number;
  readonly reason: string;
}

export interface Extracted {
  readonly counts: LineCounts;
  readonly rejected: readonly NotedLine[];
  readonly setAside: readonly NotedLine[];
  /** Resource types met, where they were looked at. */
  readonly types: Readonly<Record<string, number>>;
}

export interface Extractor extends Sink {
  readonly end: () => Extracted;
}

const newline = 10;
const closingBrace = 125;
const blank: ReadonlySet<number> = new Set([9, 13, 32]);

export interface ExtractOptions {
  readonly filter: LineFilter;
  /** Look into every Observation: exports that overlap may hold a newer version under another code. */
  readonly readsEveryLine: boolean;
  /** Takes the text of a kept line; a Bundle about several women comes once for each, the first time with `isFirst`. */
  readonly keep: (key: string, json: string, isFirst: boolean) => void;
  /** Reads the codes of a site as ours. */
  readonly adapt?: (value: unknown) => unknown;
  readonly capBytes?: number;
}

/**
 * Reads lines as they come.
 *
 * Given    options  the filter and where kept lines go
 * Returns  put bytes into it in order, then `end` gives the account: lines = kept + not needed + set aside + rejected
 *          + blank
 * Throws   never: a bad line is counted and noted
 * Notes    1. A line is left out unread only when it says first that it is a resource of a type nobody reads, or an
 *             Observation without any wanted string, and ends with a brace; any other goes to JSON.parse.
 */
export function openExtractor(options: ExtractOptions): Extractor {
  const { filter, readsEveryLine, keep, capBytes } = options;
  const sum = { bytes: 0, lines: 0, blank: 0, kept: 0, notNeeded: 0, setAside: 0, rejected: 0 };
  const rejected: NotedLine[] = [];
  const setAside: NotedLine[] = [];
  const types = new Map<string, number>();
  let hits: Uint32Array = new Uint32Array(0);
  let hitCount = 0;
  let nextHit = 0;

  const note = (fate: LineFate, json: string): void => {
    switch (fate.kind) {
      case 'kept':
        sum.kept += 1;
        fate.keys.forEach((key, at) => keep(key, json, at === 0));
        for (const each of fate.identifiers ?? []) keep(...indexLine(each, fate.keys[0] ?? ''), false);
        return;
      case 'not-needed':
        sum.notNeeded += 1;
        return;
      case 'set-aside':
        sum.setAside += 1;
        setAside.push({ line: sum.lines, reason: fate.reason });
        return;
      case 'rejected':
        sum.rejected += 1;
        rejected.push({ line: sum.lines, reason: fate.reason });
    }
  };

  const isHit = (from: number, to: number): boolean => {
    while (nextHit < hitCount && (hits[nextHit] ?? 0) < from) nextHit += 1;
    return nextHit < hitCount && (hits[nextHit] ?? 0) < to;
  };

  const takeLine = (block: Buffer, from: number, to: number): void => {
    sum.lines += 1;
    let [start, end] = [from, to];
    while (end > start && blank.has(block[end - 1] ?? 0)) end -= 1;
    while (start < end && blank.has(block[start] ?? 0)) start += 1;
    if (start === end) {
      sum.blank += 1;
      return;
    }
    const type = firstType(block, start, end);
    if (type !== undefined) types.set(type, (types.get(type) ?? 0) + 1);
    if (block[end - 1] === closingBrace && canSkip(type, () => !readsEveryLine && !isHit(start, end))) {
      sum.notNeeded += 1;
      return;
    }
    const { fate, json } = judged(block.toString('utf8', start, end), options.adapt);
    note(fate, json);
  };

  const cutter = openLineCutter(
    {
      block: (block, length) => {
        hitCount = readsEveryLine ? 0 : filter.scan(block, length);
        hits = filter.hits();
        nextHit = 0;
        for (let from = 0; from < length;) {
          const found = block.indexOf(newline, from);
          const to = found < 0 || found >= length ? length : found;
          takeLine(block, from, to);
          from = to + 1;
        }
      },
      tooLong: () => {
        sum.lines += 1;
        note({ kind: 'rejected', reason: 'line-too-long' }, '');
      },
    },
    { capBytes, room: filter.room?.() },
  );
  return {
    space: cutter.space,
    filled: (length) => {
      sum.bytes += length;
      cutter.filled(length);
    },
    end: () => {
      cutter.end();
      return { counts: { ...sum }, rejected, setAside, types: Object.fromEntries([...types].sort()) };
    },
  };
}

/** CR alone is white space between the parts of JSON; it would end a line for some readers. */
const oneLine = (text: string): string => (text.includes('\r') ? text.replaceAll('\r', ' ') : text);

function canSkip(type: string | undefined, hasNoHit: () => boolean): boolean {
  if (type === undefined || type === 'Bundle' || type === 'Parameters') return false;
  if (!READ_TYPES.has(type)) return true;
  return type === 'Observation' && hasNoHit();
}

interface Judged {
  readonly fate: LineFate;
  readonly json: string;
}

/** The fate of the text of a line, and the text to hand on. */
function judged(text: string, adapt: ExtractOptions['adapt']): Judged {
  const value = parsed(text);
  if (value === undefined) return { fate: { kind: 'rejected', reason: 'not-json' }, json: '' };
  const adapted = adapt === undefined ? value : adapt(value);
  return { fate: safely(adapted), json: adapted === value ? oneLine(text) : JSON.stringify(adapted) };
}

function safely(value: unknown): LineFate {
  try {
    return judgeLine(value);
  } catch {
    return { kind: 'rejected', reason: 'not-readable' };
  }
}

function parsed(text: string): unknown {
  try {
    const value: unknown = JSON.parse(text);
    return value;
  } catch {
    return undefined;
  }
}

const observation = Buffer.from('{"resourceType":"Observation"');
const typeName = /^\{\s*"resourceType"\s*:\s*"([A-Za-z]+)"/;
const reach = 96;

/** The resource type, where the line says it first; undefined otherwise. Costs little for an Observation. */
function firstType(block: Buffer, from: number, to: number): string | undefined {
  if (to - from > observation.length && isAt(block, from, observation)) return 'Observation';
  return typeName.exec(block.toString('latin1', from, Math.min(to, from + reach)))?.[1];
}

function isAt(block: Buffer, from: number, text: Buffer): boolean {
  for (let at = 0; at < text.length; at += 1) if (block[from + at] !== text[at]) return false;
  return true;
}
