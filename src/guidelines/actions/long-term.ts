// Advice for later life and the next pregnancy. Data.
import { nice133 } from '../citations.ts';
import { step } from '../action-rule.ts';
import type { ActionRule, Need } from '../guideline.ts';
import { figure, say } from '../sentences.ts';
import {
  gestational,
  gestationalSevere,
  knownAfterBirth,
  knownAtReview,
  noEmergency,
  preEclampsiaAfterBirth,
  preEclampsiaAtReview,
} from '../states.ts';

const known: Need = { any: [knownAfterBirth, knownAtReview] };
const preEclampsia: Need = { any: [preEclampsiaAfterBirth, preEclampsiaAtReview] };
const later = nice133('1.10', 'read');
const twelve = nice133('reclassification', 'from-memory');
const anyAgain = figure('recurrence-of-any', 20, '%', later);
const preEclampsiaAgain = figure('recurrence-of-pre-eclampsia', 16, '%', later);
const afterEarly = figure('recurrence-after-early-birth', 33, '%', later);
const early = figure('early-birth-weeks', 28, 'wk', later, 34);
const afterLatePreterm = figure('recurrence-after-late-preterm-birth', 23, '%', later);
const latePreterm = figure('late-preterm-weeks', 34, 'wk', later, 37);
const gestationalNext = figure('pre-eclampsia-after-gestational', 6, '%', later, 12);
const reclassify = figure('reclassify-as-chronic', 12, 'wk', twelve);

export const longTerm: readonly ActionRule[] = [
  step(
    'recurrence',
    'long-term',
    90,
    say('About {any} have hypertension again in the next pregnancy: book early and ask about aspirin then.', {
      any: anyAgain,
    }),
    { all: [known, noEmergency] },
    later,
  ),
  step(
    'recurrence-after-pre-eclampsia',
    'long-term',
    91,
    say(
      'After pre-eclampsia up to about {again} have it again; {afterEarly} after a birth at {early}, {afterLate} after one at {late}.',
      {
        again: preEclampsiaAgain,
        afterEarly,
        early,
        afterLate: afterLatePreterm,
        late: latePreterm,
      },
    ),
    { all: [preEclampsia, noEmergency] },
    later,
  ),
  step(
    'pre-eclampsia-after-gestational',
    'long-term',
    91,
    say('After gestational hypertension {next} have pre-eclampsia next time.', { next: gestationalNext }),
    {
      all: [
        known,
        { any: ['recorded-gestational', gestational, gestationalSevere] },
        { none: ['recorded-pre-eclampsia', 'recorded-superimposed', 'recorded-hellp', 'recorded-eclampsia'] },
        noEmergency,
      ],
    },
    later,
  ),
  step(
    'heart-and-vessels',
    'long-term',
    92,
    'Her risk of disease of the heart and vessels is raised for life: pressure once a year, weight, tobacco, exercise; write it in the record that her own doctor sees.',
    { all: [known, noEmergency] },
    later,
  ),
  step(
    'reclassify-as-chronic',
    'long-term',
    93,
    say('If the pressure is still raised {weeks} after birth, it is chronic hypertension: investigate.', {
      weeks: reclassify,
    }),
    { all: [known, { none: ['recorded-chronic'] }, noEmergency] },
    twelve,
  ),
];
