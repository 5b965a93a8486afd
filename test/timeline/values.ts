// Numbers a timeline is built with, as clinical-rules and decisions print them; the product has its own copy in the guideline data.
import type { Threshold } from '../../src/guidelines/guideline.ts';
import type { TimelineValues } from '../../src/timeline/timeline.ts';

function threshold(id: string, comparator: Threshold['comparator'], value: number, unit: string): Threshold {
  const citation = {
    publication: 'clinical-rules.md',
    section: 'cited beside each value',
    year: 2026,
    known: 'read',
  } as const;
  return { id, comparator, value, unit, citation };
}

const redatingRow = (fromDays: number, toDays: number, days: number) => ({
  fromDays,
  toDays,
  limitDays: threshold(`redating-from-${String(fromDays)}`, '>', days, 'd'),
});

export const values: TimelineValues = {
  // 2.2 rule 9
  pregnancyLengthDays: threshold('pregnancy-length', '>=', 280, 'd'),
  startOfSecondHalfDays: threshold('second-half', '>=', 140, 'd'),
  // 2.2 rule 14: more than 44 or less than 4 weeks
  longestGestationDays: threshold('longest-gestation', '<=', 308, 'd'),
  shortestGestationDays: threshold('shortest-gestation', '>=', 28, 'd'),
  // 2.2 rule 12
  afterBirthDays: threshold('after-birth', '<=', 42, 'd'),
  // 2.2 rule 10
  redating: [
    redatingRow(0, 62, 5),
    redatingRow(63, 97, 7),
    redatingRow(98, 111, 7),
    redatingRow(112, 153, 10),
    redatingRow(154, 195, 14),
    redatingRow(196, 308, 21),
  ],
  conflictDays: threshold('conflict', '>', 7, 'd'),
  confirmingScanBefore: threshold('confirming-scan', '<', 154, 'd'),
  fundalHeightFrom20Weeks: threshold('fundal-height', '>=', 20, 'cm'),
  // Q2
  plausible: {
    systolicLow: threshold('systolic-low', '>=', 60, 'mm[Hg]'),
    systolicHigh: threshold('systolic-high', '<=', 260, 'mm[Hg]'),
    diastolicLow: threshold('diastolic-low', '>=', 30, 'mm[Hg]'),
    diastolicHigh: threshold('diastolic-high', '<=', 160, 'mm[Hg]'),
  },
  // fhir checklist F-P03, F-T10
  pairingTolerance: threshold('pairing', '<=', 5, 'min'),
  futureTolerance: threshold('future', '<=', 5, 'min'),
};
