// Tests by state. Data.
import { acog222, niceDg49, nice133, ours } from '../citations.ts';
import { needing, step } from '../action-rule.ts';
import type { ActionRule } from '../guideline.ts';
import { figure, say } from '../sentences.ts';
import {
  chronic,
  gestational,
  gestationalSevere,
  noEmergency,
  preEclampsiaOfAnyKind,
  pregnant,
  toHospitalNow,
  undatedHypertension,
} from '../states.ts';

const dg49 = niceDg49('1.1 to 1.6', 'read');
const growthFactorFrom = figure('growth-factor-from', 140, 'd', dg49);
const growthFactorUntil = figure('growth-factor-until', 258, 'd', dg49);
const scanWeeks = figure('chronic-scan-week', 28, 'wk', nice133('1.6, chronic hypertension', 'read'));
const scanSecond = figure('chronic-scan-second-week', 32, 'wk', nice133('1.6, chronic hypertension', 'read'));
const scanThird = figure('chronic-scan-third-week', 36, 'wk', nice133('1.6, chronic hypertension', 'read'));

export const investigations: readonly ActionRule[] = [
  needing(
    'laboratory',
    step(
      'first-blood-tests',
      'investigate',
      50,
      'Take blood: full count with platelets, liver enzymes, creatinine.',
      {
        all: [
          { any: [gestational, gestationalSevere, undatedHypertension, preEclampsiaOfAnyKind] },
          { any: [pregnant, 'raised-once', toHospitalNow] },
          { none: ['blood-tested'] },
        ],
      },
      nice133('1.4, table 1', 'read'),
    ),
  ),
  needing(
    'laboratory',
    step(
      'chronic-baseline',
      'investigate',
      50,
      'Baseline for later comparison: creatinine, platelets, liver enzymes and a urine protein/creatinine ratio.',
      { all: [chronic, 'now-before-20-weeks'] },
      ours('later results are new only against a baseline'),
    ),
  ),
  needing(
    'laboratory',
    step(
      'complete-hellp-tests',
      'investigate',
      51,
      'Complete the set: LDH, bilirubin, AST and ALT, platelets, blood film and clotting; repeat a haemolysed sample at once.',
      { any: ['class:hellp', 'urgency:severe-result'] },
      ours('a haemolysed sample is repeated and never waited for'),
    ),
  ),
  needing(
    'ultrasound',
    step(
      'growth-scan',
      'investigate',
      52,
      'Ultrasound at diagnosis: growth, liquor, umbilical artery flow.',
      { all: [pregnant, { any: [gestational, gestationalSevere, preEclampsiaOfAnyKind] }, noEmergency] },
      nice133('1.6, tables 1 and 2', 'read'),
    ),
  ),
  needing(
    'ultrasound',
    step(
      'chronic-growth-scans',
      'investigate',
      52,
      say('Growth scans at {first:bare}, {second:bare} and {third}.', {
        first: scanWeeks,
        second: scanSecond,
        third: scanThird,
      }),
      { all: [pregnant, chronic, noEmergency] },
      nice133('1.6, chronic hypertension', 'read'),
    ),
  ),
  step(
    'fetal-heart-now',
    'investigate',
    53,
    'Listen to the fetal heart.',
    { all: [toHospitalNow, { any: ['now-from-20-weeks', 'now-unknown'] }] },
    acog222('fetal assessment', 'from-memory'),
  ),
  needing(
    'growth-factors',
    step(
      'growth-factor-test',
      'investigate',
      54,
      say(
        'Where it can be had, one growth-factor test (PlGF) helps to rule pre-eclampsia in or out from {from:weeks} to {until:weeks} weeks; it never decides early birth and never cancels a danger sign.',
        { from: growthFactorFrom, until: growthFactorUntil },
      ),
      {
        all: [
          'now-from-20-weeks',
          gestational,
          { none: ['recorded-multiple', 'several-fetuses', toHospitalNow] },
        ],
      },
      dg49,
    ),
  ),
];
