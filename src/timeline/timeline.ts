// One woman's clinical facts in time order, with units settled. No FHIR beyond this point. Hands on types only.
import type { Analyte, ConditionId, MedicineId, Period, SymptomId } from '../guidelines/guideline.ts';

/**
 * When something was true. A partial date is the whole interval it covers; it is never padded with 00:00.
 *
 * earliest, latest   milliseconds since 1970-01-01T00:00Z, both inclusive
 * localDay           calendar day as written (days since 1970-01-01); gestational age counts these
 */
export interface Moment {
  readonly earliest: number;
  readonly latest: number;
  readonly localDay: number;
  readonly precision: 'minute' | 'day' | 'month' | 'year';
  /** As sent. */
  readonly text: string;
  /** Offset from UTC in minutes as written; absent for dates and for times without a zone. */
  readonly offsetMinutes?: number;
  /** Where the time was found, when not in the effective time of the resource. */
  readonly takenFrom?: 'issued' | 'encounter' | 'recorded' | 'period-start' | 'facility-zone';
}

/** The resource a fact came from. */
export interface Source {
  readonly reference: string;
  readonly preliminary: boolean;
}

/** A number that may be only a bound ("<100"). */
export interface Measured {
  readonly value: number;
  readonly comparator?: '<' | '<=' | '>' | '>=';
}

export type Setting = 'clinic' | 'home' | 'unknown';

/** One taking of the blood pressure; either half may be missing. Values in mm[Hg]. */
export interface PressureReading {
  readonly at: Moment;
  readonly systolicMmHg?: number;
  readonly diastolicMmHg?: number;
  /** As sent, for people: "19.0/12.4 kPa", "168/- mm[Hg]". */
  readonly asSent: string;
  readonly sources: readonly Source[];
  readonly setting: Setting;
  readonly arm?: 'left' | 'right';
  readonly technique: Technique;
  readonly remarks: readonly string[];
  readonly lowerBounds?: LowerBounds;
  /** The systolic was felt, not heard: what was sent as diastolic may raise an alarm and never reassures. */
  readonly isDiastolicUnheard?: true;
}

/** Halves that were sent as "at least": the pressure was that or higher. */
export interface LowerBounds {
  readonly systolic?: '>' | '>=';
  readonly diastolic?: '>' | '>=';
}

/** How a reading was taken, as far as recorded. */
export interface Technique {
  readonly position?: 'sitting' | 'standing' | 'supine' | 'left-lateral' | 'recumbent';
  readonly method?: 'auscultation' | 'palpation' | 'oscillometry' | 'invasive' | 'continuous';
  readonly device?: string;
  readonly cuff?: string;
  readonly cuffCm?: number;
  readonly armCircumferenceCm?: number;
  readonly restMinutes?: number;
  readonly observer?: string;
  readonly site?: string;
  /** What is written beside the reading that raises it. */
  readonly disturbances?: readonly Disturbance[];
}

export type Disturbance = 'talking' | 'walking' | 'pain' | 'smoking' | 'caffeine';

/** An average of several readings. Never half of a confirming pair by itself. */
export interface MeanPressure {
  readonly from: Moment;
  readonly to: Moment;
  readonly systolicMmHg?: number;
  readonly diastolicMmHg?: number;
  readonly numberOfReadings?: number;
  readonly setting: Setting;
  readonly asSent: string;
  readonly sources: readonly Source[];
  readonly lowerBounds?: LowerBounds;
}

/** A pressure that was received and cannot be used to classify, with the numbers for urgency only. */
export interface UnusablePressure {
  readonly why:
    | 'diastolic-not-below-systolic'
    | 'above-plausible-range'
    | 'below-plausible-range'
    | 'unit-missing'
    | 'unit-unknown'
    | 'time-unusable'
    | 'faulty-form';
  readonly at?: Moment;
  /** mm[Hg]; a number without a unit, or in one that is none of pressure, read as if it were mm[Hg]. */
  readonly systolic?: number;
  readonly diastolic?: number;
  /** Place in the resource, and what is wrong and how to mend it. */
  readonly fault?: { readonly element: string; readonly message: string };
  readonly asSent: string;
  readonly sources: readonly Source[];
}

/** 0 negative, 0.5 trace, 1 to 4; or positive without a grade. */
export type StripGrade = 0 | 0.5 | 1 | 2 | 3 | 4 | 'positive-ungraded';

/** What is recorded about a urine sample; a member that is absent was not recorded. */
export interface UrineSample {
  readonly isFirstMorning?: true;
  readonly isContaminated?: true;
  readonly hasAntiseptic?: true;
  /** Tested in a hospital, by its encounter. */
  readonly isFromHospital?: true;
  readonly readBy?: 'eye' | 'analyser';
}

interface UrineResult {
  readonly at: Moment;
  readonly asSent: string;
  readonly source: Source;
  readonly remarks: readonly string[];
  readonly sample?: UrineSample;
}
export type UrineProtein =
  | (UrineResult & { readonly kind: 'strip'; readonly grade: StripGrade })
  | (UrineResult & {
      readonly kind: 'protein-creatinine-ratio';
      readonly measured: Measured;
      readonly byUnit: ByUnit;
    })
  | (UrineResult & {
      readonly kind: 'albumin-creatinine-ratio';
      readonly measured: Measured;
      readonly byUnit: ByUnit;
    })
  | (UrineResult & { readonly kind: 'excretion-24h'; readonly measured: Measured; readonly byUnit: ByUnit })
  | (UrineResult & { readonly kind: 'concentration'; readonly measured: Measured; readonly byUnit: ByUnit });

/** What else the urine showed: reasons to doubt a strip. */
export interface UrineSign {
  readonly at: Moment;
  readonly sign: 'nitrite' | 'leucocytes' | 'blood';
  readonly present: boolean;
  readonly source: Source;
  readonly asSent: string;
}

/** The same number in every unit accepted for its quantity, keyed by UCUM code; `sentUnit` is the one received. */
export interface ByUnit {
  readonly sentUnit: string;
  readonly values: Readonly<Record<string, number>>;
}

export interface LaboratoryResult {
  readonly analyte: Analyte;
  readonly at: Moment;
  readonly measured: Measured;
  readonly byUnit: ByUnit;
  /** Upper reference limit stated by the laboratory, in the unit sent. */
  readonly upperReference?: number;
  readonly haemolysed: boolean;
  readonly asSent: string;
  readonly source: Source;
}

export interface Symptom {
  readonly symptom: SymptomId;
  readonly presence: 'present' | 'absent';
  /** Absent: no time was sent; a present symptom without a time counts as current. */
  readonly at?: Moment;
  readonly severity?: 'mild' | 'moderate' | 'severe';
  /** Gone, or relieved by treatment. */
  readonly relieved: boolean;
  readonly asSent: string;
  readonly source: Source;
}

export interface KnownCondition {
  readonly condition: ConditionId;
  readonly state: 'active' | 'inactive';
  readonly certainty: 'confirmed' | 'provisional' | 'unverified';
  readonly onset?: Moment;
  readonly recorded?: Moment;
  /** Codes as sent, `system|code`, so that a suggestion can be compared with the chart. */
  readonly codes: readonly string[];
  /** Of an allergy: the agents and classes it is to. */
  readonly allergicTo?: readonly MedicineId[];
  readonly asSent: string;
  readonly source: Source;
}

export interface Medicine {
  readonly medicine: MedicineId;
  /** `active`: being taken or ordered and running; `given`: one administration; `ordered`: a draft or proposal; `stopped`. */
  readonly status: 'active' | 'given' | 'ordered' | 'stopped';
  /** Known from an order only: no record says that it was taken or given. */
  readonly isOrder?: true;
  readonly start?: Moment;
  readonly end?: Moment;
  readonly route?: string;
  readonly asSent: string;
  readonly source: Source;
}

export interface ExistingRequest {
  readonly codes: readonly string[];
  readonly status: string;
  readonly intent: string;
  readonly at?: Moment;
  readonly source: Source;
}

/** How the pregnancy is dated. */
export interface Dating {
  /** Day 0 of gestation (days since 1970-01-01): estimated due date less 280 days. */
  readonly startDay: number;
  readonly method: 'ultrasound' | 'last-period' | 'due-date' | 'stated-age' | 'conception';
  readonly asSent: string;
  readonly source: Source;
  /** Other dating facts received, for the trace. */
  readonly others: readonly {
    readonly method: Dating['method'];
    readonly startDay: number;
    readonly asSent: string;
    readonly source: Source;
  }[];
  /** Sentences about re-dating, conflict, doubtful precision. Empty when all agree. */
  readonly remarks: readonly string[];
  readonly conflict: boolean;
}

export interface Pregnancy {
  readonly dating?: Dating;
  /** Birth belonging to the current pregnancy. */
  readonly birth?: { readonly at: Moment; readonly asSent: string; readonly source: Source };
  /** No dating, but the uterus is of a size that puts her past 20+0 weeks: assumed for safety. */
  readonly assumedFrom20Weeks?: {
    readonly asSent: string;
    readonly source: Source;
    /** Day of the measurement (days since 1970-01-01); earlier days are not assumed. Absent: any day. */
    readonly measuredDay?: number;
  };
  readonly fetuses?: { readonly count: number; readonly source: Source };
  /** Why there is no dating although something was sent. */
  readonly remarks: readonly string[];
}

export interface Woman {
  /** `Patient/1`; absent when the input names no subject. */
  readonly reference?: string;
  readonly birthDay?: number;
  /** Recorded as deceased: nothing is advised. */
  readonly hasDied?: boolean;
  readonly parity?: { readonly count: number; readonly source: Source };
  readonly gravidity?: { readonly count: number; readonly source: Source };
  readonly previousBirths: readonly { readonly at: Moment; readonly source: Source }[];
}

/** Everything the rules may look at. All lists oldest first. Only facts up to `asOf`. */
export interface Timeline {
  /** Milliseconds since 1970-01-01T00:00Z. */
  readonly asOf: number;
  readonly woman: Woman;
  readonly pregnancy: Pregnancy;
  /** Clinic readings (setting clinic or unknown). */
  readonly pressures: readonly PressureReading[];
  /** Single readings taken at home. */
  readonly homePressures: readonly PressureReading[];
  readonly meanPressures: readonly MeanPressure[];
  readonly unusablePressures: readonly UnusablePressure[];
  readonly urineProteins: readonly UrineProtein[];
  readonly urineSigns: readonly UrineSign[];
  readonly laboratory: readonly LaboratoryResult[];
  readonly symptoms: readonly Symptom[];
  readonly conditions: readonly KnownCondition[];
  readonly medicines: readonly Medicine[];
  readonly requests: readonly ExistingRequest[];
}

export type { TimelineValues } from '../guidelines/guideline.ts';

/** Where on the pregnancy a moment lies. */
export interface Place {
  readonly period: Period;
  /** Absent when undated or after birth. */
  readonly gestationalAgeDays?: number;
  readonly daysAfterBirth?: number;
  /** `earlier`: before this pregnancy began. `later`: more than six weeks after the birth. */
  readonly outside?: 'earlier' | 'later';
}
