// How far a run is: a bar on a terminal, a line of JSON elsewhere.

export interface Progress {
  readonly stage: 'extract' | 'assess';
  readonly done: number;
  readonly of: number;
  readonly bytes: number;
  readonly totalBytes: number;
  readonly lines: number;
  readonly women: number;
}

export interface ProgressWriter {
  readonly say: (progress: Progress) => void;
  readonly end: () => void;
}

const width = 24;
const millisecondsPerSecond = 1000;

/** Writes to a stream; on anything but a terminal at most once a second, and at the end of each stage. */
export function openProgress(
  stream: { readonly write: (text: string) => unknown; readonly isTTY?: boolean | undefined },
  now: () => number,
): ProgressWriter {
  let started = now();
  let stage: Progress['stage'] = 'extract';
  let last = -Infinity;
  return {
    say: (progress) => {
      if (progress.stage !== stage) started = now();
      stage = progress.stage;
      const elapsed = (now() - started) / millisecondsPerSecond;
      const share = progress.of === 0 ? 1 : progress.done / progress.of;
      const left = share === 0 ? 0 : Math.round((elapsed / share) * (1 - share));
      if (stream.isTTY === true) stream.write(`\r${bar(progress, share, left)}`);
      else if (share === 1 || now() - last > millisecondsPerSecond) {
        last = now();
        stream.write(`${JSON.stringify({ ...progress, secondsLeft: left })}\n`);
      }
    },
    end: () => {
      if (stream.isTTY === true) stream.write('\n');
    },
  };
}

function bar({ stage, bytes, lines, women }: Progress, share: number, left: number): string {
  const full = Math.round(share * width);
  const megabytes = (bytes / 1e6).toFixed(0);
  const counts = stage === 'extract' ? `${megabytes} MB, ${lines} lines` : `${women} women`;
  return `${stage} [${'#'.repeat(full)}${' '.repeat(width - full)}] ${Math.round(share * 100)} %, ${counts}, ${left} s left   `;
}
