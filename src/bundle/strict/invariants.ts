// Invariants of R4 for the types that are read, as plain functions; each is compared with its FHIRPath in the tests.
import { isObject, listOf, memberOf, textOf } from '../json.ts';
import type { JsonObject } from '../json.ts';
import { doubt, fault } from './fault.ts';
import type { Check, Fault } from './fault.ts';

export interface Invariant {
  readonly key: string;
  readonly type: string;
  readonly holds: (resource: JsonObject) => boolean;
  readonly element: string;
  readonly message: string;
}

const has = (value: unknown): boolean => value !== undefined && value !== null;
const hasChoice = (resource: JsonObject, name: string): boolean =>
  Object.keys(resource).some(
    (key) =>
      key.replace(/^_/, '').startsWith(name) && /^[A-Z]/.test(key.replace(/^_/, '').slice(name.length)),
  );

const hasCode = (concept: unknown, system: string, codes: readonly string[]): boolean =>
  listOf(memberOf(concept, 'coding')).some(
    (coding) => memberOf(coding, 'system') === system && codes.includes(String(memberOf(coding, 'code'))),
  );

const verification = 'http://terminology.hl7.org/CodeSystem/condition-ver-status';
const clinical = 'http://terminology.hl7.org/CodeSystem/condition-clinical';
const isInError = (resource: JsonObject): boolean =>
  hasCode(resource.verificationStatus, verification, ['entered-in-error']);

/** Codings compared member by member, as FHIRPath compares them. */
function sharesCoding(one: unknown, other: unknown): boolean {
  const mine = new Set(listOf(memberOf(one, 'coding')).map(sortedText));
  return listOf(memberOf(other, 'coding')).some((coding) => mine.has(sortedText(coding)));
}

function sortedText(value: unknown): string {
  return isObject(value)
    ? JSON.stringify(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : JSON.stringify(value);
}

function everyOf(list: unknown, ...names: readonly string[]): boolean {
  return listOf(list).every((item) => names.some((name) => has(memberOf(item, name))));
}

/**
 * Invariants of severity error.
 *
 * Source   FHIR R4 4.0.1 StructureDefinitions Observation, Condition, Patient, ServiceRequest
 */
export const invariants: readonly Invariant[] = [
  {
    key: 'obs-3',
    type: 'Observation',
    holds: ({ referenceRange }) => everyOf(referenceRange, 'low', 'high', 'text'),
    element: 'referenceRange',
    message: 'A reference range needs a low, a high or a text: fill one.',
  },
  {
    key: 'obs-6',
    type: 'Observation',
    holds: (resource) => !has(resource.dataAbsentReason) || !hasChoice(resource, 'value'),
    element: 'dataAbsentReason',
    message: 'A value and a reason for its absence contradict each other: send one of them.',
  },
  {
    key: 'obs-7',
    type: 'Observation',
    holds: (resource) =>
      !hasChoice(resource, 'value') ||
      !listOf(resource.component).some((part) => sharesCoding(memberOf(part, 'code'), resource.code)),
    element: 'component',
    message: 'A component repeats the code of the Observation, which has its own value: send the value once.',
  },
  {
    key: 'con-1',
    type: 'Condition',
    holds: ({ stage }) => everyOf(stage, 'summary', 'assessment'),
    element: 'stage',
    message: 'A stage needs a summary or an assessment: fill one.',
  },
  {
    key: 'con-2',
    type: 'Condition',
    holds: ({ evidence }) => everyOf(evidence, 'code', 'detail'),
    element: 'evidence',
    message: 'Evidence needs a code or a detail: fill one.',
  },
  {
    key: 'con-4',
    type: 'Condition',
    holds: (resource) =>
      !hasChoice(resource, 'abatement') ||
      hasCode(resource.clinicalStatus, clinical, ['resolved', 'remission', 'inactive']),
    element: 'clinicalStatus',
    message: 'It has ended by its abatement: clinicalStatus must be resolved, remission or inactive.',
  },
  {
    key: 'con-5',
    type: 'Condition',
    holds: (resource) => !isInError(resource) || !has(resource.clinicalStatus),
    element: 'clinicalStatus',
    message: 'Entered in error: leave clinicalStatus out.',
  },
  {
    key: 'pat-1',
    type: 'Patient',
    holds: ({ contact }) => everyOf(contact, 'name', 'telecom', 'address', 'organization'),
    element: 'contact',
    message: 'A contact needs a name, telecom, address or organization: fill one.',
  },
  {
    key: 'prr-1',
    type: 'ServiceRequest',
    holds: (resource) => !has(resource.orderDetail) || has(resource.code),
    element: 'orderDetail',
    message: 'orderDetail needs a code: fill code.',
  },
];

/**
 * con-3 as it was meant (the published expression compares a CodeableConcept with a text and finds nothing): of the problem list, not entered in error, and without a
 * clinical status.
 */
function meantProblem(resource: JsonObject): boolean {
  const category = 'http://terminology.hl7.org/CodeSystem/condition-category';
  return (
    !has(resource.clinicalStatus) &&
    !isInError(resource) &&
    listOf(resource.category).some((each) => hasCode(each, category, ['problem-list-item']))
  );
}

/** The invariants a resource breaks. */
export const invariantFaults: Check = (resource) => {
  const type = textOf(resource.resourceType);
  const broken = invariants
    .filter((each) => each.type === type && !each.holds(resource))
    .map((each): Fault => fault(each.key, 'invariant', each.element, each.message));
  if (type !== 'Condition' || !meantProblem(resource)) return broken;
  const message = 'A problem of the list should say whether it is active: fill clinicalStatus.';
  return [...broken, doubt('con-3', 'invariant', 'clinicalStatus', message)];
};
