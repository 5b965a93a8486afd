// States of a woman with the steps that belong to each. Expectations: clinical-rules.md 2.1, 2.5 to 2.7, 2.11 to 2.13; case X10.
import { magnesiumStates, type ActionState } from './magnesium-states.ts';
import { daysAfterBirth } from './after-birth-states.ts';
import * as story from './plain-stories.ts';
import type { PlainTimeline } from './timeline-builder.ts';

const today = '2026-03-10T09:00:00Z';
const pressed = (plain: PlainTimeline, systolic: number, diastolic: number): PlainTimeline => ({
  ...plain,
  pressures: [
    { at: '2026-03-09T09:00:00Z', systolic, diastolic },
    { at: today, systolic, diastolic },
  ],
});
const treated = (plain: PlainTimeline): PlainTimeline => ({
  ...plain,
  medicines: [{ medicine: 'labetalol', start: '2026-03-08T09:00:00Z' }],
});

/** Each state, what is to be done in it, and what is not. */
export const actionStates: readonly ActionState[] = [
  [
    'gestational hypertension, no blood taken',
    { ...story.gestational, labs: [] },
    [
      'first-blood-tests',
      'growth-scan',
      'start-drug',
      'target-on-treatment',
      'follow-gestational',
      'birth-gestational',
      'danger-signs',
      'danger-signs-fetus',
      'growth-factor-test',
      'why-she-goes',
    ],
    ['call-ahead', 'follow-pre-eclampsia', 'after-birth-checks', 'recurrence', 'multiple-pregnancy'],
  ],
  [
    'chronic hypertension before 20 weeks',
    story.chronic,
    ['chronic-baseline', 'chronic-growth-scans', 'follow-chronic-poor', 'start-drug'],
    ['follow-chronic-controlled', 'danger-signs-fetus', 'growth-factor-test'],
  ],
  [
    'chronic hypertension, controlled',
    { ...treated(pressed(story.chronic, 126, 80)), conditions: [{ condition: 'chronic-hypertension' }] },
    ['follow-chronic-controlled', 'target-on-treatment', 'take-the-tablets'],
    ['follow-chronic-poor', 'start-drug'],
  ],
  [
    'pre-eclampsia',
    story.preEclampsia,
    ['quantify-protein', 'follow-pre-eclampsia', 'birth-pre-eclampsia', 'growth-scan'],
    ['follow-severe-pre-eclampsia', 'magnesium-loading', 'growth-factor-test'],
  ],
  [
    'severe pre-eclampsia',
    story.severePreEclampsia,
    [
      'call-ahead',
      'airway-and-left-side',
      'magnesium-loading',
      'magnesium-signs',
      'magnesium-antidote',
      'lower-severe-pressure',
      'catheter-and-fluids',
      'trained-escort',
      'copy-of-chart',
      'follow-severe-pre-eclampsia',
      'fetal-heart-now',
      'why-she-goes',
    ],
    ['magnesium-no-second-load', 'danger-signs', 'start-drug', 'take-the-tablets'],
  ],
  ...magnesiumStates,
  [
    'severe gestational hypertension',
    story.severe,
    ['follow-gestational-severe', 'birth-gestational-severe', 'magnesium-loading'],
    ['follow-gestational'],
  ],
  [
    'one severe reading',
    story.severeOnce,
    ['repeat-severe-reading', 'prepare-to-lower-pressure'],
    ['lower-severe-pressure'],
  ],
  [
    'eclampsia',
    story.eclampsia,
    ['no-substitute-for-magnesium', 'stabilise-then-birth', 'magnesium-loading'],
    ['no-steroids-for-hellp'],
  ],
  [
    'eclampsia with one severe reading: treated, not waited for (rule 1)',
    { ...story.severeOnce, symptoms: [{ symptom: 'seizure', at: '2026-03-10T11:00:00Z' }] },
    ['magnesium-loading', 'lower-severe-pressure', 'airway-and-left-side'],
    ['repeat-severe-reading', 'prepare-to-lower-pressure', 'rest-before-measuring'],
  ],
  [
    'HELLP',
    { ...story.gestational, conditions: [{ condition: 'hellp', at: '2026-03-10' }] },
    ['complete-hellp-tests', 'no-steroids-for-hellp', 'stabilise-then-birth'],
    [],
  ],
  [
    'pulmonary oedema',
    { ...story.preEclampsia, symptoms: [{ symptom: 'pulmonary-oedema' }] },
    ['sit-up-and-oxygen', 'catheter-and-fluids'],
    [],
  ],
  [
    'trace protein (case X10)',
    { ...story.gestational, strips: [{ at: today, grade: 0.5 }] },
    ['repeat-trace'],
    ['quantify-protein'],
  ],
  [
    'protein alone',
    { ...story.normal, strips: [{ at: today, grade: 2 }] },
    ['look-for-infection', 'quantify-protein', 'danger-signs'],
    ['danger-signs-fetus', 'test-urine'],
  ],
  [
    'raised once',
    { ...story.gestational, strips: [], pressures: [{ at: today, systolic: 146, diastolic: 92 }] },
    ['repeat-raised-reading', 'test-urine'],
    ['start-drug', 'follow-gestational'],
  ],
  [
    'raised pairs far apart',
    {
      ...story.gestational,
      pressures: [
        { at: '2026-02-25T09:00:00Z', systolic: 146, diastolic: 92 },
        { at: today, systolic: 146, diastolic: 92 },
      ],
    },
    ['fresh-pair'],
    [],
  ],
  [
    'settled',
    {
      ...story.gestational,
      pressures: [
        { at: '2026-03-09T09:00:00Z', systolic: 146, diastolic: 92 },
        { at: today, systolic: 124, diastolic: 78 },
      ],
    },
    ['follow-transient'],
    ['repeat-raised-reading'],
  ],
  [
    'undated hypertension',
    story.undated,
    ['date-the-pregnancy', 'next-visit-own-interval'],
    ['follow-gestational'],
  ],
  [
    'hypertension with protein before 20 weeks',
    { ...story.chronic, strips: [{ at: today, grade: 2 }] },
    ['scan-and-hcg'],
    [],
  ],
  [
    'danger symptom at normal pressure',
    { ...story.normal, symptoms: [{ symptom: 'headache' }] },
    ['danger-symptom-tests'],
    ['call-ahead'],
  ],
  [
    'a seizure with epilepsy on record',
    { ...story.normal, symptoms: [{ symptom: 'seizure' }], conditions: [{ condition: 'epilepsy' }] },
    ['ask-about-epilepsy'],
    [],
  ],
  [
    'a drug before 20 weeks, nothing on record',
    { ...story.normal, medicines: [{ medicine: 'methyldopa', start: '2025-06-01' }] },
    ['ask-about-chronic-hypertension'],
    [],
  ],
  [
    'reduced fetal movement',
    { ...story.gestational, symptoms: [...story.noDangerSymptoms, { symptom: 'reduced-fetal-movement' }] },
    ['assess-the-fetus'],
    [],
  ],
  [
    'kidney disease on record',
    { ...story.gestational, conditions: [{ condition: 'chronic-kidney-disease' }] },
    ['kidney-baseline'],
    [],
  ],
  ['twins at normal pressure', { ...story.normal, fetuses: 2 }, ['multiple-pregnancy'], []],
  [
    'raised in the clinic and not at home, before 20 weeks',
    {
      ...story.chronic,
      home: [
        { at: '2026-03-08T19:00:00Z', systolic: 124, diastolic: 78 },
        { at: '2026-03-09T07:00:00Z', systolic: 122, diastolic: 76 },
      ],
    },
    ['follow-white-coat', 'follow-chronic-poor'],
    ['start-drug', 'target-on-treatment'],
  ],
  ['twins', { ...story.gestational, fetuses: 2 }, ['multiple-pregnancy'], ['growth-factor-test']],
  [
    'after birth, new',
    story.afterBirth,
    [
      'after-birth-checks-first-week',
      'after-birth-new-onset',
      'six-week-review',
      'recurrence',
      'heart-and-vessels',
      'reclassify-as-chronic',
    ],
    [
      'after-birth-start-drug',
      'six-week-urine',
      'danger-signs-fetus',
      'growth-scan',
      'after-birth-methyldopa',
      'first-blood-tests',
      'pressure-at-every-visit',
    ],
  ],
  ...daysAfterBirth,
  [
    'after birth, pre-eclampsia',
    story.afterPreEclampsia,
    ['after-birth-pre-eclampsia-checks', 'six-week-urine', 'recurrence-after-pre-eclampsia'],
    ['after-birth-new-onset', 'after-birth-treated-checks', 'pre-eclampsia-after-gestational'],
  ],
  [
    'after birth, gestational hypertension on record',
    { ...story.afterBirth, conditions: [{ condition: 'gestational-hypertension', at: '2026-02-20' }] },
    ['pre-eclampsia-after-gestational'],
    ['recurrence-after-pre-eclampsia', 'after-birth-new-onset'],
  ],
  [
    'after birth, at the start of treatment',
    pressed(story.afterPreEclampsia, 150, 100),
    ['after-birth-start-drug', 'after-birth-feeding'],
    ['after-birth-reduce-drug'],
  ],
  [
    'after birth, on methyldopa, low',
    {
      ...pressed(story.afterPreEclampsia, 118, 72),
      medicines: [{ medicine: 'methyldopa', start: '2026-03-01' }],
    },
    ['after-birth-reduce-drug', 'after-birth-methyldopa', 'after-birth-treated-checks'],
    ['after-birth-start-drug'],
  ],
  [
    'diabetes at 13 weeks',
    { ...story.normal, gestation: '13+0', conditions: [{ condition: 'diabetes' }] },
    ['aspirin-due'],
    [],
  ],
  ['normal', story.normal, [], ['danger-signs', 'test-urine', 'date-the-pregnancy', 'aspirin-due']],
];
