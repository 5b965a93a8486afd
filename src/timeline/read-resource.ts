// Each resource to the reader of its kind. Hands on the facts found, and what can only be read together.
import type {
  AllergyIntolerance,
  Condition,
  FamilyMemberHistory,
  MedicationAdministration,
  MedicationRequest,
  MedicationStatement,
  Observation,
  Procedure,
  Resource,
  ServiceRequest,
} from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import { isBirth } from './birth.ts';
import { readAllergy, readConditions, readFamilyHistory } from './conditions.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { effectiveMoment, isInFuture } from './effective-moment.ts';
import { fieldsOf } from './fields.ts';
import { readLaboratory } from './laboratory.ts';
import { readMedicines } from './medicines.ts';
import { observationKindOf } from './observation-kind.ts';
import { readFinding } from './observed-findings.ts';
import { readRequest } from './requests.ts';
import { readSymptoms, readSymptomsOfCondition } from './symptoms.ts';
import type {
  ExistingRequest,
  KnownCondition,
  LaboratoryResult,
  Medicine,
  Moment,
  Symptom,
  UrineProtein,
  UrineSign,
} from './timeline.ts';
import { readProcedure } from './procedures.ts';
import { isNotAsked, isUnusable, unusable } from './unusable.ts';
import type { NotAsked } from './unusable.ts';
import { readUrineProtein, readUrineSign } from './urine-protein.ts';
import { weeksInCode } from './weeks-code.ts';

/** Facts, and resources that can only be read together, as they are found. */
export interface Facts {
  readonly pressures: Received[];
  readonly pressureCircumstances: Received[];
  readonly dating: Received[];
  readonly births: Received[];
  readonly counts: Received[];
  readonly statuses: Received[];
  readonly weeksCodes: Received[];
  readonly urineProteins: UrineProtein[];
  readonly urineSigns: UrineSign[];
  readonly laboratory: LaboratoryResult[];
  readonly symptoms: Symptom[];
  readonly conditions: KnownCondition[];
  readonly medicines: Medicine[];
  readonly requests: ExistingRequest[];
}

export function openFacts(): Facts {
  return {
    pressures: [],
    pressureCircumstances: [],
    dating: [],
    births: [],
    counts: [],
    statuses: [],
    weeksCodes: [],
    urineProteins: [],
    urineSigns: [],
    laboratory: [],
    symptoms: [],
    conditions: [],
    medicines: [],
    requests: [],
  };
}

/** Gives one resource to its reader; what cannot be read alone is put aside for later. */
export function readResource(received: Received, facts: Facts, context: TimelineContext): void {
  if (isBirth(fieldsOf(received.resource))) facts.births.push(received);
  else if (is<Observation>(received, 'Observation')) readObservation(received, facts, context);
  else if (is<Condition>(received, 'Condition')) readCondition(received, facts, context);
  else if (isMedicineResource(received))
    keep(received, readMedicines(received, context), facts.medicines, context);
  else if (is<ServiceRequest>(received, 'ServiceRequest'))
    keep(received, asList(readRequest(received, context)), facts.requests, context);
  else if (is<AllergyIntolerance>(received, 'AllergyIntolerance'))
    keep(received, readAllergy(received, context), facts.conditions, context);
  else if (is<FamilyMemberHistory>(received, 'FamilyMemberHistory'))
    keep(received, readFamilyHistory(received, context), facts.conditions, context);
  else if (is<Procedure>(received, 'Procedure'))
    keep(received, readProcedure(received, context), facts.conditions, context);
  else if (received.resource.resourceType !== 'Patient')
    context.notNeeded(received, whyNotNeeded(received.resource.resourceType));
}

function is<R extends Resource>(
  received: Received,
  resourceType: R['resourceType'],
): received is Received<R> {
  return received.resource.resourceType === resourceType;
}

function isMedicineResource(
  received: Received,
): received is Received<MedicationStatement | MedicationRequest | MedicationAdministration> {
  return ['MedicationStatement', 'MedicationRequest', 'MedicationAdministration'].includes(
    received.resource.resourceType,
  );
}

const helpers: Readonly<Record<string, string>> = {
  Encounter: 'read for the time and setting of observations',
  Device: 'read for how a pressure was taken',
  Specimen: 'read for the state of a sample',
  Medication: 'read for the name of a medicine',
};

function whyNotNeeded(resourceType: string): string {
  return helpers[resourceType] ?? `no rule asks for this ${resourceType}`;
}

function readObservation(received: Received<Observation>, facts: Facts, context: TimelineContext): void {
  switch (observationKindOf(fieldsOf(received.resource))) {
    case 'pressure':
      return void facts.pressures.push(received);
    case 'pressure-circumstance':
      return void facts.pressureCircumstances.push(received);
    case 'dating':
      return void facts.dating.push(received);
    case 'birth':
      return void facts.births.push(received);
    case 'count':
      return void facts.counts.push(received);
    case 'pregnancy-status':
      return void facts.statuses.push(received);
    case 'urine-protein':
      return keepDated(received, readUrineProtein, facts.urineProteins, context);
    case 'urine-sign':
      return keepDated(received, readUrineSign, facts.urineSigns, context);
    case 'laboratory':
      return keepDated(received, readLaboratory, facts.laboratory, context);
    case 'symptom':
      return readSymptomObservation(received, facts, context);
    case 'finding':
      return keep(received, readFinding(received, context), facts.conditions, context);
    case undefined:
      return context.notNeeded(received, 'no rule asks for this observation');
  }
}

/** Reads a result that needs its time; without one, or with a value that cannot be used, it is set aside. */
function keepDated<Fact>(
  received: Received<Observation>,
  read: (received: Received<Observation>, context: TimelineContext, at: Moment) => Fact | Unusable,
  into: Fact[],
  context: TimelineContext,
): void {
  const at = effectiveMoment(received, context);
  const fact = isUnusable(at) ? at : read(received, context, at);
  if (isUnusable(fact)) context.setAside(received, fact);
  else into.push(fact);
}

function readSymptomObservation(
  received: Received<Observation>,
  facts: Facts,
  context: TimelineContext,
): void {
  const at = effectiveMoment(received, context);
  if (isUnusable(at) && at.code !== 'time-missing') context.setAside(received, at);
  else
    keep(received, readSymptoms(received, context, isUnusable(at) ? undefined : at), facts.symptoms, context);
}

function readCondition(received: Received<Condition>, facts: Facts, context: TimelineContext): void {
  const symptoms = readSymptomsOfCondition(received, context);
  if (symptoms.length === 0) {
    if (weeksInCode(received.resource.code) !== undefined) facts.weeksCodes.push(received);
    return keep(received, readConditions(received, context), facts.conditions, context);
  }
  const current = symptoms.filter((symptom) => !isFuture(symptom, context));
  if (current.length === 0) return context.setAside(received, inFuture);
  facts.symptoms.push(...current);
  const conditions = readConditions(received, context);
  if (!isUnusable(conditions) && !isNotAsked(conditions)) facts.conditions.push(...conditions);
}

/** Keeps what a reader found, which is one fact at least, unless all of it lies in the future. */
function keep<Fact extends object>(
  received: Received,
  read: readonly Fact[] | NotAsked | Unusable,
  into: Fact[],
  context: TimelineContext,
): void {
  if (isUnusable(read)) return context.setAside(received, read);
  if (isNotAsked(read)) return context.notNeeded(received, read.why);
  const current = read.filter((fact) => !isFuture(fact, context));
  if (current.length === 0) return context.setAside(received, inFuture);
  into.push(...current);
}

const inFuture = unusable(
  'time-in-future',
  '',
  'It lies after the time of the evaluation: compare the clock and the time zone of the sender.',
);

interface Dated {
  readonly status?: string;
  readonly at?: Moment;
  readonly onset?: Moment;
  readonly recorded?: Moment;
  readonly start?: Moment;
}

/** Anything dated later than `asOf`: when it was true, recorded, or begun; an order may begin later. */
function isFuture({ at, onset, recorded, start, status }: Dated, context: TimelineContext): boolean {
  if (status === 'ordered') return false;
  return [at, onset, recorded, start].some((moment) => moment !== undefined && isInFuture(moment, context));
}

function asList<Fact>(read: Fact | NotAsked): readonly Fact[] | NotAsked {
  return isNotAsked(read) ? read : [read];
}
