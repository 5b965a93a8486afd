// Mutates the code of some folders and counts which mutants the tests find: node mutate.mjs src/rules
import { fork } from 'node:child_process';
import { appendFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { clearTimeout, setTimeout } from 'node:timers';
import { hunters } from './hunters.mjs';
import { prepare } from './prepare.mjs';
import { work } from './places.mjs';

const folders = process.argv.slice(2);
const workers = Number(process.env.MUTATION_WORKERS ?? '2');
/** Longer than every test together takes. */
const hangsAfterMs = 300_000;

const timelinesChange = folders.some((folder) => folder.startsWith('src/timeline'));
const files = hunters();
/** One in so many is tried: a figure with a known uncertainty where the whole takes hours. */
const sample = Number(process.env.MUTATION_SAMPLE ?? '1');
/** After so many minutes no further mutant is begun; they come in an even mixture, so that those tried are a fair sample. */
const minutes = Number(process.env.MUTATION_MINUTES ?? 'Infinity');
/** Another number, another mixture: a sample that nobody has written tests against. */
const seed = Number(process.env.MUTATION_SEED ?? '0');
const mixed = ({ id }) => ((Number(id) + seed * 7919) * 2_654_435_761) % 2 ** 32;
const mutants = (await prepare(folders))
  .filter((_, index) => index % sample === 0)
  .sort((a, b) => mixed(a) - mixed(b));
let endsAt = Infinity;
const byId = new Map(mutants.map((mutant) => [mutant.id, mutant]));
const waiting = [...mutants];
const results = [];
console.log(`${mutants.length} mutants in ${folders.join(', ')}`);

const log = join(work, '..', `survivors-${folders.join('-').replaceAll('/', '-')}.txt`);
writeFileSync(log, '');

function note({ id, status }) {
  const { file, line, column, mutatorName, replacement } = byId.get(id);
  const by = replacement.replaceAll(/\s+/g, ' ').slice(0, 160);
  appendFileSync(log, `${file}:${line}:${column} ${status} ${mutatorName} -> ${by}\n`);
}

function startWorker() {
  return new Promise((resolve, reject) => {
    const child = fork(join(import.meta.dirname, 'worker.mjs'));
    let current;
    let timer;
    const next = () => {
      clearTimeout(timer);
      if (performance.now() > endsAt) waiting.length = 0;
      current = waiting.shift();
      if (current === undefined) {
        child.kill();
        resolve();
        return;
      }
      timer = setTimeout(() => child.kill('SIGKILL'), hangsAfterMs);
      child.send({ kind: 'mutant', mutant: { id: current.id, file: current.file } });
    };
    child.on('message', (message) => {
      if (message.kind === 'ready') {
        console.log(`${message.count} tests`);
        endsAt = Math.min(endsAt, performance.now() + minutes * 60_000);
        if (message.failing.length > 0) {
          console.error(`These fail without a mutant:\n${message.failing.join('\n')}`);
          process.exit(1);
        }
      } else {
        const result = { id: message.id, status: message.status };
        results.push(result);
        if (result.status !== 'killed') note(result);
        if (results.length % 100 === 0) console.log(`${results.length} of ${mutants.length}`);
      }
      next();
    });
    child.on('error', () => undefined);
    child.on('exit', (_code, signal) => {
      clearTimeout(timer);
      if (current === undefined) return;
      if (signal !== 'SIGKILL') {
        reject(new Error(`a worker ended at mutant ${current.id}`));
        return;
      }
      results.push({ id: current.id, status: 'timeout' });
      startWorker().then(resolve, reject);
    });
    child.send({ kind: 'start', files, timelinesChange });
  });
}

await Promise.all(Array.from({ length: workers }, startWorker));

const counts = new Map();
for (const { id, status } of results) {
  const file = byId.get(id)?.file ?? '';
  const line = counts.get(file) ?? {};
  line[status] = (line[status] ?? 0) + 1;
  counts.set(file, line);
}
const score = ({ killed = 0, timeout = 0, survived = 0, 'no-coverage': bare = 0 }) =>
  (100 * (killed + timeout)) / Math.max(1, killed + timeout + survived + bare);
const total = {};
for (const [file, line] of [...counts].sort()) {
  console.log(`${score(line).toFixed(1).padStart(5)} % ${file} ${JSON.stringify(line)}`);
  for (const [status, count] of Object.entries(line)) total[status] = (total[status] ?? 0) + count;
}
console.log(`${score(total).toFixed(2)} % of ${folders.join(', ')} ${JSON.stringify(total)}`);
