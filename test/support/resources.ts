// FHIR resources of one invented woman, built from plain clinical words. Used by all tests.
import type {
  AllergyIntolerance,
  Bundle,
  BundleEntry,
  CodeableConcept,
  Condition,
  FhirResource,
  MedicationAdministration,
  MedicationRequest,
  MedicationStatement,
  Observation,
  ObservationComponent,
  Patient,
  Quantity,
} from 'fhir/r4.js';

import { conditionCodes, laboratoryCodes, medicineCodes, stripAnswers, symptomCodes } from './codes.ts';
import type { ConditionName, LaboratoryName, MedicineName, StripAnswer, SymptomName } from './codes.ts';

export const woman = 'Patient/woman';
const loincSystem = 'http://loinc.org';
const snomedSystem = 'http://snomed.info/sct';

export const loinc = (code: string, display?: string): CodeableConcept => concept(loincSystem, code, display);
export const snomed = (code: string, display?: string): CodeableConcept =>
  concept(snomedSystem, code, display);

function concept(system: string, code: string, display?: string): CodeableConcept {
  return { coding: [{ system, code, ...(display === undefined ? {} : { display }) }] };
}

/** A UCUM quantity. Unit text is left out unless given, as `Quantity.code` decides. */
export function quantity(value: number, unit: string): Quantity {
  return { value, unit, system: 'http://unitsofmeasure.org', code: unit };
}

export function patient(fields: Partial<Patient> = {}): Patient {
  return { resourceType: 'Patient', id: 'woman', gender: 'female', birthDate: '1996-04-02', ...fields };
}

/** An observation of the woman with status final. `at` is a FHIR dateTime. */
export function observation(
  code: CodeableConcept,
  at: string | undefined,
  fields: Partial<Observation> = {},
): Observation {
  return {
    resourceType: 'Observation',
    status: 'final',
    code,
    subject: { reference: woman },
    ...(at === undefined ? {} : { effectiveDateTime: at }),
    ...fields,
  };
}

export interface PressureOptions {
  readonly unit?: 'mm[Hg]' | 'kPa';
  readonly arm?: 'left' | 'right';
  readonly setting?: 'home' | 'clinic';
  readonly panelCode?: string;
  readonly status?: Observation['status'];
}

const armSites = { right: '368209003', left: '368208006' };
const settingProcedures = { home: '413153004', clinic: undefined };

/** A panel with one or two components; half a pair leaves the other component out. */
export function pressure(
  at: string,
  systolic: number | undefined,
  diastolic: number | undefined,
  options: PressureOptions = {},
): Observation {
  const unit = options.unit ?? 'mm[Hg]';
  const method = options.setting === undefined ? undefined : settingProcedures[options.setting];
  return observation(loinc(options.panelCode ?? '85354-9'), at, {
    component: halves([
      ['8480-6', systolic, unit],
      ['8462-4', diastolic, unit],
    ]),
    ...(options.arm === undefined ? {} : { bodySite: snomed(armSites[options.arm]) }),
    ...(method === undefined ? {} : { method: snomed(method) }),
    ...(options.status === undefined ? {} : { status: options.status }),
  });
}

type Half = readonly [code: string, value: number | undefined, unit: string];

function halves(parts: readonly Half[]): ObservationComponent[] {
  return parts.flatMap(([code, value, unit]) =>
    value === undefined ? [] : [{ code: loinc(code), valueQuantity: quantity(value, unit) }],
  );
}

/** Systolic alone, heard or felt: two separate codes, no panel. */
export function systolicOnly(at: string, systolicMmHg: number, palpated = false): Observation {
  return observation(loinc(palpated ? '8479-8' : '8480-6'), at, {
    valueQuantity: quantity(systolicMmHg, 'mm[Hg]'),
  });
}

export function diastolicOnly(at: string, diastolicMmHg: number): Observation {
  return observation(loinc('8462-4'), at, { valueQuantity: quantity(diastolicMmHg, 'mm[Hg]') });
}

export interface HomeSeries {
  readonly from: string;
  readonly to: string;
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
  readonly readings: number;
}

/** The mean of a series taken at home: a mean panel (96607-7), marked as recorded at home. */
export function homeMean(series: HomeSeries): Observation {
  return observation(loinc('96607-7'), undefined, {
    effectivePeriod: { start: series.from, end: series.to },
    method: snomed('413153004', 'Blood pressure recorded by patient at home (procedure)'),
    component: [
      { code: loinc('96608-5'), valueQuantity: quantity(series.systolicMmHg, 'mm[Hg]') },
      { code: loinc('96609-3'), valueQuantity: quantity(series.diastolicMmHg, 'mm[Hg]') },
      { code: { text: 'number of readings' }, valueInteger: series.readings },
    ],
  });
}

/** Protein on a strip, as a LOINC answer. */
export function strip(at: string, answer: StripAnswer): Observation {
  return observation(loinc('20454-5'), at, {
    valueCodeableConcept: loinc(stripAnswers[answer], answer),
  });
}

const signCodes = { nitrite: '5802-4', leucocytes: '5799-2' } as const;

export function stripSign(at: string, sign: keyof typeof signCodes, answer: StripAnswer): Observation {
  return observation(loinc(signCodes[sign]), at, {
    valueCodeableConcept: loinc(stripAnswers[answer], answer),
  });
}

/** Protein/creatinine ratio: the mass-ratio code for mass units, the plain one otherwise. */
export function ratio(at: string, value: number, unit: string): Observation {
  return observation(loinc(unit === 'mg/mg' || unit === 'mg/g' ? '2890-2' : '34366-5'), at, {
    valueQuantity: quantity(value, unit),
  });
}

export function albuminRatio(at: string, value: number, unit: string): Observation {
  return observation(loinc(unit === 'mg/mmol' ? '32294-1' : '9318-7'), at, {
    valueQuantity: quantity(value, unit),
  });
}

export function protein24h(
  at: string,
  amount: number | undefined,
  unit: 'mg/(24.h)' | 'g/(24.h)' = 'mg/(24.h)',
): Observation {
  return observation(
    loinc('2889-4'),
    at,
    amount === undefined ? {} : { valueQuantity: quantity(amount, unit) },
  );
}

/** The same observation with a remark of the laboratory or the midwife. */
export const noted = (resource: Observation, note: string | undefined): Observation =>
  note === undefined ? resource : { ...resource, note: [{ text: note }] };

/** The same pressure as bare numbers. */
export const withoutUnit = (resource: Observation): Observation => ({
  ...resource,
  component: (resource.component ?? []).map((component) => ({
    ...component,
    ...(component.valueQuantity?.value === undefined
      ? {}
      : { valueQuantity: { value: component.valueQuantity.value } }),
  })),
});

/** A result; `upperLimit` is what the laboratory prints as its upper reference limit, in the same unit. */
export function lab(
  at: string,
  name: LaboratoryName,
  value: number,
  unit: string,
  upperLimit?: number,
): Observation {
  const code =
    name === 'creatinine' && unit === 'umol/L' ? laboratoryCodes['creatinine-moles'] : laboratoryCodes[name];
  return observation(loinc(code), at, {
    valueQuantity: quantity(value, unit),
    ...(upperLimit === undefined ? {} : { referenceRange: [{ high: quantity(upperLimit, unit) }] }),
  });
}

/** A symptom asked about: true present, false absent. */
export function symptom(at: string | undefined, name: SymptomName, present: boolean): Observation {
  const code = symptomCodes[name];
  return observation(code === undefined ? { text: name.replaceAll('-', ' ') } : snomed(code, name), at, {
    valueBoolean: present,
  });
}

/** The four questions asked at a first-level clinic, each answered "no". */
export function noDangerSymptoms(at: string): Observation[] {
  const asked: readonly SymptomName[] = ['headache', 'visual-disturbance', 'epigastric-pain', 'dyspnoea'];
  return asked.map((name) => symptom(at, name, false));
}

/** Stated age in days, so that 19+6 is 139 and nothing is rounded. */
export function gestationalAge(at: string, days: number): Observation {
  return observation(loinc('18185-9'), at, { valueQuantity: quantity(days, 'd') });
}

export function dueDate(at: string, due: string): Observation {
  return observation(loinc('11778-8'), at, { valueDateTime: due });
}

export function lastPeriod(at: string, start: string): Observation {
  return observation(loinc('8665-2'), at, { valueDateTime: start });
}

/** Date or time of the birth of this pregnancy. */
export function birth(at: string): Observation {
  return observation(loinc('93857-1'), at, { valueDateTime: at });
}

export const count = (at: string, name: 'gravidity' | 'parity', value: number): Observation =>
  observation(loinc(name === 'parity' ? '11977-6' : '11996-6'), at, { valueInteger: value });

/** An active, confirmed condition; `onset` is a FHIR date. */
export function condition(name: ConditionName, onset?: string): Condition {
  return {
    resourceType: 'Condition',
    clinicalStatus: concept('http://terminology.hl7.org/CodeSystem/condition-clinical', 'active'),
    verificationStatus: concept('http://terminology.hl7.org/CodeSystem/condition-ver-status', 'confirmed'),
    code: snomed(conditionCodes[name]),
    subject: { reference: woman },
    ...(onset === undefined ? {} : { onsetDateTime: onset, recordedDate: onset }),
  };
}

function medicineConcept(name: MedicineName): CodeableConcept {
  const [code, display] = medicineCodes[name];
  return { ...concept('http://www.whocc.no/atc', code, display), text: display };
}

/** Being taken from `start` on. */
export function takes(name: MedicineName, start: string): MedicationStatement {
  return {
    resourceType: 'MedicationStatement',
    status: 'active',
    medicationCodeableConcept: medicineConcept(name),
    subject: { reference: woman },
    effectivePeriod: { start },
  };
}

/** One dose given at a time. */
export function given(name: MedicineName, at: string): MedicationAdministration {
  return {
    resourceType: 'MedicationAdministration',
    status: 'completed',
    medicationCodeableConcept: medicineConcept(name),
    subject: { reference: woman },
    effectiveDateTime: at,
  };
}

/** An infusion begun at a time and not ended. */
export function running(name: MedicineName, at: string): MedicationAdministration {
  const { effectiveDateTime: _, ...rest } = given(name, at);
  return { ...rest, status: 'in-progress', effectivePeriod: { start: at } };
}

/** An order in force; whether it was carried out is not recorded. */
export function ordered(name: MedicineName, at: string): MedicationRequest {
  return {
    resourceType: 'MedicationRequest',
    status: 'active',
    intent: 'order',
    medicationCodeableConcept: medicineConcept(name),
    subject: { reference: woman },
    authoredOn: at,
  };
}

/** An allergy, active and confirmed. */
export function allergy(name: MedicineName): AllergyIntolerance {
  const status = (kind: string, code: string): CodeableConcept => ({
    coding: [{ system: `http://terminology.hl7.org/CodeSystem/allergyintolerance-${kind}`, code }],
  });
  return {
    resourceType: 'AllergyIntolerance',
    clinicalStatus: status('clinical', 'active'),
    verificationStatus: status('verification', 'confirmed'),
    code: medicineConcept(name),
    patient: { reference: woman },
  };
}

/** A collection of the woman and the resources; those without an id are numbered in the order given. */
export function bundleOf(resources: readonly FhirResource[], who: Patient = patient()): Bundle {
  const numbered = resources.map((resource, index) => ({ ...resource, id: resource.id ?? `r${index}` }));
  const entry: BundleEntry[] = [who, ...numbered].map((resource) => ({ resource }));
  return { resourceType: 'Bundle', type: 'collection', entry };
}
