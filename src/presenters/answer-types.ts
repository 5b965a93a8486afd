// The public answer, as `--format json` prints it and the output Parameters carry it. Types only.
import type { Classification, Comparator, Known, ReferralLevel, Urgency } from '../guidelines/guideline.ts';
import type { Outcome } from '../findings/finding.ts';
import type { Difference, GestationalAge, GuidelineStamp } from '../evaluation.ts';

/** A source. `verified` is false for a value from memory, true for one read; absent for our own choices. */
export interface AnswerCitation {
  readonly publication: string;
  readonly section?: string | undefined;
  readonly year: number;
  readonly known: Known;
  readonly verified?: boolean | undefined;
  readonly note?: string | undefined;
}

export interface AnswerEvidence {
  readonly reference: string;
  readonly what: string;
  readonly at?: string | undefined;
  readonly asSent?: string | undefined;
  readonly asCompared?: string | undefined;
  readonly remark?: string | undefined;
}

export interface AnswerThreshold {
  readonly id: string;
  readonly comparator: Comparator;
  readonly value: number;
  readonly unit: string;
  readonly citation: AnswerCitation;
}

export interface AnswerOmission {
  readonly id: string;
  readonly what: string;
  readonly how?: string | undefined;
  readonly by: Urgency;
}

/** Something to measure or ask, and what it could change. */
export interface AnswerMissing extends AnswerOmission {
  readonly at?: string | undefined;
  readonly couldChange?: readonly string[] | undefined;
}

export interface AnswerFinding {
  readonly question: string;
  readonly asks: string;
  readonly outcome: Outcome;
  readonly because?: string | undefined;
  readonly evidence?: readonly AnswerEvidence[] | undefined;
  readonly thresholds?: readonly AnswerThreshold[] | undefined;
  readonly source: AnswerCitation;
  readonly restsOn?: readonly string[] | undefined;
  readonly missing?: AnswerOmission | undefined;
}

export interface AnswerAction {
  readonly id: string;
  readonly kind: string;
  readonly sentence: string;
  readonly time?: string | undefined;
  readonly source: AnswerCitation;
}

/** A medicine in use or ordered that is to be avoided or used with care. */
export interface AnswerMedicine {
  readonly rule: string;
  readonly medicine: string;
  readonly severity: 'avoid' | 'caution' | 'note';
  readonly sentence: string;
  readonly alternative?: string | undefined;
  readonly evidence?: readonly AnswerEvidence[] | undefined;
  readonly source: AnswerCitation;
}

/** A drug the publication names for her state: a reference value, never an order. */
export interface AnswerTreatment {
  readonly id: string;
  readonly medicine: string;
  readonly purpose: 'acute-pressure' | 'maintenance' | 'seizure';
  readonly dose: string;
  readonly offeredFirst: boolean;
  /** Reasons in the record to think twice. */
  readonly against?:
    | readonly { readonly sentence: string; readonly evidence?: readonly AnswerEvidence[] | undefined }[]
    | undefined;
  readonly source: AnswerCitation;
}

/** Aspirin or calcium: indicated or not, by which factors, and what was never asked. */
export interface AnswerPrevention {
  readonly id: 'aspirin' | 'calcium';
  readonly outcome: Outcome;
  readonly sentence: string;
  readonly found?:
    | readonly {
        readonly factor: string;
        readonly level: 'high' | 'moderate';
        readonly evidence?: readonly AnswerEvidence[] | undefined;
      }[]
    | undefined;
  readonly absent?: readonly string[] | undefined;
  readonly neverAsked?: readonly string[] | undefined;
  readonly dose?: string | undefined;
  readonly window?: string | undefined;
  readonly source: AnswerCitation;
}

/** A doubt about how something was measured. */
export interface AnswerQuality {
  readonly rule: string;
  readonly grade: 'block' | 'warn' | 'partial' | 'ask' | 'info';
  readonly sentence: string;
  readonly evidence?: readonly AnswerEvidence[] | undefined;
  readonly source: AnswerCitation;
}

/** A published risk equation. `verified` is false until it was compared with print. */
export interface AnswerRiskEstimate {
  readonly model: string;
  readonly predicts?: string | undefined;
  readonly outcome: Outcome;
  readonly percent?: number | undefined;
  readonly sentence: string;
  readonly evidence?: readonly AnswerEvidence[] | undefined;
  readonly missing?: readonly string[] | undefined;
  readonly source: AnswerCitation;
  readonly verified: boolean;
}

export interface AnswerReferral {
  readonly level: ReferralLevel;
  readonly urgency: Urgency;
  readonly sentence: string;
  readonly source: AnswerCitation;
}

export interface AnswerIssue {
  readonly severity: 'error' | 'warning' | 'information';
  readonly code: string;
  readonly expression?: string | undefined;
  readonly message: string;
}

/** What became of one resource received. */
export interface AnswerEntry {
  readonly path: string;
  readonly reference: string;
  readonly resourceType: string;
  readonly outcome: 'used' | 'not-needed' | 'set-aside';
  readonly by?: readonly string[] | undefined;
  readonly why?: string | undefined;
  readonly code?: string | undefined;
  readonly expression?: string | undefined;
  readonly message?: string | undefined;
}

/** used + notNeeded + setAside = received. */
export interface AnswerAccount {
  readonly received: number;
  readonly used: number;
  readonly notNeeded: number;
  readonly setAside: number;
  readonly entries?: readonly AnswerEntry[] | undefined;
  readonly issues?: readonly AnswerIssue[] | undefined;
}

export type AnswerGestationalAge = Omit<GestationalAge, 'evidence' | 'remarks'> & {
  readonly evidence?: readonly string[] | undefined;
  readonly remarks?: readonly string[] | undefined;
};

/** The whole answer about one woman. Members without content are undefined and vanish in JSON. */
export interface Answer {
  /** Leading class first; never empty. */
  readonly classification: readonly Classification[];
  readonly urgency: Urgency;
  readonly gestationalAge: AnswerGestationalAge;
  readonly findings?: readonly AnswerFinding[] | undefined;
  readonly missing?: readonly AnswerMissing[] | undefined;
  readonly actions?: readonly AnswerAction[] | undefined;
  readonly referral?: AnswerReferral | undefined;
  readonly urgencyBecause?:
    | readonly {
        readonly rule: string;
        readonly urgency: Urgency;
        readonly sentence: string;
        readonly source: AnswerCitation;
      }[]
    | undefined;
  readonly medicines?: readonly AnswerMedicine[] | undefined;
  readonly treatment?: readonly AnswerTreatment[] | undefined;
  readonly prevention?: readonly AnswerPrevention[] | undefined;
  readonly quality?: readonly AnswerQuality[] | undefined;
  readonly guideline: GuidelineStamp;
  readonly asOf: string;
  readonly subject?: string | undefined;
  /** Guidelines that would differ in class or urgency, and on what they part. */
  readonly differs?: readonly Difference[] | undefined;
  /** Only when asked for: figures about groups of women, never a reassurance. */
  readonly riskEstimates?: readonly AnswerRiskEstimate[] | undefined;
  readonly account: AnswerAccount;
  readonly caution: readonly string[];
}

/** A limit with what it measures, as the side-by-side answer prints it. */
export interface AnswerPartingAnswer {
  readonly guideline: string;
  readonly outcome: Outcome;
  readonly because?: string | undefined;
  readonly thresholds?: readonly AnswerThreshold[] | undefined;
  readonly evidence?: readonly AnswerEvidence[] | undefined;
}

/** One woman under every guideline. */
export interface ComparisonAnswer {
  readonly guidelines: readonly {
    readonly id: string;
    readonly title: string;
    readonly version: string;
    readonly fingerprint: string;
    readonly classification: readonly Classification[];
    /** What the guideline says by itself; `urgency` is lifted to that of the default guideline. */
    readonly ownUrgency: Urgency;
    readonly urgency: Urgency;
    readonly referral?: AnswerReferral | undefined;
  }[];
  /** Questions on which guidelines part. */
  readonly partings?:
    | readonly {
        readonly question: string;
        readonly asks: string;
        readonly answers: readonly AnswerPartingAnswer[];
      }[]
    | undefined;
}
