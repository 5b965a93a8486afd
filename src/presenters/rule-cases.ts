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

const shown = 5;

/**
 * Cases of a rule in the four groups, a few of each.
 *
 * Given    rule       key of the rule: `class:pre-eclampsia`
 *          guideline  under which they are judged
 */
export function ruleCaseLines(
  rule: string,
  guideline: string,
  cases: readonly RuleCase[],
): readonly string[] {
  const lines = groups.flatMap(([outcome, words]) => {
    const found = cases.filter(
      (each) => each.expect[guideline] !== undefined && each.outcomes[guideline]?.[rule] === outcome,
    );
    if (found.length === 0) return [`${words}: no case.`, ''];
    const rest = found.slice(shown).map(({ id }) => id);
    return [
      `${words}:`,
      '',
      ...markdownTable(
        ['case', 'what was measured', 'what we answer', 'from'],
        found
          .slice(0, shown)
          .map((each) => [each.id, caseWords(each.given), answerWords(each, guideline), each.basis]),
      ),
      ...(rest.length === 0
        ? []
        : [`And ${rest.length} more: ${rest.slice(0, 20).join(', ')}${rest.length > 20 ? ' …' : ''}`, '']),
    ];
  });
  return lines;
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
