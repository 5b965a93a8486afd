// Writes the checklist into DEVELOPERS.md: row, level, state, tests. Run by `npm run conformance:table`.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { rows as blackBox } from './check-service.mjs';

const root = new URL('../../', import.meta.url);
const begin = '<!-- conformance: begin -->';
const end = '<!-- conformance: end -->';

export const checklist = JSON.parse(readFileSync(new URL('checklist.json', import.meta.url), 'utf8'));

/** Ids at the head of a test's name: `D-02, D-04 to D-09: lists …`. */
const named = /['"`]((?:[A-Z]-[A-Z]?\d{2})(?:(?:, | and | to )[A-Z]-[A-Z]?\d{2})*):/g;

function idsIn(head) {
  const ranges = [...head.matchAll(/([A-Z])-(\d{2}) to [A-Z]-(\d{2})/g)].flatMap(([, letter, from, to]) =>
    Array.from(
      { length: Number(to) - Number(from) + 1 },
      (_, at) => `${letter}-${String(Number(from) + at).padStart(2, '0')}`,
    ),
  );
  return [...ranges, ...head.split(/, | and | to /)];
}

function testFiles() {
  return readdirSync(new URL('test/', root), { recursive: true })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => name.endsWith('.test.ts') && !name.includes('node_modules'))
    .sort();
}

/** Files with a test named after a row, by id. */
function filesById() {
  const found = new Map();
  for (const file of testFiles()) {
    const text = readFileSync(new URL(`test/${file}`, root), 'utf8');
    for (const [, head] of text.matchAll(named)) {
      for (const id of idsIn(head)) found.set(id, new Set([...(found.get(id) ?? []), file]));
    }
  }
  return found;
}

/**
 * The checklist with what proves each row.
 *
 * Returns  { id, level, title, withoutTest?, isSeenOutside, files }; files under test/
 */
export function checklistWithTests() {
  const byId = filesById();
  return checklist.map((row) => ({
    ...row,
    isSeenOutside: blackBox.some(({ id }) => id === row.id),
    files: [...(byId.get(row.id) ?? [])],
  }));
}

function stateOf({ isSeenOutside, files, withoutTest }) {
  if (files.length > 0 || isSeenOutside) return 'tested';
  return withoutTest === undefined ? 'NOT TESTED' : `no test: ${withoutTest}`;
}

function line(row) {
  const places = [...(row.isSeenOutside ? ['over HTTP'] : []), ...row.files.map((file) => `\`${file}\``)];
  return `| ${row.id} | ${row.level} | ${row.title.replaceAll('|', '\\|')} | ${stateOf(row)} | ${places.join(', ')} |`;
}

/** The table as Markdown. */
export const table = () =>
  [
    '| Row | Level | In words | State | Tests in `test/` |',
    '| --- | --- | --- | --- | --- |',
    ...checklistWithTests().map(line),
  ].join('\n');

/** DEVELOPERS.md with the table of today. */
export function withTable(text) {
  const [before, rest] = text.split(begin);
  const after = rest?.split(end)[1];
  if (before === undefined || after === undefined)
    throw new Error('DEVELOPERS.md lacks the marks of the table.');
  return `${before}${begin}\n\n<!-- prettier-ignore -->\n${table()}\n\n${end}${after}`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const path = new URL('DEVELOPERS.md', root);
  writeFileSync(path, withTable(readFileSync(path, 'utf8')));
}
