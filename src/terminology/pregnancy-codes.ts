// Which codes date a pregnancy, tell of a birth, or count pregnancies, births and fetuses. Data only.
import type { SystemCode } from './code-row.ts';
import { systems } from './systems.ts';

/** What the value of a dating code is, and on what it rests. */
export interface DatingCode extends SystemCode {
  /** First day of the last period, due date, gestational age, or its weeks or days beside each other. */
  readonly gives: 'last-period' | 'due-date' | 'age' | 'age-weeks' | 'age-days';
  readonly method: 'ultrasound' | 'last-period' | 'due-date' | 'stated-age' | 'conception';
}

export interface CountCode extends SystemCode {
  readonly counts: 'fetuses' | 'parity' | 'gravidity';
}

const l = { system: systems.loinc, known: 'read' } as const;
const s = { system: systems.snomed, known: 'read' } as const;
const memory = { system: systems.snomed, known: 'from-memory' } as const;

/** Source: terminology.csv, section 3. */
export const datingCodes: readonly DatingCode[] = [
  { ...l, code: '8665-2', gives: 'last-period', method: 'last-period' },
  { ...s, code: '21840007', gives: 'last-period', method: 'last-period' },
  { ...l, code: '11778-8', gives: 'due-date', method: 'due-date' },
  { ...s, code: '161714006', gives: 'due-date', method: 'due-date' },
  { ...l, code: '53694-6', gives: 'due-date', method: 'due-date' },
  { ...l, code: '11779-6', gives: 'due-date', method: 'last-period' },
  { ...l, code: '11781-2', gives: 'due-date', method: 'ultrasound' },
  { ...l, code: '11780-4', gives: 'due-date', method: 'conception' },
  { ...l, code: '53692-0', gives: 'due-date', method: 'conception' },
  { ...l, code: '18185-9', gives: 'age', method: 'stated-age' },
  { ...l, code: '11884-4', gives: 'age', method: 'stated-age' },
  { ...l, code: '57714-8', gives: 'age', method: 'stated-age' },
  { ...s, code: '57036006', gives: 'age', method: 'stated-age' },
  { ...l, code: '11885-1', gives: 'age', method: 'last-period' },
  { ...l, code: '11887-7', gives: 'age', method: 'due-date' },
  { ...l, code: '11888-5', gives: 'age', method: 'ultrasound' },
  { ...l, code: '53693-8', gives: 'age', method: 'conception' },
  { ...l, code: '49051-6', gives: 'age-weeks', method: 'stated-age' },
  { ...l, code: '49052-4', gives: 'age-days', method: 'stated-age' },
];

/** Source: terminology.csv, section 3. */
export const countCodes: readonly CountCode[] = [
  { ...l, code: '55281-0', counts: 'fetuses' },
  { ...l, code: '11878-6', counts: 'fetuses' },
  { ...l, code: '11977-6', counts: 'parity' },
  { ...s, code: '364325004', counts: 'parity' },
  { ...l, code: '11996-6', counts: 'gravidity' },
  { ...s, code: '161732006', counts: 'gravidity' },
];

/**
 * A diagnosis code that names completed weeks by its last two digits; codes outside the range name no single week.
 * Z3A.20 = 20 weeks read (terminology.csv); the range from memory.
 */
export const weeksOfGestationCode = {
  system: systems.icd10cm,
  shape: /^Z3A\.?(\d\d)$/i,
  fewest: 8,
  most: 42,
} as const;

/** Date and time of a birth, as an observation. */
export const birthObservationCodes: readonly SystemCode[] = [{ ...l, code: '93857-1' }];

/** A procedure by which a baby was born. From memory, to be confirmed by a terminology server. */
export const deliveryProcedureCodes: readonly SystemCode[] = [
  { ...memory, code: '66348005', note: 'childbirth' },
  { ...memory, code: '236973005', note: 'delivery procedure' },
  { ...memory, code: '11466000', note: 'caesarean section' },
  { ...memory, code: '177184002', note: 'normal delivery' },
  { ...memory, code: '236974004', note: 'instrumental delivery' },
  { ...memory, code: '177141003', note: 'elective caesarean delivery' },
  { ...memory, code: '200144004', note: 'delivery by emergency caesarean section' },
  { ...memory, code: '3950001', note: 'birth' },
];

/** ICD-10 and ICD-10-CM blocks of delivery and outcome of delivery; codes below them begin with these. From memory. */
export const birthConditionPrefixes: readonly string[] = ['O80', 'O81', 'O82', 'O83', 'O84', 'Z37'];
export const birthConditionSystems: readonly string[] = [systems.icd10, systems.icd10cm];

/** Pregnancy status as coded value. Source: terminology.csv, section 3. */
export const pregnancyStatusCodes: readonly SystemCode[] = [
  { ...l, code: '82810-3' },
  { ...l, code: '11449-6' },
];
export const pregnantCodes: readonly SystemCode[] = [
  { ...s, code: '77386006' },
  { ...s, code: '72892002' },
  { ...l, code: 'LA15173-0' },
];
export const notPregnantCodes: readonly SystemCode[] = [
  { ...s, code: '60001007' },
  { ...l, code: 'LA26683-5', known: 'from-memory' },
];
