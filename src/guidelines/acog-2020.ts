// ACOG Practice Bulletin 222 (2020) and 203, with the 2022 advisory on chronic hypertension.
import { acogCare } from './care/acog.ts';
import { acog203, acog222, acog2022, acog767 } from './citations.ts';
import { acogOrgans, acogSevereOrgans, hellpDefinition } from './criteria.ts';
import type { Edition } from './edition.ts';
import { limit, severeClosedAfter, severePairInterval } from './shared-values.ts';

const criteria = acog222('diagnostic criteria, as reproduced in three tables', 'read');
const afterBirth = acog222('post-partum treatment', 'from-memory');

export const acog2020Edition: Edition = {
  id: 'acog-2020',
  title: 'ACOG Practice Bulletins 222 and 203, with the 2022 advisory',
  publisher: 'American College of Obstetricians and Gynecologists',
  edition: '2020, chronic hypertension advisory 2022',
  year: 2020,
  version: '1.2.0',
  status: 'active',
  remark:
    'Criteria read in published tables; the start of treatment after birth is from memory. No white-coat class.',
  citation: criteria,
  hypertension: {
    systolic: limit('acog-raised-systolic', '>=', 140, 'mm[Hg]', criteria),
    diastolic: limit('acog-raised-diastolic', '>=', 90, 'mm[Hg]', criteria),
  },
  severe: {
    systolic: limit('acog-severe-systolic', '>=', 160, 'mm[Hg]', criteria),
    diastolic: limit('acog-severe-diastolic', '>=', 110, 'mm[Hg]', criteria),
  },
  confirmation: {
    minimumInterval: limit('acog-confirmation-interval', '>=', 4, 'h', criteria),
    between: 'occasions',
    sameArm: false,
    citation: criteria,
  },
  severeConfirmation: {
    minimumInterval: severePairInterval,
    closedAfter: severeClosedAfter,
    repeatWithin: limit(
      'acog-severe-repeat-within',
      '<=',
      15,
      'min',
      acog767('persistent for 15 minutes is an emergency', 'read'),
    ),
  },
  proteinuria: {
    strip: limit(
      'acog-strip',
      '>=',
      2,
      '{grade}',
      acog222('strip 2+ only when no quantitative test is at hand', 'read'),
    ),
    stripAsksForRatio: limit(
      'acog-strip-asks-ratio',
      '>=',
      1,
      '{grade}',
      acog222('a strip is quantified', 'from-memory'),
    ),
    ungradedPositive: 'cannot-tell',
    proteinCreatinineRatio: [limit('acog-protein-creatinine', '>=', 0.3, 'mg/mg', criteria)],
    albuminCreatinineRatio: [],
    excretion24h: [limit('acog-excretion', '>=', 300, 'mg/(24.h)', criteria)],
  },
  organs: acogOrgans,
  severeOrgans: acogSevereOrgans,
  severeFeatures: {
    named: true,
    pressure: 'alone',
    dangerSymptoms: false,
    citation: acog222('severe features', 'read'),
  },
  hellp: hellpDefinition,
  lossOfControl: acog222('superimposed preeclampsia: sudden worsening', 'read'),
  afterBirthSameDay: {
    systolic: limit('acog-after-birth-same-day-systolic', '>=', 150, 'mm[Hg]', afterBirth),
    diastolic: limit('acog-after-birth-same-day-diastolic', '>=', 100, 'mm[Hg]', afterBirth),
  },
  afterBirthTreatment: {
    systolic: limit('acog-after-birth-treatment-systolic', '>=', 150, 'mm[Hg]', afterBirth),
    diastolic: limit('acog-after-birth-treatment-diastolic', '>=', 100, 'mm[Hg]', afterBirth),
  },
  citations: {
    chronic: acog203('definition', 'read'),
    gestational: criteria,
    preEclampsia: criteria,
    superimposed: acog222('superimposed preeclampsia', 'read'),
    eclampsia: criteria,
    afterBirth,
    home: acog2022('out-of-office pressure', 'from-memory'),
    transient: criteria,
  },
  care: acogCare,
  actions: [],
};
