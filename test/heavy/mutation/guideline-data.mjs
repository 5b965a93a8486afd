// Mutates the guidelines as data, where the mutators of code have nothing to say: every number nudged up and down, every
// comparator turned, every branch of a rule taken out, every list of a check shortened. Counts what is noticed by the
// case rows and by the probes of test/guidelines: limits, lists, classes.
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
const { faultsOf, timelineOf } = await load('test/support/probe.js');
const { everyProbe } = await load('test/guidelines/every-probe.js');

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

/** Each throws when the guideline, mutated or not, does not answer as the row or the probe says. */
const rowChecks = (id) =>
  rows
    .filter(({ row }) => row.expect[id] !== undefined)
    .map(({ row, timeline, floor }) => (guideline) => {
      const plain = answer(timeline, guideline);
      const assessment = id === floorId ? plain : liftToFloor(plain, floor);
      runner.expectAnswer({ guideline, assessment }, row.expect[id]);
    });
const probeChecks = (id) =>
  everyProbe
    .filter((probe) => probe.guideline === id)
    .map((probe) => {
      const timeline = timelineOf(probe);
      return (guideline) => {
        const faults = faultsOf(probe, answer(timeline, guideline));
        if (faults.length > 0) throw new Error(faults.join('; '));
      };
    });

const isLimit = (value) =>
  typeof value === 'object' && value !== null && 'comparator' in value && 'value' in value;
const turned = { '>=': '>', '>': '>=', '<=': '<', '<': '<=' };
/** Just enough to be another limit: grades by a half, days and fetuses by one, everything else by one in a hundred. */
const steps = { '{grade}': 0.5, d: 1, '{fetuses}': 1 };
const step = ({ unit, value }) => steps[unit] ?? Math.max(Math.abs(value) / 100, Number.EPSILON);

/** The same limit stands in many questions: it is changed everywhere at once, as an edit of its one line would. */
function limitsIn(value, found = new Map()) {
  if (typeof value !== 'object' || value === null) return found;
  if (isLimit(value)) found.set(value.id, value);
  else for (const inner of Object.values(value)) limitsIn(inner, found);
  return found;
}

function withLimit(value, id, by) {
  if (typeof value !== 'object' || value === null) return value;
  if (isLimit(value)) return value.id === id ? by : value;
  if (Array.isArray(value)) return value.map((item) => withLimit(item, id, by));
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, withLimit(inner, id, by)]));
}

function* limitMutants(guideline) {
  const decided = Object.fromEntries(decisive.map((part) => [part, guideline[part]]));
  for (const limit of limitsIn(decided).values()) {
    const nudged = (sign) => ({
      ...limit,
      value: limit.value + sign * step(limit),
      ...(limit.alsoPrintedAs === undefined
        ? {}
        : {
            alsoPrintedAs: limit.alsoPrintedAs.map((also) => ({
              ...also,
              value: also.value + sign * step(also),
            })),
          }),
    });
    for (const [what, by] of [
      ['up', nudged(1)],
      ['down', nudged(-1)],
      ['turned', { ...limit, comparator: turned[limit.comparator] }],
    ])
      yield {
        what: `limit ${limit.id} ${limit.comparator} ${limit.value} ${what}`,
        mutant: withLimit(guideline, limit.id, by),
      };
  }
}

/** Every rule and branch of a rule taken out; every name taken out of a list that a question looks for. */
function* partMutants(guideline) {
  for (const part of ['classRules', 'urgencyRules'])
    for (const [index, rule] of guideline[part].entries()) {
      yield {
        what: `${part} ${rule.id} taken out`,
        mutant: { ...guideline, [part]: guideline[part].filter((_, at) => at !== index) },
      };
      for (const { path, what, by } of shortened(rule.when, ['when'], true))
        yield { what: `${part} ${rule.id} ${what}`, mutant: replaced(guideline, [part, index, ...path], by) };
      for (const name of rule.supersedes ?? [])
        yield {
          what: `${part} ${rule.id} no longer supersedes ${name}`,
          mutant: replaced(
            guideline,
            [part, index, 'supersedes'],
            rule.supersedes.filter((one) => one !== name),
          ),
        };
    }
  const named = new Set(JSON.stringify([guideline.classRules, guideline.urgencyRules]).match(/[a-z0-9-]+/g));
  for (const [index, question] of guideline.questions.entries()) {
    if (!named.has(question.id)) continue;
    for (const { path, what, by } of shortened(question, [], false))
      yield {
        what: `question ${question.id} ${what}`,
        mutant: replaced(guideline, ['questions', index, ...path], by),
      };
  }
}

const passedOver = new Set([
  'citation',
  'whenCannotTell',
  'limits',
  'severe',
  'severeConfirmation',
  'confirmation',
]);

function* shortened(value, path, everyItem) {
  if (typeof value !== 'object' || value === null || isLimit(value)) return;
  if (Array.isArray(value))
    for (const [index, item] of value.entries()) {
      const name = typeof item === 'string' ? item : (item.id ?? index);
      if (everyItem || typeof item === 'string' || item.id !== undefined)
        yield { path, what: `${path.join('.')} without ${name}`, by: value.filter((_, at) => at !== index) };
      yield* shortened(item, [...path, index], everyItem);
    }
  else
    for (const [key, inner] of Object.entries(value))
      if (!passedOver.has(key)) yield* shortened(inner, [...path, key], everyItem);
}

function replaced(value, [head, ...rest], by) {
  if (head === undefined) return by;
  if (Array.isArray(value))
    return value.map((item, index) => (index === head ? replaced(item, rest, by) : item));
  return { ...value, [head]: replaced(value[head], rest, by) };
}

/** What decides the class and the urgency; actions, medicines and prevention have tests of their own. */
const decisive = ['questions', 'classRules', 'urgencyRules'];

/** One in so many is tried. */
const sample = Number(process.env.MUTATION_SAMPLE ?? '1');
const survivors = [];
const total = { killed: 0, survived: 0 };
for (const id of process.argv.length > 2 ? process.argv.slice(2) : registry.guidelineIds) {
  const guideline = registry.guidelineOf(id);
  const own = [...rowChecks(id), ...probeChecks(id)];
  for (const check of own) check(guideline);
  const count = { killed: 0, survived: 0 };
  const killers = new Map();
  for (const [index, { what, mutant }] of [...limitMutants(guideline), ...partMutants(guideline)].entries()) {
    if (index % sample !== 0) continue;
    own.sort((a, b) => (killers.get(b) ?? 0) - (killers.get(a) ?? 0));
    const killer = own.find((check) => {
      try {
        check(mutant);
        return false;
      } catch {
        return true;
      }
    });
    if (killer === undefined) {
      count.survived += 1;
      survivors.push(`${id} ${what}\n`);
    } else {
      count.killed += 1;
      killers.set(killer, (killers.get(killer) ?? 0) + 1);
    }
  }
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
