// The cases of a rule as tables: what was measured, what we answer, where the case comes from.
import type { Outcome } from '../findings/finding.ts';
import { caseWords, type CaseLine } from './case-words.ts';
import { markdownTable } from './markdown-table.ts';

/** One row of a case file, with the outcome of every rule as the engine gives it. */
export interface RuleCase {
  readonly id: string;
  readonly name: string;
  /** Where the case comes from: mark and section of the clinical rules, publication, decision. */
  readonly basis: string;
  readonly given: readonly CaseLine[];
  readonly expect: Readonly<
    Record<string, { readonly classification?: readonly string[] | undefined; readonly urgency: string }>
  >;
  /** Outcome by guideline and rule (`class:…`, `urgency:…`). */
  readonly outcomes: Readonly<Record<string, Readonly<Record<string, Outcome>>>>;
}

const groups: readonly (readonly [Outcome, string])[] = [
  ['met', 'The rule holds'],
  ['not-met', 'It does not hold'],
  ['cannot-tell', 'We cannot tell'],
  ['not-applicable', 'It does not apply'],
];

/** How many of a group are written out, and how many more are named. */
const shown: Readonly<Record<Outcome, number>> = {
  met: 5,
  'not-met': 3,
  'cannot-tell': 3,
  'not-applicable': 3,
};
const named = 12;

/**
 * Cases of a rule in the four groups, a few of each; near misses before others.
 *
 * Given    rule       key of the rule: `class:pre-eclampsia`
 *          guideline  under which they are judged
 */
export function ruleCaseLines(
  rule: string,
  guideline: string,
  cases: readonly RuleCase[],
): readonly string[] {
  const judged = cases.filter((each) => each.expect[guideline] !== undefined);
  const outcome = (each: RuleCase): Outcome | undefined => each.outcomes[guideline]?.[rule];
  const near = new Set(judged.filter((each) => outcome(each) === 'met').map(familyOf));
  return groups.flatMap(([group, words]) => {
    const found = judged.filter((each) => outcome(each) === group);
    const sorted =
      group === 'met'
        ? found
        : [...found].sort((a, b) => Number(near.has(familyOf(b))) - Number(near.has(familyOf(a))));
    return groupLines(sorted, words, guideline, shown[group]);
  });
}

/** `platelets-150` of `platelets-150-below`: rows of one family differ in one value. */
const familyOf = ({ id }: RuleCase): string => id.replace(/-[a-z]+$/, '');

function groupLines(
  cases: readonly RuleCase[],
  words: string,
  guideline: string,
  count: number,
): readonly string[] {
  if (cases.length === 0) return [`${words}: no case.`, ''];
  const rest = cases.slice(count).map(({ id }) => id);
  return [
    `${words}:`,
    '',
    ...markdownTable(
      ['case', 'what was measured', 'what we answer', 'from'],
      cases
        .slice(0, count)
        .map((each) => [each.id, caseWords(each.given), answerWords(each, guideline), each.basis]),
    ),
    ...(rest.length === 0
      ? []
      : [
          `And ${rest.length} more: ${rest.slice(0, named).join(', ')}${rest.length > named ? ' …' : ''}`,
          '',
        ]),
  ];
}

/** All cases once, with the answer of each guideline. */
export function allCaseLines(cases: readonly RuleCase[]): readonly string[] {
  return markdownTable(
    ['case', 'name', 'what was measured', 'what we answer', 'from'],
    cases.map((each) => [each.id, each.name, caseWords(each.given), everyAnswer(each), each.basis]),
  );
}

function answerWords({ expect }: RuleCase, guideline: string): string {
  const answer = expect[guideline];
  if (answer === undefined) return '';
  return `${(answer.classification ?? ['any class']).join(', ')}; ${answer.urgency}`;
}

/** Guidelines with the same answer together. */
function everyAnswer(each: RuleCase): string {
  const said = new Map<string, readonly string[]>();
  for (const guideline of Object.keys(each.expect)) {
    const words = answerWords(each, guideline);
    said.set(words, [...(said.get(words) ?? []), guideline]);
  }
  return [...said].map(([words, ids]) => `${ids.join(', ')}: ${words}`).join('. ');
}
