// Resources of an invented woman, and the counts of a measure over them.
import { evaluateMeasure, measurePeriod } from '../../src/evaluate-measure.ts';
import { guidelineOf } from '../../src/guidelines/registry.ts';
import type { MeasureId } from '../../src/guidelines/measures.ts';
import { bundle, half, patient, pressure, type Json } from '../bundle/make.ts';

const frontline = guidelineOf('frontline');
export const period = measurePeriod('2026', '2026', undefined);

export function measured(measure: MeasureId, resources: readonly Json[], subject?: string) {
  if (frontline === undefined || typeof period === 'string') throw new Error('the fixture is wrong');
  return evaluateMeasure(measure, JSON.parse(JSON.stringify(bundle(resources))), {
    period,
    guideline: frontline,
    ...(subject === undefined ? {} : { subject }),
  });
}

/** `ip den excl excep num missing` of the only woman. */
export function countsOf(measure: MeasureId, resources: readonly Json[]): readonly number[] {
  const { counts } = measured(measure, [patient(), ...resources]).totals;
  return [
    counts['initial-population'],
    counts.denominator,
    counts['denominator-exclusion'],
    counts['denominator-exception'],
    counts.numerator,
    counts['data-missing'],
  ];
}

export const reading = (id: string, at: string, systolic: number, diastolic: number): Json =>
  pressure(id, { effectiveDateTime: at, component: [half('8480-6', systolic), half('8462-4', diastolic)] });
export const about = { subject: { reference: 'Patient/1' } };
export const encounter = (id: string, start: string, more: Json = {}): Json => ({
  resourceType: 'Encounter',
  id,
  status: 'finished',
  class: { system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode', code: 'AMB' },
  period: { start },
  ...about,
  ...more,
});
export const strip = (id: string, at: string): Json => ({
  resourceType: 'Observation',
  id,
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '20454-5' }] },
  valueCodeableConcept: { text: 'negative' },
  effectiveDateTime: at,
  ...about,
});
export const given = (id: string, at: string): Json => ({
  resourceType: 'MedicationAdministration',
  id,
  status: 'completed',
  // RxNorm 7417 nifedipine
  medicationCodeableConcept: {
    coding: [{ system: 'http://www.nlm.nih.gov/research/umls/rxnorm', code: '7417' }],
    text: 'nifedipine',
  },
  effectiveDateTime: at,
  ...about,
});
export const dueDate = (on: string): Json => ({
  resourceType: 'Observation',
  id: 'due',
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '11778-8' }] },
  valueDateTime: on,
  effectiveDateTime: '2026-01-05T09:00:00Z',
  ...about,
});

export const born = (at: string): Json => ({
  resourceType: 'Observation',
  id: 'birth',
  status: 'final',
  code: { coding: [{ system: 'http://loinc.org', code: '93857-1' }] },
  valueDateTime: at,
  effectiveDateTime: at,
  ...about,
});
/** A pressure without meaning of its own: only that it was taken. */
export const day = (at: string): Json => reading(`at-${at.replace(/\W/g, '')}`, at, 128, 80);
export const recorded = (code: string, display: string): Json => ({
  resourceType: 'Condition',
  id: `condition-${code}`,
  clinicalStatus: {
    coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code: 'active' }],
  },
  code: { coding: [{ system: 'http://snomed.info/sct', code, display }] },
  subject: { reference: 'Patient/1' },
});
export const aspirin = (status: string): Json => ({
  resourceType: 'MedicationStatement',
  id: 'aspirin',
  status,
  medicationCodeableConcept: { coding: [{ system: 'http://www.whocc.no/atc', code: 'B01AC06' }] },
  effectivePeriod: { start: '2026-02-20' },
  ...about,
});

export const severe = '2026-03-01T10:00:00Z';
