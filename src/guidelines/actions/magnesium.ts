// Magnesium: the first load before transfer, no second one, and the signs watched while it is given. Data.
import { indonesiaMagnesiumLabel, magnesiumReview, nice133, ours } from '../citations.ts';
import { needing, step } from '../action-rule.ts';
import type { Edition } from '../edition.ts';
import type { ActionRule, Need } from '../guideline.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { toHospitalNow } from '../states.ts';

const label = indonesiaMagnesiumLabel('toxicity', 'read', 'calcium as in a university teaching page');
const regimens = magnesiumReview('table 2', 'read');
const furtherMagnesium = figure('magnesium-after-further-fit', 2, 'g', nice133('1.8.4', 'read'), 4);
const goOn = figure('magnesium-goes-on', 24, 'h', regimens);
const antidote = {
  antidote: figure('calcium-gluconate', 1, 'g', label),
  volume: figure('calcium-gluconate-volume', 10, 'mL', label),
  strength: figure('calcium-gluconate-strength', 10, '%', label),
  minutes: figure('calcium-gluconate-minutes', 3, 'min', label),
};
const calcium =
  'calcium gluconate {antidote} ({volume} of {strength}) into a vein, slowly, over about {minutes}';
const toxicity = say(
  `Signs of magnesium toxicity: stop it and give ${calcium}. ${decidedByPrescriber}`,
  antidote,
);

const given = 'magnesium-given';
const perhapsGiven = 'magnesium-perhaps-given';
const slowBreathing = 'slow-breathing-on-magnesium';
/** On magnesium, and not about to travel. */
const givenAndStaying: Need = { all: [given, { none: [toHospitalNow] }] };

const needsMagnesium = (edition: Edition): Need => ({
  any: [
    'class:eclampsia',
    'class:imminent-eclampsia',
    'class:pre-eclampsia-severe-features',
    'class:hellp',
    {
      all: [
        {
          any: ['class:pre-eclampsia', 'class:superimposed-pre-eclampsia', 'class:postpartum-pre-eclampsia'],
        },
        { any: ['severe-current', 'severe-organ'] },
      ],
    },
    ...(edition.care.magnesiumAlso === undefined ? [] : [edition.care.magnesiumAlso]),
  ],
});

/** Before transfer: the load, once, and what is watched. */
export function magnesiumBeforeTransfer(edition: Edition): readonly ActionRule[] {
  const { magnesiumLoading, magnesiumSigns } = edition.care;
  const magnesium = needsMagnesium(edition);
  const watched: Need = { all: [toHospitalNow, { any: [magnesium, given] }] };
  const steps = [
    step(
      'magnesium-loading',
      'before-transfer',
      15,
      magnesiumLoading.said,
      { all: [toHospitalNow, magnesium, { none: [given, slowBreathing] }] },
      magnesiumLoading.citation,
    ),
    step(
      'magnesium-on-order',
      'before-transfer',
      15.2,
      'An order of magnesium is on record, and no dose with its time: if it was given, no second loading dose.',
      { all: [toHospitalNow, magnesium, perhapsGiven, { none: [given] }] },
      ours('an order is no dose: the first load is not withheld for it'),
    ),
    step(
      'magnesium-no-second-load',
      'before-transfer',
      15,
      say(
        `Magnesium was given or is running: no second loading dose. Only after a further fit: {further} more, slowly into a vein. ${decidedByPrescriber}`,
        { further: furtherMagnesium },
      ),
      { all: [toHospitalNow, magnesium, given, { none: [slowBreathing] }] },
      nice133('1.8.4', 'read'),
    ),
    step('magnesium-signs', 'before-transfer', 15.5, magnesiumSigns.said, watched, magnesiumSigns.citation),
    step('magnesium-antidote', 'before-transfer', 16, toxicity, watched, label),
  ];
  return steps.map((rule) => needing('magnesium', rule));
}

/** While magnesium is given, wherever she is. */
export function magnesiumWatch(edition: Edition): readonly ActionRule[] {
  const { magnesiumSigns } = edition.care;
  return [
    step(
      'magnesium-stop',
      'before-transfer',
      13.5,
      say(
        `Breathing is slow on magnesium: stop it now, give ${calcium}, and help her breathe. ${decidedByPrescriber}`,
        antidote,
      ),
      slowBreathing,
      label,
    ),
    step(
      'magnesium-signs-while-given',
      'medicine-safety',
      62,
      magnesiumSigns.said,
      givenAndStaying,
      magnesiumSigns.citation,
    ),
    step('magnesium-antidote-while-given', 'medicine-safety', 62.1, toxicity, givenAndStaying, label),
    step(
      'magnesium-goes-on',
      'medicine-safety',
      62.2,
      say(
        `Magnesium goes on for {goOn} after the last fit or birth, whichever is later. ${decidedByPrescriber}`,
        { goOn },
      ),
      givenAndStaying,
      regimens,
    ),
  ];
}
