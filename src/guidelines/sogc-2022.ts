// SOGC 307 (2014) definitions and 426 (2022) treatment. The 2022 text itself was not seen.
import { sogcCare } from './care/sogc.ts';
import { ours, sogc2014, sogc2022 } from './citations.ts';
import { acogSevereOrgans, hellpDefinition, isshpOrgans } from './criteria.ts';
import type { Edition } from './edition.ts';
import { limit, severeClosedAfter } from './shared-values.ts';

const definition = sogc2014('recommendations 11 to 17', 'read');
const afterBirth = sogc2022('post partum, as digested on a teaching site', 'read');
const organs = ours(
  'its list of adverse conditions was not read; detected at the level of ISSHP and NICE, graded at that of ACOG',
);
const protein = sogc2014('proteinuria', 'from-memory');

export const sogc2022Edition: Edition = {
  id: 'sogc-2022',
  title: 'SOGC guidelines 307 and 426, Hypertensive disorders of pregnancy',
  publisher: 'Society of Obstetricians and Gynaecologists of Canada',
  edition: '2014 definitions, 2022 treatment',
  year: 2022,
  version: '1.2.0',
  status: 'active',
  remark:
    'Definitions read in the 2014 text, treatment in a digest of the 2022 text. Protein limits are from memory; organ criteria are our own default.',
  citation: definition,
  hypertension: {
    systolic: limit('sogc-raised-systolic', '>=', 140, 'mm[Hg]', definition),
    diastolic: limit('sogc-raised-diastolic', '>=', 90, 'mm[Hg]', definition),
  },
  severe: {
    systolic: limit('sogc-severe-systolic', '>=', 160, 'mm[Hg]', definition),
    diastolic: limit('sogc-severe-diastolic', '>=', 110, 'mm[Hg]', definition),
  },
  confirmation: {
    minimumInterval: limit('sogc-confirmation-interval', '>=', 15, 'min', definition),
    between: 'readings',
    sameArm: true,
    citation: definition,
  },
  severeConfirmation: {
    minimumInterval: limit('sogc-severe-pair-interval', '>=', 15, 'min', definition),
    closedAfter: severeClosedAfter,
    repeatWithin: limit('sogc-severe-repeat-within', '<=', 15, 'min', definition),
  },
  home: {
    systolic: limit('sogc-home-systolic', '>=', 135, 'mm[Hg]', definition),
    diastolic: limit('sogc-home-diastolic', '>=', 85, 'mm[Hg]', definition),
  },
  proteinuria: {
    strip: limit('sogc-strip', '>=', 2, '{grade}', protein),
    stripAsksForRatio: limit('sogc-strip-asks-ratio', '>=', 1, '{grade}', protein),
    ungradedPositive: 'cannot-tell',
    proteinCreatinineRatio: [limit('sogc-protein-creatinine', '>=', 30, 'mg/mmol', protein)],
    albuminCreatinineRatio: [
      limit('sogc-albumin-creatinine', '>=', 8, 'mg/mmol', ours('as in ISSHP and NICE')),
    ],
    excretion24h: [limit('sogc-excretion', '>=', 300, 'mg/(24.h)', protein)],
  },
  organs: isshpOrgans,
  severeOrgans: acogSevereOrgans,
  severeFeatures: { named: true, pressure: 'alone', dangerSymptoms: false, citation: organs },
  hellp: hellpDefinition,
  lossOfControl: sogc2014('resistant hypertension', 'read'),
  afterBirthSameDay: {
    systolic: limit(
      'sogc-after-birth-same-day-systolic',
      '>=',
      150,
      'mm[Hg]',
      ours('150/100 as in other publications'),
    ),
    diastolic: limit(
      'sogc-after-birth-same-day-diastolic',
      '>=',
      100,
      'mm[Hg]',
      ours('150/100 as in other publications'),
    ),
  },
  afterBirthTreatment: {
    systolic: limit('sogc-after-birth-treatment-systolic', '>=', 160, 'mm[Hg]', afterBirth),
    diastolic: limit('sogc-after-birth-treatment-diastolic', '>=', 110, 'mm[Hg]', afterBirth),
  },
  citations: {
    chronic: definition,
    gestational: definition,
    preEclampsia: definition,
    superimposed: sogc2014('superimposed, resistant hypertension', 'read'),
    eclampsia: definition,
    afterBirth,
    home: definition,
    transient: definition,
  },
  care: sogcCare,
  actions: [],
};
