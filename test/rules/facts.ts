// A view of one invented woman at 30+0 weeks on 10 March 2025, from plain facts. Used by the tests of measuring and risk.
import type { Analyte, MedicineId } from '../../src/guidelines/guideline.ts';
import { guidelineOf, timelineValues } from '../../src/guidelines/registry.ts';
import { applyRules, type Applied } from '../../src/rules/apply-rules.ts';
import { parseMoment } from '../../src/timeline/moment.ts';
import type {
  KnownCondition,
  LaboratoryResult,
  Medicine,
  Moment,
  PressureReading,
  Source,
  Symptom,
  Technique,
  Timeline,
  UnusablePressure,
  UrineProtein,
  UrineSample,
  UrineSign,
} from '../../src/timeline/timeline.ts';

export const asOf = Date.parse('2025-03-10T12:00:00Z');
let last = 0;
const source = (): Source => ({ reference: `Observation/f${String((last += 1))}`, preliminary: false });

/** "09:00" on the day of the evaluation, or a date, or a date with time. */
export function moment(text: string): Moment {
  const full = /^\d\d:\d\d$/.test(text) ? `2025-03-10T${text}:00Z` : text;
  const found = parseMoment(full, 0);
  if (found === undefined) throw new Error(`No moment: ${text}`);
  return found;
}

export function reading(
  at: string,
  systolic: number | undefined,
  diastolic: number | undefined,
  more: { arm?: 'left' | 'right'; technique?: Technique; preliminary?: boolean } = {},
): PressureReading {
  return {
    at: moment(at),
    ...(systolic === undefined ? {} : { systolicMmHg: systolic }),
    ...(diastolic === undefined ? {} : { diastolicMmHg: diastolic }),
    asSent: `${String(systolic ?? '-')}/${String(diastolic ?? '-')} mm[Hg]`,
    sources: [{ ...source(), preliminary: more.preliminary === true }],
    setting: 'clinic',
    ...(more.arm === undefined ? {} : { arm: more.arm }),
    technique: more.technique ?? {},
    remarks: [],
  };
}

export const unusable = (why: UnusablePressure['why'], at?: string): UnusablePressure => ({
  why,
  ...(at === undefined ? {} : { at: moment(at) }),
  asSent: 'as sent',
  sources: [source()],
});

export const strip = (
  at: string,
  grade: Extract<UrineProtein, { kind: 'strip' }>['grade'],
  sample?: UrineSample,
): UrineProtein => ({
  kind: 'strip',
  grade,
  at: moment(at),
  asSent: String(grade),
  source: source(),
  remarks: [],
  ...(sample === undefined ? {} : { sample }),
});

export const ratio = (at: string, value: number, sample?: UrineSample): UrineProtein => ({
  kind: 'protein-creatinine-ratio',
  measured: { value },
  byUnit: { sentUnit: 'mg/mmol', values: { 'mg/mmol': value } },
  at: moment(at),
  asSent: `${String(value)} mg/mmol`,
  source: source(),
  remarks: [],
  ...(sample === undefined ? {} : { sample }),
});

export const sign = (at: string, name: UrineSign['sign'], present = true): UrineSign => ({
  at: moment(at),
  sign: name,
  present,
  asSent: present ? 'positive' : 'negative',
  source: source(),
});

export const lab = (
  at: string,
  analyte: Analyte,
  value: number,
  unit: string,
  comparator?: '<',
): LaboratoryResult => ({
  analyte,
  at: moment(at),
  measured: comparator === undefined ? { value } : { value, comparator },
  byUnit: { sentUnit: unit, values: { [unit]: value } },
  haemolysed: false,
  asSent: `${String(value)} ${unit}`,
  source: source(),
});

export const symptom = (name: Symptom['symptom'], presence: Symptom['presence'] = 'present'): Symptom => ({
  symptom: name,
  presence,
  at: moment('09:00'),
  relieved: false,
  asSent: presence,
  source: source(),
});

export const condition = (name: KnownCondition['condition']): KnownCondition => ({
  condition: name,
  state: 'active',
  certainty: 'confirmed',
  codes: [],
  asSent: name,
  source: { reference: `Condition/${name}`, preliminary: false },
});

/** Sent as it is named; `start` as for `moment`. */
export const medicine = (name: MedicineId, status: Medicine['status'], start?: string): Medicine => ({
  medicine: name,
  status,
  ...(start === undefined ? {} : { start: moment(start) }),
  asSent: name,
  source: source(),
});

const millisecondsPerDay = 86_400_000;

/** Facts of a woman `days` pregnant at the evaluation. */
export function timeline(facts: Partial<Timeline> = {}, days = 210): Timeline {
  const today = Math.floor(asOf / millisecondsPerDay);
  return {
    asOf,
    woman: { reference: 'Patient/woman', previousBirths: [] },
    pregnancy: {
      dating: {
        startDay: today - days,
        method: 'ultrasound',
        asSent: 'dated',
        source: source(),
        others: [],
        remarks: [],
        conflict: false,
      },
      remarks: [],
    },
    pressures: [],
    homePressures: [],
    meanPressures: [],
    unusablePressures: [],
    urineProteins: [],
    urineSigns: [],
    laboratory: [],
    symptoms: [],
    conditions: [],
    medicines: [],
    requests: [],
    ...facts,
  };
}

export function applied(facts: Partial<Timeline> = {}, days?: number): Applied {
  const guideline = guidelineOf('frontline');
  if (guideline === undefined) throw new Error('no frontline');
  return applyRules(timeline(facts, days), guideline, timelineValues);
}
