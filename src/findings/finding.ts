// What a rule answers and on what ground. Hands on types only.
import type {
  ActionKind,
  Citation,
  Classification,
  Omission,
  ReferralLevel,
  Threshold,
  Urgency,
} from '../guidelines/guideline.ts';

/** met, not met, cannot tell (something needed is missing), not applicable. A missing value is never a normal one. */
export type Outcome = 'met' | 'not-met' | 'cannot-tell' | 'not-applicable';

/** One fact an answer rests on: where it stands in the input, as sent and as compared. */
export interface Evidence {
  /** `Observation/123`, a `urn:uuid:`, or the place in the input when the resource has no identity. */
  readonly reference: string;
  /** What it is, in words: "blood pressure", "platelets". */
  readonly what: string;
  /** Date or time as sent. */
  readonly at?: string;
  /** Value with unit as sent, for people: "19.0/12.4 kPa". */
  readonly asSent: string;
  /** Value with unit as compared: "143/93 mm[Hg]". Absent when nothing was compared. */
  readonly asCompared?: string;
  /** Why the value is less than certain: preliminary, time assumed, and so on. */
  readonly remark?: string;
}

/** What is missing, why it matters, until when, and what it could change. */
export interface Missing {
  readonly id: string;
  readonly what: string;
  readonly how: string;
  readonly by: Urgency;
  /** Clock time, where one follows from the readings. */
  readonly at?: string;
  readonly couldChange: readonly string[];
}

/** The answer to one question, with its trace. */
export interface Finding {
  /** Id of the question or rule. */
  readonly question: string;
  readonly asks: string;
  readonly outcome: Outcome;
  /** One sentence that gives the reason for the outcome, with the values. */
  readonly because: string;
  readonly evidence: readonly Evidence[];
  readonly thresholds: readonly Threshold[];
  readonly source: Citation;
  /** Filled only when the outcome is `cannot-tell`. */
  readonly missing?: Omission;
  /** Questions this rule rests on. */
  readonly restsOn?: readonly string[];
}

export interface Action {
  readonly id: string;
  readonly kind: ActionKind;
  readonly sentence: string;
  readonly order: number;
  /** Clock time in ISO 8601, in the zone of the reading it counts from. */
  readonly time?: string;
  readonly source: Citation;
}

/** A medicine ordered or in use that is to be avoided or used with care. */
export interface MedicineNotice {
  readonly rule: string;
  readonly medicine: string;
  readonly severity: 'avoid' | 'caution' | 'note';
  readonly sentence: string;
  /** What the publications name instead; always "per local protocol, the prescriber decides". */
  readonly alternative?: string;
  readonly evidence: readonly Evidence[];
  readonly source: Citation;
}

/** A drug the publications name for her state: a reference value, never an order. */
export interface TreatmentOption {
  readonly id: string;
  readonly medicine: string;
  readonly purpose: 'acute-pressure' | 'maintenance' | 'seizure';
  /** Reference dose with route and unit. */
  readonly dose: string;
  /** Reasons found in the record to think twice: "asthma is recorded". */
  readonly against: readonly { readonly sentence: string; readonly evidence: readonly Evidence[] }[];
  readonly offeredFirst: boolean;
  readonly source: Citation;
}

/** Aspirin or calcium: indicated or not, by which factors, and what was never asked. */
export interface PreventionAdvice {
  readonly id: 'aspirin' | 'calcium';
  readonly outcome: Outcome;
  readonly sentence: string;
  readonly found: readonly {
    readonly factor: string;
    readonly level: 'high' | 'moderate';
    readonly evidence: readonly Evidence[];
  }[];
  readonly absent: readonly string[];
  readonly neverAsked: readonly string[];
  /** "indicated by X at Y": reference dose, only when indicated. */
  readonly dose?: string;
  readonly window?: string;
  readonly source: Citation;
}

/** A doubt about how something was measured. */
export interface QualityNotice {
  /** Q1 to Q18 of the measurement rules, by name: `rest-too-short`. */
  readonly rule: string;
  readonly grade: 'block' | 'warn' | 'partial' | 'ask' | 'info';
  readonly sentence: string;
  readonly evidence: readonly Evidence[];
  readonly source: Citation;
}

/** A published risk equation: a figure about groups, never a reassurance. */
export interface RiskEstimate {
  readonly model: string;
  /** What the figure is the probability of, and within what time. */
  readonly predicts?: string;
  readonly outcome: Outcome;
  /** Percent, one decimal; absent when an input is missing or out of range. */
  readonly percent?: number;
  readonly sentence: string;
  readonly evidence: readonly Evidence[];
  readonly missing: readonly string[];
  readonly source: Citation;
  /** Always false until the printed equation was compared. */
  readonly verified: boolean;
}

export interface Referral {
  readonly level: ReferralLevel;
  readonly urgency: Urgency;
  readonly sentence: string;
  readonly source: Citation;
}

/** Ranked answer: leading class first, most cautious urgency, what to do, what is missing. */
export interface Assessment {
  readonly classification: readonly Classification[];
  readonly urgency: Urgency;
  /** Why this urgency: ids of the urgency rules that hold, most urgent first. */
  readonly urgencyBecause: readonly {
    readonly rule: string;
    readonly urgency: Urgency;
    readonly sentence: string;
    readonly source: Citation;
  }[];
  readonly findings: readonly Finding[];
  readonly missing: readonly Missing[];
  readonly actions: readonly Action[];
  readonly referral?: Referral;
  readonly medicines: readonly MedicineNotice[];
  readonly treatment: readonly TreatmentOption[];
  readonly prevention: readonly PreventionAdvice[];
  readonly quality: readonly QualityNotice[];
}
