// Runs the tests against one mutant after another; the parent says which, and ends the process when one hangs.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { work } from './places.mjs';

/** Some tests print tables for people. */
console.log = () => undefined;
const space = (globalThis.__stryker__ = { mutantCoverage: { static: {}, perTest: {} } });
let timelinesChange = false;
const load = (name) => import(pathToFileURL(join(work, name)).href);

/** A mutant that goes through its own place so much oftener than the original is in an endless loop. */
const loopFactor = 100;
const loopLeast = 100_000;

async function loadTests(files) {
  const { tests, startFile } = await load('vitest-shim.mjs');
  for (const file of files) {
    startFile(file);
    await load(file);
  }
  return [...tests, ...(await caseTests())];
}

/** One test for each row of the case files: every guideline it names. Timelines are built once unless they are mutated. */
async function caseTests() {
  const [
    { readCaseFile },
    { caseAsOf, caseBundle },
    { prepare },
    { opinionOf },
    { guidelineOf },
    { expectAnswer },
  ] = await Promise.all(
    [
      'test/support/case-schema.js',
      'test/support/case-bundle.js',
      'src/evaluate.js',
      'src/opinions.js',
      'src/guidelines/registry.js',
      'test/support/run-cases.js',
    ].map(load),
  );
  const folder = join(work, 'test', 'cases');
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.json'),
  );
  const rows = paths.flatMap((path) => readCaseFile(join(folder, path)).rows);
  return rows.map((row) => {
    const build = () =>
      prepare(caseBundle(row.given), { asOf: row.asOf ?? caseAsOf(row.given) }).built.timeline;
    const built = timelinesChange ? undefined : build();
    return {
      name: `case ${row.id}`,
      body: () => {
        const timeline = built ?? build();
        for (const [id, expected] of Object.entries(row.expect)) {
          const { guideline, assessment } = opinionOf(timeline, guidelineOf(id));
          expectAnswer({ guideline, assessment }, expected);
        }
      },
    };
  });
}

function passes({ body }) {
  try {
    body();
    return true;
  } catch {
    return false;
  }
}

process.on('message', async (message) => {
  if (message.kind === 'start') {
    timelinesChange = message.timelinesChange;
    const tests = await loadTests(message.files);
    const failing = [];
    tests.forEach((test, index) => {
      test.id = String(index);
      space.currentTestId = test.id;
      const begin = performance.now();
      if (!passes(test)) failing.push(test.name);
      test.ms = performance.now() - begin;
    });
    space.currentTestId = undefined;
    const { perTest, static: atLoad } = space.mutantCoverage;
    space.mutantCoverage = { static: {}, perTest: {} };
    const hits = {};
    const covering = {};
    for (const test of tests)
      for (const [id, count] of Object.entries(perTest[test.id] ?? {})) {
        hits[id] = (hits[id] ?? 0) + count;
        (covering[id] ??= []).push(test);
      }
    process.send({ kind: 'ready', count: tests.length, failing });
    process.on('message', (next) => {
      if (next.kind === 'mutant')
        process.send({ kind: 'result', ...judge(next.mutant, covering, hits, atLoad) });
    });
  }
});

const lastKillers = new Map();

/** The test that killed the last mutants of the same file goes first, then the quick ones. */
function judge({ id, file }, covering, hits, atLoad) {
  const tests = covering[id] ?? [];
  if (tests.length === 0) return { id, status: atLoad[id] === undefined ? 'no-coverage' : 'static' };
  const killers = lastKillers.get(file) ?? new Map();
  const ordered = [...tests].sort((a, b) => (killers.get(b) ?? 0) - (killers.get(a) ?? 0) || a.ms - b.ms);
  space.activeMutant = id;
  space.hitCount = 0;
  space.hitLimit = (hits[id] ?? 0) * loopFactor + loopLeast;
  const killer = ordered.find((test) => !passes(test));
  space.activeMutant = undefined;
  space.hitLimit = undefined;
  space.hitCount = undefined;
  if (killer === undefined) return { id, status: 'survived' };
  killers.set(killer, (killers.get(killer) ?? 0) + 1);
  lastKillers.set(file, killers);
  return { id, status: 'killed', by: killer.name };
}
