// A medicine to avoid or use with care, or a measurement that blocks an answer, as a FHIR DetectedIssue.
import type { DetectedIssue } from 'fhir/r4.js';
import type { Evaluation } from '../evaluation.ts';
import type { Evidence, MedicineNotice, QualityNotice } from '../findings/finding.ts';
import { spokenValue } from './newest-data.ts';
import { subjectReference, toReference } from './reference.ts';
import { referencesIn } from './class-findings.ts';
import { someMapped } from './some.ts';
import { stableUuid } from './stable-uuid.ts';
import { traced } from './trace-back.ts';
import { codeSystems } from './vocabulary.ts';

type Issue = DetectedIssue & { readonly id: string };

const severities = {
  avoid: 'high',
  caution: 'moderate',
  note: 'low',
} as const satisfies Record<MedicineNotice['severity'], NonNullable<DetectedIssue['severity']>>;

/**
 * Everything a pharmacist or a reviewer has to look at.
 *
 * Given    evaluation  the answer
 * Returns  one preliminary issue for each notice about a medicine, then one for each measurement that blocks
 * Throws   never
 * Notes    1. Medicines are implicated; the facts beside them are evidence. Ids depend on the notice and its facts,
 *             not on the time of asking.
 *          2. Without a named woman `patient` says so in `display`.
 * Source   FHIR R4 DetectedIssue; fhir.md section 5
 */
export function toDetectedIssues(evaluation: Evaluation): readonly Issue[] {
  const { medicines, quality } = evaluation.assessment;
  return [
    ...medicines.map((notice) => ofMedicine(evaluation, notice)),
    ...quality.filter(({ grade }) => grade === 'block').map((notice) => ofMeasurement(evaluation, notice)),
  ];
}

function ofMedicine(evaluation: Evaluation, notice: MedicineNotice): Issue {
  const implicated = notice.evidence.filter(({ reference }) => /^Medication/.test(reference));
  const beside = notice.evidence.filter(({ reference }) => !/^Medication/.test(reference));
  const detail = [`${notice.medicine}:`, notice.sentence, notice.alternative ?? ''].join(' ').trim();
  return {
    ...issueOf(evaluation, `medicine:${notice.rule}`, notice.evidence),
    severity: severities[notice.severity],
    detail: spokenValue(detail),
    implicated: someMapped(referencesIn([{ evidence: implicated }]), toReference),
    evidence: evidenceOf(beside),
  };
}

function ofMeasurement(evaluation: Evaluation, notice: QualityNotice): Issue {
  return {
    ...issueOf(evaluation, `quality:${notice.rule}`, notice.evidence),
    severity: 'moderate',
    detail: spokenValue(notice.sentence),
    evidence: evidenceOf(notice.evidence),
  };
}

function issueOf(
  { stamp, subject, asOf }: Evaluation,
  rule: string,
  evidence: readonly Evidence[],
): Pick<Issue, 'resourceType' | 'id' | 'meta' | 'status' | 'code' | 'patient' | 'identifiedDateTime'> {
  const facts = evidence.map(({ reference }) => reference);
  return {
    resourceType: 'DetectedIssue',
    id: stableUuid(['DetectedIssue', rule, stamp.fingerprint, subject ?? '', facts]),
    meta: traced(stamp, 'safety-issue'),
    status: 'preliminary',
    code: { coding: [{ system: codeSystems.safetyIssue, code: rule }], text: safetyIssueWords(rule) },
    patient: subjectReference(subject),
    identifiedDateTime: asOf,
  };
}

/** `medicine:statin-in-pregnancy` as "statin in pregnancy". */
export const safetyIssueWords = (rule: string): string => rule.replace(/^\w+:/, '').replaceAll('-', ' ');

function evidenceOf(evidence: readonly Evidence[]): DetectedIssue['evidence'] {
  const references = referencesIn([{ evidence }]);
  return references.length === 0 ? undefined : [{ detail: references.map(toReference) }];
}
