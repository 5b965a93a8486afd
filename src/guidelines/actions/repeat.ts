// Which pressure to repeat, and when.
import { ours } from '../citations.ts';
import { step } from '../action-rule.ts';
import type { Edition } from '../edition.ts';
import type { ActionRule, Need } from '../guideline.ts';
import { noEmergency } from '../states.ts';

/** A repeat some hours later has no place in an emergency. */
const waiting: Need = { all: ['class:raised-unconfirmed', noEmergency] };

/** Repeats, by the intervals of an edition. */
export function repeatActions(edition: Edition): readonly ActionRule[] {
  const { confirmation, severeConfirmation } = edition;
  return [
    {
      ...step(
        'repeat-severe-reading',
        'repeat-pressure',
        10,
        'Let her rest, check the cuff, and repeat the pressure before {time}. She does not go home before it is repeated.',
        { all: ['severe-open', { none: ['class:eclampsia'] }] },
        severeConfirmation.repeatWithin.citation,
      ),
      clock: {
        from: 'last-severe-reading',
        add: severeConfirmation.repeatWithin,
        sense: 'within',
        whenOver:
          'Let her rest, check the cuff, and repeat the pressure now: it was due before {time}. She does not go home before it is repeated.',
      },
    },
    step(
      'repeat-unusable-reading',
      'repeat-pressure',
      11,
      'The pressure received cannot be used: measure again now, and enter both halves with unit and time. If she is unwell, act on the woman, not on the number.',
      { any: ['unusable-emergency', 'unusable-same-day'] },
      ours('a reading that cannot be used is repeated'),
    ),
    confirmation.minimumInterval === undefined
      ? step(
          'repeat-raised-reading',
          'repeat-pressure',
          12,
          'Repeat the pressure the same day; this publication names no interval.',
          waiting,
          confirmation.citation,
        )
      : {
          ...step(
            'repeat-raised-reading',
            'repeat-pressure',
            12,
            'Repeat the pressure after {time}.',
            waiting,
            confirmation.citation,
          ),
          clock: {
            from: 'first-raised-occasion',
            add: confirmation.minimumInterval,
            sense: 'after',
            whenOver: 'Repeat the pressure now: it was due after {time}.',
          },
        },
    step(
      'fresh-pair',
      'repeat-pressure',
      13,
      'The raised readings lie more than a week apart: take a fresh pair.',
      { all: ['pair-stale', 'raised-now', noEmergency] },
      ours('a confirming pair is fresh for a week'),
    ),
  ];
}
