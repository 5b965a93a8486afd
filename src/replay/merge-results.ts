// Files of result lines, each sorted by woman, to one.
import { closeSync, openSync, readSync } from 'node:fs';
import type { WholeFile } from './write-file.ts';

const chunkBytes = 1 << 16;
const newline = '\n';

interface Source {
  line: string;
  woman: string;
  readonly rest: Iterator<string>;
}

/**
 * Merges sorted files.
 *
 * Given    paths  files in which the lines of a woman stand together, women sorted; no woman is in two of them
 *          out    where the lines go, sorted by woman
 *          each   called with every line
 */
export function mergeResults(
  paths: readonly string[],
  out: Pick<WholeFile, 'write'>,
  each: (line: string) => void = () => undefined,
): void {
  const sources = paths.flatMap((path) => {
    const rest = linesOf(path);
    const first = rest.next();
    return first.done === true ? [] : [{ line: first.value, woman: womanOf(first.value), rest }];
  });
  sources.sort(byWoman);
  for (let source = sources.shift(); source !== undefined; source = sources.shift()) {
    const { woman } = source;
    let isOver = false;
    while (source.woman === woman && !isOver) {
      out.write(source.line);
      each(source.line);
      isOver = !advance(source);
    }
    if (!isOver) insert(sources, source);
  }
}

function advance(source: Source): boolean {
  const next = source.rest.next();
  if (next.done === true) return false;
  source.line = next.value;
  source.woman = womanOf(next.value);
  return true;
}

function insert(sources: Source[], source: Source): void {
  const at = sources.findIndex((other) => byWoman(source, other) < 0);
  sources.splice(at < 0 ? sources.length : at, 0, source);
}

const byWoman = (a: Source, b: Source): number => (a.woman === b.woman ? 0 : a.woman < b.woman ? -1 : 1);

const opening = '{"woman":';

function womanOf(line: string): string {
  const end = line.indexOf(',"at":');
  const value: unknown = JSON.parse(line.slice(opening.length, end));
  return String(value);
}

function* linesOf(path: string): Generator<string, undefined> {
  const descriptor = openSync(path, 'r');
  try {
    const buffer = Buffer.allocUnsafe(chunkBytes);
    let held = Buffer.alloc(0);
    for (;;) {
      const read = readSync(descriptor, buffer);
      if (read === 0) return undefined;
      held = Buffer.concat([held, buffer.subarray(0, read)]);
      for (let end = held.indexOf(newline); end >= 0; end = held.indexOf(newline)) {
        yield held.toString('utf8', 0, end + 1);
        held = held.subarray(end + 1);
      }
    }
  } finally {
    closeSync(descriptor);
  }
}
