// The codes of what we propose, as FHIR concepts.
import type { CodeableConcept, Coding } from 'fhir/r4.js';
import type { Classification, Period, ReferralLevel } from '../guidelines/guideline.ts';
import type { SystemCode } from '../terminology/code-row.ts';
import {
  suggestedConditionCodes,
  suggestedReferralCodes,
  type SuggestedCodes,
} from '../terminology/suggested-codes.ts';
import { classWords, referralWords } from './vocabulary.ts';
import { sentenceCase } from './words.ts';

const byClass: Readonly<Partial<Record<Classification, SuggestedCodes>>> = suggestedConditionCodes;

/**
 * The concept of the Condition that stands for a class.
 *
 * Given    classification   the class
 *          period           part of the pregnancy now; after a birth some classes have codes of their own
 * Returns  SNOMED CT and ICD codings with our words as text; undefined when a class has no codes.
 */
export function classConcept(classification: Classification, period: Period): CodeableConcept | undefined {
  const found = byClass[classification];
  if (found === undefined) return undefined;
  const codes = period === 'after-birth' ? (found.afterBirth ?? found.codes) : found.codes;
  return { coding: codes.map(toCoding), text: sentenceCase(classWords[classification]) };
}

/** The concept of the ServiceRequest for a level of referral. */
export function referralConcept(level: ReferralLevel): CodeableConcept {
  return { coding: suggestedReferralCodes[level].map(toCoding), text: `Referral: ${referralWords[level]}` };
}

function toCoding({ system, code, display }: SystemCode): Coding {
  return display === undefined ? { system, code } : { system, code, display };
}
