// Which resource types are read, and which element of each names the person it is about.

/** How a type names its person; `required: false`: it may be about nobody (a Medication, a Device on the shelf). */
export interface ReadType {
  readonly subjectElement: 'subject' | 'patient' | undefined;
  readonly required: boolean;
  /** Its subject makes somebody a candidate for "the woman". */
  readonly clinical: boolean;
}

const clinical: ReadType = { subjectElement: 'subject', required: true, clinical: true };
const about: ReadType = { subjectElement: 'subject', required: true, clinical: false };
const aboutPatient: ReadType = { subjectElement: 'patient', required: true, clinical: false };

/**
 * The resource types a rule or the timeline reads; every other type is received and not needed.
 *
 * Source   element names: FHIR R4 4.0.1, the resource pages; the choice of types is ours
 */
export const READ_TYPES: ReadonlyMap<string, ReadType> = new Map<string, ReadType>([
  ['Patient', { subjectElement: undefined, required: false, clinical: false }],
  ['Observation', clinical],
  ['Condition', clinical],
  ['MedicationStatement', clinical],
  ['MedicationRequest', clinical],
  ['MedicationAdministration', clinical],
  ['ServiceRequest', clinical],
  ['Medication', { subjectElement: undefined, required: false, clinical: false }],
  ['Procedure', about],
  ['Encounter', about],
  ['Specimen', { subjectElement: 'subject', required: false, clinical: false }],
  ['Device', { subjectElement: 'patient', required: false, clinical: false }],
  ['AllergyIntolerance', aboutPatient],
  ['FamilyMemberHistory', aboutPatient],
]);
