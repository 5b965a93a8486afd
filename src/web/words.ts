// Words of the page: times, places on the pregnancy, outcomes, sources.
import type { Citation } from '../guidelines/guideline.ts';
import type { Outcome } from '../findings/finding.ts';
import { spokenUnits } from '../findings/limit-words.ts';
import { english } from '../messages/en.ts';
import { localInstant, spokenTime } from '../presenters/clock.ts';
import { spokenValue } from '../presenters/newest-data.ts';
import { withCapitals } from '../presenters/words.ts';
import type { Place } from '../timeline/timeline.ts';

/** A sentence of the answer as people read it. */
export const spoken = (text: string): string => withCapitals(spokenUnits(spokenValue(text)));

/** An instant on the clock of the clinic: "10 Mar 2025 13:10". */
export const clockWords = (milliseconds: number, offsetMinutes: number): string =>
  spokenTime(localInstant(milliseconds, offsetMinutes));

/** "33+0 weeks", "6 days after birth"; empty when it cannot be told. */
export function placeWords({ gestationalAgeDays, daysAfterBirth }: Place): string {
  if (daysAfterBirth !== undefined)
    return daysAfterBirth === 1 ? '1 day after birth' : `${daysAfterBirth} days after birth`;
  if (gestationalAgeDays === undefined) return '';
  return `${Math.floor(gestationalAgeDays / 7)}+${gestationalAgeDays % 7} weeks`;
}

export const outcomeWords: Readonly<Record<Outcome, string>> = {
  met: 'yes',
  'not-met': 'no',
  'cannot-tell': 'cannot tell',
  'not-applicable': 'not about her now',
};

/** A sign beside each outcome, so that colour is never the only one. */
export const outcomeSigns: Readonly<Record<Outcome, string>> = {
  met: '●',
  'not-met': '○',
  'cannot-tell': '?',
  'not-applicable': '–',
};

const knownWords: Readonly<Record<Citation['known'], string>> = {
  read: 'read in the publication',
  'from-memory': 'from memory, not yet checked against the publication',
  ours: 'our own choice',
  'common-practice': 'common practice',
};

export function sourceWords({ publication, section, year, known, note }: Citation): string {
  const place = [publication, section, String(year)].filter((part) => part !== '').join(', ');
  return `${place} (${knownWords[known]})${note === undefined ? '' : `: ${note}`}`;
}

export const { classWords, urgencyWords, referralWords, neededByWords } = english;

/** "Pre-eclampsia and hypertension after birth". */
export const classesWords = (classes: readonly (keyof typeof classWords)[]): string =>
  classes.map((each) => classWords[each]).join(', also ');
