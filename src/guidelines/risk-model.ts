// The shape of a published risk equation: terms as data, its population, its limits. Types only.
import type { Citation, Classification, Threshold } from './guideline.ts';

/** What goes into an equation. Numbers in the unit named; indicators are 0 or 1. */
export type RiskInput =
  // wk
  | 'gestational-age'
  // mm[Hg]
  | 'systolic'
  // umol/L
  | 'creatinine'
  // 10*9/L
  | 'platelets'
  // U/L
  | 'ast'
  // %
  | 'oxygen-saturation'
  // indicators
  | 'multiparous'
  | 'strip-2'
  | 'strip-3'
  | 'strip-4'
  | 'bleeding-with-abdominal-pain'
  | 'headache-or-visual-disturbance'
  | 'chest-pain-or-dyspnoea';

/** Coefficient times the product of its inputs, or times the natural logarithm of its one input. */
export interface RiskTerm {
  readonly coefficient: number;
  readonly of: readonly RiskInput[];
  readonly logarithm?: true;
}

export interface RiskRange {
  readonly input: RiskInput;
  readonly low: Threshold;
  readonly high: Threshold;
}

/** Logistic: probability = 1 / (1 + exp(-(intercept + sum of terms))). */
export interface RiskModel {
  readonly id: string;
  readonly title: string;
  /** What the figure is the probability of, and within what time. */
  readonly predicts: string;
  /** Among whom it was made. */
  readonly population: string;
  /** Classes of women it may be used for. */
  readonly appliesTo: readonly Classification[];
  readonly intercept: number;
  readonly terms: readonly RiskTerm[];
  /** Outside these no figure is given. */
  readonly ranges: readonly RiskRange[];
  /** Unit `%`: from here on the publication calls the risk high. */
  readonly high: Threshold;
  /** Older values are not put in. */
  readonly freshWithin: Threshold;
  /** With any of these a figure must not reassure. */
  readonly neverReassuresWith: {
    readonly classes: readonly Classification[];
    readonly questions: readonly string[];
  };
  /** How it behaves where a reader would not expect it. */
  readonly remarks: readonly string[];
  /** Of the equation. */
  readonly citation: Citation;
  /** False until the printed equation was compared. */
  readonly verified: boolean;
}
