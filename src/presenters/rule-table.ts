// The rules for readers of no code: markdown pages made from the guideline data, the cases and the reviews.
import type { Guideline } from '../guidelines/guideline.ts';
import type { MeasureDefinition } from '../guidelines/measures.ts';
import type { SiteQualityRules } from '../guidelines/quality-rule.ts';
import type { RiskModel } from '../guidelines/risk-model.ts';
import { markdownTable } from './markdown-table.ts';
import { allCaseLines } from './rule-cases.ts';
import {
  measureLines,
  medicineLines,
  qualityLines,
  referralLines,
  siteQualityLines,
  stepLines,
  treatmentLines,
} from './rule-care.ts';
import { classEntry, urgencyEntry, type RuleTableInput } from './rule-entry.ts';
import { preventionLines, riskLines } from './rule-prevention.ts';
import { reviewLines } from './rule-review.ts';
import { classesAtAGlance, limitsAtAGlance } from './rule-summary.ts';
import { valueLines, type NamedData } from './rule-values.ts';

export interface RulePageInput extends RuleTableInput {
  readonly riskModels: readonly RiskModel[];
  readonly measures: readonly MeasureDefinition[];
  readonly siteQualityRules: SiteQualityRules;
  /** Numbers outside the guidelines: dating, plausibility. */
  readonly otherValues: readonly NamedData[];
}

interface Section {
  readonly heading: string;
  readonly lines: readonly string[];
}

/** Names of the pages, as the `rules` command and `GET /rules` know them, and their files. */
export const rulePageFiles = { rules: 'RULES.md', numbers: 'NUMBERS.md', cases: 'CASES.md' } as const;
export type RulePageName = keyof typeof rulePageFiles;

/**
 * RULES.md: every rule in words. NUMBERS.md: every limit and figure. CASES.md: every case.
 *
 * Given    input   guidelines (the default first, whose rules are written out), cases with their outcomes, reviews
 * Returns  markdown, lines joined by line feeds, one at the end; the same input gives the same bytes
 * Throws   never
 */
export function toRulePages(input: RulePageInput): Readonly<Record<RulePageName, string>> {
  return { rules: rulesPage(input), numbers: numbersPage(input), cases: casesPage(input) };
}

function rulesPage(input: RulePageInput): string {
  const [main] = input.guidelines;
  if (main === undefined) return '';
  const sections = sectionsOf(main, input).filter(({ lines }) => lines.length > 0);
  return pageText([
    ...introduction(main),
    '## Contents',
    '',
    ...sections.flatMap(contentLines),
    '',
    ...sections.flatMap(({ heading, lines: body }) => [`## ${heading}`, '', ...body]),
  ]);
}

const numbersPage = ({ guidelines, otherValues }: RulePageInput): string =>
  pageText([
    '# Every number',
    '',
    madeBy,
    '',
    ...valueLines([...guidelines.map((each) => ({ name: each.id, data: each })), ...otherValues]),
  ]);

const casesPage = ({ cases }: RulePageInput): string =>
  pageText(['# Every case', '', madeBy, '', ...allCaseLines(cases)]);

const pageText = (lines: readonly string[]): string =>
  `${lines
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trimEnd()}\n`;

const madeBy =
  'Made by `npm run rules` from the guideline data and the test cases. Never edit it by hand: correct the data, or tell us what is wrong with a line.';

const introduction = (main: Guideline): readonly string[] => [
  '# The rules, for clinical review',
  '',
  madeBy,
  '',
  `Written out are the rules of \`${main.id}\` (${main.title}). Under each rule a table shows where the other guidelines differ. Beside this page: [every number](NUMBERS.md) with its source, and [every case](CASES.md) with the answer of each guideline.`,
  '',
  '- **read** means that the publication, or a reproduction of it, was read; **from memory** (†) means that the value was not compared with print, and every answer says so; **ours** marks a choice of this project; **common practice** is a rule of the trade that no publication read here states.',
  '- A code in `this type` is the name under which a rule or a value appears in every answer.',
  '- Four outcomes: a rule holds, does not hold, cannot be told (something is missing: never taken for normal), or does not apply.',
  '- It supports a clinician and does not replace one. [Review](#review) says which rules a clinician has reviewed.',
  '',
];

/** The anchor of a heading, as readers of markdown make it. */
export const headingAnchor = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]/gu, '')
    .replaceAll(' ', '-');

function contentLines({ heading, lines }: Section): readonly string[] {
  const inner = lines.filter((line) => line.startsWith('### ')).map((line) => line.slice('### '.length));
  return [
    `- [${heading}](#${headingAnchor(heading)})`,
    ...inner.map((each) => `  - [${each}](#${headingAnchor(each)})`),
  ];
}

function sectionsOf(main: Guideline, input: RulePageInput): readonly Section[] {
  const { guidelines } = input;
  return [
    { heading: 'Guidelines', lines: guidelineLines(guidelines) },
    {
      heading: 'At a glance',
      lines: [...classesAtAGlance(main, input.cases), ...limitsAtAGlance(guidelines)],
    },
    {
      heading: 'What it is: the classes',
      lines: everyRule(guidelines, (each) => each.classRules).flatMap(({ rule, guideline }) =>
        classEntry(rule, guideline, input),
      ),
    },
    {
      heading: 'How urgent it is',
      lines: [
        `The most urgent rule that holds decides. A guideline may name another class; the urgency never falls below that of \`${main.id}\`.`,
        '',
        ...everyRule(guidelines, (each) => each.urgencyRules).flatMap(({ rule, guideline }) =>
          urgencyEntry(rule, guideline, input),
        ),
      ],
    },
    { heading: 'Where to refer', lines: ['The first line that holds.', '', ...referralLines(guidelines)] },
    { heading: 'What to do', lines: stepLines(guidelines) },
    { heading: 'Medicines to avoid or to use with care', lines: medicineLines(guidelines) },
    { heading: 'Treatment options, reference values', lines: treatmentLines(guidelines) },
    { heading: 'Prevention', lines: preventionLines(guidelines) },
    {
      heading: 'Doubts about a measurement',
      lines: [...qualityLines(guidelines), ...siteQualityLines(input.siteQualityRules)],
    },
    { heading: 'Quality measures', lines: measureLines(input.measures) },
    { heading: 'Risk equations, off unless asked for', lines: riskLines(input.riskModels) },
    { heading: 'Review', lines: reviewLines(input) },
  ];
}

const guidelineLines = (guidelines: readonly Guideline[]): readonly string[] =>
  markdownTable(
    ['id', 'title', 'edition', 'data version', 'how much was read'],
    guidelines.map(({ id, title, edition, version, remark }) => [
      `\`${id}\``,
      title,
      edition,
      version,
      remark,
    ]),
  );

/** Every rule once, from the first guideline that has it. */
function everyRule<T extends { readonly id: string }>(
  guidelines: readonly Guideline[],
  rulesOf: (guideline: Guideline) => readonly T[],
): readonly { readonly rule: T; readonly guideline: Guideline }[] {
  const found = new Map<string, { readonly rule: T; readonly guideline: Guideline }>();
  for (const guideline of guidelines)
    for (const rule of rulesOf(guideline)) if (!found.has(rule.id)) found.set(rule.id, { rule, guideline });
  return [...found.values()];
}
