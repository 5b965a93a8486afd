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
}
