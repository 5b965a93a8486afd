// ISSHP 2021: classification, diagnosis and management. Values read in reproductions; what is from memory says so.
import { isshpCare } from './care/isshp.ts';
import { homePressure, isshp2018, isshp2021 } from './citations.ts';
import { hellpDefinition, isshpGrowthFactors, isshpOrgans } from './criteria.ts';
import type { Edition } from './edition.ts';
import { limit, severeClosedAfter, severePairInterval } from './shared-values.ts';

const definition = isshp2021('definition, as reproduced in BMC Nephrology 2019 table 2', 'read');
const severe = isshp2021('severe hypertension', 'from-memory');
const interval = isshp2021('confirmation, at least four hours apart', 'from-memory');
const afterBirth = isshp2021('post-partum treatment', 'from-memory');

export const isshp2021Edition: Edition = {
  id: 'isshp-2021',
  title: 'ISSHP, Hypertensive disorders of pregnancy',
  publisher: 'International Society for the Study of Hypertension in Pregnancy',
  edition: '2021',
  year: 2021,
  version: '1.2.0',
  status: 'active',
  remark:
    'Criteria read in published reproductions; the confirmation interval, the severe limits and the start of treatment after birth are from memory.',
  citation: definition,
  hypertension: {
    systolic: limit('isshp-raised-systolic', '>=', 140, 'mm[Hg]', definition),
    diastolic: limit('isshp-raised-diastolic', '>=', 90, 'mm[Hg]', definition),
  },
  severe: {
    systolic: limit('isshp-severe-systolic', '>=', 160, 'mm[Hg]', severe),
    diastolic: limit('isshp-severe-diastolic', '>=', 110, 'mm[Hg]', severe),
  },
  confirmation: {
    minimumInterval: limit('isshp-confirmation-interval', '>=', 4, 'h', interval),
    between: 'occasions',
    sameArm: false,
    citation: interval,
  },
  severeConfirmation: {
    minimumInterval: severePairInterval,
    closedAfter: severeClosedAfter,
    repeatWithin: limit(
      'isshp-severe-repeat-within',
      '<=',
      15,
      'min',
      isshp2021('repeat within 15 minutes', 'from-memory'),
    ),
  },
  home: {
    systolic: limit(
      'isshp-home-systolic',
      '>=',
      135,
      'mm[Hg]',
      homePressure('statement of the ISSHP home threshold', 'read'),
    ),
    diastolic: limit(
      'isshp-home-diastolic',
      '>=',
      85,
      'mm[Hg]',
      homePressure('statement of the ISSHP home threshold', 'read'),
    ),
  },
  proteinuria: {
    strip: limit(
      'isshp-strip',
      '>=',
      2,
      '{grade}',
      isshp2021('dipstick 2+ or more when nothing better is at hand', 'read'),
    ),
    stripAsksForRatio: limit(
      'isshp-strip-asks-ratio',
      '>=',
      1,
      '{grade}',
      isshp2021('a positive strip is quantified', 'from-memory'),
    ),
    ungradedPositive: 'cannot-tell',
    proteinCreatinineRatio: [limit('isshp-protein-creatinine', '>=', 30, 'mg/mmol', definition)],
    albuminCreatinineRatio: [limit('isshp-albumin-creatinine', '>=', 8, 'mg/mmol', definition)],
    excretion24h: [limit('isshp-excretion', '>=', 300, 'mg/(24.h)', definition)],
  },
  organs: [...isshpOrgans, ...isshpGrowthFactors],
  severeOrgans: [],
  severeFeatures: {
    named: false,
    pressure: 'no',
    dangerSymptoms: false,
    citation: isshp2021('no mild or severe label of the disease', 'from-memory'),
  },
  hellp: hellpDefinition,
  afterBirthSameDay: {
    systolic: limit('isshp-after-birth-same-day-systolic', '>=', 140, 'mm[Hg]', afterBirth),
    diastolic: limit('isshp-after-birth-same-day-diastolic', '>=', 90, 'mm[Hg]', afterBirth),
  },
  afterBirthTreatment: {
    systolic: limit('isshp-after-birth-treatment-systolic', '>=', 140, 'mm[Hg]', afterBirth),
    diastolic: limit('isshp-after-birth-treatment-diastolic', '>=', 90, 'mm[Hg]', afterBirth),
  },
  citations: {
    chronic: isshp2018('chronic hypertension', 'read'),
    gestational: isshp2021('gestational hypertension', 'read'),
    preEclampsia: definition,
    superimposed: isshp2021('superimposed pre-eclampsia', 'read'),
    eclampsia: isshp2021('neurological complications', 'read'),
    afterBirth,
    home: isshp2018('white-coat and masked hypertension', 'read'),
    transient: isshp2018('transient gestational hypertension', 'read'),
  },
  care: isshpCare,
  actions: [],
};
