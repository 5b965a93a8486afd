// Care of `frontline`: the most cautious of the publications read, each named.
import { nice133, ours } from '../citations.ts';
import type { Care } from '../care.ts';
import { deliveryReview, seniorReview } from '../actions/delivery-review.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { limit } from '../shared-values.ts';
import { chronicAlone, gestational, gestationalSevere } from '../states.ts';
import { anyConfirmed } from './classes.ts';
import { aspirinFrontline, calciumWho } from './prevention-rules.ts';
import { acuteWithinAnHour, cautiousSigns, niceTables, oralDrugs, pritchardLoading } from './shared.ts';

const weeks = nice133('1.4, 1.5, timing of birth', 'read');
const term = figure('frontline-term', 259, 'd', weeks);
const start = nice133('tables 1 and 2; 1.3', 'read', 'inclusive at the limit');

export const frontlineCare: Care = {
  startDrug: {
    limits: {
      systolic: limit('frontline-start-drug-systolic', '>=', 140, 'mm[Hg]', start),
      diastolic: limit('frontline-start-drug-diastolic', '>=', 90, 'mm[Hg]', start),
    },
    classes: anyConfirmed,
    advice: {
      said: say(
        `A drug is started while the pressure stays at {systolic:bare}/{diastolic} or above; ACOG and the Indian deck start later in gestational hypertension. ${oralDrugs}`,
        {
          systolic: figure('frontline-start-drug-systolic-quoted', 140, 'mm[Hg]', start),
          diastolic: figure('frontline-start-drug-diastolic-quoted', 90, 'mm[Hg]', start),
        },
      ),
      citation: start,
    },
  },
  target: {
    said: say(
      `On treatment aim for {systolic:bare}/{diastolic} or less; reduce when it stays below {low:bare} systolic or {lowDiastolic:bare} diastolic or she feels faint. ${decidedByPrescriber}`,
      {
        systolic: figure('frontline-target-systolic', 135, 'mm[Hg]', niceTables),
        diastolic: figure('frontline-target-diastolic', 85, 'mm[Hg]', niceTables),
        low: figure('frontline-reduce-systolic', 110, 'mm[Hg]', nice133('1.3.7', 'read')),
        lowDiastolic: figure('frontline-reduce-diastolic', 70, 'mm[Hg]', nice133('1.3.7', 'read')),
      },
    ),
    citation: niceTables,
  },
  severePressure: acuteWithinAnHour,
  magnesiumLoading: pritchardLoading,
  magnesiumAlso: gestationalSevere,
  magnesiumSigns: cautiousSigns,
  actions: [
    deliveryReview(
      'birth-pre-eclampsia',
      say(
        `${seniorReview} In pre-eclampsia publications name {term:weeks} weeks; with severe features earlier.`,
        { term },
      ),
      {
        any: [
          'class:pre-eclampsia',
          'class:superimposed-pre-eclampsia',
          'class:pre-eclampsia-severe-features',
        ],
      },
      weeks,
    ),
    deliveryReview(
      'birth-gestational',
      say(
        `${seniorReview} In gestational or chronic hypertension not before {term:weeks} weeks while below the severe limits.`,
        {
          term: figure('frontline-not-before', 259, 'd', ours('the common ground of the publications read')),
        },
      ),
      { any: [gestational, chronicAlone] },
      ours('the common ground of the publications read'),
    ),
    deliveryReview(
      'birth-gestational-severe',
      seniorSevere(),
      gestationalSevere,
      ours('severe pressure is reviewed by a senior at any week'),
    ),
  ],
  treatments: [],
  prevention: [aspirinFrontline, calciumWho],
};

function seniorSevere() {
  return say(`${seniorReview} Severe pressure: today.`);
}
