// The kept lines between the two stages: text lines `key TAB file TAB json`, sorted into buckets by woman.

/** A stretch of a spool file that holds one bucket. */
export interface Section {
  readonly bucket: number;
  readonly from: number;
  readonly length: number;
}

/** Bucket of a key: FNV-1a over its UTF-16 units. The same key goes to the same bucket, whoever asks. */
export function bucketOf(key: string, buckets: number): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < key.length; at += 1) hash = Math.imul(hash ^ key.charCodeAt(at), 0x01000193);
  return ((hash ^ (hash >>> 15)) >>> 0) % buckets;
}

// eslint-disable-next-line no-control-regex -- a key may hold anything; a line and its fields end at these signs
const separators = /[\u0000-\u001f]/g;

/** One line; the key cannot hold a separator, and JSON text has no line end in it. */
export function spoolLine(key: string, file: number, json: string): string {
  return `${key.replace(separators, '_')}\t${file}\t${json}\n`;
}

export interface SpooledLine {
  readonly key: string;
  readonly file: number;
  readonly json: string;
}

/** The line taken apart; undefined for an empty one. */
export function readSpoolLine(line: string): SpooledLine | undefined {
  const first = line.indexOf('\t');
  const second = line.indexOf('\t', first + 1);
  if (first < 0 || second < 0) return undefined;
  return {
    key: line.slice(0, first),
    file: Number(line.slice(first + 1, second)),
    json: line.slice(second + 1),
  };
}
