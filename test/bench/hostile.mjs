// 10,000 malformed variants through the FHIR door, lenient and strict in turn: no failure of ours, no growth of the heap,
// and the worst time against the median for the size. `npm run bench:hostile`; HOSTILE=1000 for fewer.
import { Buffer } from 'node:buffer';
import { readdirSync, readFileSync } from 'node:fs';
import { validateStrict } from '../../dist/bundle/strict/validate-strict.js';
import { READ_TYPES } from '../../dist/bundle/read-types.js';
import { RequestError } from '../../dist/errors.js';
import { assessReply } from '../../dist/http/fhir-operations.js';
import { parseJson } from '../../dist/http/json-text.js';
import { variantOf } from './mutate.mjs';

const variants = Number(process.env.HOSTILE ?? 10_000);
const now = Date.parse('2026-01-01T00:00:00Z');
const largest = 120_000;
const folder = new URL('../data/', import.meta.url);

function corpus() {
  const folders = ['hl7-r4-examples', 'us-core-examples', 'fhir-validator-cases', 'synthea-bundles'];
  const files = folders.flatMap((name) =>
    readdirSync(new URL(`${name}/`, folder))
      .filter((file) => file.endsWith('.json'))
      .map((file) => readFileSync(new URL(`${name}/${file}`, folder), 'utf8')),
  );
  const stories = readdirSync(new URL('../../examples/', import.meta.url)).flatMap((name) => {
    try {
      return [readFileSync(new URL(`../../examples/${name}/request.json`, import.meta.url), 'utf8')];
    } catch {
      return [];
    }
  });
  return [...files, ...stories, ...stories].flatMap((text) => {
    try {
      const value = JSON.parse(text);
      const resource =
        value.prefetch === undefined
          ? value
          : {
              resourceType: 'Bundle',
              type: 'collection',
              entry: Object.values(value.prefetch).map((each) => ({ resource: each })),
            };
      return text.length > largest
        ? []
        : [
            resource.resourceType === 'Bundle'
              ? resource
              : { resourceType: 'Bundle', type: 'collection', entry: [{ resource }] },
          ];
    } catch {
      return [];
    }
  });
}

async function answer(text, seed) {
  const call = {
    now,
    accept: undefined,
    prefer: seed % 2 === 0 ? 'handling=strict' : undefined,
    warnings: [],
    body: async () => parseJson(Buffer.from(text, 'utf8'), 64),
    query: () => undefined,
    parameter: () => undefined,
  };
  try {
    return (await assessReply(call)).status;
  } catch (error) {
    if (error instanceof RequestError) return error.status;
    console.log(`variant ${seed}: ${error instanceof Error ? error.stack : String(error)}`);
    return 500;
  }
}

const heapUsed = () => {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 1_000_000;
};

// Each type's schema is compiled when it is first met: once in the life of a process, and not what is measured here.
for (const resourceType of ['Bundle', 'Parameters', ...READ_TYPES.keys()]) validateStrict({ resourceType });
const files = corpus();
for (let seed = 1; seed <= 300; seed += 1) await answer(variantOf(files, seed), seed);
const before = heapUsed();
const statuses = new Map();
const timed = [];
for (let seed = 1; seed <= variants; seed += 1) {
  const text = variantOf(files, seed);
  const started = performance.now();
  const status = await answer(text, seed);
  timed.push({ seed, size: text.length, ms: performance.now() - started });
  statuses.set(status, (statuses.get(status) ?? 0) + 1);
}
const growth = heapUsed() - before - (timed.length * 60) / 1_000_000;

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0;
const bySize =
  Map.groupBy === undefined ? new Map() : Map.groupBy(timed, ({ size }) => Math.ceil(Math.log2(size + 1)));
if (bySize.size === 0)
  for (const each of timed)
    bySize.set(Math.ceil(Math.log2(each.size + 1)), [
      ...(bySize.get(Math.ceil(Math.log2(each.size + 1))) ?? []),
      each,
    ]);
console.log(
  `${variants} malformed variants of ${files.length} files; answers by status: ${[...statuses].map(([status, count]) => `${status}: ${count}`).join(', ')}`,
);
// On a shared machine a single time says little: the five slowest of each size are run five times more.
async function again(seed) {
  const text = variantOf(files, seed);
  const times = [];
  for (let turn = 0; turn < 5; turn += 1) {
    const started = performance.now();
    await answer(text, seed);
    times.push(performance.now() - started);
  }
  return { seed, ms: median(times) };
}

console.log('up to kB   variants   median ms   worst ms   worst/median   seed of the worst');
for (const [power, group] of [...bySize].sort(([a], [b]) => a - b)) {
  const middle = median(group.map(({ ms }) => ms));
  const slowest = [...group].sort((a, b) => b.ms - a.ms).slice(0, 5);
  let worst = { seed: 0, ms: 0 };
  for (const { seed } of slowest) {
    const repeated = await again(seed);
    if (repeated.ms > worst.ms) worst = repeated;
  }
  const row = [
    (2 ** power / 1000).toFixed(1),
    group.length,
    middle.toFixed(2),
    worst.ms.toFixed(1),
    (worst.ms / middle).toFixed(0),
    worst.seed,
  ];
  console.log(row.map((cell, at) => String(cell).padStart([8, 10, 11, 10, 14, 19][at])).join(' '));
}
console.log(
  globalThis.gc === undefined
    ? 'heap not measured: run with --expose-gc'
    : `heap: ${before.toFixed(1)} MB before, ${growth.toFixed(1)} MB more after`,
);
const grew = globalThis.gc !== undefined && growth > 10;
if (grew) console.log('The heap grew by more than 10 MB.');
process.exitCode = statuses.has(500) || grew ? 1 : 0;
