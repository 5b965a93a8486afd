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

const groups: readonly (readonly [Outcome, string, number])[] = [
  ['met', 'holds', 4],
  ['not-met', 'does not hold', 2],
  ['cannot-tell', 'cannot tell', 2],
  ['not-applicable', 'does not apply', 1],
];

/**
 * Cases of a rule in the four groups, a few of each in one table; those written for the rule before near misses, near
 * misses before others.
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
  const own = new RegExp(`^${rule.replace(':', '-')}-(met|not-met|cannot-tell|not-applicable)-`);
  const distance = (each: RuleCase): number => (own.test(each.id) ? 0 : near.has(familyOf(each)) ? 1 : 2);
  const found = groups.map(([group, words, count]) => {
    const all = judged.filter((each) => outcome(each) === group);
    const written = [...all].sort((a, b) => distance(a) - distance(b)).slice(0, count);
    return { words, written, more: all.length - written.length };
  });
  return [
    ...markdownTable(
      ['the rule', 'what was measured', 'what we answer', 'case', 'from'],
      found.flatMap(({ words, written }) =>
        written.map((each) => [
          words,
          caseWords(each.given),
          answerWords(each, guideline),
          each.id,
          each.basis,
        ]),
      ),
    ),
    moreWords(found),
    '',
  ];
}

/** `platelets-150` of `platelets-150-below`: rows of one family differ in one value. */
const familyOf = ({ id }: RuleCase): string => id.replace(/-[a-z]+$/, '');

function moreWords(
  found: readonly { readonly words: string; readonly written: readonly unknown[]; readonly more: number }[],
): string {
  const more = found.flatMap(({ words, more: count }) => (count === 0 ? [] : [`${count} where it ${words}`]));
  const none = found
    .filter(({ written }) => written.length === 0)
    .map(({ words }) => `no case where it ${words}`);
  const rest = more.length === 0 ? [] : [`${more.join(', ')}, in [every case](CASES.md)`];
  return `${[...(rest.length === 0 ? [] : ['More:', ...rest])].join(' ')}${rest.length > 0 && none.length > 0 ? '; ' : ''}${none.join('; ')}.`;
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
  return `${(answer.classification ?? ['class left open']).join(', ')}; ${answer.urgency}`;
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
