// Files that are whole or not there: written under another name, then renamed.
import { closeSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';

export interface WholeFile {
  /** Bytes written so far. */
  readonly length: () => number;
  readonly write: (data: string | Uint8Array) => void;
  /** Gives the file its name. */
  readonly finish: () => void;
  readonly discard: () => void;
}

/** Opens a file that gets its name only when it is finished. */
export function openWholeFile(path: string): WholeFile {
  const temporary = `${path}.part`;
  const descriptor = openSync(temporary, 'w');
  let length = 0;
  return {
    length: () => length,
    write: (data) => {
      const bytes = typeof data === 'string' ? Buffer.from(data) : data;
      for (let at = 0; at < bytes.length;) at += writeSync(descriptor, bytes, at);
      length += bytes.length;
    },
    finish: () => {
      closeSync(descriptor);
      renameSync(temporary, path);
    },
    discard: () => {
      closeSync(descriptor);
      rmSync(temporary, { force: true });
    },
  };
}

export function writeWhole(path: string, text: string): void {
  const file = openWholeFile(path);
  file.write(text);
  file.finish();
}
