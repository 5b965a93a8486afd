// What to do: steps common to every guideline, with their order and, where one counts, their clock.
import { acog767, commonPractice, magnesiumReview, nice133, ours } from './citations.ts';
import type { Edition } from './edition.ts';
import type { ActionKind, ActionRule, Citation, Need } from './guideline.ts';

const toHospitalNow: Need = 'referral:hospital-with-intensive-care';

const step = (
  id: string,
  kind: ActionKind,
  order: number,
  sentence: string,
  when: Need,
  citation: Citation,
): ActionRule => ({ id, kind, order, sentence, when, citation });

const decidedByPrescriber = 'Per local protocol; the prescriber decides.';

function repeatActions(edition: Edition): readonly ActionRule[] {
  const { confirmation, severeConfirmation } = edition;
  return [
    {
      ...step(
        'repeat-severe-reading',
        'repeat-pressure',
        10,
        'Let her rest, check the cuff, and repeat the pressure before {time}. She does not leave before it is repeated.',
        'severe-open',
        severeConfirmation.repeatWithin.citation,
      ),
      clock: { from: 'last-severe-reading', add: severeConfirmation.repeatWithin, sense: 'within' },
    },
    step(
      'repeat-unusable-reading',
      'repeat-pressure',
      11,
      'The pressure received cannot be used: measure again now, and enter both halves with the unit. If she is unwell, act on the woman, not on the number.',
      { any: ['unusable-emergency', 'unusable-same-day'] },
      ours('a reading that cannot be used is repeated'),
    ),
    confirmation.minimumInterval === undefined
      ? step(
          'repeat-raised-reading',
          'repeat-pressure',
          12,
          'Repeat the pressure the same day; this publication names no interval.',
          'class:raised-unconfirmed',
          confirmation.citation,
        )
      : {
          ...step(
            'repeat-raised-reading',
            'repeat-pressure',
            12,
            'Repeat the pressure after {time}.',
            'class:raised-unconfirmed',
            confirmation.citation,
          ),
          clock: { from: 'first-raised-occasion', add: confirmation.minimumInterval, sense: 'after' },
        },
    step(
      'fresh-pair',
      'repeat-pressure',
      13,
      'The raised readings lie more than a week apart: take a fresh pair.',
      { all: ['pair-stale', 'raised-now'] },
      ours('a confirming pair is fresh for a week'),
    ),
  ];
}

const measureActions: readonly ActionRule[] = [
  step(
    'test-urine',
    'measure',
    20,
    'Test the urine for protein now.',
    { all: [{ any: ['raised-once', 'raised-now'] }, { none: ['protein-now'] }] },
    commonPractice('urine is tested whenever the pressure is raised'),
  ),
  step(
    'quantify-protein',
    'measure',
    21,
    'Send urine for a protein/creatinine ratio: a strip alone is not a measurement.',
    { all: ['protein-now', { any: ['raised-once', 'class:isolated-proteinuria'] }] },
    nice133('1.2.3', 'read'),
  ),
  step(
    'look-for-infection',
    'measure',
    22,
    'Look for a urinary infection, repeat the strip on a clean-catch sample, and check the pressure weekly.',
    'class:isolated-proteinuria',
    ours('infection is the commonest other cause'),
  ),
  step(
    'scan-and-hcg',
    'investigate',
    23,
    'Arrange an ultrasound scan and hCG: exclude trophoblastic disease; think of kidney disease and antiphospholipid syndrome.',
    'class:raised-with-protein-before-20-weeks',
    ours('protein with hypertension before 20 weeks has other causes'),
  ),
  step(
    'date-the-pregnancy',
    'measure',
    24,
    'Find out the length of the pregnancy: last period, scan, or height of the fundus.',
    'now-unknown',
    ours('the class depends on it'),
  ),
  step(
    'danger-symptom-tests',
    'investigate',
    25,
    'Repeat the pressure, test the urine, and take platelets, liver enzymes and creatinine: HELLP and atypical disease occur at normal pressure.',
    { all: ['danger-symptom', { none: ['raised-once'] }] },
    ours('case series of atypical disease'),
  ),
  step(
    'ask-about-epilepsy',
    'measure',
    26,
    'Ask whether epilepsy is known and treated; until that is certain, treat as eclampsia per local protocol.',
    { all: ['seizure-any-time', 'recorded-epilepsy'] },
    ours('a seizure in a woman with epilepsy is still an emergency'),
  ),
];

const beforeTransfer: readonly ActionRule[] = [
  step(
    'call-ahead',
    'before-transfer',
    30,
    'Call the receiving hospital.',
    toHospitalNow,
    nice133('1.8', 'read'),
  ),
  step(
    'airway-and-left-side',
    'before-transfer',
    31,
    'Lay her on her left side and keep the airway free; never leave her alone.',
    toHospitalNow,
    commonPractice('first step in every obstetric emergency'),
  ),
  step(
    'magnesium-loading',
    'before-transfer',
    32,
    `Magnesium sulfate, loading dose. ${decidedByPrescriber}`,
    {
      all: [
        toHospitalNow,
        { any: ['class:eclampsia', 'class:imminent-eclampsia', 'class:pre-eclampsia-severe-features'] },
        { none: ['magnesium-running'] },
      ],
    },
    magnesiumReview('table 2', 'read'),
  ),
  step(
    'lower-severe-pressure',
    'before-transfer',
    33,
    `Lower severe pressure: treatment within 30 to 60 minutes of confirmation; aim to lower, not to normalise. ${decidedByPrescriber}`,
    { all: [toHospitalNow, 'severe-current'] },
    acog767('first-line therapy', 'read'),
  ),
  step(
    'catheter-and-fluids',
    'before-transfer',
    34,
    'Catheter; restrict fluids to 80 mL per hour.',
    toHospitalNow,
    nice133('1.8.12', 'read'),
  ),
  step(
    'trained-escort',
    'before-transfer',
    35,
    'A trained person travels with her.',
    toHospitalNow,
    commonPractice('emergency transfer in obstetrics'),
  ),
  step(
    'copy-of-chart',
    'before-transfer',
    36,
    'Send a copy of the chart with times and doses.',
    toHospitalNow,
    commonPractice('emergency transfer in obstetrics'),
  ),
];

/** Every action rule of an edition: the common ones, then its own. */
export const standardActionRules = (edition: Edition): readonly ActionRule[] => [
  ...repeatActions(edition),
  ...measureActions,
  ...beforeTransfer,
  ...edition.actions,
];
