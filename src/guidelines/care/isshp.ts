// Care of ISSHP. The 2018 text was read in part; what is from memory says so.
import { isshp2018, isshp2021 } from '../citations.ts';
import type { Care } from '../care.ts';
import { deliveryReview, seniorReview } from '../actions/delivery-review.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { limit } from '../shared-values.ts';
import { chronicAlone, gestational, gestationalSevere } from '../states.ts';
import { anyConfirmed } from './classes.ts';
import { aspirinIsshp, calciumIsshp } from './prevention-rules.ts';
import { cautiousSigns, oralDrugs, pritchardLoading } from './shared.ts';

const start = isshp2018('treatment thresholds, as tabulated in PMC9076812', 'read');
const target = isshp2021('target on treatment', 'from-memory');
const timing = isshp2021('timing of birth', 'from-memory');

export const isshpCare: Care = {
  startDrug: {
    limits: {
      systolic: limit('isshp-start-drug-systolic', '>=', 140, 'mm[Hg]', start),
      diastolic: limit('isshp-start-drug-diastolic', '>=', 90, 'mm[Hg]', start),
    },
    classes: anyConfirmed,
    advice: {
      said: say(
        `A drug is started from {systolic:bare}/{diastolic} in any hypertensive disorder. ${oralDrugs}`,
        {
          systolic: figure('isshp-start-drug-systolic-quoted', 140, 'mm[Hg]', start),
          diastolic: figure('isshp-start-drug-diastolic-quoted', 90, 'mm[Hg]', start),
        },
      ),
      citation: start,
    },
  },
  target: {
    said: say(
      `On treatment aim for {systolic:bare} systolic and {diastolic:bare} diastolic; reduce below {low:bare} diastolic. ${decidedByPrescriber}`,
      {
        systolic: figure('isshp-target-systolic', 110, 'mm[Hg]', isshp2018('chronic target', 'read'), 140),
        diastolic: figure('isshp-target-diastolic', 85, 'mm[Hg]', target),
        low: figure('isshp-reduce-diastolic', 80, 'mm[Hg]', target),
      },
    ),
    citation: target,
  },
  severePressure: {
    said: say(`Severe pressure is treated urgently in a monitored setting. ${decidedByPrescriber}`),
    citation: isshp2021('severe hypertension', 'from-memory'),
  },
  magnesiumLoading: pritchardLoading,
  magnesiumSigns: cautiousSigns,
  actions: [
    deliveryReview(
      'birth-pre-eclampsia',
      say(`${seniorReview} ISSHP: {term:weeks} weeks, earlier on indication.`, {
        term: figure('isshp-birth-pre-eclampsia', 259, 'd', timing),
      }),
      { any: ['class:pre-eclampsia', 'class:superimposed-pre-eclampsia'] },
      timing,
    ),
    deliveryReview(
      'birth-gestational',
      say(`${seniorReview} ISSHP: up to {last:weeks} weeks while controlled.`, {
        last: figure('isshp-birth-gestational', 279, 'd', timing),
      }),
      { any: [gestational, gestationalSevere] },
      timing,
    ),
    deliveryReview(
      'birth-chronic',
      say(`${seniorReview} ISSHP: from {first:weeks} to {last:weeks} weeks.`, {
        first: figure('isshp-birth-chronic-first', 266, 'd', timing),
        last: figure('isshp-birth-chronic-last', 279, 'd', timing),
      }),
      chronicAlone,
      timing,
    ),
  ],
  treatments: [],
  prevention: [aspirinIsshp, calciumIsshp],
};
