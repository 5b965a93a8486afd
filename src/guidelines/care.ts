// What an edition advises to do, beside what it calls things. Types only.
import type { ActionRule, Need, PreventionRule, PressureLimits, TreatmentRule } from './guideline.ts';
import type { Citation, Threshold } from './guideline.ts';
import type { Said } from './sentences.ts';

/** A sentence with the publication that carries it. */
export interface Advice {
  readonly said: Said;
  readonly citation: Citation;
}

/** Signs looked for on magnesium, and the breathing rate at which it is stopped. */
export interface MagnesiumSigns extends Advice {
  readonly slowBreathing: Threshold;
}

export interface Care {
  /** Pressure at which a drug is started in pregnancy, and the classes it is meant for. */
  readonly startDrug: { readonly limits: PressureLimits; readonly classes: Need; readonly advice: Advice };
  /** Target on treatment; absent: none was read. */
  readonly target?: Advice;
  /** How soon severe pressure is treated, and how far it is lowered. */
  readonly severePressure: Advice;
  /** First magnesium before transfer. */
  readonly magnesiumLoading: Advice;
  /** States beyond eclampsia, imminent eclampsia, HELLP and severe features in which magnesium is given. */
  readonly magnesiumAlso?: Need;
  /** Signs looked for before each further dose. */
  readonly magnesiumSigns: MagnesiumSigns;
  /** Delivery timing, as a prompt for senior review, and anything else only this publication advises. */
  readonly actions: readonly ActionRule[];
  readonly treatments: readonly TreatmentRule[];
  readonly prevention: readonly PreventionRule[];
}
