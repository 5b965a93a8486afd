// One rule as a clinician reads it: sentence, conditions, advice, doubts, sources, other guidelines, cases, review.
import type { ClassRule, Guideline, Need, UrgencyRule } from '../guidelines/guideline.ts';
import { ruleCaseLines, type RuleCase } from './rule-cases.ts';
import {
  citationsIn,
  citationWords,
  namesOf,
  questionsUnder,
  thresholdsIn,
  type RuleData,
} from './rule-sources.ts';
import { needLine } from './need-line.ts';
import { reviewWords, type ReviewInput } from './rule-review.ts';
import { idWords } from '../id-words.ts';
import { listLines } from './nested-list.ts';
import { needItems } from './rule-words.ts';
import { sideBySideLines } from './side-by-side.ts';
import { neededByWords, urgencyWords } from './vocabulary.ts';
import { sentenceCase } from './words.ts';

export interface RuleTableInput extends ReviewInput {
  readonly cases: readonly RuleCase[];
}

const part = (heading: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : [`**${heading}**`, '', ...lines, ''];

/** The section of a class rule. */
export function classEntry(rule: ClassRule, main: Guideline, input: RuleTableInput): readonly string[] {
  const [applies, not] = applicability(rule);
  return [
    `### ${rule.id}`,
    '',
    rule.sentence,
    '',
    `Class: \`${rule.classification}\`.${supersededWords(rule)}`,
    '',
    `- **Applies to:** ${applies}`,
    `- **Does not apply to:** ${not}`,
    '',
    ...part('Conditions', listLines(needItems(rule.when, main))),
    ...part('What we advise', adviceLines(rule.id, main)),
    ...part('When we cannot tell', omissionLines(rule.when, main)),
    ...commonParts(rule, main, `class:${rule.id}`, input),
  ];
}

/** The section of an urgency rule. */
export function urgencyEntry(rule: UrgencyRule, main: Guideline, input: RuleTableInput): readonly string[] {
  return [
    `### urgency: ${rule.id}`,
    '',
    `${rule.sentence} Urgency: **${rule.urgency}** (${urgencyWords[rule.urgency]}).`,
    '',
    ...part('Conditions', listLines(needItems(rule.when, main))),
    ...part('When we cannot tell', omissionLines(rule.when, main)),
    ...commonParts(rule, main, `urgency:${rule.id}`, input),
  ];
}

function commonParts(rule: RuleData, main: Guideline, key: string, input: RuleTableInput): readonly string[] {
  const data = { rule, questions: questionsUnder(rule.when, main) };
  const citations = citationsIn(data);
  const known = (kind: string): readonly string[] =>
    citations
      .filter((citation) => citation.known === kind)
      .map((citation) => `- ${sentenceCase(citationWords(citation))}`);
  return [
    ...part('Other guidelines', otherLines(rule, key, main, input)),
    ...part('Cases', ruleCaseLines(key, main.id, input.cases)),
    ...part('Choices of ours and rules of the trade', [...known('ours'), ...known('common-practice')]),
    ...part('Source', [`- ${citationWords(rule.citation)}`, ...memoryLines(data)]),
    `*Review: ${reviewWords(key, input)}.*`,
    '',
  ];
}

function memoryLines(data: unknown): readonly string[] {
  const ids = thresholdsIn(data)
    .filter(({ citation }) => citation.known === 'from-memory')
    .map(({ id }) => `\`${id}\``);
  return ids.length === 0 ? [] : [`- not verified against print: ${ids.join(', ')}`];
}

function supersededWords({ supersedes }: ClassRule): string {
  return supersedes.length === 0
    ? ''
    : ` When it holds it takes the place of: ${supersedes.map(idWords).join(', ')}.`;
}

/** The sentence of the data, split where it says "not"; conditions under "none of" exclude as well. */
function applicability({ appliesTo, when }: ClassRule): readonly [string, string] {
  const pieces = appliesTo.split('; ');
  const isExclusion = (piece: string): boolean => piece.startsWith('not ');
  const excluded = pieces.filter(isExclusion).map((piece) => piece.replace(/^not /, ''));
  const exclusions = [...excluded, ...excludedBy(when)];
  return [
    `${pieces.filter((piece) => !isExclusion(piece)).join('; ')}.`,
    exclusions.length === 0 ? 'anyone else.' : `${exclusions.join('; ')}; anyone else.`,
  ];
}

function excludedBy(need: Need): readonly string[] {
  if (typeof need === 'string') return [];
  if ('none' in need)
    return need.none.flatMap((id) =>
      typeof id === 'string' && id.startsWith('recorded-')
        ? [`women with ${idWords(id).replace('recorded ', '')} recorded`]
        : [],
    );
  return [...new Set(('all' in need ? need.all : need.any).flatMap(excludedBy))];
}

/** Urgency and referral that rest on a class in full, and the names of the steps that rest on it. */
function adviceLines(id: string, main: Guideline): readonly string[] {
  const key = `class:${id}`;
  const urgent = urgencyOf(id, main);
  const keys = new Set([key, ...urgent.map((rule) => `urgency:${rule.id}`)]);
  const referrals = main.referralRules.filter((rule) => namesOf(rule.when).some((name) => keys.has(name)));
  const steps = main.actionRules
    .filter((rule) => namesOf(rule.when).includes(key))
    .sort((a, b) => a.order - b.order);
  const kinds = [...new Set(steps.map(({ kind }) => kind))];
  return [
    ...urgent.map((rule) => `- ${rule.urgency}: [${rule.id}](#urgency-${rule.id}). ${rule.sentence}`),
    ...referrals.map((rule) => `- to: ${rule.sentence}`),
    ...kinds.map(
      (kind) =>
        `- [${idWords(kind)}](#steps-${kind}): ${steps
          .filter((rule) => rule.kind === kind)
          .map((rule) => idWords(rule.id))
          .join('; ')}`,
    ),
    ...(urgent.length + referrals.length + steps.length === 0
      ? []
      : [
          '- and the steps that follow from the urgency, the referral and what was measured: [What to do](#what-to-do)',
        ]),
  ];
}

/** Urgency rules that name a class. */
const urgencyOf = (id: string, main: Guideline): readonly UrgencyRule[] =>
  main.urgencyRules.filter((rule) => namesOf(rule.when).includes(`class:${id}`));

function omissionLines(when: Need, main: Guideline): readonly string[] {
  const gaps = new Map(
    questionsUnder(when, main).flatMap(({ whenCannotTell }) =>
      whenCannotTell === undefined ? [] : [[whenCannotTell.id, whenCannotTell] as const],
    ),
  );
  return [...gaps.values()].map(
    ({ what, how, by }) => `- without ${what} we say so and ask, ${neededByWords[by]}: ${how}`,
  );
}

interface Sided {
  readonly guideline: Guideline;
  readonly when: Need;
}

function otherLines(rule: RuleData, key: string, main: Guideline, input: RuleTableInput): readonly string[] {
  const isClass = key.startsWith('class:');
  const sided = input.guidelines.flatMap((guideline): readonly Sided[] => {
    const rules: readonly RuleData[] = isClass ? guideline.classRules : guideline.urgencyRules;
    const same = rules.find(({ id }) => id === rule.id);
    return same === undefined ? [] : [{ guideline, when: same.when }];
  });
  const absent = input.guidelines.filter((guideline) => !sided.some((item) => item.guideline === guideline));
  const shape = JSON.stringify(rule.when);
  const otherwise = sided.filter(({ when }) => JSON.stringify(when) !== shape);
  return [
    ...sideBySideLines(sided),
    ...otherwise.map(
      ({ guideline, when }) => `- ${guideline.id} puts it together otherwise: ${needLine(when, guideline)}.`,
    ),
    ...(absent.length === 0 ? [] : [`- not a rule of: ${absent.map(({ id }) => id).join(', ')}`]),
    ...(otherwise.length + absent.length > 0 || main.id === '' ? [''] : []),
  ];
}
