// Care of ACOG: Practice Bulletins 222 and 203, Committee Opinion 767, the 2022 advisory.
import { acogChecks } from '../after-birth-questions.ts';
import { acog203, acog222, acog2022 } from '../citations.ts';
import type { Care } from '../care.ts';
import { step } from '../action-rule.ts';
import { deliveryReview, seniorReview } from '../actions/delivery-review.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { limit } from '../shared-values.ts';
import { chronicAlone, gestational, gestationalSevere, knownAfterBirth, noEmergency } from '../states.ts';
import { nifedipineAcog } from '../treatment-options.ts';
import { chronicOnly } from './classes.ts';
import { aspirinAcog, calciumNotInAcog } from './prevention-rules.ts';
import { acuteWithinAnHour, americanSigns, oralDrugs } from './shared.ts';

const chap = acog2022('opening; trial arm', 'read');
const birth = acog222('timing of birth, as tabulated in a pocket guideline', 'read');
const chronicBirth = acog203('timing of birth', 'from-memory');
const magnesium = acog222('magnesium', 'from-memory');

export const acogCare: Care = {
  startDrug: {
    limits: {
      systolic: limit('acog-start-drug-systolic', '>=', 140, 'mm[Hg]', chap),
      diastolic: limit('acog-start-drug-diastolic', '>=', 90, 'mm[Hg]', chap),
    },
    classes: chronicOnly,
    advice: {
      said: say(
        `In chronic hypertension a drug is started from {systolic:bare}/{diastolic}; in gestational hypertension and pre-eclampsia only for severe pressure. ${oralDrugs}`,
        {
          systolic: figure('acog-start-drug-systolic-quoted', 140, 'mm[Hg]', chap),
          diastolic: figure('acog-start-drug-diastolic-quoted', 90, 'mm[Hg]', chap),
        },
      ),
      citation: chap,
    },
  },
  target: {
    said: say(
      `On treatment of chronic hypertension aim for below {systolic:bare}/{diastolic}. ${decidedByPrescriber}`,
      {
        systolic: figure('acog-target-systolic', 140, 'mm[Hg]', chap),
        diastolic: figure('acog-target-diastolic', 90, 'mm[Hg]', chap),
      },
    ),
    citation: chap,
  },
  severePressure: acuteWithinAnHour,
  magnesiumLoading: {
    said: say(`Magnesium sulfate, loading dose: {dose} into a vein over {minutes}. ${decidedByPrescriber}`, {
      dose: figure('acog-magnesium-loading', 4, 'g', magnesium, 6),
      minutes: figure('acog-magnesium-loading-minutes', 20, 'min', magnesium, 30),
    }),
    citation: magnesium,
  },
  magnesiumAlso: gestationalSevere,
  magnesiumSigns: americanSigns,
  actions: [
    deliveryReview(
      'birth-pre-eclampsia',
      say(`${seniorReview} ACOG: {term:weeks} weeks without severe features.`, {
        term: figure('acog-birth-pre-eclampsia', 259, 'd', birth),
      }),
      'class:pre-eclampsia',
      birth,
    ),
    deliveryReview(
      'birth-severe',
      say(
        `${seniorReview} ACOG: {preterm:weeks} weeks with severe features or severe pressure, earlier when unstable.`,
        {
          preterm: figure('acog-birth-severe', 238, 'd', birth),
        },
      ),
      { any: ['class:pre-eclampsia-severe-features', gestationalSevere] },
      birth,
    ),
    deliveryReview(
      'birth-gestational',
      say(`${seniorReview} ACOG: {term:weeks} weeks.`, {
        term: figure('acog-birth-gestational', 259, 'd', birth),
      }),
      gestational,
      birth,
    ),
    deliveryReview(
      'birth-chronic',
      say(
        `${seniorReview} ACOG: from {untreated:weeks} to {last:weeks} weeks without a drug, from {treated:weeks} to {last:weeks} weeks with one.`,
        {
          untreated: figure('acog-birth-chronic-untreated', 266, 'd', chronicBirth),
          treated: figure('acog-birth-chronic-treated', 259, 'd', chronicBirth),
          last: figure('acog-birth-chronic-last', 279, 'd', chronicBirth),
        },
      ),
      chronicAlone,
      chronicBirth,
    ),
    step(
      'after-birth-acog-checks',
      'after-birth',
      80,
      say('ACOG: pressure at {first} after birth, and again at {second}.', {
        first: figure('acog-after-birth-first', 72, 'h', acogChecks),
        second: figure('acog-after-birth-second', 7, 'd', acogChecks, 10),
      }),
      { all: [knownAfterBirth, 'after-birth-ten-days', noEmergency] },
      acogChecks,
    ),
  ],
  treatments: [nifedipineAcog],
  prevention: [aspirinAcog, calciumNotInAcog],
};
