// Code system URIs as we write them, and the other spellings under which they arrive.

/** Canonical URIs. Source: HL7 Terminology NamingSystem resources, read. */
export const systems = {
  loinc: 'http://loinc.org',
  snomed: 'http://snomed.info/sct',
  icd10: 'http://hl7.org/fhir/sid/icd-10',
  icd10cm: 'http://hl7.org/fhir/sid/icd-10-cm',
  icd11: 'http://id.who.int/icd/release/11/mms',
  rxnorm: 'http://www.nlm.nih.gov/research/umls/rxnorm',
  atc: 'http://www.whocc.no/atc',
  ucum: 'http://unitsofmeasure.org',
  requestPriority: 'http://hl7.org/fhir/request-priority',
  actPriority: 'http://terminology.hl7.org/CodeSystem/v3-ActPriority',
  observationCategory: 'http://terminology.hl7.org/CodeSystem/observation-category',
  conditionCategory: 'http://terminology.hl7.org/CodeSystem/condition-category',
  conditionClinical: 'http://terminology.hl7.org/CodeSystem/condition-clinical',
  conditionVerification: 'http://terminology.hl7.org/CodeSystem/condition-ver-status',
  interpretation: 'http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation',
  dataAbsentReason: 'http://terminology.hl7.org/CodeSystem/data-absent-reason',
  actCode: 'http://terminology.hl7.org/CodeSystem/v3-ActCode',
  roleCode: 'http://terminology.hl7.org/CodeSystem/v3-RoleCode',
  specimenCondition: 'http://terminology.hl7.org/CodeSystem/v2-0493',
  yesNo: 'http://terminology.hl7.org/CodeSystem/v2-0136',
} as const;

/**
 * Other spellings of the same systems, lower case, without a trailing slash.
 * Source: terminology.md section 10 (superseded stubs, read); HL7 object identifiers (from memory).
 */
export const systemAliases: ReadonlyMap<string, string> = new Map([
  ['https://loinc.org', systems.loinc],
  ['http://www.loinc.org', systems.loinc],
  ['https://www.loinc.org', systems.loinc],
  ['urn:oid:2.16.840.1.113883.6.1', systems.loinc],
  ['https://snomed.info/sct', systems.snomed],
  ['http://www.snomed.org/sct', systems.snomed],
  ['urn:oid:2.16.840.1.113883.6.96', systems.snomed],
  ['http://terminology.hl7.org/codesystem/icd10', systems.icd10],
  ['urn:oid:2.16.840.1.113883.6.3', systems.icd10],
  ['http://terminology.hl7.org/codesystem/icd10cm', systems.icd10cm],
  ['urn:oid:2.16.840.1.113883.6.90', systems.icd10cm],
  ['http://id.who.int/icd11/mms', systems.icd11],
  ['urn:oid:2.16.840.1.113883.6.88', systems.rxnorm],
  ['urn:oid:2.16.840.1.113883.6.73', systems.atc],
  ['http://www.whocc.no/atcddd', systems.atc],
  ['https://unitsofmeasure.org', systems.ucum],
  ['urn:oid:2.16.840.1.113883.6.8', systems.ucum],
]);
