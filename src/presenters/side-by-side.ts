// How guidelines differ on one rule: a table of limits, one column for each publication. Wording only.
import type { Guideline, Need, Threshold } from '../guidelines/guideline.ts';
import { limitWords } from '../findings/limit-words.ts';
import { measuresOf } from '../findings/measures.ts';
import { markdownTable } from './markdown-table.ts';
import { knownMark, questionsUnder } from './rule-sources.ts';
import { idWords } from '../id-words.ts';

/** Cell text by measure name. */
type Column = ReadonlyMap<string, string>;

/**
 * The limits of a rule under every guideline.
 *
 * Given    needs   the conditions of the rule in each guideline that has it
 * Returns  a table of the limits that differ, and one sentence that names those that do not
 */
export function sideBySideLines(
  needs: readonly { readonly guideline: Guideline; readonly when: Need }[],
): readonly string[] {
  const columns = needs.map(({ guideline, when }) => columnOf(guideline, when));
  const names = [...new Set(columns.flatMap((column) => [...column.keys()]))];
  const cells = (name: string): readonly string[] => columns.map((column) => column.get(name) ?? '–');
  const differing = names.filter((name) => new Set(cells(name)).size > 1);
  const same = names.filter((name) => !differing.includes(name));
  return [
    ...markdownTable(
      ['limit', ...needs.map(({ guideline }) => guideline.id)],
      differing.map((name) => [name, ...cells(name)]),
    ),
    ...(same.length === 0
      ? []
      : [
          `The same in all of them: ${same.map((name) => `${name} ${cells(name)[0] ?? ''}`).join('; ')}.`,
          '',
        ]),
  ];
}

function columnOf(guideline: Guideline, when: Need): Column {
  const column = new Map<string, string>();
  for (const question of questionsUnder(when, guideline)) {
    for (const { name, threshold } of measuresOf(question))
      column.set(measureName(question.id, name), cellOf(threshold));
    if (question.check === 'organ-involvement')
      for (const [organ, signs] of signsOf(question.criteria)) column.set(`signs, ${organ}`, signs);
  }
  return column;
}

/** Limits of severity and of detection stand in rows of their own. */
function measureName(question: string, name: string): string {
  const words = idWords(name);
  return question === 'severe-organ' || question === 'heavy-protein' ? `severe: ${words}` : words;
}

const cellOf = (threshold: Threshold): string =>
  `${limitWords(threshold)}${knownMark(threshold.citation.known)}`;

function signsOf(
  criteria: Extract<Guideline['questions'][number], { check: 'organ-involvement' }>['criteria'],
): ReadonlyMap<string, string> {
  const signs = new Map<string, string>();
  for (const criterion of criteria) {
    if (criterion.kind !== 'symptom' && criterion.kind !== 'condition') continue;
    const names = (criterion.kind === 'symptom' ? criterion.symptoms : criterion.conditions).map(idWords);
    const before = signs.get(criterion.organ);
    signs.set(criterion.organ, [...(before === undefined ? [] : [before]), ...names].join(', '));
  }
  return signs;
}
