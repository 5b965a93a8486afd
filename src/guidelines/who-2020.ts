// WHO: the 2011 recommendations, the 2017 manual and the 2020 thresholds; each value names which.
import { whoCare } from './care/who.ts';
import { ours, who2011, who2017, who2020 } from './citations.ts';
import { hellpDefinition, whoSevereOrgans } from './criteria.ts';
import type { Edition } from './edition.ts';
import { limit, severeClosedAfter, severePairInterval, severeRepeat } from './shared-values.ts';

const thresholds = who2020('definition of non-severe hypertension', 'read');
const severe = who2020('complement of non-severe hypertension', 'read');
const interval = who2017('two readings four hours apart', 'from-memory');
const working = who2011('working definition of pre-eclampsia', 'read');
const silent = ours('the texts read are silent; 150/100 as in other publications');

export const who2020Edition: Edition = {
  id: 'who-2020',
  title: 'WHO recommendations 2011 and 2020, with the 2017 manual',
  publisher: 'World Health Organization',
  edition: '2011 recommendations, 2017 manual, 2020 thresholds',
  year: 2020,
  version: '1.2.0',
  status: 'active',
  remark:
    'The working definition was read; interval, strip and ratio limits and the list of severe signs are from memory of the 2017 manual. Protein is required for pre-eclampsia.',
  citation: working,
  hypertension: {
    systolic: limit('who-raised-systolic', '>=', 140, 'mm[Hg]', thresholds),
    diastolic: limit('who-raised-diastolic', '>=', 90, 'mm[Hg]', thresholds),
  },
  severe: {
    systolic: limit('who-severe-systolic', '>=', 160, 'mm[Hg]', severe),
    diastolic: limit('who-severe-diastolic', '>=', 110, 'mm[Hg]', severe),
  },
  confirmation: {
    minimumInterval: limit('who-confirmation-interval', '>=', 4, 'h', interval),
    between: 'occasions',
    sameArm: false,
    citation: interval,
  },
  severeConfirmation: {
    minimumInterval: severePairInterval,
    closedAfter: severeClosedAfter,
    repeatWithin: severeRepeat,
  },
  proteinuria: {
    strip: limit('who-strip', '>=', 2, '{grade}', who2017('proteinuria', 'from-memory')),
    stripAsksForRatio: limit(
      'who-strip-asks-ratio',
      '>=',
      1,
      '{grade}',
      who2017('proteinuria', 'from-memory'),
    ),
    ungradedPositive: 'cannot-tell',
    proteinCreatinineRatio: [
      limit('who-protein-creatinine', '>=', 30, 'mg/mmol', who2017('proteinuria', 'from-memory')),
    ],
    albuminCreatinineRatio: [],
    excretion24h: [limit('who-excretion', '>', 300, 'mg/(24.h)', working)],
  },
  organs: [],
  severeOrgans: whoSevereOrgans,
  severeFeatures: {
    named: true,
    pressure: 'alone',
    dangerSymptoms: false,
    citation: who2017('severe pre-eclampsia', 'from-memory'),
  },
  hellp: hellpDefinition,
  afterBirthSameDay: {
    systolic: limit('who-after-birth-same-day-systolic', '>=', 150, 'mm[Hg]', silent),
    diastolic: limit('who-after-birth-same-day-diastolic', '>=', 100, 'mm[Hg]', silent),
  },
  afterBirthTreatment: {
    systolic: limit('who-after-birth-treatment-systolic', '>=', 150, 'mm[Hg]', silent),
    diastolic: limit('who-after-birth-treatment-diastolic', '>=', 100, 'mm[Hg]', silent),
  },
  citations: {
    chronic: who2011('chronic hypertension', 'from-memory'),
    gestational: who2011('gestational hypertension', 'from-memory'),
    preEclampsia: working,
    superimposed: who2011('superimposed pre-eclampsia', 'from-memory'),
    eclampsia: who2011('eclampsia', 'from-memory'),
    afterBirth: who2011('after birth', 'from-memory'),
    home: silent,
    transient: thresholds,
  },
  care: whoCare,
  actions: [],
};
