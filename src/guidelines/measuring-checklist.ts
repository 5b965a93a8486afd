// How to take a pressure that is to be trusted: said whenever a repeat is asked for. Facts of the trade. Data only.
import { step } from './action-rule.ts';
import { commonPractice } from './citations.ts';
import type { ActionRule, Need } from './guideline.ts';
import { figure, say } from './sentences.ts';
import { noEmergency, pregnant, severeReading } from './states.ts';

/** Another reading is wanted. */
const repeatAsked: Need = {
  any: [
    { all: ['severe-open', { none: ['class:eclampsia'] }] },
    'unusable-emergency',
    'unusable-same-day',
    { all: [{ any: ['class:raised-unconfirmed', { all: ['pair-stale', 'raised-now'] }] }, noEmergency] },
  ],
};

const restFirst = commonPractice('rest of 5 to 10 minutes before the pressure is taken');
const cuffPlace = commonPractice('the lower edge of the cuff lies two fingers above the crease of the elbow');
const inflation = commonPractice('the cuff is inflated 30 mmHg beyond where the pulse disappears');
const veryHigh = commonPractice(
  'a diastolic pressure above 110 mmHg is a sign of severe disease, and the urine is tested at once',
);

/** Steps in the order in which they are done. */
export const measuringChecklist: readonly ActionRule[] = [
  step(
    'rest-before-measuring',
    'measurement-quality',
    13.1,
    say(
      'Before the repeat: {rest} of rest, seated, back and arm supported, bare arm at the level of the heart.',
      {
        rest: figure('rest-before-the-repeat', 5, 'min', restFirst, 10),
      },
    ),
    repeatAsked,
    restFirst,
  ),
  step(
    'place-the-cuff',
    'measurement-quality',
    13.2,
    say('The lower edge of the cuff lies {gap} (two fingers) above the crease of the elbow.', {
      gap: figure('cuff-above-the-elbow', 2.5, 'cm', cuffPlace),
    }),
    repeatAsked,
    cuffPlace,
  ),
  step(
    'inflate-beyond-the-pulse',
    'measurement-quality',
    13.3,
    say(
      'By hand: inflate {beyond} beyond the pressure at which the pulse disappears, then let down slowly.',
      {
        beyond: figure('inflation-beyond-the-pulse', 30, 'mm[Hg]', inflation),
      },
    ),
    repeatAsked,
    inflation,
  ),
  step(
    'pressure-at-every-visit',
    'measurement-quality',
    19.5,
    'Take the pressure at every antenatal visit, whatever the visit is for.',
    { all: [repeatAsked, pregnant, noEmergency] },
    commonPractice('the pressure is taken at every antenatal visit'),
  ),
  step(
    'urine-at-once-when-severe',
    'measurement-quality',
    19,
    say(
      'The pressure is in the severe range (a diastolic above {limit} alone is a sign of severe disease): test the urine at once.',
      {
        limit: figure('diastolic-of-severe-disease', 110, 'mm[Hg]', veryHigh),
      },
    ),
    { all: [severeReading, { none: ['urine-tested'] }] },
    veryHigh,
  ),
];
