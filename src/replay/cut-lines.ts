// Bytes in pieces to blocks of whole lines. Knows line ends, nothing else.

const newline = 10;
const byteOrderMark = Buffer.from([0xef, 0xbb, 0xbf]);
const mebibyte = 1 << 20;

/** A line longer than this is rejected, so that one broken file cannot fill the memory. */
export const lineCapBytes = 64 * mebibyte;

export interface LineTaker {
  /** Whole lines, each but perhaps the very last with its line end; valid only during the call. */
  readonly block: (bytes: Buffer, length: number) => void;
  /** A line over the cap, of which nothing was kept. */
  readonly tooLong: () => void;
}

export interface LineCutter {
  readonly feed: (chunk: Uint8Array) => void;
  readonly end: () => void;
}

/**
 * Gathers chunks until they hold whole lines.
 *
 * Given    taker    what to do with them
 *          capBytes the longest line; default 64 MiB
 * Notes    1. A byte order mark at the very beginning is dropped. CR before LF is left to the reader of the line.
 */
export function openLineCutter(taker: LineTaker, capBytes = lineCapBytes): LineCutter {
  let buffer = Buffer.allocUnsafe(2 * mebibyte);
  let held = 0;
  let isFirst = true;
  let isSkipping = false;

  const hand = (length: number): void => {
    if (length > 0) taker.block(buffer, length);
    buffer.copyWithin(0, length, held);
    held -= length;
  };
  const skipLongLine = (chunk: Uint8Array): Uint8Array => {
    const end = chunk.indexOf(newline);
    if (end < 0) return chunk.subarray(chunk.length);
    isSkipping = false;
    return chunk.subarray(end + 1);
  };
  const append = (chunk: Uint8Array): void => {
    if (held + chunk.length > buffer.length) {
      const larger = Buffer.allocUnsafe(Math.max(buffer.length * 2, held + chunk.length));
      buffer.copy(larger, 0, 0, held);
      buffer = larger;
    }
    buffer.set(chunk, held);
    held += chunk.length;
  };
  const dropMark = (): void => {
    if (!isFirst || held < byteOrderMark.length) return;
    isFirst = false;
    if (byteOrderMark.equals(buffer.subarray(0, byteOrderMark.length))) {
      buffer.copyWithin(0, byteOrderMark.length, held);
      held -= byteOrderMark.length;
    }
  };
  return {
    feed: (chunk) => {
      const rest = isSkipping ? skipLongLine(chunk) : chunk;
      if (rest.length === 0) return;
      append(rest);
      dropMark();
      const last = buffer.lastIndexOf(newline, held - 1);
      if (last >= 0) hand(last + 1);
      else if (held > capBytes) {
        held = 0;
        isSkipping = true;
        taker.tooLong();
      }
    },
    end: () => {
      dropMark();
      if (held > 0) hand(held);
    },
  };
}
