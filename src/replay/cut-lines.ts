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
  /** Where the next bytes can be put; never empty. */
  readonly space: () => Uint8Array;
  /** So many bytes were put there. */
  readonly filled: (length: number) => void;
  readonly end: () => void;
}

/**
 * Gathers bytes until they hold whole lines.
 *
 * Given    taker    what to do with them
 *          options  `capBytes`: the longest line, default 64 MiB; `room`: memory to gather them in, else its own
 * Notes    1. A byte order mark at the very beginning is dropped. CR before LF is left to the reader of the line.
 */
export function openLineCutter(
  taker: LineTaker,
  {
    capBytes = lineCapBytes,
    room,
  }: { readonly capBytes?: number | undefined; readonly room?: Buffer | undefined } = {},
): LineCutter {
  let buffer = room ?? Buffer.allocUnsafe(2 * mebibyte);
  let held = 0;
  let isFirst = true;
  let isSkipping = false;

  const drop = (length: number): void => {
    buffer.copyWithin(0, length, held);
    held -= length;
  };
  const hand = (length: number): void => {
    if (length > 0) taker.block(buffer, length);
    drop(length);
  };
  const skipLongLine = (): void => {
    const end = buffer.indexOf(newline);
    isSkipping = end < 0 || end >= held;
    drop(isSkipping ? held : end + 1);
  };
  const dropMark = (): void => {
    if (!isFirst || held < byteOrderMark.length) return;
    isFirst = false;
    if (byteOrderMark.equals(buffer.subarray(0, byteOrderMark.length))) drop(byteOrderMark.length);
  };
  return {
    space: () => {
      if (held === buffer.length) buffer = Buffer.concat([buffer], buffer.length * 2);
      return buffer.subarray(held);
    },
    filled: (length) => {
      held += length;
      if (isSkipping) skipLongLine();
      dropMark();
      const last = held === 0 ? -1 : buffer.lastIndexOf(newline, held - 1);
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
