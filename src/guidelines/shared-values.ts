// Values every guideline shares unless it names its own: time windows, settling, plausibility. Each with its source.
import { acog700, aha2005, commonPractice, ours } from './citations.ts';
import type { Citation, Comparator, Threshold, TimelineValues } from './guideline.ts';

/** A threshold in one line. */
export const limit = (
  id: string,
  comparator: Comparator,
  value: number,
  unit: string,
  citation: Citation,
): Threshold => ({ id, comparator, value, unit, citation });

export const occasionLength = limit(
  'occasion-length',
  '<',
  30,
  'min',
  ours(
    'readings less than 30 minutes after the first belong to one occasion; its time is that first reading',
  ),
);
export const thirdReadingDifference = limit(
  'third-reading-difference',
  '>',
  10,
  'mm[Hg]',
  ours(
    'two readings further apart ask for a third; the second and third are averaged, as trial protocols do',
  ),
);
export const freshness = limit(
  'fresh-within',
  '<=',
  168,
  'h',
  ours('a confirming pair, a symptom or a test is fresh for seven days; no guideline read gives a limit'),
);
export const urineTestedWithin = limit(
  'urine-tested-within',
  '<=',
  24,
  'h',
  commonPractice('urine is tested at the contact at which the pressure is raised'),
);
export const bloodTestedWithin = limit(
  'blood-tested-within',
  '<=',
  24,
  'h',
  ours('blood taken within the day is not asked for again'),
);
export const settledAfter = limit(
  'settled-after',
  '>=',
  24,
  'h',
  ours('one lower reading soon after does not end an alarm; a reading a day later does'),
);
export const severeRepeat = limit('severe-repeat-within', '<=', 15, 'min', {
  publication: 'ACOG Committee Opinion 767, Severe-range hypertension',
  section: 'definition of persistent severe hypertension',
  year: 2019,
  known: 'read',
});
export const severePairInterval = limit(
  'severe-pair-interval',
  '>=',
  5,
  'min',
  ours('two severe readings five minutes apart confirm; publications read say "within minutes"'),
);
export const severeClosedAfter = limit(
  'severe-closed-after',
  '>=',
  5,
  'min',
  ours('a lower reading sooner than five minutes does not close a severe one'),
);
export const unusableSupersededAfter = limit(
  'unusable-superseded-after',
  '>=',
  5,
  'min',
  ours('a good reading five minutes later answers an unusable one'),
);
export const newProteinMultiple = limit(
  'protein-against-baseline',
  '>=',
  2,
  '1',
  ours('protein known before 20 weeks counts as new only when doubled'),
);

export const magnesiumLoadWithin = limit(
  'magnesium-load-within',
  '<=',
  24,
  'h',
  ours('a course lasts a day; a second load inside it is a double dose'),
);

export const dosesWithin = limit(
  'doses-within',
  '<=',
  48,
  'h',
  ours('a medicine given once a day or more often is in use for two days after a dose'),
);
export const dosesApart = limit(
  'doses-apart',
  '>=',
  4,
  'h',
  ours('doses closer than this are one acute treatment; two further apart are treatment that goes on'),
);

const redating = (fromDays: number, toDays: number, days: number) => ({
  fromDays,
  toDays,
  limitDays: limit(
    `redating-from-${fromDays}-days`,
    '>',
    days,
    'd',
    acog700(
      'redating table, row chosen by the age that the last period gives on the day of the scan',
      'read',
    ),
  ),
});

export const timelineValues: TimelineValues = {
  pregnancyLengthDays: limit(
    'pregnancy-length',
    '>=',
    280,
    'd',
    commonPractice('due date is 280 days after the first day of the last period'),
  ),
  startOfSecondHalfDays: limit(
    'start-of-week-20',
    '>=',
    140,
    'd',
    commonPractice('20+0 weeks are 140 days and count as from 20 weeks'),
  ),
  longestGestationDays: limit(
    'longest-gestation',
    '<=',
    308,
    'd',
    ours('more than 44 weeks is a dating error or an unrecorded birth'),
  ),
  shortestGestationDays: limit(
    'shortest-gestation',
    '>=',
    28,
    'd',
    ours('less than 4 weeks is a dating error'),
  ),
  afterBirthDays: limit(
    'after-birth-window',
    '<=',
    42,
    'd',
    commonPractice('the six weeks after birth, day 0 is the day of birth'),
  ),
  redating: [
    redating(0, 62, 5),
    redating(63, 97, 7),
    redating(98, 111, 7),
    redating(112, 153, 10),
    redating(154, 195, 14),
    redating(196, 308, 21),
  ],
  conflictDays: limit(
    'dating-conflict',
    '>',
    7,
    'd',
    ours('two datings more than a week apart are a conflict to be shown'),
  ),
  confirmingScanBefore: limit(
    'confirming-scan-before',
    '<',
    154,
    'd',
    acog700(
      'abstract: without an ultrasound examination before 22 0/7 weeks a pregnancy is suboptimally dated',
      'read',
    ),
  ),
  fundalHeightFrom20Weeks: limit(
    'fundal-height-from-week-20',
    '>=',
    20,
    'cm',
    commonPractice('the fundus is at the navel, about 20 cm, at 20 weeks'),
  ),
  plausible: {
    systolicLow: limit(
      'plausible-systolic-low',
      '>=',
      60,
      'mm[Hg]',
      ours('outside this range the reading is repeated, not classified'),
    ),
    systolicHigh: limit(
      'plausible-systolic-high',
      '<=',
      260,
      'mm[Hg]',
      ours('outside this range the reading is repeated, not classified'),
    ),
    diastolicLow: limit(
      'plausible-diastolic-low',
      '>=',
      30,
      'mm[Hg]',
      ours('outside this range the reading is repeated, not classified'),
    ),
    diastolicHigh: limit(
      'plausible-diastolic-high',
      '<=',
      160,
      'mm[Hg]',
      ours('outside this range the reading is repeated, not classified'),
    ),
  },
  pairingTolerance: limit(
    'pairing-tolerance',
    '<=',
    5,
    'min',
    ours('stand-alone systolic and diastolic taken within five minutes are one reading'),
  ),
  futureTolerance: limit(
    'future-tolerance',
    '<=',
    5,
    'min',
    ours('clocks of devices and servers differ by minutes'),
  ),
};

export const doubtfulCuff = aha2005('cuff sizes by arm circumference', 'read');

/** From the first day to six weeks after a birth at 44 weeks. */
export const wholePregnancy = limit(
  'whole-pregnancy',
  '<=',
  350,
  'd',
  ours(
    'a seizure without a cause on record is not out of date while its pregnancy lasts, or the six weeks after it',
  ),
);
