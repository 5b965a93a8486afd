// One rule as a clinician reads it: sentence, conditions, advice, doubts, sources, other guidelines, cases, review.
import type { ClassRule, Guideline, Need, UrgencyRule } from '../guidelines/guideline.ts';
import type { Review } from '../guidelines/reviews.ts';
import { ruleCaseLines, type RuleCase } from './rule-cases.ts';
import {
  citationsIn,
  citationWords,
  namesOf,
  questionsUnder,
  thresholdsIn,
  type RuleData,
} from './rule-sources.ts';
import { idWords, listLines, needItems, needLine } from './rule-words.ts';
import { sideBySideLines } from './side-by-side.ts';
import { neededByWords, urgencyWords } from './vocabulary.ts';
import { sentenceCase } from './words.ts';

export interface RuleTableInput {
  /** The default guideline first. */
  readonly guidelines: readonly Guideline[];
  readonly cases: readonly RuleCase[];
  readonly reviews: readonly Review[];
  readonly fingerprint: (data: unknown) => string;
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
    ...part('Choices of ours and rules of the trade', [...known('ours'), ...known('common-practice')]),
    ...part('Source', [`- ${citationWords(rule.citation)}`, ...memoryLines(data)]),
    ...part('Other guidelines', otherLines(rule, key, main, input)),
    ...part('Cases', ruleCaseLines(key, main.id, input.cases)),
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

/** Urgency and referral that rest on a class, and the steps that name it. */
function adviceLines(id: string, main: Guideline): readonly string[] {
  const key = `class:${id}`;
  const urgent = main.urgencyRules.filter((rule) => namesOf(rule.when).includes(key));
  const keys = new Set([key, ...urgent.map((rule) => `urgency:${rule.id}`)]);
  const referrals = main.referralRules.filter((rule) => namesOf(rule.when).some((name) => keys.has(name)));
  const steps = main.actionRules
    .filter((rule) => namesOf(rule.when).includes(key))
    .sort((a, b) => a.order - b.order);
  return [
    ...urgent.map((rule) => `- ${rule.urgency}: [${rule.id}](#urgency-${rule.id}). ${rule.sentence}`),
    ...referrals.map((rule) => `- to: ${rule.sentence}`),
    ...steps.map((rule) => `- ${rule.sentence.replace('{time}', 'the time by the clock')} \`${rule.id}\``),
    ...(urgent.length + referrals.length + steps.length === 0
      ? []
      : [
          '- and the steps that follow from the urgency, the referral and what was measured: [What to do](#what-to-do)',
        ]),
  ];
}

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

/** The fingerprint is over the rule and its questions in every guideline: touching any number of it shows. */
function reviewWords(key: string, { guidelines, reviews, fingerprint }: RuleTableInput): string {
  const [kind, id] = [key.slice(0, key.indexOf(':')), key.slice(key.indexOf(':') + 1)];
  const data = guidelines.map((guideline) => {
    const rules: readonly RuleData[] = kind === 'class' ? guideline.classRules : guideline.urgencyRules;
    const rule = rules.find((each) => each.id === id);
    return rule === undefined ? [] : [rule, questionsUnder(rule.when, guideline)];
  });
  const mark = fingerprint(data).slice(0, 12);
  const name = kind === 'class' ? id : key;
  const review = reviews.filter((each) => each.rule === name).at(-1);
  if (review === undefined) return `not reviewed (fingerprint ${mark})`;
  const by = `${review.role}, ${review.date}`;
  return review.fingerprint.startsWith(mark) || mark.startsWith(review.fingerprint)
    ? `reviewed by ${by} (fingerprint ${mark})`
    : `changed since the review by ${by} (fingerprint was ${review.fingerprint.slice(0, 12)}, is ${mark})`;
}
