// Codes we read and codes we write, as ValueSets: from the tables the program itself uses.
import type { ValueSet, ValueSetComposeInclude } from 'fhir/r4.js';
import type { SystemCode } from '../../terminology/code-row.ts';
import { laboratoryCodes } from '../../terminology/laboratory-codes.ts';
import { datingCodes } from '../../terminology/pregnancy-codes.ts';
import { pressurePanelCodes } from '../../terminology/pressure-codes.ts';
import { stripCodes, stripFindingCodes } from '../../terminology/strip-grades.ts';
import { suggestedConditionCodes, suggestedReferralCodes } from '../../terminology/suggested-codes.ts';
import { symptomCodes } from '../../terminology/symptom-codes.ts';
import { systems } from '../../terminology/systems.ts';
import { urineProteinCodes } from '../../terminology/urine-codes.ts';
import { header } from './header.ts';

const loincNotice =
  'LOINC is copyright Regenstrief Institute, Inc. and the LOINC Committee, available at no cost under the license at https://loinc.org/license.';
const snomedNotice =
  'SNOMED CT terms are given only for the Global Patient Set (SNOMED International, CC BY 4.0); other concepts by code alone.';
export const notices = `${loincNotice} ${snomedNotice}`;

interface CodeSet {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly codes: readonly SystemCode[];
}

const urine = (...kinds: readonly string[]): readonly SystemCode[] =>
  urineProteinCodes.filter(({ kind }) => kinds.includes(kind));

const allSuggested: readonly SystemCode[] = Object.values(suggestedConditionCodes).flatMap((each) => [
  ...each.codes,
  ...('afterBirth' in each ? each.afterBirth : []),
]);

const ucum = (...codes: readonly string[]): readonly SystemCode[] =>
  codes.map((code) => ({ system: systems.ucum, code, known: 'read' }));

const sets: readonly CodeSet[] = [
  {
    id: 'blood-pressure-panel',
    title: 'Codes of a blood pressure',
    description: 'Panels whose components or members are read as one reading.',
    codes: pressurePanelCodes,
  },
  {
    id: 'urine-protein-strip',
    title: 'Codes of a urine protein strip',
    description: 'Observations read as a strip.',
    codes: urine('strip', 'strip-mass'),
  },
  {
    id: 'urine-protein-strip-value',
    title: 'Coded results of a urine protein strip',
    description: 'Answers and findings that carry a grade; the ConceptMap strip-to-grade gives it.',
    codes: [...stripCodes, ...stripFindingCodes],
  },
  {
    id: 'urine-protein-ratio',
    title: 'Codes of a protein or albumin to creatinine ratio',
    description: 'Quantified protein in a single urine sample.',
    codes: urine('protein-creatinine-ratio', 'albumin-creatinine-ratio'),
  },
  {
    id: 'pregnancy-dating',
    title: 'Codes that date a pregnancy',
    description: 'Gestational age, due date, first day of the last period.',
    codes: datingCodes,
  },
  {
    id: 'gestational-age',
    title: 'Codes of a gestational age',
    description: 'Observations read as an age in weeks and days.',
    codes: datingCodes.filter(({ gives }) => gives === 'age'),
  },
  {
    id: 'symptom',
    title: 'Codes of symptoms and signs',
    description:
      'As code of an observation, as its value, or as code of a condition. ICD codes match by prefix.',
    codes: symptomCodes,
  },
  {
    id: 'laboratory-result',
    title: 'Codes of laboratory and bedside values',
    description: 'Values that a rule of some guideline looks at.',
    codes: laboratoryCodes,
  },
  {
    id: 'pressure-unit',
    title: 'Units of a blood pressure',
    description: 'Both are compared in mm[Hg].',
    codes: ucum('mm[Hg]', 'kPa'),
  },
  {
    id: 'protein-ratio-unit',
    title: 'Units of a ratio to creatinine',
    description: 'UCUM units that are understood without a table of the site.',
    codes: ucum('mg/mmol', 'g/mol', 'mg/mg', 'g/g', 'mg/g', 'ug/mg', 'g/mmol', 'ug/mmol'),
  },
  {
    id: 'gestational-age-unit',
    title: 'Units of a gestational age',
    description: 'Weeks or days.',
    codes: ucum('wk', 'd'),
  },
  {
    id: 'suggested-condition',
    title: 'Codes of suggested Conditions',
    description: 'SNOMED CT, ICD-10, ICD-10-CM and ICD-11 MMS codes of the classes.',
    codes: allSuggested,
  },
  {
    id: 'suggested-referral',
    title: 'Codes of suggested referrals',
    description: 'Levels of referral in SNOMED CT.',
    codes: Object.values(suggestedReferralCodes).flat(),
  },
];

/** One ValueSet for each list of codes. */
export const codeSets: readonly ValueSet[] = sets.map((set) => ({
  ...header('ValueSet', { ...set, copyright: notices }),
  compose: { include: includes(set.codes) },
}));

function includes(codes: readonly SystemCode[]): ValueSetComposeInclude[] {
  const bySystem = new Map<string, Map<string, SystemCode>>();
  for (const row of codes) {
    const ofSystem = bySystem.get(row.system) ?? new Map<string, SystemCode>();
    bySystem.set(row.system, ofSystem.set(row.code, ofSystem.get(row.code) ?? row));
  }
  return [...bySystem].map(([system, rows]) => ({
    system,
    concept: [...rows.values()].map(({ code, display }) => ({
      code,
      ...(display === undefined ? {} : { display }),
    })),
  }));
}
