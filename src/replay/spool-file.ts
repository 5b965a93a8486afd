// Kept lines on disk between the stages: written in sections by bucket, read bucket by bucket.
import { closeSync, openSync, readSync } from 'node:fs';
import { isByIdentifier, isIndex } from './join-by-identifier.ts';
import { sharedKey } from './judge-line.ts';
import { bucketOf, readSpoolLine, spoolLine, type Section, type SpooledLine } from './spool.ts';
import { openWholeFile } from './write-file.ts';

export interface Spool {
  readonly path: string;
  readonly sections: readonly Section[];
}

/** After the buckets of women: what all may need, lines by an identifier only, and whose identifiers are. */
export const sharedBucket = (buckets: number): number => buckets;
export const byIdentifierBucket = (buckets: number): number => buckets + 1;
export const indexBucket = (buckets: number): number => buckets + 2;

function placeOf(key: string, buckets: number): number {
  if (key === sharedKey) return sharedBucket(buckets);
  if (isByIdentifier(key)) return byIdentifierBucket(buckets);
  return isIndex(key) ? indexBucket(buckets) : bucketOf(key, buckets);
}

export interface SpoolWriter {
  readonly keep: (line: SpooledLine) => void;
  readonly finish: () => readonly Section[];
}

const flushBytes = 16 << 20;

/** Opens a spool; `place` says which bucket a key goes to. */
export function openSpool(path: string, buckets: number, place = placeOf): SpoolWriter {
  const out = openWholeFile(path);
  const sections: Section[] = [];
  let held = new Map<number, string[]>();
  let heldBytes = 0;
  const flush = (): void => {
    for (const [bucket, lines] of [...held].sort(([a], [b]) => a - b)) {
      const from = out.length();
      out.write(lines.join(''));
      sections.push({ bucket, from, length: out.length() - from });
    }
    held = new Map();
    heldBytes = 0;
  };
  return {
    keep: ({ key, file, json }) => {
      const bucket = place(key, buckets);
      const lines = held.get(bucket) ?? [];
      lines.push(spoolLine(key, file, json));
      held.set(bucket, lines);
      heldBytes += json.length;
      if (heldBytes > flushBytes) flush();
    },
    finish: () => {
      flush();
      out.finish();
      return sections;
    },
  };
}

/** The lines of one bucket, section after section. */
export function* linesOf(spools: readonly Spool[], bucket: number): Generator<SpooledLine> {
  for (const { path, sections } of spools) {
    const own = sections.filter((section) => section.bucket === bucket);
    if (own.length === 0) continue;
    const descriptor = openSync(path, 'r');
    try {
      for (const section of own) yield* linesIn(descriptor, section);
    } finally {
      closeSync(descriptor);
    }
  }
}

function linesIn(descriptor: number, { from, length }: Section): readonly SpooledLine[] {
  const bytes = Buffer.allocUnsafe(length);
  for (let at = 0; at < length;) at += readSync(descriptor, bytes, at, length - at, from + at);
  return bytes
    .toString('utf8')
    .split('\n')
    .flatMap((line) => readSpoolLine(line) ?? []);
}
