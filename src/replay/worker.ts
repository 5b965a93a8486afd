// A thread that takes tasks from a list it shares with the others, one at a time.
import { parentPort } from 'node:worker_threads';
import { takeNext, type Said, type Work } from './pool.ts';
import { doTask } from './tasks.ts';

async function share(work: Work): Promise<void> {
  const say = (said: Said): void => parentPort?.postMessage(said);
  for (let at = takeNext(work), task = work.tasks[at]; task !== undefined;) {
    say({ at, done: await doTask(task) });
    at = takeNext(work);
    task = work.tasks[at];
  }
  say({});
}

parentPort?.on('message', (work: Work) => void share(work));
