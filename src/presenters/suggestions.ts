// Resources a clinician may accept: provisional Conditions, and the referral as a proposed ServiceRequest.
import type { Condition, ServiceRequest } from 'fhir/r4.js';
import type { Classification, Urgency } from '../guidelines/guideline.ts';
import type { Referral } from '../findings/finding.ts';
import type { Evaluation } from '../evaluation.ts';
import { clinicOffset, dueTime } from './clock.ts';
import { evidenceReferences } from './class-findings.ts';
import { heldCondition, heldReferral } from './held-in-chart.ts';
import { subjectReference, toReference } from './reference.ts';
import { someMapped } from './some.ts';
import { stableUuid } from './stable-uuid.ts';
import { classConcept, referralConcept } from './suggested-concepts.ts';
import { traced } from './trace-back.ts';
import { classWords, referralWords, urgencyWords } from './vocabulary.ts';
import { sentenceCase, whenInPregnancy } from './words.ts';

/** A Condition worth recording, and the class it stands for. */
export interface SuggestedCondition {
  readonly classification: Classification;
  readonly resource: Condition & { readonly id: string };
}

/** What may be created, and what the chart holds already. */
export interface Suggestions {
  readonly conditions: readonly SuggestedCondition[];
  readonly referral?: ServiceRequest & { readonly id: string };
  /** References of active Conditions that already say it. */
  readonly heldConditions: readonly string[];
  /** Reference of an open request that already asks for it. */
  readonly heldReferral?: string;
}

/**
 * The Conditions and the referral this answer proposes.
 *
 * Returns  one Condition for each class worth a diagnosis that the chart does not hold active, leading first;
 *          at most one ServiceRequest. Ids depend on the advice and its evidence, not on the time of asking.
 * Throws   never
 * Notes    1. A single raised reading is not proposed as a Condition: the reading is in the chart, and its repeat
 *             decides within hours. Nor is "cannot be judged".
 *          2. A suggestion is not a diagnosis: verificationStatus is provisional.
 *          3. Without a named subject the resources say so in `display`, for the caller to fill.
 */
export function toSuggestions(evaluation: Evaluation): Suggestions {
  const all = worthRecording(evaluation);
  const held = all.flatMap((each) => heldCondition(evaluation.timeline, each) ?? []);
  const conditions = all
    .filter((each) => heldCondition(evaluation.timeline, each) === undefined)
    .map((classification) => ({ classification, resource: toCondition(evaluation, classification) }));
  const { referral } = evaluation.assessment;
  if (referral === undefined) return { conditions, heldConditions: held };
  const existing = heldReferral(evaluation.timeline, referral.level);
  if (existing !== undefined) return { conditions, heldConditions: held, heldReferral: existing };
  const reasons = [...conditions.map(({ resource }) => `Condition/${resource.id}`), ...held];
  return { conditions, heldConditions: held, referral: toServiceRequest(evaluation, referral, reasons) };
}

/** Classes that are in the chart already as readings, or say only that nothing can be said. */
const notADiagnosis: readonly Classification[] = ['raised-unconfirmed', 'cannot-classify', 'normotensive'];

/** Classes that have a code, each code once: two classes with the same codes make one Condition. */
function worthRecording(evaluation: Evaluation): readonly Classification[] {
  const seen = new Set<string>();
  return evaluation.assessment.classification.filter((classification) => {
    const concept = classConcept(classification, evaluation.gestationalAge.period);
    const key = JSON.stringify(concept?.coding?.map((coding) => [coding.system, coding.code]));
    if (concept === undefined || notADiagnosis.includes(classification) || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function toCondition(evaluation: Evaluation, classification: Classification): SuggestedCondition['resource'] {
  const references = evidenceReferences(evaluation, [classification]);
  const code = classConcept(classification, evaluation.gestationalAge.period);
  return {
    resourceType: 'Condition',
    id: stableUuid([
      'Condition',
      classification,
      evaluation.stamp.fingerprint,
      evaluation.subject ?? '',
      references,
    ]),
    meta: traced(evaluation.stamp, 'provisional-condition'),
    clinicalStatus: statusConcept('condition-clinical', 'active', 'Active'),
    verificationStatus: statusConcept('condition-ver-status', 'provisional', 'Provisional'),
    category: [statusConcept('condition-category', 'problem-list-item', 'Problem List Item')],
    ...(code === undefined ? {} : { code }),
    subject: subjectReference(evaluation.subject),
    recordedDate: evaluation.asOf,
    ...(references.length === 0 ? {} : { evidence: [{ detail: references.map(toReference) }] }),
    note: [{ text: conditionNote(evaluation, classification) }],
  };
}

function statusConcept(system: string, code: string, display: string) {
  return { coding: [{ system: `http://terminology.hl7.org/CodeSystem/${system}`, code, display }] };
}

function conditionNote(evaluation: Evaluation, classification: Classification): string {
  const { stamp } = evaluation;
  return [
    `${sentenceCase(classWords[classification])}.`,
    `${sentenceCase(whenInPregnancy(evaluation.gestationalAge))}.`,
    `Proposed by rules of ${stamp.title} (${stamp.id}, version ${stamp.version}); provisional until a clinician confirms it.`,
  ].join(' ');
}

const priorities: Readonly<Record<Urgency, ServiceRequest['priority'] & string>> = {
  emergency: 'stat',
  'same-day': 'asap',
  'within-48-hours': 'urgent',
  'within-7-days': 'routine',
  routine: 'routine',
};

function toServiceRequest(
  evaluation: Evaluation,
  referral: Referral,
  reasons: readonly string[],
): ServiceRequest & { id: string } {
  const { assessment, gestationalAge } = evaluation;
  const references = evidenceReferences(evaluation);
  const classes = assessment.classification;
  return {
    resourceType: 'ServiceRequest',
    id: stableUuid(['ServiceRequest', referral.level, referral.urgency, ...identity(evaluation, references)]),
    meta: traced(evaluation.stamp, 'referral-proposal'),
    status: 'draft',
    intent: 'proposal',
    priority: priorities[referral.urgency],
    code: referralConcept(referral.level),
    subject: subjectReference(evaluation.subject),
    ...dueTime(referral.urgency, evaluation.timeline.asOf, clinicOffset(evaluation.timeline)),
    authoredOn: evaluation.asOf,
    ...performerOf(evaluation, referral),
    reasonCode: classes.map(
      (each) => classConcept(each, gestationalAge.period) ?? { text: sentenceCase(classWords[each]) },
    ),
    reasonReference: someMapped(reasons, toReference),
    supportingInfo: someMapped(references, toReference),
    note: [{ text: referralNote(evaluation, referral) }],
    patientInstruction: patientInstruction(evaluation, referral),
  };
}

/** The Organization or HealthcareService that the site names for this level. */
function performerOf({ performers }: Evaluation, { level }: Referral): Pick<ServiceRequest, 'performer'> {
  const performer = performers?.get(level);
  return performer === undefined ? {} : { performer: [performer] };
}

function identity(evaluation: Evaluation, references: readonly string[]): (string | readonly string[])[] {
  const { assessment, stamp, subject } = evaluation;
  return [assessment.classification, stamp.fingerprint, subject ?? '', references];
}

function referralNote(evaluation: Evaluation, referral: Referral): string {
  const steps = evaluation.assessment.actions
    .filter((action) => action.kind === 'before-transfer')
    .map((action, index) => `${index + 1}. ${action.sentence}`);
  return [
    referral.sentence,
    `${sentenceCase(whenInPregnancy(evaluation.gestationalAge))}.`,
    ...(steps.length === 0 ? [] : ['Before transfer, in this order:', ...steps]),
  ].join('\n');
}

function patientInstruction(evaluation: Evaluation, referral: Referral): string {
  const told = evaluation.assessment.actions.filter((action) => action.kind === 'tell-the-woman');
  if (told.length > 0) return told.map((action) => action.sentence).join(' ');
  return `You are asked to go to: ${referralWords[referral.level]} (${urgencyWords[referral.urgency]}).`;
}
