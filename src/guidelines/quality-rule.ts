// The shape of a rule about how something was measured: a named check with its limits. Types only.
import type {
  Citation,
  ConditionId,
  Figure,
  PressureLimits,
  ProteinuriaCriteria,
  Threshold,
} from './guideline.ts';

export type QualityGrade = 'block' | 'warn' | 'partial' | 'ask' | 'info';

/** A cuff by the words it goes by, and the arms it fits. */
export interface CuffSize {
  readonly name: string;
  /** Lower case. */
  readonly words: readonly string[];
  /** Smallest arm, in cm; absent: no lower end. */
  readonly from?: Threshold;
  /** Largest arm, in cm; absent: no upper end. */
  readonly to?: Threshold;
}

/** What is looked at, with the limits it needs. */
export type QualityCheck =
  | {
      readonly check: 'unusable-pressure';
      readonly why: readonly (
        | 'diastolic-not-below-systolic'
        | 'above-plausible-range'
        | 'below-plausible-range'
        | 'unit-missing'
        | 'unit-unknown'
        | 'faulty-form'
      )[];
    }
  | { readonly check: 'pulse-pressure'; readonly narrow: Threshold; readonly wide: Threshold }
  | {
      readonly check: 'cuff-size';
      /** Smallest arm first. */
      readonly sizes: readonly CuffSize[];
      /** Sizes of another publication, named when they accept what these refuse. */
      readonly alternative: readonly CuffSize[];
    }
  | { readonly check: 'rest'; readonly tooShort: Threshold }
  | {
      readonly check: 'position';
      readonly positions: readonly ('supine' | 'recumbent' | 'left-lateral' | 'standing')[];
    }
  | {
      readonly check: 'automated-near-limit';
      readonly limits: readonly PressureLimits[];
      /** How near, in mm[Hg]. */
      readonly within: Threshold;
      /** Pre-eclampsia is in question: by a record, or by significant protein. */
      readonly conditions: readonly ConditionId[];
      readonly proteinuria: ProteinuriaCriteria;
    }
  | { readonly check: 'palpated' }
  | { readonly check: 'visit-difference'; readonly difference: Threshold }
  | { readonly check: 'time-not-exact' }
  | { readonly check: 'arm-changed' }
  | { readonly check: 'arms-differ'; readonly over: Threshold; readonly upTo?: Threshold }
  | { readonly check: 'same-value'; readonly visits: Threshold }
  | {
      readonly check: 'strip-doubtful';
      /** Signs and properties count when found within this time of the strip. */
      readonly within: Threshold;
      readonly alkaline: Threshold;
      readonly concentrated: Threshold;
    }
  | { readonly check: 'strip-dilute'; readonly within: Threshold; readonly dilute: Threshold }
  | { readonly check: 'strip-read-by-eye' }
  | { readonly check: 'first-morning-ratio' }
  | { readonly check: 'preliminary' };

export type QualityRule = QualityCheck & {
  /** Stable name in words. */
  readonly id: string;
  /** Number in the list of measurement rules: `Q4`. */
  readonly number: string;
  readonly grade: QualityGrade;
  readonly sentence: string;
  /** The numbers the sentence quotes. */
  readonly figures?: readonly Figure[];
  /** Older measurements say nothing any more. */
  readonly freshWithin: Threshold;
  readonly citation: Citation;
};

/** How many terminal zeros honest measuring gives, and from where rounding is suspected. */
export interface DigitExpectation {
  readonly expectedShare: Threshold;
  readonly alertShare: Threshold;
}

/** Rules about the readings of a site or an observer. */
export interface SiteQualityRules {
  readonly minimumReadings: Threshold;
  readonly terminalZero: {
    readonly number: 'Q9';
    readonly automated: DigitExpectation;
    readonly manual: DigitExpectation;
    readonly sentence: string;
  };
  readonly avoidance: {
    readonly number: 'Q10';
    /** Readings this close below a limit are set against those this close from it upward, in mm[Hg]. */
    readonly window: Threshold;
    /** How many times as many below as at the limit. */
    readonly alertRatio: Threshold;
    /** Chi-square, one degree of freedom. */
    readonly alertChiSquare: Threshold;
    readonly sentence: string;
  };
  readonly copyForward: { readonly number: 'Q11'; readonly visits: Threshold; readonly sentence: string };
}
