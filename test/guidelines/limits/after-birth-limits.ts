// The days of the plan after birth, from clinical-rules 2.5: rules 40, 41 and 46; the end of the review window is ours.
import type { FhirResource } from 'fhir/r4.js';
import * as build from '../../support/resources.ts';
import { asOf, day, everyEdition, secondsBefore, type LimitRow } from './limit-row.ts';

const bornBefore = (days: number): readonly FhirResource[] => [
  build.birth(secondsBefore(days * day).slice(0, 10)),
  build.pressure(asOf, 118, 74),
];

const until = (question: string, days: number, source: string): LimitRow => ({
  what: `day ${String(days)} after birth is the last`,
  source,
  editions: everyEdition,
  question,
  counts: 'up-to',
  values: [days - 1, days, days + 1],
  unit: 'd',
  woman: bornBefore,
});

const plan = 'rule 40, R: daily on days 0 to 2, once on day 3 to 5, on drugs up to 2 weeks';

export const afterBirthLimits: readonly LimitRow[] = [
  until('after-birth-first-days', 2, plan),
  until('after-birth-five-days', 5, plan),
  until('after-birth-two-weeks', 14, plan),
  until('after-birth-three-days', 3, 'rule 46, R: blood 48 to 72 hours after birth'),
  until('after-birth-ten-days', 10, 'rule 41, R: pressure again at 7 to 10 days'),
  until('review-due', 84, 'D: until raised pressure would be called chronic, 12 weeks (2.13, M)'),
  {
    ...until('review-due', 42, 'rule 46, R: urine strip at the review of 6 to 8 weeks'),
    what: 'the review is due from six weeks on',
    counts: 'from',
  },
  {
    ...until('six-weeks-over', 42, 'rule 12, R: the window reaches to day 42'),
    what: 'the six weeks are over on day 43',
    counts: 'over',
  },
];
