// One page about the rules, one rule of it, or the rows about one name. Text in, text out.
import type { RulePageName } from './rule-table.ts';

/**
 * A page by name (none: RULES.md), the section of one rule, or the rows of the tables about one name.
 *
 * Given    read  the pages by name
 *          id    `numbers`, `cases`; a heading (`pre-eclampsia`, `urgency:seizure`); `class:pre-eclampsia` as answers
 *                have it; or a step, a medicine rule, a limit, by the name that answers give it
 * Returns  markdown; undefined when nothing is called so
 * Throws   never
 */
export function pageNamed(read: (name: RulePageName) => string, id: string | undefined): string | undefined {
  if (id === undefined) return read('rules');
  if (id === 'numbers' || id === 'cases') return read(id);
  return (
    ruleSection(read('rules'), id.replace(/^class:/, '')) ??
    rowsOf(read('rules'), id) ??
    rowsOf(read('numbers'), id)
  );
}

/**
 * The section of one rule.
 *
 * Given    page  RULES.md
 *          id    as the headings have it: `pre-eclampsia`, `urgency:seizure`, `Every number`
 * Returns  the section with its heading; undefined when there is none
 */
export function ruleSection(page: string, id: string): string | undefined {
  const wanted = plainHeading(id);
  const lines = page.split('\n');
  const start = lines.findIndex((line) => /^#{2,3} /.test(line) && plainHeading(line) === wanted);
  const level = /^#+/.exec(lines[start] ?? '')?.[0].length;
  if (start < 0 || level === undefined) return undefined;
  const length = lines
    .slice(start + 1)
    .findIndex((line) => (/^(#+) /.exec(line)?.[1]?.length ?? level + 1) <= level);
  const end = length < 0 ? lines.length : start + 1 + length;
  return `${lines.slice(start, end).join('\n').trimEnd()}\n`;
}

/** Ids of the rules that have a section of their own, in the order of the page. */
export const ruleSectionIds = (page: string): readonly string[] =>
  page
    .split('\n')
    .flatMap((line) => (line.startsWith('### ') ? [line.slice('### '.length).replace(': ', ':')] : []));

/** The rows that begin with this name in `code`, each table under its heading; undefined when there are none. */
function rowsOf(page: string, id: string): string | undefined {
  const found: string[] = [];
  let heading = '';
  let table: string[] = [];
  for (const line of page.split('\n')) {
    if (line.startsWith('#')) heading = line;
    table = line.startsWith('|') ? [...table, line] : [];
    const [head, rule] = table;
    if (head === undefined || rule === undefined || table.length < 3 || !isAbout(line, id)) continue;
    if (!found.includes(heading)) found.push(heading, '', head, rule);
    found.push(line);
  }
  return found.length === 0 ? undefined : `${found.join('\n')}\n`;
}

/** The first cell holds the name, alone or after the words it stands for. */
const isAbout = (row: string, id: string): boolean => (row.split(' | ')[0] ?? '').includes(`\`${id}\``);

const plainHeading = (line: string): string => line.replace(/^#+ /, '').replace(/:\s*/, ':').toLowerCase();
