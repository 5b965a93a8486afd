// Attendances of a pregnancy day assessment clinic (CSV) → one FHIR bundle each.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Bundle, Condition, FhirResource, MedicationStatement, Observation } from 'fhir/r4.js';
import { readCsv } from './csv.ts';
import type { CsvRow } from './csv.ts';
import type { SymptomName } from './codes.ts';
import * as build from './resources.ts';

export interface Attendance {
  /** Line in the CSV, the header being line 1. */
  readonly line: number;
  readonly row: CsvRow;
  /** The recorded final diagnosis, spelling as found. */
  readonly diagnosis: string;
  readonly bundle: Bundle;
  /** The last moment of the visit: five minutes after the last reading slot. */
  readonly asOf: string;
}

/**
 * All attendances, converted.
 *
 * Notes    1. The file has a date and no clock time: the first reading is taken as 09:00Z, the others at
 *             +30, +60 … minutes as their columns say. Dates were moved by up to seven days by the publishers.
 *          2. Unit labels that do not fit their values are mended: UrinePCR (labelled mg/mmol) is sent as
 *             g/mmol; platelets (labelled 10^9 per mL) as 10*9/L; urate mmol/L, creatinine umol/L, ALT U/L as labelled.
 *             Urea, ALP and GGT have no rule and are not sent.
 *          3. A ticked symptom is present. A blank one is not recorded, unless "Asymptomatic" is ticked:
 *             then the danger symptoms the form asks about were asked and absent (it is ticked on 135 forms,
 *             and on none of them is any symptom ticked).
 *          4. Booking pressures are left out: the file gives no date for them.
 *          5. "Abdominal pain" carries no site; it is sent as text and not turned into epigastric pain.
 *          6. A past history of eclampsia is "No" throughout. "Unknown" histories are not sent.
 *          7. Gestational age is decimal weeks on the day of attendance, sent as such; the expected date of
 *             delivery is sent too, and differs by up to 14 days because both dates were moved.
 *          8. A cell that is not a number (`#DIV/0!`) is sent as text, as a careless export would.
 */
export function readAttendances(): Attendance[] {
  const path = join(
    import.meta.dirname,
    '..',
    'data',
    'pregnancy-day-assessment',
    'pdac-attendances-part-a.csv',
  );
  return readCsv(readFileSync(path, 'utf8')).map((row, index) => toAttendance(row, index + 2));
}

const slots = [0, 30, 60, 90, 120, 150, 180, 210, 240];
const lastSlotMinutes = 240;
const asOfMinutes = lastSlotMinutes + 5;

function toAttendance(row: CsvRow, line: number): Attendance {
  const day = toDate(text(row, 'D_att_Dryad'));
  const start = `${day}T09:00:00Z`;
  const resources: FhirResource[] = [
    ...pressures(row, start),
    ...laboratory(row, start),
    ...symptoms(row, start),
    ...pregnancy(row, start),
    ...history(row, day),
  ];
  return {
    line,
    row,
    diagnosis: text(row, 'Final Diagnosis:'),
    bundle: build.bundleOf(resources, build.patient({ birthDate: toDate(text(row, 'DOB_Dryad'), 2000) })),
    asOf: later(start, asOfMinutes),
  };
}

const text = (row: CsvRow, column: string): string => row[column] ?? '';

function number(row: CsvRow, column: string): number | undefined {
  const value = text(row, column).trim();
  return value === '' || Number.isNaN(Number(value)) ? undefined : Number(value);
}

const later = (instant: string, minutes: number): string =>
  new Date(Date.parse(instant) + minutes * 60_000).toISOString().replace('.000Z', 'Z');

const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** `8-Jan-83` → `1983-01-08`; two-digit years lie before `before` when that is given. */
function toDate(written: string, before = 2100): string {
  const [day = '', month = '', year = ''] = written.split('-');
  const full = 2000 + Number(year) < before ? 2000 + Number(year) : 1900 + Number(year);
  return `${full}-${String(months.indexOf(month) + 1).padStart(2, '0')}-${day.padStart(2, '0')}`;
}

function pressures(row: CsvRow, start: string): Observation[] {
  return slots.flatMap((minutes) => {
    const systolic = number(row, `SBP_${minutes}`);
    const diastolic = number(row, `DBP_${minutes}`);
    if (systolic === undefined && diastolic === undefined) return [];
    return [{ ...build.pressure(later(start, minutes), systolic, diastolic), id: `bp-${minutes}` }];
  });
}

function laboratory(row: CsvRow, start: string): Observation[] {
  const results: readonly (readonly [string, (value: number) => Observation])[] = [
    ['Platelets', (value) => build.lab(start, 'platelets', value, '10*9/L')],
    ['Urate', (value) => build.lab(start, 'urate', value, 'mmol/L')],
    ['Creatinine', (value) => build.lab(start, 'creatinine', value, 'umol/L')],
    ['ALT', (value) => build.lab(start, 'alt', value, 'U/L')],
    ['UrinePCR', (value) => build.ratio(start, value, 'g/mmol')],
  ];
  return results.flatMap(([column, toObservation]) => {
    const value = number(row, column);
    return value === undefined ? [] : [{ ...toObservation(value), id: column.toLowerCase() }];
  });
}

const symptomColumns: readonly (readonly [string, SymptomName])[] = [
  ['Headache', 'headache'],
  ['Visual Disturbances', 'visual-disturbance'],
  ['SOB', 'dyspnoea'],
  ['Oedema', 'oedema'],
  ['Hyperreflexia', 'hyperreflexia'],
];
const dangerColumns = ['Headache', 'Visual Disturbances', 'SOB'];

function symptoms(row: CsvRow, start: string): Observation[] {
  const asymptomatic = text(row, 'Asymptomatic') === 'Yes';
  const coded = symptomColumns.flatMap(([column, name]) => {
    const present = text(row, column) === 'Yes';
    const absent = asymptomatic && dangerColumns.includes(column);
    return present || absent ? [{ ...build.symptom(start, name, present), id: name }] : [];
  });
  const abdominal = text(row, 'Abdominal pain') === 'Yes';
  return abdominal
    ? [
        ...coded,
        {
          ...build.observation({ text: 'Abdominal pain' }, start, { valueBoolean: true }),
          id: 'abdominal-pain',
        },
      ]
    : coded;
}

function pregnancy(row: CsvRow, start: string): Observation[] {
  const weeks = number(row, 'GA_att');
  const due = text(row, 'EDC_Dryad');
  const counts = (['gravidity', 'parity'] as const).flatMap((name) => {
    const value = number(row, name === 'gravidity' ? 'Grav' : 'Para');
    return value === undefined ? [] : [{ ...build.count(start, name, value), id: name }];
  });
  return [
    ...(weeks === undefined ? [] : [statedAge(start, weeks)]),
    ...(due === '' ? [] : [{ ...build.dueDate(start, toDate(due)), id: 'due-date' }]),
    ...counts,
    ...bodyMassIndex(row, start),
  ];
}

const statedAge = (start: string, weeks: number): Observation => ({
  ...build.observation(build.loinc('18185-9'), start, { valueQuantity: build.quantity(weeks, 'wk') }),
  id: 'gestational-age',
});

function bodyMassIndex(row: CsvRow, start: string): Observation[] {
  const value = number(row, 'BMI');
  const sent =
    value === undefined
      ? { valueString: text(row, 'BMI') }
      : { valueQuantity: build.quantity(value, 'kg/m2') };
  return [{ ...build.observation(build.loinc('39156-5'), start, sent), id: 'bmi' }];
}

function history(row: CsvRow, day: string): (Condition | MedicationStatement)[] {
  const had = (column: string): boolean => ['Yes', 'Occurred'].includes(text(row, column));
  return [
    ...(had('PHx_EssBP')
      ? [{ ...build.condition('chronic-hypertension'), id: 'essential-hypertension' }]
      : []),
    ...(had('PHx_PET') ? [{ ...pastPreEclampsia(), id: 'past-pre-eclampsia' }] : []),
    ...(had('PHx_ASA') ? [{ ...build.takes('aspirin', day), id: 'aspirin' }] : []),
    ...(had('Antihypertensive Meds') ? [{ ...unnamedAntihypertensive(day), id: 'antihypertensive' }] : []),
  ];
}

/** No code for past pre-eclampsia of any degree was found; sent as text. */
const pastPreEclampsia = (): Condition => ({
  resourceType: 'Condition',
  code: { text: 'History of pre-eclampsia' },
  clinicalStatus: {
    coding: [{ system: 'http://terminology.hl7.org/CodeSystem/condition-clinical', code: 'inactive' }],
  },
  subject: { reference: build.woman },
});

const unnamedAntihypertensive = (day: string): MedicationStatement => ({
  resourceType: 'MedicationStatement',
  status: 'active',
  medicationCodeableConcept: { text: 'antihypertensive medication, not named' },
  subject: { reference: build.woman },
  effectivePeriod: { start: day },
});
