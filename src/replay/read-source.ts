// The bytes of a source, piece by piece: a range of a file, a gzip file, standard input, a JSON document.
import { closeSync, createReadStream, fstatSync, openSync, readFileSync, readSync } from 'node:fs';
import { createGunzip, gunzipSync } from 'node:zlib';
import { standardInput, type SourceFile } from './find-sources.ts';

const newline = 10;
const chunkBytes = 1 << 20;
/** Small enough to stay in the cache of a core while it is looked at. */
const pieceBytes = 1 << 18;

/** A stretch of a file; a line belongs to the range its first byte lies in. */
export interface ByteRange {
  readonly from: number;
  readonly to: number;
}

/** Can parts of it be read by themselves? */
export const canBeCut = (file: SourceFile): boolean =>
  file.form === 'lines' && !file.isCompressed && file.path !== standardInput;

/** Where bytes are put as they are read. */
export interface Sink {
  /** Where the next ones go; never empty. */
  readonly space: () => Uint8Array;
  readonly filled: (length: number) => void;
}

/** The range of a file that can be cut, moved to the next beginnings of lines, straight to where it is looked at. */
export function readRange(path: string, range: ByteRange, sink: Sink): void {
  const descriptor = openSync(path, 'r');
  try {
    const size = fstatSync(descriptor).size;
    const to = lineStart(descriptor, range.to, size);
    for (let at = lineStart(descriptor, range.from, size); at < to;) {
      const space = sink.space();
      const read = readSync(descriptor, space, 0, Math.min(space.length, pieceBytes, to - at), at);
      if (read === 0) return;
      at += read;
      sink.filled(read);
    }
  } finally {
    closeSync(descriptor);
  }
}

/** A chunk that stands somewhere else, copied in. */
export function pour(chunk: Uint8Array, sink: Sink): void {
  for (let at = 0; at < chunk.length;) {
    const space = sink.space();
    const part = chunk.subarray(at, at + space.length);
    space.set(part);
    sink.filled(part.length);
    at += part.length;
  }
}

/** The first beginning of a line at or after a position. */
function lineStart(descriptor: number, position: number, size: number): number {
  if (position <= 0) return 0;
  if (position >= size) return size;
  const buffer = Buffer.allocUnsafe(pieceBytes);
  for (let at = position - 1; at < size;) {
    const read = readSync(descriptor, buffer, 0, buffer.length, at);
    const found = buffer.subarray(0, read).indexOf(newline);
    if (found >= 0) return at + found + 1;
    if (read === 0) break;
    at += read;
  }
  return size;
}

/** Chunks of a source that cannot be cut, decompressed. A JSON document comes as one line for each resource. */
export async function* readWhole(file: SourceFile): AsyncGenerator<Uint8Array> {
  if (file.form === 'document') {
    const raw = readFileSync(file.path);
    yield linesOfDocument(file.isCompressed ? gunzipSync(raw) : raw);
    return;
  }
  if (file.path === standardInput) yield* readStandardInput();
  else {
    const compressed = createReadStream(file.path, { highWaterMark: chunkBytes });
    const plain = compressed.pipe(createGunzip({ chunkSize: chunkBytes }));
    compressed.on('error', (error) => plain.destroy(error));
    yield* plain;
  }
}

/** Lines as they come; where the first line is no JSON by itself, all of it is one document. */
async function* readStandardInput(): AsyncGenerator<Uint8Array> {
  const held: Uint8Array[] = [];
  let isDocument: boolean | undefined;
  const chunks: AsyncIterable<Uint8Array> = process.stdin;
  for await (const chunk of chunks) {
    if (isDocument === false) {
      yield chunk;
      continue;
    }
    held.push(chunk);
    if (isDocument !== undefined || !chunk.includes(newline)) continue;
    isDocument = !beginsWithLine(Buffer.concat(held));
    if (!isDocument) yield Buffer.concat(held.splice(0));
  }
  if (held.length > 0) yield linesOfDocument(Buffer.concat(held));
}

function beginsWithLine(bytes: Buffer): boolean {
  const [first = ''] = bytes
    .toString('utf8')
    .replace(/^\uFEFF/, '')
    .trimStart()
    .split('\n');
  return parsed(first) !== undefined;
}

/** A document that is no JSON as a whole is handed on as it is: it may be lines after all. */
function linesOfDocument(bytes: Uint8Array): Uint8Array {
  const text = Buffer.from(bytes)
    .toString('utf8')
    .replace(/^\uFEFF/, '');
  const value = parsed(text);
  if (value === undefined) return bytes;
  if (Array.isArray(value)) return Buffer.from(value.map((item) => `${JSON.stringify(item)}\n`).join(''));
  // Between the parts of JSON a line end is white space, and inside a string there is none.
  return Buffer.from(`${text.replace(/[\r\n]+/g, ' ')}\n`);
}

function parsed(text: string): unknown {
  try {
    const value: unknown = JSON.parse(text);
    return value;
  } catch {
    return undefined;
  }
}
