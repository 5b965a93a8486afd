// Care of NICE NG133.
import { nice133 } from '../citations.ts';
import type { Care } from '../care.ts';
import { deliveryReview, seniorReview } from '../actions/delivery-review.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { limit } from '../shared-values.ts';
import { chronicAlone, gestational, gestationalSevere } from '../states.ts';
import { anyConfirmed } from './classes.ts';
import { aspirinNice, calciumNotInNice } from './prevention-rules.ts';
import { cautiousSigns, niceTables } from './shared.ts';

const critical = nice133('1.8.4 and 1.8.6', 'read');
const timing = nice133('1.4 and 1.5, timing of birth', 'read');
const start = nice133('tables 1 and 2; 1.3', 'read', 'remains above; taken as inclusive');

export const niceCare: Care = {
  startDrug: {
    limits: {
      systolic: limit('nice-start-drug-systolic', '>=', 140, 'mm[Hg]', start),
      diastolic: limit('nice-start-drug-diastolic', '>=', 90, 'mm[Hg]', start),
    },
    classes: anyConfirmed,
    advice: {
      said: say(
        `A drug is offered when the pressure remains above {systolic:bare}/{diastolic}: labetalol, then nifedipine, then methyldopa. ${decidedByPrescriber}`,
        {
          systolic: figure('nice-start-drug-systolic-quoted', 140, 'mm[Hg]', start),
          diastolic: figure('nice-start-drug-diastolic-quoted', 90, 'mm[Hg]', start),
        },
      ),
      citation: start,
    },
  },
  target: {
    said: say(
      `On treatment aim for {systolic:bare}/{diastolic} or less. In chronic hypertension no drug while it stays below {low:bare} systolic or {lowDiastolic:bare} diastolic, or with symptoms of low pressure. ${decidedByPrescriber}`,
      {
        systolic: figure('nice-target-systolic', 135, 'mm[Hg]', niceTables),
        diastolic: figure('nice-target-diastolic', 85, 'mm[Hg]', niceTables),
        low: figure('nice-withhold-systolic', 110, 'mm[Hg]', nice133('1.3.7', 'read')),
        lowDiastolic: figure('nice-withhold-diastolic', 70, 'mm[Hg]', nice133('1.3.7', 'read')),
      },
    ),
    citation: niceTables,
  },
  severePressure: {
    said: say(
      `Treat severe pressure immediately: oral or intravenous labetalol, oral nifedipine or intravenous hydralazine. ${decidedByPrescriber}`,
    ),
    citation: critical,
  },
  magnesiumLoading: {
    said: say(`Magnesium sulfate, loading dose: {dose} into a vein over {minutes}. ${decidedByPrescriber}`, {
      dose: figure('nice-magnesium-loading', 4, 'g', critical),
      minutes: figure('nice-magnesium-loading-minutes', 5, 'min', critical, 15),
    }),
    citation: critical,
  },
  magnesiumSigns: cautiousSigns,
  actions: [
    deliveryReview(
      'birth-pre-eclampsia',
      say(
        `${seniorReview} NICE: from {term:weeks} weeks birth is started within {within}; from {preterm:weeks} weeks surveillance goes on unless planned early birth is indicated.`,
        {
          term: figure('nice-birth-pre-eclampsia', 259, 'd', timing),
          within: figure('nice-birth-within', 24, 'h', timing, 48),
          preterm: figure('nice-surveillance-from', 238, 'd', timing),
        },
      ),
      { any: ['class:pre-eclampsia', 'class:superimposed-pre-eclampsia'] },
      timing,
    ),
    deliveryReview(
      'birth-gestational',
      say(
        `${seniorReview} NICE: not before {term:weeks} weeks while below the severe limits; from then on agreed with her and a senior.`,
        {
          term: figure('nice-birth-gestational', 259, 'd', timing),
        },
      ),
      { any: [gestational, gestationalSevere, chronicAlone] },
      timing,
    ),
  ],
  treatments: [],
  prevention: [aspirinNice, calciumNotInNice],
};
