// NICE NG133 (2019, updated 2023). Read in a structured transcription, not compared with the original.
import { niceCare } from './care/nice.ts';
import { nice133 } from './citations.ts';
import { hellpDefinition, niceOrgans } from './criteria.ts';
import type { Edition } from './edition.ts';
import { limit, severeClosedAfter, severePairInterval, severeRepeat } from './shared-values.ts';

const terms = nice133('terms used', 'read');
const severe = nice133(
  'terms used: severe hypertension, over 160 or over 110',
  'read',
  'admission trigger 1.5.2 says 160 or more',
);
const afterBirth = nice133('1.4.11 and 1.5.17', 'read');

export const nice2023Edition: Edition = {
  id: 'nice-2023',
  title: 'NICE NG133, Hypertension in pregnancy',
  publisher: 'National Institute for Health and Care Excellence',
  edition: '2019, updated April 2023',
  year: 2023,
  version: '1.2.0',
  status: 'active',
  remark:
    'Read in a structured transcription. States no interval between readings; its severe limits are "over", with the urgency of the first level kept.',
  citation: terms,
  hypertension: {
    systolic: limit('nice-raised-systolic', '>=', 140, 'mm[Hg]', terms),
    diastolic: limit('nice-raised-diastolic', '>=', 90, 'mm[Hg]', terms),
  },
  severe: {
    systolic: limit('nice-severe-systolic', '>', 160, 'mm[Hg]', severe),
    diastolic: limit('nice-severe-diastolic', '>', 110, 'mm[Hg]', severe),
  },
  confirmation: {
    between: 'occasions',
    sameArm: false,
    citation: nice133('terms used: no interval is stated', 'read'),
  },
  severeConfirmation: {
    minimumInterval: severePairInterval,
    closedAfter: severeClosedAfter,
    repeatWithin: severeRepeat,
  },
  proteinuria: {
    strip: limit('nice-strip', '>=', 2, '{grade}', nice133('terms used: 2+ (1 g/L)', 'read')),
    stripAsksForRatio: limit('nice-strip-asks-ratio', '>=', 1, '{grade}', nice133('1.2.3', 'read')),
    ungradedPositive: 'cannot-tell',
    proteinCreatinineRatio: [
      limit('nice-protein-creatinine', '>=', 30, 'mg/mmol', nice133('1.2.4-5', 'read')),
    ],
    albuminCreatinineRatio: [
      limit('nice-albumin-creatinine', '>=', 8, 'mg/mmol', nice133('1.2.4-5', 'read')),
    ],
    excretion24h: [
      limit('nice-excretion', '>=', 300, 'mg/(24.h)', nice133('1.2.5: not routine', 'from-memory')),
    ],
  },
  organs: niceOrgans,
  severeOrgans: [],
  severeFeatures: {
    named: false,
    pressure: 'no',
    dangerSymptoms: false,
    citation: nice133('terms used: severe pre-eclampsia', 'read'),
  },
  hellp: hellpDefinition,
  afterBirthSameDay: {
    systolic: limit('nice-after-birth-same-day-systolic', '>=', 150, 'mm[Hg]', afterBirth),
    diastolic: limit('nice-after-birth-same-day-diastolic', '>=', 100, 'mm[Hg]', afterBirth),
  },
  afterBirthTreatment: {
    systolic: limit('nice-after-birth-treatment-systolic', '>=', 150, 'mm[Hg]', afterBirth),
    diastolic: limit('nice-after-birth-treatment-diastolic', '>=', 100, 'mm[Hg]', afterBirth),
  },
  citations: {
    chronic: nice133('terms used: chronic hypertension', 'read'),
    gestational: nice133('terms used: gestational hypertension', 'read'),
    preEclampsia: nice133('terms used: pre-eclampsia', 'read'),
    superimposed: nice133('terms used: pre-eclampsia', 'read'),
    eclampsia: nice133('terms used: eclampsia', 'read'),
    afterBirth,
    home: nice133('no home threshold', 'read'),
    transient: terms,
  },
  care: niceCare,
  actions: [],
};
