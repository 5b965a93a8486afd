// Our vocabulary as CodeSystems, each with the ValueSet of all its codes.
import type { CodeSystem, FhirResource, ValueSet } from 'fhir/r4.js';
import type { Guideline } from '../../guidelines/guideline.ts';
import { stripWords } from '../../terminology/strip-grades.ts';
import { topics } from '../card-parts.ts';
import { safetyIssueWords } from '../detected-issue.ts';
import { issueTypes } from '../operation-outcome.ts';
import { overrideReasons } from '../override-reasons.ts';
import { classWords, codeSystems, referralWords, urgencyWords } from '../vocabulary.ts';
import { canonical, header, type Told } from './header.ts';

interface Concept {
  readonly code: string;
  readonly display: string;
}

const conceptsOf = (words: Readonly<Record<string, string>>): readonly Concept[] =>
  Object.entries(words).map(([code, display]) => ({ code, display }));

/** Grades of a urine strip for protein, as this project compares them. */
export const gradeConcepts: readonly Concept[] = [
  { code: '0', display: 'negative' },
  { code: '0.5', display: 'trace' },
  { code: '1', display: '1+' },
  { code: '2', display: '2+' },
  { code: '3', display: '3+' },
  { code: '4', display: '4+' },
  { code: 'positive-ungraded', display: 'positive, without a grade' },
  { code: 'scale-unknown', display: 'a word whose scale must be asked for' },
  { code: 'no-result', display: 'no result' },
];

/** Words and signs by which a strip is told, as codes. */
const textConcepts: readonly Concept[] = [
  ...stripWords.flatMap(([, words]) => words),
  ...['+', '++', '+++', '++++', '1+', '2+', '3+', '4+', '+1', '+2', '+3', '+4'],
].map((word) => ({ code: word, display: word }));

/** What may be missing, from the questions of every guideline, each id once. */
function missingConcepts(guidelines: readonly Guideline[]): readonly Concept[] {
  const found = new Map<string, string>();
  for (const { questions } of guidelines)
    for (const { whenCannotTell: gap } of questions)
      if (gap !== undefined && !found.has(gap.id)) found.set(gap.id, gap.what);
  return [...found].map(([code, display]) => ({ code, display })).sort((a, b) => (a.code < b.code ? -1 : 1));
}

/** What a DetectedIssue may be about, from the rules of every guideline, each once. */
function safetyConcepts(guidelines: readonly Guideline[]): readonly Concept[] {
  const codes = guidelines.flatMap(({ medicineRules = [], qualityRules = [] }) => [
    ...medicineRules.map(({ id }) => `medicine:${id}`),
    ...qualityRules.filter(({ grade }) => grade === 'block').map(({ id }) => `quality:${id}`),
  ]);
  return [...new Set(codes)].sort().map((code) => ({ code, display: safetyIssueWords(code) }));
}

const issueConcepts: readonly Concept[] = ['used', 'not-needed', ...Object.keys(issueTypes)].map((code) => ({
  code,
  display: code.replaceAll('-', ' '),
}));

const outcomes: readonly Concept[] = [
  { code: 'met', display: 'the evidence satisfies the rule' },
  { code: 'not-met', display: 'there was evidence and it does not satisfy the rule' },
  { code: 'cannot-tell', display: 'something needed is missing, too old or unreadable' },
  { code: 'not-applicable', display: 'the rule is not about this woman or this moment' },
];

interface Vocabulary {
  readonly told: Told;
  readonly concepts: readonly Concept[];
  /** `fragment`: a list that grows with the software. */
  readonly content?: 'complete' | 'fragment';
}

const idOf = (system: string): string => system.slice(system.lastIndexOf('/') + 1);

function vocabularies(guidelines: readonly Guideline[]): readonly Vocabulary[] {
  const told = (system: string, title: string, description: string): Told => ({
    id: idOf(system),
    title,
    description,
  });
  const ours = codeSystems;
  return [
    {
      told: told(
        ours.classification,
        'Classes of hypertension in pregnancy',
        'What the answer calls her state.',
      ),
      concepts: conceptsOf(classWords),
    },
    {
      told: told(ours.urgency, 'Urgency of an answer', 'How soon to act, most urgent first.'),
      concepts: conceptsOf(urgencyWords),
    },
    {
      told: told(ours.cardTopic, 'Topics of cards', 'What a card is about.'),
      concepts: conceptsOf(topics),
    },
    {
      told: told(ours.missing, 'What is missing', 'What to measure or ask, and could change the answer.'),
      concepts: missingConcepts(guidelines),
    },
    {
      told: told(
        ours.issue,
        'Issues',
        'What became of an entry received, and what can be wrong with a request.',
      ),
      concepts: issueConcepts,
      content: 'fragment',
    },
    {
      told: told(ours.overrideReason, 'Reasons for not following a card', 'Beside the standard reasons.'),
      concepts: overrideReasons
        .filter(({ system }) => system === ours.overrideReason)
        .map(({ code, display }) => ({ code, display })),
    },
    {
      told: told(
        ours.safetyIssue,
        'Medicines and measurements in doubt',
        'A medicine to avoid or to use with care, or a measurement that blocks an answer.',
      ),
      concepts: safetyConcepts(guidelines),
    },
    {
      told: told(
        ours.measurePopulation,
        'Measure populations of our own',
        'Beside the standard ones: those whom missing data keep out of the count.',
      ),
      concepts: [
        { code: 'data-missing', display: 'data missing, so that membership cannot be told' },
        { code: 'failed', display: 'could not be judged at all' },
      ],
    },
    {
      told: { id: 'outcome', title: 'Outcomes', description: 'The four outcomes of a question or rule.' },
      concepts: outcomes,
    },
    {
      told: { id: 'referral-level', title: 'Levels of referral', description: 'Where the woman is sent.' },
      concepts: conceptsOf(referralWords),
    },
    {
      told: {
        id: 'strip-grade',
        title: 'Grades of a urine protein strip',
        description: 'Grades as compared: 0 negative, 0.5 trace, 1 to 4; or why there is no grade.',
      },
      concepts: gradeConcepts,
    },
    {
      told: {
        id: 'strip-text',
        title: 'Texts of a urine protein strip',
        description:
          'Words and signs read as a grade, in lower case. Signs follow a rule; the usual ones are listed.',
      },
      concepts: [...new Map(textConcepts.map((concept) => [concept.code, concept])).values()],
    },
  ];
}

/** A CodeSystem and the ValueSet of all its codes for each of our vocabularies. */
export function ourCodeSystems(guidelines: readonly Guideline[]): readonly FhirResource[] {
  return vocabularies(guidelines).flatMap((each) => [toCodeSystem(each), toValueSet(each)]);
}

function toCodeSystem({ told, concepts, content = 'complete' }: Vocabulary): CodeSystem {
  return {
    ...header('CodeSystem', told),
    caseSensitive: true,
    valueSet: canonical('ValueSet', told.id),
    content,
    ...(content === 'complete' ? { count: concepts.length } : {}),
    concept: concepts.map(({ code, display }) => ({ code, display })),
  };
}

function toValueSet({ told }: Vocabulary): ValueSet {
  return {
    ...header('ValueSet', { ...told, description: `All codes of the CodeSystem ${told.id}.` }),
    compose: { include: [{ system: canonical('CodeSystem', told.id) }] },
  };
}
