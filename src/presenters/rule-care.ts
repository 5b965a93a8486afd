// What we advise, as tables: referral, steps, medicines, treatment, measuring. Wording only.
import type { Guideline } from '../guidelines/guideline.ts';
import type { MeasureDefinition } from '../guidelines/measures.ts';
import type { QualityRule, SiteQualityRules } from '../guidelines/quality-rule.ts';
import { limitWords } from '../findings/limit-words.ts';
import { markdownTable } from './markdown-table.ts';
import { namedStates, needLine } from './need-line.ts';
import { citationWords, thresholdsIn } from './rule-sources.ts';
import { sharedRules, type Cited } from './shared-rules.ts';
import { idWords } from '../id-words.ts';

type Cells<T> = (rule: T, guideline: Guideline) => readonly string[];

/** A table of rules; the last two columns are filled here. */
function ruleTable<T extends Cited>(
  head: readonly string[],
  guidelines: readonly Guideline[],
  rulesOf: (guideline: Guideline) => readonly T[],
  cells: Cells<T>,
): readonly string[] {
  return markdownTable(
    [...head, 'guidelines', 'source'],
    sharedRules(guidelines, rulesOf, cells).map(({ rule, guideline, whose, sources }) => [
      ...cells(rule, guideline),
      whose,
      sources,
    ]),
  );
}

/** Where to. */
export const referralLines = (guidelines: readonly Guideline[]): readonly string[] =>
  ruleTable(
    ['where to', 'what we say', 'when'],
    guidelines,
    (each) => each.referralRules,
    (rule, guideline) => [
      idWords(rule.level),
      rule.whenSettled === undefined ? rule.sentence : `${rule.sentence} Less urgent: ${rule.whenSettled}`,
      needLine(rule.when, guideline),
    ],
  );

/** Steps by kind, in the order in which they are shown. */
export function stepLines(guidelines: readonly Guideline[]): readonly string[] {
  const kinds = [...new Set(guidelines.flatMap(({ actionRules }) => actionRules.map(({ kind }) => kind)))];
  return [
    ...stateLines(guidelines),
    ...kinds.flatMap((kind) => [
      `### Steps: ${idWords(kind)}`,
      '',
      ...ruleTable(
        ['step', 'what we say', 'when'],
        guidelines,
        ({ actionRules }) =>
          actionRules.filter((rule) => rule.kind === kind).sort((a, b) => a.order - b.order),
        (rule, guideline) => [
          `\`${rule.id}\``,
          rule.sentence.replace('{time}', 'the time by the clock'),
          needLine(rule.when, guideline),
        ],
      ),
    ]),
  ];
}

/** What the names of states in the tables stand for. */
function stateLines([main]: readonly Guideline[]): readonly string[] {
  if (main === undefined) return [];
  return [
    'The column "when" uses these names:',
    '',
    ...namedStates(main).map(([name, holds]) => `- **${name}**: ${holds}`),
    '',
  ];
}

/** Medicines to avoid or to use with care. */
export const medicineLines = (guidelines: readonly Guideline[]): readonly string[] =>
  ruleTable(
    ['rule', 'medicines', 'when', 'what we say', 'named instead'],
    guidelines,
    (each) => each.medicineRules ?? [],
    (rule, guideline) => [
      `\`${rule.id}\` (${rule.severity})`,
      rule.medicines.map(idWords).join(', '),
      [
        needLine(rule.when, guideline),
        ...(rule.conditions ?? []).map((item) => `${idWords(item)} recorded`),
        ...(rule.ofAllergy === true ? ['an allergy to it recorded'] : []),
      ].join('; '),
      rule.sentence,
      rule.alternative === undefined ? '' : rule.alternative.sentence,
    ],
  );

/** Reference doses. */
export const treatmentLines = (guidelines: readonly Guideline[]): readonly string[] =>
  ruleTable(
    ['option', 'for', 'dose as printed', 'when', 'what speaks against it'],
    guidelines,
    (each) => each.treatmentRules ?? [],
    (rule, guideline) => [
      `${rule.medicine} \`${rule.id}\``,
      idWords(rule.purpose),
      rule.dose,
      needLine(rule.when, guideline),
      rule.against.map(({ sentence }) => sentence).join(' '),
    ],
  );

/** What makes a measurement doubtful, with the limits it uses. */
export const qualityLines = (guidelines: readonly Guideline[]): readonly string[] =>
  ruleTable(
    ['number', 'rule', 'grade', 'what we say', 'limits'],
    guidelines,
    (each) => each.qualityRules ?? [],
    (rule) => [rule.number, `\`${rule.id}\``, rule.grade, rule.sentence, ownLimits(rule)],
  );

/** The limits of a measurement rule by id; how long a reading counts is common to all. */
const ownLimits = (rule: QualityRule): string =>
  thresholdsIn({ ...rule, freshWithin: undefined })
    .map((limit) => `${idWords(limit.id)} ${limitWords(limit)}`)
    .join('; ');

/** Doubts about the readings of a site or an observer, for a report; never about one woman. */
export const siteQualityLines = (rules: SiteQualityRules): readonly string[] => [
  '### Doubts about the readings of a site',
  '',
  `For reports only, from ${rules.minimumReadings.value} readings on.`,
  '',
  ...markdownTable(
    ['number', 'what we say', 'limits', 'source'],
    [rules.terminalZero, rules.avoidance, rules.copyForward].map((rule) => [
      rule.number,
      rule.sentence,
      thresholdsIn(rule)
        .map((limit) => `${idWords(limit.id)} ${limitWords(limit)}`)
        .join('; '),
      [...new Set(thresholdsIn(rule).map(({ citation }) => citationWords(citation)))].join('. '),
    ]),
  ),
];

/** Quality measures: what is counted, with the limits they use. */
export const measureLines = (measures: readonly MeasureDefinition[]): readonly string[] =>
  markdownTable(
    ['measure', 'a good score means', 'counted', 'limits', 'source'],
    measures.map((measure) => [
      `\`${measure.id}\``,
      measure.sentence,
      measure.populations.map(({ id, words }) => `${idWords(id)}: ${words}`).join(' '),
      measure.limits.map((limit) => `${idWords(limit.id)} ${limitWords(limit)}`).join('; '),
      citationWords(measure.citation),
    ]),
  );
