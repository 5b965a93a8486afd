// The `rules` command: a page about the rules, or one rule of it.
import { pageNamed, ruleSectionIds } from '../presenters/rule-lookup.ts';
import type { RulePageName } from '../presenters/rule-table.ts';
import { exitCodes, type CommandResult } from './assess.ts';

/**
 * The rules in words.
 *
 * Given    read  the pages by name
 *          id    of one rule, or `numbers`, `cases`; absent: RULES.md
 * Returns  exit code 2, with the ids known, when there is no such rule
 */
export function rulesText(read: (name: RulePageName) => string, id: string | undefined): CommandResult {
  const output = pageNamed(read, id);
  if (output !== undefined) return { exitCode: exitCodes.answered, output, errors: '' };
  const known = [...ruleSectionIds(read('rules')), 'numbers', 'cases'].map((each) => `  ${each}\n`);
  const errors = `pregnancy-htn: There is no rule of this id. Known:\n${known.join('')}`;
  return { exitCode: exitCodes.usage, output: '', errors };
}
