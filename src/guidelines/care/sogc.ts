// Care of SOGC 426 (2022), as digested on a teaching site.
import { ours, sogc2022 } from '../citations.ts';
import type { Care } from '../care.ts';
import { deliveryReview, seniorReview } from '../actions/delivery-review.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { limit } from '../shared-values.ts';
import { anyConfirmed } from './classes.ts';
import { aspirinSogc, calciumSogc } from './prevention-rules.ts';
import { cautiousSigns, oralDrugs, pritchardLoading } from './shared.ts';

const digest = sogc2022('treatment, as digested on a teaching site', 'read');

export const sogcCare: Care = {
  startDrug: {
    limits: {
      systolic: limit('sogc-start-drug-systolic', '>=', 140, 'mm[Hg]', digest),
      diastolic: limit('sogc-start-drug-diastolic', '>=', 90, 'mm[Hg]', digest),
    },
    classes: anyConfirmed,
    advice: {
      said: say(`A drug lowers the pressure from {systolic:bare}/{diastolic}. ${oralDrugs}`, {
        systolic: figure('sogc-start-drug-systolic-quoted', 140, 'mm[Hg]', digest),
        diastolic: figure('sogc-start-drug-diastolic-quoted', 90, 'mm[Hg]', digest),
      }),
      citation: digest,
    },
  },
  target: {
    said: say(`On treatment aim for a diastolic of {diastolic} or less. ${decidedByPrescriber}`, {
      diastolic: figure('sogc-target-diastolic', 85, 'mm[Hg]', digest),
    }),
    citation: digest,
  },
  severePressure: {
    said: say(
      `Severe pressure is lowered in hospital to below {systolic:bare} and below {diastolic}. ${decidedByPrescriber}`,
      {
        systolic: figure('sogc-acute-target-systolic', 160, 'mm[Hg]', digest),
        diastolic: figure('sogc-acute-target-diastolic', 110, 'mm[Hg]', digest),
      },
    ),
    citation: digest,
  },
  magnesiumLoading: pritchardLoading,
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
  prevention: [aspirinSogc, calciumSogc],
};
