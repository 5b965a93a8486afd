// Mandatory elements the schema lets pass, choices of which only one may be sent, codes of required bindings. Data.

/** Elements that must be there; of several names in a group one is enough. `[*]` walks a list. */
export interface Mandatory {
  /** Where: a list of member names, each of which may be a list; empty: the resource itself. */
  readonly within: readonly string[];
  readonly anyOf: readonly string[];
}

const here = (...anyOf: readonly string[]): Mandatory => ({ within: [], anyOf });
const inside = (within: string, ...anyOf: readonly string[]): Mandatory => ({
  within: within.split('.'),
  anyOf,
});

const medication = here('medicationCodeableConcept', 'medicationReference');

/**
 * Primitives and choices with a minimum of one, which the schema does not ask for.
 *
 * Source   FHIR R4 4.0.1 StructureDefinitions, min = 1; fhir.md section 13
 */
export const mandatoryElements: Readonly<Record<string, readonly Mandatory[]>> = {
  AllergyIntolerance: [],
  Bundle: [
    here('type'),
    inside('link', 'relation'),
    inside('link', 'url'),
    inside('entry.request', 'method'),
    inside('entry.request', 'url'),
    inside('entry.response', 'status'),
  ],
  Encounter: [here('status'), inside('statusHistory', 'status')],
  FamilyMemberHistory: [here('status')],
  MedicationAdministration: [here('status'), medication, here('effectiveDateTime', 'effectivePeriod')],
  MedicationRequest: [here('status'), here('intent'), medication],
  MedicationStatement: [here('status'), medication],
  Observation: [here('status')],
  Parameters: [inside('parameter', 'name')],
  Patient: [inside('link', 'type')],
  Procedure: [here('status')],
  ServiceRequest: [here('status'), here('intent')],
};

/** Elements `x[y]`, by the path of what holds them; at most one member beginning with the name may be sent. */
export const choices: Readonly<Record<string, readonly (readonly [holder: string, name: string])[]>> = {
  AllergyIntolerance: [['', 'onset']],
  Condition: [
    ['', 'onset'],
    ['', 'abatement'],
  ],
  FamilyMemberHistory: [
    ['', 'born'],
    ['', 'age'],
    ['', 'deceased'],
    ['condition', 'onset'],
  ],
  Medication: [['ingredient', 'item']],
  MedicationAdministration: [
    ['', 'medication'],
    ['', 'effective'],
    ['dosage', 'rate'],
  ],
  MedicationRequest: [
    ['', 'reported'],
    ['', 'medication'],
    ['dosageInstruction', 'asNeeded'],
  ],
  MedicationStatement: [
    ['', 'medication'],
    ['', 'effective'],
    ['dosage', 'asNeeded'],
  ],
  Observation: [
    ['', 'effective'],
    ['', 'value'],
    ['component', 'value'],
  ],
  Parameters: [['parameter', 'value']],
  Patient: [
    ['', 'deceased'],
    ['', 'multipleBirth'],
  ],
  Procedure: [['', 'performed']],
  ServiceRequest: [
    ['', 'quantity'],
    ['', 'occurrence'],
    ['', 'asNeeded'],
  ],
  Specimen: [
    ['collection', 'collected'],
    ['collection', 'fastingStatus'],
    ['processing', 'time'],
  ],
};

const terminology = 'http://terminology.hl7.org/CodeSystem';

export interface RequiredBinding {
  readonly element: string;
  readonly system: string;
  readonly codes: readonly string[];
}

const conditionStates = ['active', 'recurrence', 'relapse', 'inactive', 'remission', 'resolved'];

/**
 * Required bindings that sit on a CodeableConcept, where the schema sees no code.
 *
 * Source   FHIR R4 4.0.1 value sets condition-clinical, condition-ver-status, allergyintolerance-clinical,
 *          allergyintolerance-verification
 */
export const requiredBindings: Readonly<Record<string, readonly RequiredBinding[]>> = {
  Condition: [
    { element: 'clinicalStatus', system: `${terminology}/condition-clinical`, codes: conditionStates },
    {
      element: 'verificationStatus',
      system: `${terminology}/condition-ver-status`,
      codes: ['unconfirmed', 'provisional', 'differential', 'confirmed', 'refuted', 'entered-in-error'],
    },
  ],
  AllergyIntolerance: [
    {
      element: 'clinicalStatus',
      system: `${terminology}/allergyintolerance-clinical`,
      codes: ['active', 'inactive', 'resolved'],
    },
    {
      element: 'verificationStatus',
      system: `${terminology}/allergyintolerance-verification`,
      codes: ['unconfirmed', 'confirmed', 'refuted', 'entered-in-error'],
    },
  ],
};

/**
 * Types the person of a resource may have.
 *
 * Source   FHIR R4 4.0.1 StructureDefinitions, targetProfile of subject and patient
 */
export const subjectTypes: Readonly<Record<string, readonly string[]>> = {
  AllergyIntolerance: ['Patient'],
  Condition: ['Patient', 'Group'],
  Encounter: ['Patient', 'Group'],
  FamilyMemberHistory: ['Patient'],
  MedicationAdministration: ['Patient', 'Group'],
  MedicationRequest: ['Patient', 'Group'],
  MedicationStatement: ['Patient', 'Group'],
  Observation: ['Patient', 'Group', 'Device', 'Location'],
  Procedure: ['Patient', 'Group'],
  ServiceRequest: ['Patient', 'Group', 'Location', 'Device'],
  Specimen: ['Patient', 'Group', 'Device', 'Substance', 'Location'],
  Device: ['Patient'],
};
