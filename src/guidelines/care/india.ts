// Care of the Indian training deck; where it is silent, WHO, marked as our choice.
import { indiaDeck, ours } from '../citations.ts';
import type { Care } from '../care.ts';
import { deliveryReview, seniorReview } from '../actions/delivery-review.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { limit } from '../shared-values.ts';
import { anyConfirmed } from './classes.ts';
import { aspirinIndia, calciumIndia } from './prevention-rules.ts';
import { cautiousSigns } from './shared.ts';

const start = indiaDeck('treatment', 'read', 'only the diastolic is named; the systolic is its severe limit');
const target = indiaDeck('target', 'from-memory');
const firstDose = indiaDeck('first dose by the nurse-midwife', 'from-memory');

export const indiaCare: Care = {
  startDrug: {
    limits: {
      systolic: limit('india-start-drug-systolic', '>=', 160, 'mm[Hg]', start),
      diastolic: limit('india-start-drug-diastolic', '>', 100, 'mm[Hg]', start),
    },
    classes: anyConfirmed,
    advice: {
      said: say(`A drug is started above a diastolic of {diastolic}. ${decidedByPrescriber}`, {
        diastolic: figure('india-start-drug-diastolic-quoted', 100, 'mm[Hg]', start),
      }),
      citation: start,
    },
  },
  target: {
    said: say(`On treatment keep the diastolic at {diastolic}. ${decidedByPrescriber}`, {
      diastolic: figure('india-target-diastolic', 90, 'mm[Hg]', target, 100),
    }),
    citation: target,
  },
  severePressure: {
    said: say(`Begin to lower severe pressure and refer. ${decidedByPrescriber}`),
    citation: indiaDeck('severe', 'from-memory'),
  },
  magnesiumLoading: {
    said: say(
      `Magnesium sulfate, first dose: {dose} deep into the muscle, {half} ({volume} of {strength}) in each buttock, then to the first referral unit. ${decidedByPrescriber}`,
      {
        dose: figure('india-magnesium-first-dose', 10, 'g', firstDose),
        half: figure('india-magnesium-each-buttock', 5, 'g', firstDose),
        volume: figure('india-magnesium-volume', 10, 'mL', firstDose),
        strength: figure('india-magnesium-strength', 50, '%', firstDose),
      },
    ),
    citation: firstDose,
  },
  magnesiumSigns: cautiousSigns,
  actions: [
    deliveryReview(
      'birth-any',
      say(`${seniorReview} The weeks this publication names were not read.`),
      anyConfirmed,
      ours('the weeks of this publication were not read'),
    ),
  ],
  treatments: [],
  prevention: [aspirinIndia, calciumIndia],
};
