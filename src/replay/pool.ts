// Tasks over threads: one thread works here, more in workers. No order is promised, none is needed.
import { Worker } from 'node:worker_threads';
import { doTask, type Done, type Task } from './tasks.ts';

/**
 * Does every task.
 *
 * Given    tasks    of one kind, independent of each other
 *          threads  how many at a time; 1: in this thread
 *          onDone   called as each is done, with its place in the list
 * Throws   what a task throws; the others are then given up
 */
export async function doTasks(
  tasks: readonly Task[],
  threads: number,
  onDone: (at: number, done: Done) => void,
): Promise<void> {
  if (threads <= 1 || tasks.length <= 1) {
    for (const [at, task] of tasks.entries()) onDone(at, await doTask(task));
    return;
  }
  let next = 0;
  const workers = Array.from({ length: Math.min(threads, tasks.length) }, () => openWorker());
  try {
    await Promise.all(
      workers.map(async (worker) => {
        for (;;) {
          const at = next;
          const task = tasks[at];
          if (task === undefined) return;
          next += 1;
          onDone(at, await askWorker(worker, task));
        }
      }),
    );
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

const openWorker = (): Worker => new Worker(new URL('./worker.js', import.meta.url));

function askWorker(worker: Worker, task: Task): Promise<Done> {
  return new Promise((resolve, reject) => {
    const onMessage = (done: Done): void => {
      worker.off('error', onError);
      resolve(done);
    };
    const onError = (error: Error): void => {
      worker.off('message', onMessage);
      reject(error);
    };
    worker.once('message', onMessage);
    worker.once('error', onError);
    worker.postMessage(task);
  });
}
