// The values in which one publication and edition differs from another. A new edition fills this; no function changes. Types only.
import type { Care } from './care.ts';
import type {
  ActionRule,
  Citation,
  Confirmation,
  HellpDefinition,
  OrganCriterion,
  PressureLimits,
  ProteinuriaCriteria,
  SevereConfirmation,
  Threshold,
} from './guideline.ts';

export interface Edition {
  readonly id: string;
  readonly title: string;
  readonly publisher: string;
  readonly edition: string;
  readonly year: number;
  readonly url?: string;
  readonly version: string;
  readonly status: 'active' | 'withdrawn';
  readonly remark: string;
  /** The definitions as a whole; cited by rules that have no narrower source. */
  readonly citation: Citation;
  readonly hypertension: PressureLimits;
  readonly severe: PressureLimits;
  readonly confirmation: Confirmation;
  readonly severeConfirmation: SevereConfirmation;
  /** Limits of the home average; absent: the publication has no white-coat and masked classes. */
  readonly home?: PressureLimits;
  readonly proteinuria: ProteinuriaCriteria;
  /** What makes pre-eclampsia beside protein; empty: protein is required. */
  readonly organs: readonly OrganCriterion[];
  /** What makes it severe. */
  readonly severeOrgans: readonly OrganCriterion[];
  readonly severeFeatures: SevereFeatures;
  readonly hellp?: HellpDefinition;
  /** Sudden loss of control of chronic hypertension counts as superimposed disease. */
  readonly lossOfControl?: Citation;
  /** After birth: from here same-day. */
  readonly afterBirthSameDay: PressureLimits;
  /** After birth: start of treatment as this publication has it. */
  readonly afterBirthTreatment: PressureLimits;
  readonly citations: {
    readonly chronic: Citation;
    readonly gestational: Citation;
    readonly preEclampsia: Citation;
    readonly superimposed: Citation;
    readonly eclampsia: Citation;
    readonly afterBirth: Citation;
    readonly home: Citation;
    readonly transient: Citation;
  };
  /** What this publication advises to do: drugs, magnesium, timing of birth, prevention. */
  readonly care: Care;
  /** What this publication advises beyond the common steps. */
  readonly actions: readonly ActionRule[];
}

export interface SevereFeatures {
  /** Whether the publication speaks of severe pre-eclampsia at all. */
  readonly named: boolean;
  /** Confirmed severe pressure: makes it severe by itself, only with heavy protein, or not. */
  readonly pressure: 'alone' | 'with-heavy-protein' | 'no';
  /** Danger symptoms make it severe. */
  readonly dangerSymptoms: boolean;
  readonly heavyProtein?: Threshold;
  readonly citation: Citation;
}
