// Guideline `frontline`: a first-level antenatal clinic; the most cautious urgency of the published guidelines.
import { frontlineCare } from './care/frontline.ts';
import {
  acog222,
  commonPractice,
  homePressure,
  indiaStg,
  isshp2018,
  isshp2021,
  latePostpartum,
  nice133,
  who2020,
} from './citations.ts';
import { acogSevereOrgans, hellpDefinition, unionOrgans } from './criteria.ts';
import type { Edition } from './edition.ts';
import { limit, severeClosedAfter, severePairInterval, severeRepeat } from './shared-values.ts';

const definition = who2020('definition of non-severe hypertension and its complement', 'read');
const interval = acog222('two occasions at least four hours apart', 'read');

export const frontline: Edition = {
  id: 'frontline',
  title: 'First-level antenatal clinic: the most cautious of the published guidelines',
  publisher: 'pregnancy-htn',
  edition: '2026',
  year: 2026,
  version: '1.2.0',
  status: 'active',
  remark:
    'A rule set of this project. Each limit names the publication it is taken from; choices of our own are marked.',
  citation: definition,
  hypertension: {
    systolic: limit('frontline-raised-systolic', '>=', 140, 'mm[Hg]', definition),
    diastolic: limit('frontline-raised-diastolic', '>=', 90, 'mm[Hg]', definition),
  },
  severe: {
    systolic: limit('frontline-severe-systolic', '>=', 160, 'mm[Hg]', definition),
    diastolic: limit('frontline-severe-diastolic', '>=', 110, 'mm[Hg]', definition),
  },
  confirmation: {
    minimumInterval: limit('frontline-confirmation-interval', '>=', 4, 'h', interval),
    between: 'occasions',
    sameArm: false,
    citation: interval,
  },
  severeConfirmation: {
    minimumInterval: severePairInterval,
    closedAfter: severeClosedAfter,
    repeatWithin: severeRepeat,
  },
  home: {
    systolic: limit(
      'frontline-home-systolic',
      '>=',
      135,
      'mm[Hg]',
      homePressure('statement of the ISSHP home threshold', 'read'),
    ),
    diastolic: limit(
      'frontline-home-diastolic',
      '>=',
      85,
      'mm[Hg]',
      homePressure('statement of the ISSHP home threshold', 'read'),
    ),
  },
  proteinuria: {
    strip: limit(
      'frontline-strip',
      '>=',
      1,
      '{grade}',
      commonPractice(
        'at the first level raised pressure with 1+ protein or more is pre-eclampsia; the Indian treatment guideline likewise counts a persistent 1+',
      ),
    ),
    ungradedPositive: 'counts',
    proteinCreatinineRatio: [
      limit(
        'frontline-protein-creatinine-mg-mmol',
        '>=',
        30,
        'mg/mmol',
        isshp2018('definition of pre-eclampsia', 'read'),
      ),
      limit('frontline-protein-creatinine-mg-mg', '>=', 0.3, 'mg/mg', acog222('diagnostic criteria', 'read')),
    ],
    albuminCreatinineRatio: [
      limit('frontline-albumin-creatinine', '>=', 8, 'mg/mmol', nice133('1.2.5', 'read')),
    ],
    excretion24h: [
      limit('frontline-excretion', '>=', 300, 'mg/(24.h)', isshp2018('definition of pre-eclampsia', 'read')),
    ],
    remark:
      'From 1+ a strip counts at the first level; ISSHP, ACOG and NICE ask for 2+ or a ratio: quantify.',
  },
  organs: unionOrgans,
  severeOrgans: acogSevereOrgans,
  severeFeatures: {
    named: true,
    pressure: 'alone',
    dangerSymptoms: true,
    citation: acog222('severe features', 'read'),
  },
  hellp: hellpDefinition,
  lossOfControl: acog222('superimposed preeclampsia: sudden worsening', 'read'),
  afterBirthSameDay: {
    systolic: limit(
      'after-birth-same-day-systolic',
      '>=',
      150,
      'mm[Hg]',
      nice133('1.4.11, start of treatment after birth', 'read'),
    ),
    diastolic: limit(
      'after-birth-same-day-diastolic',
      '>=',
      100,
      'mm[Hg]',
      nice133('1.4.11, start of treatment after birth', 'read'),
    ),
  },
  afterBirthTreatment: {
    systolic: limit(
      'frontline-after-birth-treatment-systolic',
      '>=',
      150,
      'mm[Hg]',
      nice133('1.4.11, start of treatment after birth', 'read'),
    ),
    diastolic: limit(
      'frontline-after-birth-treatment-diastolic',
      '>=',
      100,
      'mm[Hg]',
      nice133('1.4.11, start of treatment after birth', 'read'),
    ),
  },
  citations: {
    chronic: isshp2018('chronic hypertension', 'read'),
    gestational: isshp2018('gestational hypertension', 'read'),
    preEclampsia: isshp2021('definition of pre-eclampsia', 'read'),
    superimposed: acog222('superimposed preeclampsia', 'read'),
    eclampsia: indiaStg('seizure in pregnancy is eclampsia until another cause is proven', 'read'),
    afterBirth: latePostpartum('definition', 'read'),
    home: isshp2018('white-coat and masked hypertension', 'read'),
    transient: isshp2018('transient gestational hypertension', 'read'),
  },
  care: frontlineCare,
  actions: [],
};
