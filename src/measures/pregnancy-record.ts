// One pregnancy as the measures see it: its timeline as at its last fact, what was said at its visits, its contacts. Types only.
import type { PreventionAdvice, Referral } from '../findings/finding.ts';
import type { Classification, Guideline } from '../guidelines/guideline.ts';
import type { View } from '../rules/view.ts';
import type { Moment } from '../timeline/timeline.ts';

/** Both ends inclusive, in milliseconds since 1970-01-01T00:00Z; texts as asked. */
export interface MeasurePeriod {
  readonly from: number;
  readonly to: number;
  readonly startText: string;
  readonly endText: string;
}

/** One Encounter that took place. */
export interface Contact {
  readonly reference: string;
  readonly at: Moment;
  readonly isInpatient: boolean;
  /** By telephone or video: nothing can be measured. */
  readonly isVirtual: boolean;
  readonly site?: string;
}

export interface PregnancyRecord {
  readonly subject: string | undefined;
  readonly period: MeasurePeriod;
  readonly guideline: Guideline;
  readonly view: View;
  /** Every class told at a visit of this pregnancy, the most severe first. */
  readonly classification: readonly Classification[];
  /** The first one advised in the period. */
  readonly referral: Referral | undefined;
  /** As advised at each visit in the period, oldest first. */
  readonly prevention: readonly (readonly PreventionAdvice[])[];
  /** Oldest first, inside the period. */
  readonly contacts: readonly Contact[];
  /** Where she is cared for: of the latest contact, else of the Patient. */
  readonly site: string | undefined;
  /** Something usable of it lies in the period. */
  readonly hasData: boolean;
}
