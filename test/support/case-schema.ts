// The shape of a case file: rows of plain entries and what each guideline answers. Read, then believed.
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { conditionCodes, laboratoryCodes, medicineCodes, stripAnswers, symptomCodes } from './codes.ts';

const keyOf = <T extends object>(table: T): z.ZodType<keyof T & string> =>
  z.custom<keyof T & string>((value) => typeof value === 'string' && Object.hasOwn(table, value));

const outcomes = ['met', 'not-met', 'cannot-tell', 'not-applicable'] as const;
const at = z.string();
const kind = z.literal;

/** One line of a case: what was measured, asked or recorded, with the unit in the field name or beside the value. */
const entrySchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: kind('pressure'),
    at,
    systolicMmHg: z.number().exactOptional(),
    diastolicMmHg: z.number().exactOptional(),
    systolicKPa: z.number().exactOptional(),
    diastolicKPa: z.number().exactOptional(),
    arm: z.enum(['left', 'right']).exactOptional(),
    setting: z.enum(['home', 'clinic']).exactOptional(),
    status: z.enum(['preliminary', 'entered-in-error', 'cancelled']).exactOptional(),
    /** Sent as bare numbers. */
    withoutUnit: z.literal(true).exactOptional(),
  }),
  z.strictObject({ kind: kind('systolic-by-palpation'), at, systolicMmHg: z.number() }),
  z.strictObject({
    kind: kind('home-mean'),
    from: at,
    to: at,
    systolicMmHg: z.number(),
    diastolicMmHg: z.number(),
    readings: z.number(),
  }),
  z.strictObject({ kind: kind('strip'), at, grade: keyOf(stripAnswers) }),
  z.strictObject({
    kind: kind('strip-sign'),
    at,
    sign: z.enum(['nitrite', 'leucocytes']),
    grade: keyOf(stripAnswers),
  }),
  z.strictObject({ kind: kind('protein-creatinine-ratio'), at, value: z.number(), unit: z.string() }),
  z.strictObject({ kind: kind('albumin-creatinine-ratio'), at, value: z.number(), unit: z.string() }),
  z.strictObject({
    kind: kind('protein-24-hours'),
    at,
    milligrams: z.number().exactOptional(),
    grams: z.number().exactOptional(),
  }),
  z.strictObject({
    kind: kind('laboratory'),
    at,
    analyte: keyOf(laboratoryCodes),
    value: z.number(),
    unit: z.string(),
    upperLimit: z.number().exactOptional(),
    note: z.string().exactOptional(),
  }),
  z.strictObject({
    kind: kind('symptom'),
    at,
    symptom: keyOf(symptomCodes),
    present: z.boolean(),
    note: z.string().exactOptional(),
  }),
  z.strictObject({ kind: kind('no-danger-symptoms'), at }),
  z.strictObject({ kind: kind('gestational-age'), at, weeks: z.number(), days: z.number() }),
  z.strictObject({ kind: kind('due-date'), at, date: z.string() }),
  z.strictObject({ kind: kind('last-period'), at, date: z.string() }),
  z.strictObject({ kind: kind('birth'), at }),
  z.strictObject({ kind: kind('parity'), at, count: z.number() }),
  z.strictObject({ kind: kind('gravidity'), at, count: z.number() }),
  z.strictObject({ kind: kind('condition'), condition: keyOf(conditionCodes), onset: at.exactOptional() }),
  z.strictObject({ kind: kind('takes'), medicine: keyOf(medicineCodes), start: at }),
  z.strictObject({ kind: kind('given'), medicine: keyOf(medicineCodes), at }),
  z.strictObject({ kind: kind('ordered'), medicine: keyOf(medicineCodes), at }),
  z.strictObject({ kind: kind('running'), medicine: keyOf(medicineCodes), at }),
  z.strictObject({ kind: kind('allergy'), medicine: keyOf(medicineCodes) }),
]);
export type CaseEntry = z.infer<typeof entrySchema>;

const expectedSchema = z.strictObject({
  /** The leading class, then classes that must be listed too. Absent: only the rest is checked. */
  classification: z.array(z.string()).exactOptional(),
  /** The classes listed are all there are. */
  nothingElse: z.literal(true).exactOptional(),
  /** Other answers of the same form that are right as well. */
  anyOf: z.array(z.array(z.string())).exactOptional(),
  /** Classes that must not be listed. */
  excludes: z.array(z.string()).exactOptional(),
  urgency: z.enum(['emergency', 'same-day', 'within-48-hours', 'within-7-days', 'routine']),
  /** Outcome of the question asked with this check. */
  finding: z.strictObject({ check: z.string(), outcome: z.string() }).exactOptional(),
  /** Outcome of rules: `class:hellp` or `urgency:hellp`. */
  rules: z.record(z.string(), z.enum(outcomes)).exactOptional(),
  /** Ids of questions that must be asked for, in `missing`. */
  missing: z.array(z.string()).exactOptional(),
  /** Ids of actions that must be advised. */
  advises: z.array(z.string()).exactOptional(),
  /** Why, in one sentence. */
  because: z.string().exactOptional(),
});
export type Expected = z.infer<typeof expectedSchema>;

const caseFileSchema = z.strictObject({
  title: z.string(),
  source: z.string(),
  /** The rule the file is about: `class:hellp`. */
  rule: z.string().exactOptional(),
  /** Groups that hold no row, each with the reason why none can exist. */
  noRows: z.partialRecord(z.enum(outcomes), z.string()).exactOptional(),
  rows: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      basis: z.string(),
      note: z.string().exactOptional(),
      asOf: z.string().exactOptional(),
      given: z.array(entrySchema),
      expect: z.record(z.string(), expectedSchema),
    }),
  ),
});
export type CaseFile = z.infer<typeof caseFileSchema>;
export type CaseRow = CaseFile['rows'][number];

export function readCaseFile(path: string): CaseFile {
  const json: unknown = JSON.parse(readFileSync(path, 'utf8'));
  return caseFileSchema.parse(json);
}
