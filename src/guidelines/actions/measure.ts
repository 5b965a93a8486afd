// What to measure or ask next. Data.
import { acog222, commonPractice, nice133, ours } from '../citations.ts';
import { step } from '../action-rule.ts';
import type { ActionRule } from '../guideline.ts';
import { anyRaised, severeReading } from '../states.ts';

export const measureActions: readonly ActionRule[] = [
  step(
    'after-the-window',
    'measure',
    22,
    'Ask whether she is pregnant, and test where it is not certain; repeat the pressure, and arrange a review for chronic hypertension.',
    { any: ['class:raised-after-the-window', { all: ['six-weeks-over', 'raised-now'] }] },
    ours('raised pressure long after a birth is chronic hypertension or a new pregnancy'),
  ),
  step(
    'test-urine',
    'measure',
    20,
    'Test the urine for protein now.',
    { all: [{ any: ['raised-once', 'raised-now'] }, { none: ['urine-tested', severeReading] }] },
    commonPractice('urine is tested whenever the pressure is raised'),
  ),
  step(
    'platelets-falling',
    'investigate',
    25,
    'The platelets are falling: repeat the count within a day, with liver enzymes and LDH.',
    'platelets-falling',
    ours('a falling count is followed before it crosses a cut-off'),
  ),
  step(
    'quantify-protein',
    'measure',
    21,
    'Send urine for a protein/creatinine ratio: a strip alone is not a measurement.',
    {
      all: [
        { any: ['protein-now', 'strip-positive'] },
        { any: ['raised-once', 'class:isolated-proteinuria'] },
      ],
    },
    nice133('1.2.3', 'read'),
  ),
  step(
    'repeat-trace',
    'measure',
    21,
    'Trace protein is not yet proteinuria: repeat the strip on a fresh clean-catch sample.',
    { all: ['strip-trace', { none: ['strip-positive', 'protein-now'] }] },
    ours('trace is repeated; the Indian training deck counts it with raised pressure'),
  ),
  step(
    'look-for-infection',
    'measure',
    22,
    'Look for a urinary infection, repeat the strip on a clean-catch sample, and check the pressure weekly.',
    'class:isolated-proteinuria',
    ours('infection is the commonest other cause'),
  ),
  step(
    'scan-and-hcg',
    'investigate',
    23,
    'Arrange an ultrasound scan and hCG: exclude trophoblastic disease; think of kidney disease and antiphospholipid syndrome.',
    'class:raised-with-protein-before-20-weeks',
    ours('protein with hypertension in the first half of pregnancy has other causes'),
  ),
  step(
    'date-the-pregnancy',
    'measure',
    24,
    'Find out the length of the pregnancy: last period, scan, or height of the fundus.',
    'now-unknown',
    ours('the class depends on it'),
  ),
  step(
    'danger-symptom-tests',
    'investigate',
    25,
    'Repeat the pressure, test the urine, and take platelets, liver enzymes and creatinine: HELLP and atypical disease occur at normal pressure.',
    { all: ['danger-symptom', { none: ['raised-once'] }] },
    ours('case series of atypical disease'),
  ),
  step(
    'ask-about-epilepsy',
    'measure',
    26,
    'Ask whether epilepsy is known and treated; until that is certain, treat as eclampsia per local protocol.',
    { all: ['seizure-any-time', 'recorded-epilepsy'] },
    ours('a seizure in a woman with epilepsy is still an emergency'),
  ),
  step(
    'ask-about-chronic-hypertension',
    'measure',
    27,
    'A medicine for pressure was in use early in the pregnancy: ask for what, and whether the pressure was raised before.',
    { all: ['treated-before-20-weeks', { none: ['recorded-chronic'] }] },
    ours('such a medicine speaks for chronic hypertension; the record does not say so'),
  ),
  step(
    'assess-the-fetus',
    'investigate',
    28,
    'Reduced fetal movement: listen to the fetal heart and assess the fetus today.',
    { all: ['reduced-fetal-movement', anyRaised] },
    nice133('1.6.8', 'read'),
  ),
  step(
    'kidney-baseline',
    'investigate',
    29,
    'Kidney disease is on record: protein alone cannot diagnose pre-eclampsia; compare with her earlier ratio and creatinine.',
    { all: ['recorded-kidney-disease', anyRaised] },
    acog222('superimposed preeclampsia in renal disease', 'from-memory'),
  ),
];
