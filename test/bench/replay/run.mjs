// Every mode in turn, several rounds; the result is the median of the per-round ratios. Absolute figures are for
// orientation only. node run.mjs [LINES] [ROUNDS]; FOLDER (default: the folder for temporary files) takes the file.
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { generate } from './generate.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const lines = Number(process.argv[2] ?? 1_000_000);
const rounds = Number(process.argv[3] ?? 5);
const file = join(process.env.FOLDER ?? tmpdir(), `replay-bench-${lines}.ndjson`);
if (!existsSync(file)) generate(lines, file);
const megabytes = statSync(file).size / 1e6;

const modes = [
  ['parse', 1],
  ['scan', 1],
  ['plain', 1],
  ['simd', 1],
  ['simd', 2],
  ['duck', 1],
  ['duck', 2],
];
const name = ([mode, threads]) => `${mode}:${threads}`;
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

function measure([mode, threads]) {
  return JSON.parse(
    execFileSync(process.execPath, [join(here, 'first-rule.mjs'), mode, file, String(threads)]).toString(),
  );
}

/** Tells the processor time of a whole process, all its threads, as its last words. */
const tellsCpu =
  'data:text/javascript,process.on("exit",()=>{const{user,system}=process.cpuUsage();console.error((user+system)/1e6)})';

/** The product itself: extraction, grouping, all rules for all women, report. */
function replay(threads) {
  const out = join(tmpdir(), 'replay-bench-out');
  rmSync(out, { recursive: true, force: true });
  const before = performance.now();
  const program = [join(here, '../../../dist/cli/main.js'), 'replay', file];
  const asked = ['--every', 'end', '--threads', String(threads), '--out', out];
  const { stderr, status } = spawnSync(process.execPath, ['--import', tellsCpu, ...program, ...asked]);
  if (status !== 0) throw new Error(String(stderr));
  const cpu = Number(String(stderr).trimEnd().split('\n').at(-1));
  return { seconds: (performance.now() - before) / 1000, cpu };
}

const measured = [];
for (let round = 0; round < rounds; round += 1)
  measured.push(Object.fromEntries(modes.map((mode) => [name(mode), measure(mode)])));

const ratio = (over, under, key) => median(measured.map((round) => round[over][key] / round[under][key]));
const value = (mode, key) => median(measured.map((round) => round[mode][key]));
console.log(`${lines} lines, ${megabytes.toFixed(0)} MB, ${rounds} rounds; file in the page cache`);
for (const mode of modes.map(name))
  console.log(
    `${mode.padEnd(8)} ${value(mode, 'seconds').toFixed(2)} s  ${(megabytes / value(mode, 'seconds')).toFixed(0)} MB/s  ${value(mode, 'cpu').toFixed(2)} s CPU  peak ${value(mode, 'megabytes').toFixed(0)} MB`,
  );

const answers = new Set(
  modes
    .filter(([mode]) => mode !== 'scan')
    .map((mode) => `${measured[0][name(mode)].holds} women, ${measured[0][name(mode)].events} events`),
);
console.log(`answers: ${[...answers].join(' / ')}${answers.size === 1 ? ' (all the same)' : ' DIFFERENT'}`);
const goal = (words, figure, aim, isMet) =>
  console.log(`${isMet ? 'met   ' : 'missed'} ${words}: ${figure} (aim: ${aim})`);
const overParse = ratio('parse:1', 'simd:1', 'cpu');
const overDuck = ratio('duck:1', 'simd:1', 'seconds');
const overDuckTwo = ratio('duck:2', 'simd:2', 'seconds');
const two = ratio('simd:1', 'simd:2', 'seconds');
const events = measured[0]['simd:1'].events;
const peak = value('simd:1', 'megabytes');
const allowed = 100 + (50 * events) / 1e6;
goal('against JSON.parse of every line, CPU', overParse.toFixed(1), 'at least 8', overParse >= 8);
const andCpu = (figure, over, under) => `${figure.toFixed(2)} (CPU ${ratio(over, under, 'cpu').toFixed(2)})`;
goal('against DuckDB, one thread', andCpu(overDuck, 'duck:1', 'simd:1'), 'at least 1.5', overDuck >= 1.5);
goal(
  'against DuckDB, two threads',
  andCpu(overDuckTwo, 'duck:2', 'simd:2'),
  'at least 1.3',
  overDuckTwo >= 1.3,
);
goal('two threads against one', andCpu(two, 'simd:1', 'simd:2'), 'at least 1.7', two >= 1.7);
goal('peak memory', `${peak.toFixed(0)} MB`, `at most ${allowed.toFixed(0)} MB`, peak <= allowed);

const [one, both] = [replay(1), replay(2)];
const rules = (one.cpu - value('simd:1', 'cpu')) / one.cpu;
goal(
  'all rules for all women, share of the CPU of the whole run, view of the end',
  `${(rules * 100).toFixed(0)} %`,
  'at most 15 %',
  rules <= 0.15,
);
const told = ({ seconds, cpu }) => `${seconds.toFixed(1)} s (CPU ${cpu.toFixed(1)} s)`;
console.log(
  `whole run: ${told(one)} with one thread, ${told(both)} with two: ${(one.seconds / both.seconds).toFixed(2)}`,
);
if (answers.size !== 1) process.exitCode = 1;
