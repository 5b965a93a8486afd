// Plain timeline entries, as the case files write them → a FHIR bundle.
import type { Bundle, FhirResource } from 'fhir/r4.js';
import type { CaseEntry } from './case-schema.ts';
import * as build from './resources.ts';

type PressureFields = Omit<Extract<CaseEntry, { kind: 'pressure' }>, 'kind' | 'at'>;

/**
 * The bundle a case stands for.
 *
 * Given    entries  lines of a case file
 * Returns  a collection Bundle of one woman; resources numbered in the order of the lines
 * Throws   never
 */
export function caseBundle(entries: readonly CaseEntry[]): Bundle {
  return build.bundleOf(entries.flatMap(toResources));
}

/** Minutes added to the last clock time of a case give its `asOf`. */
export const minutesAfterLastEntry = 5;

/** Five minutes after the last time of the lines. */
export function caseAsOf(entries: readonly CaseEntry[]): string {
  const times = entries.flatMap(timesOf).map((time) => Date.parse(time));
  return new Date(Math.max(...times) + minutesAfterLastEntry * 60_000).toISOString();
}

function timesOf(entry: CaseEntry): string[] {
  if (entry.kind === 'home-mean') return [entry.to];
  return 'at' in entry ? [entry.at] : [];
}

function toResources(entry: CaseEntry): FhirResource[] {
  switch (entry.kind) {
    case 'pressure':
      return [toPressure(entry.at, entry)];
    case 'systolic-by-palpation':
      return [build.systolicOnly(entry.at, entry.systolicMmHg, true)];
    case 'home-mean':
      return [build.homeMean(entry)];
    case 'symptom':
      return [build.noted(build.symptom(entry.at, entry.symptom, entry.present), entry.note)];
    case 'no-danger-symptoms':
      return build.noDangerSymptoms(entry.at);
    case 'condition':
      return [build.condition(entry.condition, entry.onset)];
    case 'takes':
      return [build.takes(entry.medicine, entry.start)];
    case 'given':
      return [build.given(entry.medicine, entry.at)];
    case 'ordered':
      return [build.ordered(entry.medicine, entry.at)];
    case 'running':
      return [build.running(entry.medicine, entry.at)];
    case 'allergy':
      return [build.allergy(entry.medicine)];
    case 'strip':
    case 'strip-sign':
    case 'protein-creatinine-ratio':
    case 'albumin-creatinine-ratio':
    case 'protein-24-hours':
    case 'laboratory':
      return [toResult(entry)];
    case 'gestational-age':
    case 'due-date':
    case 'last-period':
    case 'birth':
    case 'parity':
    case 'gravidity':
      return [toPregnancyFact(entry)];
  }
}

function toPressure(at: string, fields: PressureFields): FhirResource {
  const inKPa = fields.systolicKPa !== undefined || fields.diastolicKPa !== undefined;
  const options: build.PressureOptions = {
    ...(fields.arm === undefined ? {} : { arm: fields.arm }),
    ...(fields.setting === undefined ? {} : { setting: fields.setting }),
    ...(fields.status === undefined ? {} : { status: fields.status }),
  };
  const sent = inKPa
    ? build.pressure(at, fields.systolicKPa, fields.diastolicKPa, { unit: 'kPa', ...options })
    : build.pressure(at, fields.systolicMmHg, fields.diastolicMmHg, options);
  return fields.withoutUnit === true ? build.withoutUnit(sent) : sent;
}

type Result = Extract<
  CaseEntry,
  {
    kind:
      | 'strip'
      | 'strip-sign'
      | 'protein-creatinine-ratio'
      | 'albumin-creatinine-ratio'
      | 'protein-24-hours'
      | 'laboratory';
  }
>;

function toResult(entry: Result): FhirResource {
  switch (entry.kind) {
    case 'strip':
      return build.strip(entry.at, entry.grade);
    case 'strip-sign':
      return build.stripSign(entry.at, entry.sign, entry.grade);
    case 'protein-creatinine-ratio':
      return build.ratio(entry.at, entry.value, entry.unit);
    case 'albumin-creatinine-ratio':
      return build.albuminRatio(entry.at, entry.value, entry.unit);
    case 'protein-24-hours':
      return entry.grams === undefined
        ? build.protein24h(entry.at, entry.milligrams)
        : build.protein24h(entry.at, entry.grams, 'g/(24.h)');
    case 'laboratory':
      return build.noted(
        build.lab(entry.at, entry.analyte, entry.value, entry.unit, entry.upperLimit),
        entry.note,
      );
  }
}

type PregnancyFact = Extract<
  CaseEntry,
  { kind: 'gestational-age' | 'due-date' | 'last-period' | 'birth' | 'parity' | 'gravidity' }
>;

const daysInWeek = 7;

function toPregnancyFact(entry: PregnancyFact): FhirResource {
  switch (entry.kind) {
    case 'gestational-age':
      return build.gestationalAge(entry.at, entry.weeks * daysInWeek + entry.days);
    case 'due-date':
      return build.dueDate(entry.at, entry.date);
    case 'last-period':
      return build.lastPeriod(entry.at, entry.date);
    case 'birth':
      return build.birth(entry.at);
    case 'parity':
    case 'gravidity':
      return build.count(entry.at, entry.kind, entry.count);
  }
}
