// Files that are whole or not there: written under another name, then renamed.
import { closeSync, existsSync, openSync, readdirSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';

export interface WholeFile {
  /** Bytes written so far. */
  readonly length: () => number;
  readonly write: (data: string | Uint8Array) => void;
  /** Gives the file its name. */
  readonly finish: () => void;
}

/** Not a name that somebody else's file might have. */
const unfinished = '.replay-unfinished';

/** For a writer that opens its file itself: the name to write under, and `finish`, which gives it its own. */
export function nameWhenWhole(path: string): { readonly temporary: string; readonly finish: () => void } {
  const temporary = `${path}${unfinished}`;
  return { temporary, finish: () => renameSync(temporary, path) };
}

/** Opens a file that gets its name only when it is finished. */
export function openWholeFile(path: string): WholeFile {
  const { temporary, finish } = nameWhenWhole(path);
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
      finish();
    },
  };
}

export function writeWhole(path: string, text: string): void {
  const file = openWholeFile(path);
  file.write(text);
  file.finish();
}

/** Removes what an interrupted run left half written in a folder. */
export function discardUnfinished(folder: string): void {
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder))
    if (name.endsWith(unfinished)) rmSync(join(folder, name), { force: true });
}
