// Would these data work? What was found, in which shape, what was set aside, and which questions stay open. Types only.
import type { SetAsideCode } from '../errors.ts';

/** Something counted, with places where it occurs. */
export interface Counted<Name extends string = string> {
  readonly name: Name;
  readonly count: number;
  /** At most three FHIRPaths. */
  readonly examples: readonly string[];
}

export interface ElementFound {
  /** `blood pressure`, `urine protein`, `laboratory: platelets`. */
  readonly element: string;
  /** Facts that reached the rules. */
  readonly facts: number;
  /** How they were sent: panel with components, strip as SNOMED CT code, units. */
  readonly shapes: readonly Counted[];
}

export interface OpenQuestion {
  readonly question: string;
  readonly asks: string;
  /** What it waits for, in words; absent when the rule does not say. */
  readonly missing?: string;
  readonly women: number;
}

export interface Fault extends Counted {
  readonly severity: 'error' | 'warning' | 'information';
  readonly message: string;
}

export interface Readiness {
  readonly women: number;
  /** Of these, women who can be given a class. */
  readonly classified: number;
  readonly received: number;
  readonly used: number;
  readonly notNeeded: number;
  /** Every data element the rules look at, found or not. */
  readonly elements: readonly ElementFound[];
  readonly setAside: readonly (Counted<SetAsideCode> & { readonly message: string })[];
  /** Questions of the guideline that could be answered for no woman, for lack of data. */
  readonly neverAnswered: readonly OpenQuestion[];
  /** What breaks or bends R4. */
  readonly strict: readonly Fault[];
  /** Local codes that the site's maps translated. */
  readonly mapped: number;
}
