// The plan after birth: checks by day, blood, the review of six to eight weeks. Data.
import {
  bloodAt,
  dailyUntil,
  onceBetween,
  peak,
  plan,
  reviewAt,
  tests,
  treatedUntil,
} from '../after-birth-questions.ts';
import { latePostpartum, ours } from '../citations.ts';
import { needing, step } from '../action-rule.ts';
import type { ActionRule } from '../guideline.ts';
import { figure, say } from '../sentences.ts';
import {
  afterBirth,
  knownAfterBirth,
  knownAtReview,
  noEmergency,
  preEclampsiaAfterBirth,
  preEclampsiaAtReview,
} from '../states.ts';

const inpatient = figure('after-birth-inpatient', 4, '/d', plan);
const treatedInterval = figure('after-birth-treated-interval', 1, 'd', plan, 2);
const kidneyAt = figure('after-birth-kidney-review', 3, 'mo', tests);

export const afterBirthPlan: readonly ActionRule[] = [
  step(
    'after-birth-checks',
    'after-birth',
    80,
    say(
      'The pressure peaks {peak} after birth. Measure daily for the first {daily}, and at least once on day {once:bare}.',
      { peak, daily: dailyUntil, once: onceBetween },
    ),
    { all: [knownAfterBirth, 'after-birth-first-days', noEmergency] },
    plan,
  ),
  step(
    'after-birth-checks-first-week',
    'after-birth',
    80,
    say('Measure at least once on day {once:bare}: the pressure peaks {peak} after birth.', {
      once: onceBetween,
      peak,
    }),
    {
      all: [knownAfterBirth, 'after-birth-five-days', { none: ['after-birth-first-days'] }, noEmergency],
    },
    plan,
  ),
  step(
    'after-birth-checks-later',
    'after-birth',
    80,
    say('Measure at every contact until the review {at} after birth.', { at: reviewAt }),
    { all: [knownAfterBirth, { none: ['after-birth-five-days', 'review-due'] }, noEmergency] },
    ours('the publications read name no day between the first week and the review'),
  ),
  step(
    'after-birth-pre-eclampsia-checks',
    'after-birth',
    81,
    say(
      'After pre-eclampsia without drugs: at least {inpatient} while in hospital, once on day {once:bare}, and on alternate days if that was abnormal. Ask about headache and pain under the ribs each time.',
      { inpatient, once: onceBetween },
    ),
    { all: [preEclampsiaAfterBirth, 'after-birth-five-days', { none: ['treated'] }, noEmergency] },
    plan,
  ),
  step(
    'after-birth-pre-eclampsia-checks-later',
    'after-birth',
    81,
    say(
      'After pre-eclampsia without drugs: on alternate days where the pressure of day {once:bare} was not normal. Ask about headache and pain under the ribs each time.',
      { once: onceBetween },
    ),
    {
      all: [
        preEclampsiaAfterBirth,
        { none: ['after-birth-five-days', 'review-due', 'treated'] },
        noEmergency,
      ],
    },
    plan,
  ),
  step(
    'after-birth-treated-checks',
    'after-birth',
    81,
    say('On drugs: measure every {interval} for up to {until}, until the pressure is controlled.', {
      interval: treatedInterval,
      until: treatedUntil,
    }),
    { all: [knownAfterBirth, 'after-birth-two-weeks', 'treated', noEmergency] },
    plan,
  ),
  needing(
    'laboratory',
    step(
      'after-birth-blood',
      'after-birth',
      84,
      say('Platelets, liver enzymes and creatinine {at} after birth; repeat when not normal.', {
        at: bloodAt,
      }),
      { all: [preEclampsiaAfterBirth, 'after-birth-three-days', noEmergency] },
      tests,
    ),
  ),
  needing(
    'laboratory',
    step(
      'after-birth-blood-late',
      'after-birth',
      84,
      say(
        'Platelets, liver enzymes and creatinine were due {at} after birth: take them if they were not taken; repeat when not normal.',
        { at: bloodAt },
      ),
      { all: [preEclampsiaAfterBirth, { none: ['after-birth-three-days', 'blood-tested'] }, noEmergency] },
      tests,
    ),
  ),
  step(
    'after-birth-new-onset',
    'after-birth',
    85,
    'Hypertension that is new after birth: test the urine, take blood, ask about headache; it may be late pre-eclampsia.',
    {
      all: [
        afterBirth,
        'class:postpartum-hypertension',
        { none: ['recorded-any-hypertension', 'confirmed-from-20-weeks', 'recorded-chronic'] },
      ],
    },
    latePostpartum('definition', 'read'),
  ),
  step(
    'six-week-review',
    'after-birth',
    86,
    say(
      'Medical review {at} after birth, for every woman who had hypertension in pregnancy: pressure, drugs, plans.',
      {
        at: reviewAt,
      },
    ),
    { all: [knownAfterBirth, { none: ['review-due'] }] },
    tests,
  ),
  step(
    'six-week-review-due',
    'after-birth',
    86,
    say(
      'The medical review {at} after birth is due, as for every woman who had hypertension in pregnancy: pressure, drugs, plans.',
      { at: reviewAt },
    ),
    { all: [knownAtReview, noEmergency] },
    tests,
  ),
  step(
    'six-week-urine',
    'after-birth',
    87,
    say('Urine strip at that review; with one plus or more, a kidney review at {kidney}.', {
      kidney: kidneyAt,
    }),
    { all: [preEclampsiaAfterBirth, { none: ['review-due'] }] },
    tests,
  ),
  step(
    'six-week-urine-due',
    'after-birth',
    87,
    say('Test the urine by strip now; with one plus or more, a kidney review at {kidney}.', {
      kidney: kidneyAt,
    }),
    { all: [preEclampsiaAtReview, { none: ['urine-tested'] }, noEmergency] },
    tests,
  ),
  step(
    'kidney-review',
    'after-birth',
    87,
    say('Protein at the review: a kidney review at {kidney} after birth.', { kidney: kidneyAt }),
    { all: [preEclampsiaAtReview, 'strip-positive', noEmergency] },
    tests,
  ),
];
