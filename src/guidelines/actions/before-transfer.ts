// Emergency at a first-level site: steps before transfer, in the order in which they are done. Data.
import { acog222, commonPractice, nice133, ours } from '../citations.ts';
import { needing, step } from '../action-rule.ts';
import type { Edition } from '../edition.ts';
import type { ActionRule, Need } from '../guideline.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { severeInAFit, toHospitalNow } from '../states.ts';
import { magnesiumBeforeTransfer } from './magnesium.ts';

const fluids = figure('fluids-before-transfer', 80, 'mL/h', nice133('1.8.12', 'read'));

const lung: Need = { any: ['lung-oedema', 'oxygen-below-94', { all: ['breathless', 'raised-once'] }] };

/** Steps before transfer, with the magnesium and the pressure figures of an edition. */
export function beforeTransfer(edition: Edition): readonly ActionRule[] {
  const { severePressure } = edition.care;
  return [
    step(
      'call-ahead',
      'before-transfer',
      14,
      'Call the receiving hospital.',
      toHospitalNow,
      commonPractice('emergency transfer in obstetrics'),
    ),
    step(
      'airway-and-left-side',
      'before-transfer',
      14.5,
      'Lay her on her left side (breathless: sit her up) and keep the airway free; never leave her alone.',
      toHospitalNow,
      commonPractice('first step in every obstetric emergency'),
    ),
    needing(
      'oxygen',
      step(
        'sit-up-and-oxygen',
        'before-transfer',
        14.5,
        'Possible pulmonary oedema: sit her up, give oxygen, and restrict fluids.',
        { all: [toHospitalNow, lung] },
        acog222('severe features, pulmonary oedema', 'read'),
      ),
    ),
    ...magnesiumBeforeTransfer(edition),
    step(
      'no-substitute-for-magnesium',
      'before-transfer',
      16.5,
      'Diazepam or phenytoin do not take the place of magnesium.',
      { all: [toHospitalNow, { any: ['class:eclampsia', 'class:imminent-eclampsia'] }] },
      nice133('1.8.5', 'read'),
    ),
    step(
      'lower-severe-pressure',
      'before-transfer',
      17,
      severePressure.said,
      { all: [toHospitalNow, { any: ['severe-current', severeInAFit] }] },
      severePressure.citation,
    ),
    step(
      'prepare-to-lower-pressure',
      'before-transfer',
      17,
      `A severe reading waits for its repeat: keep a drug for severe pressure ready. ${decidedByPrescriber}`,
      { all: [toHospitalNow, 'severe-open', { none: ['class:eclampsia'] }] },
      ours('one severe reading is acted on, and treated once repeated or with a danger symptom'),
    ),
    needing(
      'catheter',
      step(
        'catheter-and-fluids',
        'before-transfer',
        17.5,
        say('Catheter, and count the urine; restrict fluids to {fluids}.', { fluids }),
        toHospitalNow,
        nice133('1.8.12', 'read'),
      ),
    ),
    step(
      'trained-escort',
      'before-transfer',
      18,
      'A trained person travels with her.',
      toHospitalNow,
      commonPractice('emergency transfer in obstetrics'),
    ),
    step(
      'copy-of-chart',
      'before-transfer',
      18.5,
      'Send a copy of the chart with times and doses.',
      toHospitalNow,
      commonPractice('emergency transfer in obstetrics'),
    ),
  ];
}
