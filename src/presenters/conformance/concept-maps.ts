// How codes of others become ours (strips), and ours become codes of others (diagnoses, referrals), as ConceptMaps.
import type { ConceptMap, ConceptMapGroup, ConceptMapGroupElement } from 'fhir/r4.js';
import type { SystemCode } from '../../terminology/code-row.ts';
import {
  stripCodes,
  stripFindingCodes,
  stripWords,
  type StripMeaning,
} from '../../terminology/strip-grades.ts';
import {
  suggestedConditionCodes,
  suggestedReferralCodes,
  type SuggestedCodes,
} from '../../terminology/suggested-codes.ts';
import { systems } from '../../terminology/systems.ts';
import { classWords, codeSystems, referralWords } from '../vocabulary.ts';
import { gradeConcepts } from './code-systems.ts';
import { canonical, header } from './header.ts';
import { notices } from './value-sets.ts';

type Target = NonNullable<ConceptMapGroupElement['target']>[number];

const gradeSystem = canonical('CodeSystem', 'strip-grade');

function gradeTarget(meaning: StripMeaning, outOf?: 3): Target {
  const code = String(meaning);
  const display = gradeConcepts.find((concept) => concept.code === code)?.display;
  const target = { code, ...(display === undefined ? {} : { display }) };
  if (typeof meaning !== 'number')
    return {
      ...target,
      equivalence: 'inexact',
      comment: 'Carries no grade; the grade or a ratio is asked for.',
    };
  if (outOf === undefined) return { ...target, equivalence: 'equivalent' };
  return { ...target, equivalence: 'inexact', comment: 'The scale of the source ends at three plus.' };
}

function stripGroup(system: string): ConceptMapGroup {
  const rows = [...stripCodes, ...stripFindingCodes].filter((row) => row.system === system);
  return {
    source: system,
    target: gradeSystem,
    element: rows.map((row) => ({
      code: row.code,
      ...(row.display === undefined ? {} : { display: row.display }),
      target: [gradeTarget(row.grade, row.outOf)],
    })),
  };
}

const signs: readonly (readonly [StripMeaning, readonly string[]])[] = [
  [1, ['+', '1+', '+1']],
  [2, ['++', '2+', '+2']],
  [3, ['+++', '3+', '+3']],
  [4, ['++++', '4+', '+4']],
];

const textGroup: ConceptMapGroup = {
  source: canonical('CodeSystem', 'strip-text'),
  target: gradeSystem,
  element: [...stripWords, ...signs].flatMap(([meaning, words]) =>
    words.map((word) => ({ code: word, display: word, target: [gradeTarget(meaning)] })),
  ),
};

const stripToGrade: ConceptMap = {
  ...header('ConceptMap', {
    id: 'strip-to-grade',
    title: 'Urine protein strip to grade',
    description:
      'Texts, LOINC answers, SNOMED CT qualifiers and findings of a strip, and the grade each stands for.',
    copyright: notices,
  }),
  group: [textGroup, stripGroup(systems.loinc), stripGroup(systems.snomed)],
};

const suggested: readonly (readonly [string, SuggestedCodes])[] = Object.entries(suggestedConditionCodes);
const diagnosisSystems = [systems.snomed, systems.icd10, systems.icd10cm, systems.icd11] as const;

/** Classes coded by a finding that says less than the class, for want of a code of its own. */
const coarse: readonly string[] = ['masked-hypertension', 'imminent-eclampsia', 'transient-hypertension'];

type CodesOf = (codes: SuggestedCodes) => readonly SystemCode[];

function diagnosisGroup(system: string, codesOf: CodesOf): ConceptMapGroup {
  const pairs = suggested.flatMap(([classification, codes]) =>
    codesOf(codes)
      .filter((row) => row.system === system)
      .map((row) => ({ classification, row })),
  );
  const users = (code: string): number => pairs.filter(({ row }) => row.code === code).length;
  const words: Readonly<Record<string, string>> = classWords;
  return {
    source: codeSystems.classification,
    target: system,
    element: Object.keys(words).map((classification) => {
      const found = pairs.find((pair) => pair.classification === classification)?.row;
      const isShared = found !== undefined && (users(found.code) > 1 || coarse.includes(classification));
      return {
        code: classification,
        display: words[classification] ?? classification,
        target: [found === undefined ? unmatched : diagnosisTarget(found, isShared)],
      };
    }),
  };
}

const unmatched: Target = {
  equivalence: 'unmatched',
  comment: 'No code of this system is written for this class.',
};

function diagnosisTarget({ code, display }: SystemCode, isShared: boolean): Target {
  return {
    code,
    ...(display === undefined ? {} : { display }),
    ...(isShared
      ? { equivalence: 'wider', comment: 'The target also stands for other states.' }
      : { equivalence: 'equivalent' }),
  };
}

function diagnosisMap(id: string, title: string, description: string, codesOf: CodesOf): ConceptMap {
  return {
    ...header('ConceptMap', { id, title, description, copyright: notices }),
    sourceUri: canonical('ValueSet', 'classification'),
    group: diagnosisSystems.map((system) => diagnosisGroup(system, codesOf)),
  };
}

const referralMap: ConceptMap = {
  ...header('ConceptMap', {
    id: 'referral-level-to-request',
    title: 'Level of referral to SNOMED CT',
    description: 'The code of the proposed ServiceRequest; its urgency travels in priority.',
    copyright: notices,
  }),
  group: [
    {
      source: canonical('CodeSystem', 'referral-level'),
      target: systems.snomed,
      element: Object.entries(suggestedReferralCodes).map(([level, rows]) => ({
        code: level,
        display: Object.entries(referralWords).find(([key]) => key === level)?.[1] ?? level,
        target: rows.map((row) => ({
          ...diagnosisTarget(row, false),
          equivalence: 'inexact' as const,
          comment: 'The nearest procedure.',
        })),
      })),
    },
  ],
};

/** Every ConceptMap that the tables of the program give. */
export const conceptMaps: readonly ConceptMap[] = [
  stripToGrade,
  diagnosisMap(
    'class-to-diagnosis',
    'Class to diagnosis code',
    'The codes of the suggested Condition, before or in labour: SNOMED CT, ICD-10, ICD-10-CM, ICD-11 MMS.',
    ({ codes }) => codes,
  ),
  diagnosisMap(
    'class-to-diagnosis-after-birth',
    'Class to diagnosis code after birth',
    'The same for an answer given after the birth.',
    ({ codes, afterBirth }) => afterBirth ?? codes,
  ),
  referralMap,
];
