// The `rules` command: RULES.md, or one rule of it.
import { ruleSection, ruleSectionIds } from '../presenters/rule-table.ts';
import { exitCodes, type CommandResult } from './assess.ts';

/**
 * The rules in words.
 *
 * Given    page  RULES.md
 *          id    of one rule; absent: the whole page
 * Returns  exit code 2, with the ids known, when there is no such rule
 */
export function rulesText(page: string, id: string | undefined): CommandResult {
  const output = id === undefined ? page : ruleSection(page, id);
  if (output !== undefined) return { exitCode: exitCodes.answered, output, errors: '' };
  const known = ruleSectionIds(page).map((each) => `  ${each}\n`);
  const errors = `pregnancy-htn: There is no rule of this id. Known:\n${known.join('')}`;
  return { exitCode: exitCodes.usage, output: '', errors };
}
