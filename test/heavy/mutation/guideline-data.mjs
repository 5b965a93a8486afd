// Mutates the guidelines as data, where the mutators of code have nothing to say: every number nudged up and down, every
// comparator turned, every branch of a rule taken out, every list of a check shortened. Counts what the case rows notice.
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { prepare as layOut } from './prepare.mjs';
import { work } from './places.mjs';

const load = (name) => import(pathToFileURL(join(work, name)).href);
await layOut([]);
const [cases, bundles, evaluation, runner, rules, registry] = await Promise.all(
  [
    'test/support/case-schema.js',
    'test/support/case-bundle.js',
    'src/evaluate.js',
    'test/support/run-cases.js',
    'src/rules/apply-rules.js',
    'src/guidelines/registry.js',
  ].map(load),
);
const { liftToFloor } = await load('src/rules/urgency-floor.js');

const folder = join(work, 'test', 'cases');
const rows = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.json'))
  .flatMap((path) => cases.readCaseFile(join(folder, path)).rows)
  .map((row) => {
    const { timeline } = evaluation.prepare(bundles.caseBundle(row.given), {
      asOf: row.asOf ?? bundles.caseAsOf(row.given),
    }).built;
    return { row, timeline };
  });
const floorId = registry.defaultGuidelineId;
const answer = (timeline, guideline) =>
  rules.applyRules(timeline, guideline, registry.timelineValues).assessment;
for (const each of rows) each.floor = answer(each.timeline, registry.guidelineOf(floorId));

const isLimit = (value) =>
  typeof value === 'object' && value !== null && 'comparator' in value && 'value' in value;
const turned = { '>=': '>', '>': '>=', '<=': '<', '<': '<=' };
/** Just enough to be another limit: strip grades by a half, everything else by one in a hundred. */
const step = ({ unit, value }) =>
  unit === '{grade}' ? 0.5 : Math.max(Math.abs(value) / 100, Number.EPSILON);

/** Paths to every limit, rule part and list of names below a value. */
function* mutationsOf(value, path, inNeed) {
  if (typeof value !== 'object' || value === null) return;
  if (isLimit(value)) {
    for (const sign of [1, -1])
      yield {
        path,
        what: `${value.id} ${value.value} ${sign > 0 ? 'up' : 'down'}`,
        with: { ...value, value: value.value + sign * step(value) },
      };
    yield {
      path,
      what: `${value.id} ${value.comparator} turned`,
      with: { ...value, comparator: turned[value.comparator] },
    };
    return;
  }
  if (Array.isArray(value)) {
    for (const [index, item] of value.entries()) {
      if (inNeed || typeof item === 'string')
        yield {
          path,
          what: `${path.join('.')} without ${typeof item === 'string' ? item : index}`,
          with: value.filter((_, at) => at !== index),
        };
      yield* mutationsOf(item, [...path, index], inNeed);
    }
    return;
  }
  for (const [key, inner] of Object.entries(value)) {
    if (key === 'citation' || key === 'whenCannotTell' || key === 'sources') continue;
    yield* mutationsOf(inner, [...path, key], inNeed || key === 'when');
  }
}

function replaced(value, [head, ...rest], by) {
  if (head === undefined) return by;
  if (Array.isArray(value))
    return value.map((item, index) => (index === head ? replaced(item, rest, by) : item));
  return { ...value, [head]: replaced(value[head], rest, by) };
}

/** What decides the class and the urgency; actions, medicines and prevention have tests of their own. */
const decisive = ['questions', 'classRules', 'urgencyRules'];
const lists = new Set(['questions', 'classRules', 'urgencyRules']);

const survivors = [];
const total = { killed: 0, survived: 0 };
const byGuideline = [];
for (const id of process.argv.length > 2 ? process.argv.slice(2) : registry.guidelineIds) {
  const guideline = registry.guidelineOf(id);
  const own = rows.filter(({ row }) => row.expect[id] !== undefined);
  const count = { killed: 0, survived: 0 };
  const killers = new Map();
  for (const part of decisive)
    for (const mutation of mutationsOf(guideline[part], [part], false)) {
      if (lists.has(mutation.path.at(-1)) && mutation.path.length === 1) continue;
      const mutant = replaced(guideline, mutation.path, mutation.with);
      own.sort((a, b) => (killers.get(b) ?? 0) - (killers.get(a) ?? 0));
      const killer = own.find(({ row, timeline, floor }) => {
        try {
          const plain = answer(timeline, mutant);
          const assessment = id === floorId ? plain : liftToFloor(plain, floor);
          runner.expectAnswer({ guideline: mutant, assessment }, row.expect[id]);
          return false;
        } catch {
          return true;
        }
      });
      if (killer === undefined) {
        count.survived += 1;
        const [kind, index] = mutation.path;
        survivors.push(`${id} ${kind}.${guideline[kind][index]?.id ?? ''}: ${mutation.what}\n`);
      } else {
        count.killed += 1;
        killers.set(killer, (killers.get(killer) ?? 0) + 1);
      }
    }
  byGuideline.push([id, count]);
  total.killed += count.killed;
  total.survived += count.survived;
  console.log(
    id,
    JSON.stringify(count),
    `${((100 * count.killed) / (count.killed + count.survived)).toFixed(1)} %`,
  );
}
console.log(
  'all',
  JSON.stringify(total),
  `${((100 * total.killed) / (total.killed + total.survived)).toFixed(2)} %`,
);
writeFileSync(join(work, '..', 'survivors-guideline-data.txt'), survivors.join(''));
