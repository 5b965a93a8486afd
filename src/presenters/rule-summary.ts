// The rules at a glance: one line for each class, and the limits of all guidelines side by side. Wording only.
import type { Guideline } from '../guidelines/guideline.ts';
import { markdownTable } from './markdown-table.ts';
import type { RuleCase } from './rule-cases.ts';
import { sideBySideLines } from './side-by-side.ts';
import { urgencyWords } from './vocabulary.ts';

/**
 * One line for each class of a guideline.
 *
 * Given    main   the guideline
 *          cases  whose expected answers show how urgent a class is when it leads
 */
export const classesAtAGlance = (main: Guideline, cases: readonly RuleCase[]): readonly string[] => [
  '### Classes',
  '',
  ...markdownTable(
    ['class', 'in one sentence', 'urgency in the cases'],
    main.classRules.map((rule) => [
      `[${rule.id}](#${rule.id})`,
      rule.sentence,
      urgencyInCases(rule.classification, main.id, cases),
    ]),
  ),
];

/** "emergency", "emergency to within-7-days": over the cases in which the class leads. */
function urgencyInCases(classification: string, guideline: string, cases: readonly RuleCase[]): string {
  const found = new Set(
    cases.flatMap(({ expect }) => {
      const answer = expect[guideline];
      return answer?.classification?.[0] === classification ? [answer.urgency] : [];
    }),
  );
  // The words are listed from the most urgent down.
  const ranked = Object.keys(urgencyWords).filter((urgency) => found.has(urgency));
  const [most, least] = [ranked[0], ranked.at(-1)];
  if (most === undefined || least === undefined) return '';
  return most === least ? most : `${most} to ${least}`;
}

/** What a reader compares first, and the questions that hold its limits. */
const compared: readonly (readonly [heading: string, questions: readonly string[]])[] = [
  ['Raised pressure, and what confirms it', ['confirmed-from-20-weeks']],
  ['Severe pressure', ['severe-open']],
  ['Home average', ['home-raised']],
  ['After birth: pressure to be seen the same day', ['after-birth-raised-same-day']],
  ['Protein', ['protein-from-20-weeks']],
  ['Organ signs that make it pre-eclampsia', ['organ-from-20-weeks']],
  ['Signs of severe disease', ['severe-organ']],
  ['HELLP', ['hellp-criteria']],
];

/** Limits of every guideline side by side. */
export const limitsAtAGlance = (guidelines: readonly Guideline[]): readonly string[] => [
  '### Limits side by side',
  '',
  ...compared.flatMap(([heading, questions]) => [
    `**${heading}**`,
    '',
    ...sideBySideLines(guidelines.map((guideline) => ({ guideline, when: { any: questions } }))),
  ]),
];
