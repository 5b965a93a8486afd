// Care of WHO: 2011, 2018 and 2020 recommendations and the dosing page of the first-edition manual.
import { ours, who2011, who2018, who2020 } from '../citations.ts';
import type { Care } from '../care.ts';
import { deliveryReview, seniorReview } from '../actions/delivery-review.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { limit } from '../shared-values.ts';
import { hydralazineWho, labetalolWho, methyldopaWho } from '../treatment-options.ts';
import { anyConfirmed } from './classes.ts';
import { aspirinWho, calciumWho } from './prevention-rules.ts';
import { cautiousSigns, pritchardLoading } from './shared.ts';

const start = who2020('drug treatment of non-severe hypertension, individualised', 'from-memory');

export const whoCare: Care = {
  startDrug: {
    limits: {
      systolic: limit('who-start-drug-systolic', '>=', 140, 'mm[Hg]', start),
      diastolic: limit('who-start-drug-diastolic', '>=', 90, 'mm[Hg]', start),
    },
    classes: anyConfirmed,
    advice: {
      said: say(
        `From {systolic:bare}/{diastolic} a drug is decided for each woman: methyldopa or a beta-blocker by mouth. ${decidedByPrescriber}`,
        {
          systolic: figure('who-start-drug-systolic-quoted', 140, 'mm[Hg]', start),
          diastolic: figure('who-start-drug-diastolic-quoted', 90, 'mm[Hg]', start),
        },
      ),
      citation: start,
    },
  },
  severePressure: {
    said: say(`Severe pressure is treated with drugs, without delay. ${decidedByPrescriber}`),
    citation: who2018('recommendation 1', 'read'),
  },
  magnesiumLoading: {
    ...pritchardLoading,
    citation: who2011('magnesium: full regimens; loading dose and transfer', 'from-memory'),
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
  treatments: [hydralazineWho, labetalolWho, methyldopaWho],
  prevention: [aspirinWho, calciumWho],
};
