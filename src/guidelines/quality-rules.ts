// What makes a measurement doubtful, and what to say then: Q1 to Q18, and the rules about a site's readings. Data only.
import {
  aha2005,
  ksh2018,
  measuringBp,
  nice133,
  ours,
  stripGuide,
  terminalDigits,
  commonPractice,
} from './citations.ts';
import type { Edition } from './edition.ts';
import type { CuffSize, QualityRule, SiteQualityRules } from './quality-rule.ts';
import { figure, say } from './sentences.ts';
import { freshness, limit, thirdReadingDifference } from './shared-values.ts';

const ahaCuffs = aha2005('cuff sizes by mid-arm circumference', 'read');
const olderCuffs = measuringBp('cuff sizes, an older obstetric page', 'read');
const cuff = (name: string, from: number, to: number, ...words: readonly string[]): CuffSize => {
  const id = name.replaceAll(' ', '-');
  return {
    name,
    words: [name, ...words],
    from: limit(`cuff-${id}-from`, '>=', from, 'cm', ahaCuffs),
    to: limit(`cuff-${id}-to`, '<=', to, 'cm', ahaCuffs),
  };
};

/** Names of cuffs as makers print them. */
const words = {
  child: ['pediatric', 'paediatric', 'child', 'small child'],
  smallAdult: ['adult small', 'small'],
  adult: ['standard', 'standard adult', 'adult standard', 'regular', 'regular adult', 'medium', 'normal'],
  largeAdult: ['adult large', 'large', 'obese'],
  thigh: ['adult thigh', 'extra large', 'extra large adult', 'xl'],
} as const;

const smallestAdultArm = limit(
  'cuff-paediatric-to',
  '<',
  22,
  'cm',
  ours('a cuff for children is too small wherever the smallest cuff for adults fits'),
);

const ahaSizes: readonly CuffSize[] = [
  { name: 'paediatric', words: words.child, to: smallestAdultArm },
  cuff('small adult', 22, 26, ...words.smallAdult),
  cuff('adult', 27, 34, ...words.adult),
  cuff('large adult', 35, 44, ...words.largeAdult),
  cuff('thigh', 45, 52, ...words.thigh),
];

const olderSizes: readonly CuffSize[] = [
  {
    name: 'adult',
    words: ['adult', ...words.adult],
    to: limit('older-cuff-standard-to', '<=', 33, 'cm', olderCuffs),
  },
  {
    name: 'large adult',
    words: ['large adult', ...words.largeAdult],
    from: limit('older-cuff-large-from', '>=', 33, 'cm', olderCuffs),
    to: limit('older-cuff-large-to', '<=', 41, 'cm', olderCuffs),
  },
  {
    name: 'thigh',
    words: ['thigh', ...words.thigh],
    from: limit('older-cuff-thigh-from', '>', 41, 'cm', olderCuffs),
  },
];

const restBefore = ksh2018('measurement of blood pressure', 'read');
const armDifference = ours('general practice for two arms; for pregnancy from memory');
const urineSample = limit(
  'same-urine-sample',
  '<=',
  24,
  'h',
  ours('what else the urine showed within a day speaks about the strip'),
);
const falseProtein = stripGuide('causes of a false result', 'read');

type Unfinished = QualityRule extends infer Rule
  ? Rule extends QualityRule
    ? Omit<Rule, 'freshWithin'>
    : never
  : never;

const pressureRules: readonly Unfinished[] = [
  {
    id: 'diastolic-not-below-systolic',
    number: 'Q1',
    check: 'unusable-pressure',
    why: ['diastolic-not-below-systolic'],
    grade: 'block',
    sentence: 'The values look swapped or mistyped and were not used: enter them again.',
    citation: ours('a diastolic pressure is always below the systolic'),
  },
  {
    id: 'pressure-outside-plausible-range',
    number: 'Q2',
    check: 'unusable-pressure',
    why: ['above-plausible-range', 'below-plausible-range'],
    grade: 'block',
    sentence:
      'Outside the plausible range: repeat it. If the woman is unwell, act on the woman, not on the number.',
    citation: ours('outside the plausible range a slip of the pen is likelier than the number'),
  },
  {
    id: 'pressure-without-unit',
    number: 'X21',
    check: 'unusable-pressure',
    why: ['unit-missing'],
    grade: 'block',
    sentence: 'A pressure without its unit was not used: enter it again with the unit.',
    citation: ours('a unit is never assumed'),
  },
  {
    id: 'pressure-in-faulty-form',
    number: 'F-V09',
    check: 'unusable-pressure',
    why: ['unit-unknown', 'faulty-form'],
    grade: 'block',
    sentence:
      'A pressure was not used for the form in which it was sent: measure again, enter both halves as numbers with their unit, and tell the sender.',
    citation: ours('a number in another form is never taken for a reading, and never for nothing'),
  },
  {
    id: 'unusual-pulse-pressure',
    number: 'Q3',
    check: 'pulse-pressure',
    narrow: limit(
      'narrow-pulse-pressure',
      '<',
      15,
      'mm[Hg]',
      ours('rarer than a wrongly heard or typed value'),
    ),
    wide: limit('wide-pulse-pressure', '>', 100, 'mm[Hg]', ours('rarer than a wrongly heard or typed value')),
    grade: 'warn',
    sentence: 'An unusual gap between systolic and diastolic pressure: repeat by hand.',
    citation: ours('an unusual gap is more often a wrong value than a true one'),
  },
  {
    id: 'cuff-does-not-fit',
    number: 'Q4',
    check: 'cuff-size',
    sizes: ahaSizes,
    alternative: olderSizes,
    grade: 'warn',
    sentence: 'The cuff does not fit the arm: repeat with the right cuff.',
    citation: ahaCuffs,
  },
  {
    id: 'rest-too-short',
    number: 'Q5',
    check: 'rest',
    tooShort: limit('rest-too-short', '<', 5, 'min', restBefore),
    grade: 'warn',
    ...say(
      'Not measured at rest: repeat after {rest} of rest or more, without talking, and {after} after tobacco or caffeine.',
      {
        rest: figure('rest-before-measuring', 5, 'min', restBefore),
        after: figure('after-tobacco-or-caffeine', 30, 'min', measuringBp('tobacco and caffeine', 'read')),
      },
    ),
    citation: restBefore,
  },
  {
    id: 'position-not-comparable',
    number: 'Q6',
    check: 'position',
    positions: ['supine', 'recumbent', 'left-lateral', 'standing'],
    grade: 'warn',
    sentence:
      'Not measured seated, so not comparable (lying on the side with the cuff on the upper arm reads low): repeat seated, arm at the level of the heart.',
    citation: measuringBp('position of the woman', 'read'),
  },
  {
    id: 'systolic-palpated-only',
    number: 'Q8',
    check: 'palpated',
    grade: 'partial',
    sentence:
      'The systolic pressure was felt, not heard. It is judged; about the diastolic pressure nothing can be said: listen with a stethoscope.',
    citation: ours('a palpated pressure has no diastolic half'),
  },
  {
    id: 'same-value-at-several-visits',
    number: 'Q11',
    check: 'same-value',
    visits: limit('same-value-visits', '>=', 3, '1', ours('three visits equal to the digit')),
    grade: 'info',
    sentence: 'The same value to the digit at several visits: possibly copied forward. Was it measured?',
    citation: ours('pressures equal to the digit visit after visit are uncommon'),
  },
  {
    id: 'readings-of-one-visit-differ',
    number: 'Q12',
    check: 'visit-difference',
    difference: thirdReadingDifference,
    grade: 'ask',
    sentence: 'Two readings of one visit lie far apart: take a third; the last two are averaged.',
    citation: thirdReadingDifference.citation,
  },
  {
    id: 'time-not-exact',
    number: 'Q13',
    check: 'time-not-exact',
    grade: 'block',
    sentence:
      'The time is missing or in the future, so the interval to other readings is unknown: enter date and time.',
    citation: ours('an interval needs two times'),
  },
  {
    id: 'arm-changed',
    number: 'Q14',
    check: 'arm-changed',
    grade: 'warn',
    sentence:
      'The two visits were measured on different arms. They count; repeat on the arm that reads higher.',
    citation: armDifference,
  },
  {
    id: 'arms-differ',
    number: 'Q14',
    check: 'arms-differ',
    over: limit('arm-difference-note', '>', 10, 'mm[Hg]', armDifference),
    upTo: limit('arm-difference-note-end', '<=', 20, 'mm[Hg]', armDifference),
    grade: 'info',
    sentence: 'The arms differ: note it, and measure on the arm that reads higher.',
    citation: armDifference,
  },
  {
    id: 'arms-differ-much',
    number: 'Q14',
    check: 'arms-differ',
    over: limit('arm-difference-review', '>', 20, 'mm[Hg]', armDifference),
    grade: 'warn',
    sentence: 'The arms differ much: measure on the arm that reads higher, and let a doctor review it.',
    citation: armDifference,
  },
];

const urineRules: readonly Unfinished[] = [
  {
    id: 'strip-may-be-false-positive',
    number: 'Q15',
    check: 'strip-doubtful',
    within: urineSample,
    alkaline: limit('alkaline-urine', '>', 8, '[pH]', falseProtein),
    concentrated: limit(
      'concentrated-urine',
      '>=',
      1.03,
      '1',
      stripGuide('causes of a false result', 'from-memory', 'the number; that it matters was read'),
    ),
    grade: 'warn',
    sentence:
      'The protein on the strip may be false: repeat on a clean catch, send a culture, and measure a ratio. Raised pressure still counts, and so does this strip until then.',
    citation: falseProtein,
  },
  {
    id: 'strip-may-be-false-negative',
    number: 'Q16',
    check: 'strip-dilute',
    within: urineSample,
    dilute: limit('dilute-urine', '<', 1.01, '1', stripGuide('dilute urine', 'from-memory')),
    grade: 'warn',
    sentence: 'The urine is dilute, and a strip without protein can be false: repeat it, or measure a ratio.',
    citation: stripGuide('dilute urine', 'from-memory'),
  },
  {
    id: 'strip-read-by-eye',
    number: 'Q17',
    check: 'strip-read-by-eye',
    grade: 'info',
    sentence: 'In a hospital the strip is read by a device, not by eye.',
    citation: nice133('1.2.2', 'read'),
  },
  {
    id: 'first-morning-sample',
    number: 'Q18',
    check: 'first-morning-ratio',
    grade: 'info',
    sentence: 'A first morning sample is not advised for a ratio; a sample from any other time will do.',
    citation: nice133('1.2.4', 'read'),
  },
  {
    id: 'preliminary-value',
    number: 'X33',
    check: 'preliminary',
    grade: 'info',
    sentence: 'Preliminary, and used all the same: see whether the final value differs.',
    citation: ours('a preliminary value is better than none'),
  },
];

const automated = (edition: Edition): Unfinished => ({
  id: 'automated-near-limit',
  number: 'Q7',
  check: 'automated-near-limit',
  limits: [edition.hypertension, edition.severe],
  within: limit('near-a-limit', '<=', 5, 'mm[Hg]', ours('the error allowed to a validated device')),
  conditions: ['pre-eclampsia', 'pre-eclampsia-severe', 'superimposed-pre-eclampsia', 'hellp', 'eclampsia'],
  proteinuria: edition.proteinuria,
  grade: 'warn',
  sentence:
    'Automated devices may read low in pre-eclampsia, more so one not validated for it, and this value lies near a limit: check by hand.',
  citation: measuringBp('automated devices in pre-eclampsia', 'read'),
});

/** The measurement rules with an edition's own limits. */
export const qualityRules = (edition: Edition): readonly QualityRule[] =>
  [...pressureRules, automated(edition), ...urineRules].map((rule): QualityRule => ({
    ...rule,
    freshWithin: freshness,
  }));

const digits = terminalDigits('expected share of terminal zeros', 'read');
const digitAlert = ours('well beyond the expected share; no publication read names a limit');

/** About the readings of a site or an observer, for a report; never about one woman. */
export const siteQualityRules: SiteQualityRules = {
  minimumReadings: limit(
    'readings-for-a-site-report',
    '>=',
    30,
    '1',
    ours('fewer readings say nothing about a site'),
  ),
  terminalZero: {
    number: 'Q9',
    automated: {
      expectedShare: limit('terminal-zero-expected-automated', '>=', 0.1, '1', digits),
      alertShare: limit('terminal-zero-alert-automated', '>=', 0.25, '1', digitAlert),
    },
    manual: {
      expectedShare: limit('terminal-zero-expected-manual', '>=', 0.2, '1', digits),
      alertShare: limit('terminal-zero-alert-manual', '>=', 0.4, '1', digitAlert),
    },
    sentence: 'Rounding is suspected here: an automated device or training is advised.',
  },
  avoidance: {
    number: 'Q10',
    window: limit(
      'avoidance-window',
      '<=',
      2,
      'mm[Hg]',
      ours('138/88 and 139/89 are the values in question'),
    ),
    alertRatio: limit(
      'avoidance-ratio',
      '>=',
      3,
      '1',
      ours('below and at the limit should be about as many'),
    ),
    alertChiSquare: limit(
      'avoidance-chi-square',
      '>=',
      3.841,
      '1',
      commonPractice('chi-square at one degree of freedom, one in twenty by chance'),
    ),
    sentence: 'Readings pile up just below the limit: possibly avoiding it. An audit is advised.',
  },
  copyForward: {
    number: 'Q11',
    visits: limit('copy-forward-visits', '>=', 3, '1', ours('three visits equal to the digit')),
    sentence: 'The same value to the digit at several visits: possibly copied forward.',
  },
};
