// Tasks over threads: this one takes part, the others are workers. No order is promised, none is needed.
import { Worker } from 'node:worker_threads';
import { doTask, type Done, type Task } from './tasks.ts';

export interface Pool {
  /**
   * Does every task.
   *
   * Given    tasks    independent of each other
   *          onDone   called as each is done, with its place in the list
   * Throws   what a task throws, or Interrupted; the others are then given up
   */
  readonly run: (tasks: readonly Task[], onDone: (at: number, done: Done) => void) => Promise<void>;
  /** Ends the other threads, whatever they are doing. */
  readonly close: () => Promise<void>;
}

/** The run was asked to stop; what was finished can be gone on with. */
export class Interrupted extends Error {}

/** What a worker is sent: the list, and the place of the next task in memory that all threads share. */
export interface Work {
  readonly tasks: readonly Task[];
  readonly next: Int32Array;
}

/** What a worker says: a task is done, or (without one) the list is at its end. */
export interface Said {
  readonly at?: number;
  readonly done?: Done;
}

/**
 * Threads for a whole run: a worker is started once, as loading the rules takes longer than many a task.
 *
 * Given    threads  how many tasks at a time; 1: all in this thread
 *          signal   asks to stop: nothing is begun after it
 */
export function openPool(threads: number, signal?: AbortSignal): Pool {
  let workers: readonly Worker[] | undefined;
  return {
    run: async (tasks, onDone) => {
      const next = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
      const others = Math.min(threads, tasks.length) - 1;
      if (others > 0) workers ??= Array.from({ length: threads - 1 }, openWorker);
      const work = { tasks, next };
      const theirs = (others > 0 ? (workers ?? []) : []).map((worker) =>
        theirShare(worker, work, { onDone, signal }),
      );
      const stop = (): unknown => Atomics.store(next, 0, tasks.length);
      signal?.addEventListener('abort', stop);
      try {
        await Promise.all([ownShare(work, onDone), ...theirs]);
      } finally {
        signal?.removeEventListener('abort', stop);
        stop();
      }
      if (signal?.aborted === true) throw new Interrupted();
    },
    close: async () => {
      await Promise.all((workers ?? []).map((worker) => worker.terminate()));
      workers = undefined;
    },
  };
}

const openWorker = (): Worker => new Worker(new URL('./worker.js', import.meta.url));

/** The place of a task that nobody has begun. */
export const takeNext = ({ next }: Work): number => Atomics.add(next, 0, 1);

async function ownShare(work: Work, onDone: (at: number, done: Done) => void): Promise<void> {
  for (let at = takeNext(work), task = work.tasks[at]; task !== undefined;) {
    onDone(at, await doTask(task));
    // Lets signals and the words of the other threads in.
    await new Promise((resolve) => setImmediate(resolve));
    at = takeNext(work);
    task = work.tasks[at];
  }
}

interface Told {
  readonly onDone: (at: number, done: Done) => void;
  readonly signal: AbortSignal | undefined;
}

/** Until the worker is at the end of the list; when asked to stop, it is not waited for. */
function theirShare(worker: Worker, work: Work, { onDone, signal }: Told): Promise<void> {
  return new Promise((resolve, reject) => {
    const settle = (end: () => void): void => {
      worker.off('message', onMessage).off('error', onError);
      signal?.removeEventListener('abort', onAbort);
      end();
    };
    const onMessage = ({ at, done }: Said): void => {
      if (at === undefined || done === undefined) settle(resolve);
      else
        try {
          onDone(at, done);
        } catch (error) {
          settle(() => reject(error instanceof Error ? error : new Error(String(error))));
        }
    };
    const onError = (error: Error): void => settle(() => reject(error));
    const onAbort = (): void => settle(() => reject(new Interrupted()));
    worker.on('message', onMessage).once('error', onError);
    signal?.addEventListener('abort', onAbort);
    worker.postMessage(work);
  });
}
