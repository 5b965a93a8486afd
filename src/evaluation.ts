// The whole answer about one woman, before any presenter. Types only.
import type { Issue, SetAsideCode } from './errors.ts';
import type { Guideline } from './guidelines/guideline.ts';
import type { Assessment } from './findings/finding.ts';
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
}
