// Which statuses allow a resource to be used (fhir.md 4.1; FHIR R4 4.0.1 status value sets).
import type { ResourceJson } from './json.ts';
import { listOf, memberOf } from './json.ts';
import type { Reason } from './ledger.ts';

const OBSERVATION_USABLE: ReadonlySet<unknown> = new Set(['final', 'amended', 'corrected', 'preliminary']);

const NOT_USABLE: ReadonlyMap<string, ReadonlySet<unknown>> = new Map([
  ['MedicationStatement', new Set(['not-taken'])],
  ['MedicationAdministration', new Set(['not-done'])],
  ['Procedure', new Set(['not-done', 'preparation'])],
]);
const CANCELLED_COUNTS: ReadonlySet<string> = new Set(['Encounter', 'MedicationRequest']);
const VERIFIED: ReadonlySet<string> = new Set(['Condition', 'AllergyIntolerance']);
const NEGATABLE: ReadonlySet<string> = new Set(['MedicationRequest', 'ServiceRequest']);

const IN_ERROR: Reason = {
  code: 'entered-in-error',
  element: 'status',
  message: 'Entered in error: never used. If it is right, send it with its right status.',
};
const CANCELLED: Reason = {
  code: 'cancelled',
  element: 'status',
  message: 'Cancelled: holds no result. Measure or record again if it is still needed.',
};
const MISSING: Reason = {
  code: 'status-missing',
  element: 'status',
  message: 'No status: send one, such as final.',
};

/**
 * May a resource be used, by its status?
 *
 * Given    resource  of a type that is read
 * Returns  undefined when it may; else why not, and how to mend it
 * Throws   never
 * Notes    1. Observation: only final, amended, corrected and preliminary; every other status, known or not, is refused.
 *          2. Stopped and completed medication stays usable: the timeline decides what it means.
 * Source   fhir.md 4.1, F-M02, F-M09, F-M10
 */
export function refusedByStatus(resource: ResourceJson): Reason | undefined {
  const { status } = resource;
  if (status === 'entered-in-error') return IN_ERROR;
  const type = resource.resourceType;
  if (type === 'Observation') return refusedObservation(status);
  if (VERIFIED.has(type)) return refusedByVerification(resource.verificationStatus);
  if (status === 'cancelled' && CANCELLED_COUNTS.has(type)) return CANCELLED;
  if (NOT_USABLE.get(type)?.has(status) === true)
    return notUsable('status', 'says that it did not take place');
  if (resource.doNotPerform === true && NEGATABLE.has(type))
    return notUsable('doNotPerform', 'asks not to do it');
  return undefined;
}

/** Is it used, but not yet final? */
export function isPreliminary(resource: ResourceJson): boolean {
  return resource.status === 'preliminary' && resource.resourceType === 'Observation';
}

function refusedObservation(status: unknown): Reason | undefined {
  if (OBSERVATION_USABLE.has(status)) return undefined;
  if (status === undefined || status === null) return MISSING;
  if (status === 'cancelled') return CANCELLED;
  return notUsable(
    'status',
    'is not one of a result: use final, amended, corrected or preliminary once there is one',
  );
}

function refusedByVerification(verification: unknown): Reason | undefined {
  const codes = listOf(memberOf(verification, 'coding')).map((coding) => memberOf(coding, 'code'));
  if (codes.includes('entered-in-error')) return { ...IN_ERROR, element: 'verificationStatus' };
  return codes.includes('refuted') ? notUsable('verificationStatus', 'says that it was refuted') : undefined;
}

function notUsable(element: string, why: string): Reason {
  return { code: 'status-not-usable', element, message: `Not used: its ${element} ${why}.` };
}
