// The shape of a language: every text a card shows, apart from the logic that chooses it. Types only.
import type { Classification, ReferralLevel, Urgency } from '../guidelines/guideline.ts';

/** Headings inside a card. */
export type Heading =
  | 'do-now'
  | 'later'
  | 'tell'
  | 'newest'
  | 'newest-used'
  | 'trend'
  | 'why'
  | 'limits'
  | 'change'
  | 'medicines'
  | 'treatment'
  | 'prevention'
  | 'quality'
  | 'risk'
  | 'held'
  | 'open'
  | 'differs'
  | 'measure'
  | 'not-used'
  | 'not-seen'
  | 'instead'
  | 'orders'
  | 'contact'
  | 'plan';

/** Subjects of cards. */
export type Topic =
  'assessment' | 'missing-data' | 'data-quality' | 'medicine-safety' | 'contact' | 'follow-up';

/** Sentences with places in braces, filled by `fill`. */
export type Phrase =
  | 'summary'
  | 'pressure'
  | 'home-pressure'
  | 'unusable'
  | 'needed'
  | 'also-needed'
  | 'also'
  | 'one-lost'
  | 'many-lost'
  | 'mend'
  | 'more'
  | 'record'
  | 'refer'
  | 'record-and-refer'
  | 'refer-only'
  | 'and'
  | 'add-problem'
  | 'draft-referral'
  | 'rules'
  | 'unchecked'
  | 'held-condition'
  | 'held-referral'
  | 'could-change'
  | 'missing-line'
  | 'by-clock'
  | 'gestational-age'
  | 'age-unknown'
  | 'age-weeks'
  | 'one-day-after-birth'
  | 'days-after-birth'
  | 'trend-change'
  | 'gap'
  | 'gap-partial'
  | 'option'
  | 'option-first'
  | 'against'
  | 'window'
  | 'factors-found'
  | 'factors-absent'
  | 'never-asked'
  | 'medicine'
  | 'too-late'
  | 'before-she-leaves'
  | 'needed-by'
  | 'plan'
  | 'other-orders'
  | 'not-verified';

/** Why data of the chart are not known, or not all of them. */
export type GapReason =
  | 'not-sent'
  | 'failed'
  | 'first-page-only'
  | 'not-allowed'
  | 'not-permitted'
  | 'not-in-scope'
  | 'token-expired'
  | 'too-slow'
  | 'server-busy'
  | 'server-failed'
  | 'redirected'
  | 'other-origin'
  | 'other-patients'
  | 'too-large'
  | 'too-many-pages'
  | 'endless';

export interface Messages {
  /** BCP 47 tag, as sent in Content-Language. */
  readonly language: string;
  /** Absent: complete and reviewed; else what still has to be done. Reported with every card. */
  readonly review?: string;
  readonly classWords: Readonly<Record<Classification, string>>;
  readonly urgencyWords: Readonly<Record<Urgency, string>>;
  readonly neededByWords: Readonly<Record<Urgency, string>>;
  readonly referralWords: Readonly<Record<ReferralLevel, string>>;
  readonly headings: Readonly<Record<Heading, string>>;
  readonly topics: Readonly<Record<Topic, string>>;
  readonly phrases: Readonly<Record<Phrase, string>>;
  readonly gapReasons: Readonly<Record<GapReason, string>>;
  /** Twelve short names, January first. */
  readonly months: readonly string[];
  readonly caution: readonly string[];
  /** By code of the override reason. */
  readonly overrideReasons: Readonly<Record<string, string>>;
  /**
   * Sentences and short terms of the guideline data, by their English text with every number written `#`;
   * `#1` in the translation stands for the first of them. What is not found is shown in English.
   */
  readonly sentences: Readonly<Record<string, string>>;
}
