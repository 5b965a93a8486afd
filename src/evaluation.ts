// The whole answer about one woman, before any presenter. Types only.
import type { Issue, SetAsideCode } from './errors.ts';
import type { Classification, Guideline, Threshold, Urgency } from './guidelines/guideline.ts';
import type { Assessment, Evidence, Outcome, Referral, RiskEstimate } from './findings/finding.ts';
import type { Timeline } from './timeline/timeline.ts';

export interface GestationalAge {
  /** Whole days at `asOf`; absent when undated or after birth. */
  readonly days?: number;
  /** "30+2" (weeks+days). */
  readonly text?: string;
  readonly period: 'before-20-weeks' | 'from-20-weeks' | 'after-birth' | 'unknown';
  readonly daysAfterBirth?: number;
  readonly method?: string;
  /** Estimated due date, `YYYY-MM-DD`. */
  readonly dueDate?: string;
  readonly evidence: readonly string[];
  readonly remarks: readonly string[];
}

export type AccountEntry = {
  readonly path: string;
  readonly reference: string;
  readonly resourceType: string;
} & (
  | { readonly outcome: 'used'; readonly by: readonly string[] }
  | { readonly outcome: 'not-needed'; readonly why: string }
  | {
      readonly outcome: 'set-aside';
      readonly code: SetAsideCode;
      readonly expression: string;
      readonly message: string;
      /** What was lost, when it was a pressure or a urine result. */
      readonly about?: 'blood-pressure' | 'urine';
    }
);

/** Every resource received ends in exactly one of used, not needed, set aside; the three add up to `received`. */
export interface Account {
  readonly received: number;
  readonly used: number;
  readonly notNeeded: number;
  readonly setAside: number;
  /** In the order received. */
  readonly entries: readonly AccountEntry[];
  /** Issues about the bundle or about one element of a resource that was used all the same. */
  readonly issues: readonly Issue[];
}

export interface GuidelineStamp {
  readonly id: string;
  readonly title: string;
  readonly version: string;
  /** SHA-256 over the guideline data, hexadecimal: the same fingerprint and request give the same bytes. */
  readonly fingerprint: string;
}

/** What one guideline says about a timeline. */
export interface Opinion {
  readonly guideline: Guideline;
  readonly stamp: GuidelineStamp;
  /** Its own words, before the urgency floor. */
  readonly own: Assessment;
  /** The same, lifted to the floor. */
  readonly assessment: Assessment;
}

/** A guideline that would answer with other classes or another urgency, and the reading on which it parts. */
export interface Difference {
  readonly id: string;
  readonly classification: readonly Classification[];
  readonly urgency: Urgency;
  /** "platelets 132 10*9/L is not below 100 10*9/L" */
  readonly because: string;
}

/** A question that guidelines answer differently, with the limit and the evidence of each. */
export interface Parting {
  readonly question: string;
  readonly asks: string;
  readonly answers: readonly {
    readonly guideline: string;
    readonly outcome: Outcome;
    readonly because: string;
    /** Limits on what decides; empty: the publication has none of this kind. */
    readonly thresholds: readonly Threshold[];
    readonly evidence: readonly Evidence[];
  }[];
}

/** One woman under every guideline, side by side. */
export interface Comparison {
  /** Under the default guideline, as always. */
  readonly evaluation: Evaluation;
  /** In the order of the registry. */
  readonly guidelines: readonly {
    readonly stamp: GuidelineStamp;
    readonly classification: readonly Classification[];
    /** Before the urgency floor. */
    readonly ownUrgency: Urgency;
    readonly urgency: Urgency;
    readonly referral?: Referral;
  }[];
  readonly partings: readonly Parting[];
}

export interface Evaluation {
  /** ISO 8601 instant, UTC. */
  readonly asOf: string;
  readonly guideline: Guideline;
  readonly stamp: GuidelineStamp;
  readonly subject: string | undefined;
  readonly gestationalAge: GestationalAge;
  readonly timeline: Timeline;
  readonly assessment: Assessment;
  readonly account: Account;
  /** To whom the site refers, by referral level; absent when the site names nobody. */
  readonly performers?: ReadonlyMap<string, { readonly reference: string; readonly display?: string }>;
  /** Guidelines that would differ in class or urgency; absent when not asked for. */
  readonly differs?: readonly Difference[];
  /** Figures of published risk equations; absent when not asked for. They decide nothing. */
  readonly riskEstimates?: readonly RiskEstimate[];
}
