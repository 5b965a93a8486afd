// A thread that does the tasks it is sent, one at a time.
import { parentPort } from 'node:worker_threads';
import { doTask, type Task } from './tasks.ts';

parentPort?.on('message', (task: Task) => {
  void doTask(task).then((done) => parentPort?.postMessage(done));
});
