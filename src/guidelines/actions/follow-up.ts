// How often to see her again, by class and severity. The intervals read are those of NICE; the card names it.
import { isshp2018, nice133, ours, uspstf2021 } from '../citations.ts';
import { step } from '../action-rule.ts';
import type { ActionRule } from '../guideline.ts';
import { figure, say } from '../sentences.ts';
import { chronicAlone, gestational, gestationalSevere, noEmergency, pregnant } from '../states.ts';

const table = nice133('tables 1 and 2; 1.3, 1.4, 1.5', 'read');
const weekly = figure('gestational-visits', 1, '/wk', table, 2);
const until = {
  systolic: figure('settled-systolic', 135, 'mm[Hg]', table),
  diastolic: figure('settled-diastolic', 85, 'mm[Hg]', table),
};
const scanWeeks = figure('gestational-scan-interval', 2, 'wk', table, 4);
const preEclampsiaPressure = figure('pre-eclampsia-pressure-interval', 48, 'h', table);
const preEclampsiaBlood = figure('pre-eclampsia-blood', 2, '/wk', table);
const preEclampsiaScan = figure('pre-eclampsia-scan-interval', 2, 'wk', table);
const severePressure = figure('severe-pressure-interval', 15, 'min', table, 30);
const severeLater = figure('severe-later-measurements', 4, '/d', table);
const severeBlood = figure('severe-blood', 3, '/wk', table);
const chronicControlled = figure('chronic-controlled-interval', 2, 'wk', table, 4);
const chronicPoor = figure('chronic-poor-interval', 1, 'wk', table);
const preEclampsia = { any: ['class:pre-eclampsia', 'class:superimposed-pre-eclampsia'] } as const;

export const followUp: readonly ActionRule[] = [
  step(
    'follow-gestational',
    'follow-up',
    70,
    say(
      'Pressure and urine {visits}, until the pressure is {systolic:bare}/{diastolic} or less; blood tests weekly; a scan every {scan}.',
      { visits: weekly, ...until, scan: scanWeeks },
    ),
    { all: [pregnant, gestational, noEmergency] },
    table,
  ),
  step(
    'follow-gestational-severe',
    'follow-up',
    70,
    say(
      'In hospital: pressure every {interval} until it is below the severe limits; urine daily, blood weekly, a scan every {scan}.',
      { interval: severePressure, scan: preEclampsiaScan },
    ),
    { all: [pregnant, gestationalSevere] },
    table,
  ),
  step(
    'follow-pre-eclampsia',
    'follow-up',
    70,
    say('Pressure at least every {interval}; blood {blood}; a scan every {scan}.', {
      interval: preEclampsiaPressure,
      blood: preEclampsiaBlood,
      scan: preEclampsiaScan,
    }),
    { all: [pregnant, preEclampsia, noEmergency] },
    table,
  ),
  step(
    'follow-severe-pre-eclampsia',
    'follow-up',
    70,
    say(
      'In hospital: pressure every {interval} until below the severe limits, then at least {later}; blood {blood}; a scan every {scan}.',
      { interval: severePressure, later: severeLater, blood: severeBlood, scan: preEclampsiaScan },
    ),
    {
      all: [
        pregnant,
        { any: ['class:pre-eclampsia-severe-features', { all: [preEclampsia, 'severe-current'] }] },
      ],
    },
    table,
  ),
  step(
    'follow-chronic-controlled',
    'follow-up',
    70,
    say('Visits every {interval} while the pressure is controlled.', { interval: chronicControlled }),
    { all: [pregnant, chronicAlone, 'normal-now', noEmergency] },
    table,
  ),
  step(
    'follow-chronic-poor',
    'follow-up',
    70,
    say('The pressure is not controlled: a visit every {interval:bare} week.', { interval: chronicPoor }),
    { all: [pregnant, chronicAlone, 'raised-now', noEmergency] },
    table,
  ),
  step(
    'follow-transient',
    'follow-up',
    70,
    'Settled is not the same as normal: measure at every visit and test the urine; it may come back.',
    'class:transient-hypertension',
    isshp2018('transient gestational hypertension', 'read'),
  ),
  step(
    'follow-white-coat',
    'follow-up',
    70,
    'Go on measuring at home and in the clinic; part of these women develop hypertension later.',
    { any: ['class:white-coat-hypertension', 'class:masked-hypertension'] },
    isshp2018('white-coat and masked hypertension', 'from-memory'),
  ),
  step(
    'multiple-pregnancy',
    'follow-up',
    71,
    'More than one fetus: the same limits, more frequent visits; growth-factor ratios are not validated for her.',
    { all: [pregnant, { any: ['recorded-multiple', 'several-fetuses'] }] },
    uspstf2021('multifetal gestation as a risk factor', 'read', 'more frequent visits are our own advice'),
  ),
  step(
    'next-visit-own-interval',
    'follow-up',
    72,
    'The length of the pregnancy is not known: see her again within the week at the latest.',
    { all: ['now-unknown', 'class:hypertension-timing-unknown', noEmergency] },
    ours('no publication speaks of undated hypertension'),
  ),
];
