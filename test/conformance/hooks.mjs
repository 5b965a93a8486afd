// The hooks of the public library as far as this check can play them, and a private one by its context.
import { randomUUID } from 'node:crypto';

/** Published hooks and their version (CDS Hooks Library). */
export const publishedHooks = {
  'patient-view': '1.0',
  'encounter-start': '1.0',
  'encounter-discharge': '1.0',
  'order-select': '1.0',
  'order-sign': '1.0',
  'order-dispatch': '1.1',
  'appointment-book': '1.0',
  'problem-list-item-create': '0.1.0',
  'medication-refill': '0.1.0',
  'allergyintolerance-create': '0.1.0',
  'medication-verify': '0.1.0',
  'medication-prescribe': undefined,
  'order-review': undefined,
};

const collection = (...resources) => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: resources.map((resource) => ({ resource })),
});

/** A draft of lisinopril (ATC C09AA03). */
const draftFor = (patientId) => ({
  resourceType: 'MedicationRequest',
  id: 'draft-1',
  status: 'draft',
  intent: 'order',
  subject: { reference: `Patient/${patientId}` },
  medicationCodeableConcept: {
    coding: [{ system: 'http://www.whocc.no/atc', code: 'C09AA03', display: 'lisinopril' }],
  },
});

const problemOf = (patientId) => ({
  resourceType: 'Condition',
  id: 'new-problem',
  clinicalStatus: {
    coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code: 'active' }],
  },
  code: { text: 'Backache' },
  subject: { reference: `Patient/${patientId}` },
});

/** Context of a hook; undefined for a hook this check cannot play. */
export function contextFor(hook, patientId, now) {
  const basic = { userId: 'Practitioner/conformance-midwife', patientId };
  const visit = { ...basic, encounterId: 'conformance-visit' };
  switch (hook) {
    case 'patient-view':
      return basic;
    case 'encounter-start':
    case 'encounter-discharge':
      return visit;
    case 'order-select':
      return {
        ...basic,
        selections: ['MedicationRequest/draft-1'],
        draftOrders: collection(draftFor(patientId)),
      };
    case 'order-sign':
      return { ...basic, draftOrders: collection(draftFor(patientId)) };
    case 'medication-refill':
      return { ...basic, medications: collection(draftFor(patientId)) };
    case 'problem-list-item-create':
      return { ...basic, conditions: collection(problemOf(patientId)) };
    case 'appointment-book': {
      const start = new Date(now + 30 * 24 * 3_600_000).toISOString();
      return {
        ...basic,
        appointments: collection({
          resourceType: 'Appointment',
          status: 'proposed',
          start,
          participant: [{ actor: { reference: `Patient/${patientId}` }, status: 'needs-action' }],
        }),
      };
    }
    default:
      return undefined;
  }
}

/** A fresh call id; the same sequence again when counted. */
export function callIds(isCounted) {
  let count = 0;
  return () => {
    if (!isCounted) return randomUUID();
    count += 1;
    return `00000000-0000-4000-8000-${String(count).padStart(12, '0')}`;
  };
}
