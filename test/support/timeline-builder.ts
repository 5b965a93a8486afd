// A timeline from plain entries: what a rule looks at, without FHIR. One unit per quantity, as in the entry's name.
import type {
  Analyte,
  Comparator,
  ConditionId,
  MedicineId,
  SymptomId,
} from '../../src/guidelines/guideline.ts';
import { parseMoment } from '../../src/timeline/moment.ts';
import type {
  ByUnit,
  KnownCondition,
  LaboratoryResult,
  Medicine,
  Moment,
  Pregnancy,
  PressureReading,
  Source,
  StripGrade,
  Symptom,
  Timeline,
  UrineProtein,
} from '../../src/timeline/timeline.ts';

export interface PlainTimeline {
  /** ISO 8601 with zone. */
  readonly asOf: string;
  /** "30+0" on the day of `asOf`, or on `gestationAt`. Absent: undated. */
  readonly gestation?: string;
  readonly gestationAt?: string;
  readonly birth?: string;
  readonly fetuses?: number;
  /** Date of birth of the woman. */
  readonly born?: string;
  readonly parity?: number;
  readonly gravidity?: number;
  readonly previousBirths?: readonly string[];
  readonly pressures?: readonly {
    readonly at: string;
    readonly systolic?: number;
    readonly diastolic?: number;
    readonly arm?: 'left' | 'right';
  }[];
  /** Single readings taken at home. */
  readonly home?: readonly { readonly at: string; readonly systolic: number; readonly diastolic: number }[];
  readonly strips?: readonly { readonly at: string; readonly grade: StripGrade }[];
  readonly ratios?: readonly {
    readonly at: string;
    readonly value: number;
    readonly unit: 'mg/mmol' | 'mg/mg';
  }[];
  readonly labs?: readonly {
    readonly at: string;
    readonly analyte: Analyte;
    readonly value: number;
    readonly unit: string;
    /** The value is only a bound: "<100". */
    readonly comparator?: Comparator;
    readonly haemolysed?: boolean;
  }[];
  readonly symptoms?: readonly {
    readonly symptom: SymptomId;
    readonly presence?: 'present' | 'absent';
    readonly at?: string;
  }[];
  readonly conditions?: readonly {
    readonly condition: ConditionId;
    readonly allergicTo?: readonly MedicineId[];
    readonly state?: 'active' | 'inactive';
    readonly at?: string;
  }[];
  readonly medicines?: readonly {
    readonly medicine: MedicineId;
    readonly status?: Medicine['status'];
    readonly isOrder?: true;
    readonly start?: string;
    readonly end?: string;
    readonly asSent?: string;
    /** Entries of one product share it. */
    readonly reference?: string;
  }[];
}

/**
 * A timeline of plain entries.
 *
 * Given    plain  entries in any order; times in ISO 8601; values in the unit named
 * Returns  the timeline as `buildTimeline` would hand it on, each fact with a reference of its own
 * Throws   when a time cannot be read
 */
export function timeline(plain: PlainTimeline): Timeline {
  const asOf = moment(plain.asOf);
  return {
    asOf: asOf.latest,
    woman: {
      reference: 'Patient/woman',
      previousBirths: (plain.previousBirths ?? []).map((at, index) => ({
        at: moment(at),
        source: source(`Observation/previous-birth-${index}`),
      })),
      ...(plain.born === undefined ? {} : { birthDay: moment(plain.born).localDay }),
      ...(plain.gravidity === undefined
        ? {}
        : { gravidity: { count: plain.gravidity, source: source('Observation/gravidity') } }),
      ...(plain.parity === undefined
        ? {}
        : { parity: { count: plain.parity, source: source('Observation/parity') } }),
    },
    pregnancy: pregnancyOf(plain, asOf),
    pressures: inOrder((plain.pressures ?? []).map(reading)),
    homePressures: inOrder((plain.home ?? []).map((each, index) => reading(each, index + homeFrom))),
    meanPressures: [],
    unusablePressures: [],
    urineProteins: inOrder([...(plain.strips ?? []).map(strip), ...(plain.ratios ?? []).map(ratio)]),
    urineSigns: [],
    laboratory: inOrder((plain.labs ?? []).map(lab)),
    symptoms: (plain.symptoms ?? []).map((entry, index) => symptom(entry, index, plain.asOf)),
    conditions: (plain.conditions ?? []).map(condition),
    medicines: (plain.medicines ?? []).map(medicine),
    requests: [],
  };
}

/** Home readings are numbered apart from those of the clinic. */
const homeFrom = 1000;

const source = (reference: string): Source => ({ reference, preliminary: false });

export function moment(text: string): Moment {
  const parsed = parseMoment(text, 0);
  if (parsed === undefined) throw new Error(`Not a time: ${text}`);
  return parsed;
}

const inOrder = <T extends { readonly at: Moment }>(facts: readonly T[]): readonly T[] =>
  [...facts].sort((a, b) => a.at.earliest - b.at.earliest);

function pregnancyOf(plain: PlainTimeline, asOf: Moment): Pregnancy {
  const { gestation, birth, fetuses } = plain;
  const [weeks = 0, days = 0] = (gestation ?? '').split('+').map(Number);
  const at = plain.gestationAt === undefined ? asOf : moment(plain.gestationAt);
  return {
    remarks: [],
    ...(gestation === undefined
      ? {}
      : {
          dating: {
            startDay: at.localDay - (weeks * 7 + days),
            method: 'ultrasound' as const,
            asSent: gestation,
            source: source('Observation/dating'),
            others: [],
            remarks: [],
            conflict: false,
          },
        }),
    ...(birth === undefined
      ? {}
      : { birth: { at: moment(birth), asSent: birth, source: source('Observation/birth') } }),
    ...(fetuses === undefined ? {} : { fetuses: { count: fetuses, source: source('Observation/fetuses') } }),
  };
}

type Entry<K extends keyof PlainTimeline> =
  NonNullable<PlainTimeline[K]> extends readonly (infer E)[] ? E : never;

const reading = (entry: Entry<'pressures'>, index: number): PressureReading => ({
  at: moment(entry.at),
  ...(entry.systolic === undefined ? {} : { systolicMmHg: entry.systolic }),
  ...(entry.diastolic === undefined ? {} : { diastolicMmHg: entry.diastolic }),
  ...(entry.arm === undefined ? {} : { arm: entry.arm }),
  asSent: `${String(entry.systolic ?? '-')}/${String(entry.diastolic ?? '-')} mm[Hg]`,
  sources: [source(`Observation/pressure-${index}`)],
  setting: 'clinic',
  technique: {},
  remarks: [],
});

const strip = (entry: Entry<'strips'>, index: number): UrineProtein => ({
  kind: 'strip',
  at: moment(entry.at),
  grade: entry.grade,
  asSent: String(entry.grade),
  source: source(`Observation/strip-${index}`),
  remarks: [],
});

const ratio = (entry: Entry<'ratios'>, index: number): UrineProtein => ({
  kind: 'protein-creatinine-ratio',
  at: moment(entry.at),
  measured: { value: entry.value },
  byUnit: byUnit(entry.value, entry.unit),
  asSent: `${String(entry.value)} ${entry.unit}`,
  source: source(`Observation/ratio-${index}`),
  remarks: [],
});

const lab = (entry: Entry<'labs'>, index: number): LaboratoryResult => ({
  analyte: entry.analyte,
  at: moment(entry.at),
  measured: {
    value: entry.value,
    ...(entry.comparator === undefined ? {} : { comparator: entry.comparator }),
  },
  byUnit: byUnit(entry.value, entry.unit),
  haemolysed: entry.haemolysed === true,
  asSent: `${String(entry.value)} ${entry.unit}`,
  source: source(`Observation/lab-${index}`),
});

/** Only the unit given: a rule in another unit cannot tell. */
const byUnit = (value: number, unit: string): ByUnit => ({ sentUnit: unit, values: { [unit]: value } });

const symptom = (entry: Entry<'symptoms'>, index: number, asOf: string): Symptom => ({
  symptom: entry.symptom,
  presence: entry.presence ?? 'present',
  at: moment(entry.at ?? asOf),
  relieved: false,
  asSent: entry.symptom,
  source: source(`Observation/symptom-${index}`),
});

const condition = (entry: Entry<'conditions'>, index: number): KnownCondition => ({
  condition: entry.condition,
  state: entry.state ?? 'active',
  certainty: 'confirmed',
  ...(entry.at === undefined ? {} : { onset: moment(entry.at) }),
  codes: [],
  ...(entry.allergicTo === undefined ? {} : { allergicTo: entry.allergicTo }),
  asSent: entry.condition,
  source: source(`Condition/${index}`),
});

const medicine = (entry: Entry<'medicines'>, index: number): Medicine => ({
  medicine: entry.medicine,
  status: entry.status ?? 'active',
  ...(entry.isOrder === undefined ? {} : { isOrder: entry.isOrder }),
  ...(entry.start === undefined ? {} : { start: moment(entry.start) }),
  ...(entry.end === undefined ? {} : { end: moment(entry.end) }),
  asSent: entry.asSent ?? entry.medicine,
  source: source(entry.reference ?? `MedicationStatement/${index}`),
});
