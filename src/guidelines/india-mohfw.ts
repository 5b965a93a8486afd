// India: the Government training deck, and the MoHFW treatment guideline where the deck is silent.
import { indiaCare } from './care/india.ts';
import { indiaDeck, indiaStg, ours } from './citations.ts';
import { hellpDefinition, indiaSevereOrgans } from './criteria.ts';
import type { Edition } from './edition.ts';
import { limit, severeClosedAfter, severePairInterval, severeRepeat } from './shared-values.ts';

const definition = indiaDeck('definition', 'read');
const silent = ours('the deck and the treatment guideline are silent; 150/100 as in other publications');

export const indiaMohfwEdition: Edition = {
  id: 'india-mohfw',
  title: 'Government of India training deck; MoHFW Standard Treatment Guideline',
  publisher: 'Ministry of Health and Family Welfare, Government of India',
  edition: 'training deck, with the treatment guideline',
  year: 2015,
  version: '1.2.0',
  status: 'active',
  remark:
    'The training deck; the treatment guideline (interval six hours, strip 1+) only where the deck is silent. No organ criteria beside protein.',
  citation: definition,
  hypertension: {
    systolic: limit('india-raised-systolic', '>=', 140, 'mm[Hg]', definition),
    diastolic: limit('india-raised-diastolic', '>=', 90, 'mm[Hg]', definition),
  },
  severe: {
    systolic: limit('india-severe-systolic', '>=', 160, 'mm[Hg]', indiaDeck('severe', 'read')),
    diastolic: limit('india-severe-diastolic', '>=', 110, 'mm[Hg]', indiaDeck('severe', 'read')),
  },
  confirmation: {
    minimumInterval: limit(
      'india-confirmation-interval',
      '>=',
      4,
      'h',
      indiaDeck('two consecutive readings four hours apart', 'read'),
    ),
    between: 'occasions',
    sameArm: false,
    citation: indiaDeck('two consecutive readings four hours apart', 'read'),
  },
  severeConfirmation: {
    minimumInterval: severePairInterval,
    closedAfter: severeClosedAfter,
    repeatWithin: severeRepeat,
  },
  proteinuria: {
    strip: limit(
      'india-strip',
      '>=',
      0.5,
      '{grade}',
      indiaDeck('trace, 1+ or 2+ with raised pressure', 'read'),
    ),
    ungradedPositive: 'cannot-tell',
    proteinCreatinineRatio: [
      limit(
        'india-protein-creatinine',
        '>=',
        0.3,
        'mg/mg',
        ours('neither text prints a ratio; taken as the equivalent of 300 mg in 24 hours'),
      ),
    ],
    albuminCreatinineRatio: [],
    excretion24h: [limit('india-excretion', '>', 300, 'mg/(24.h)', indiaStg('case definition', 'read'))],
  },
  organs: [],
  severeOrgans: indiaSevereOrgans,
  severeFeatures: {
    named: true,
    pressure: 'with-heavy-protein',
    dangerSymptoms: false,
    heavyProtein: limit('india-heavy-protein', '>=', 3, '{grade}', indiaDeck('severe pre-eclampsia', 'read')),
    citation: indiaDeck('severe pre-eclampsia', 'read'),
  },
  hellp: hellpDefinition,
  afterBirthSameDay: {
    systolic: limit('india-after-birth-same-day-systolic', '>=', 150, 'mm[Hg]', silent),
    diastolic: limit('india-after-birth-same-day-diastolic', '>=', 100, 'mm[Hg]', silent),
  },
  afterBirthTreatment: {
    systolic: limit('india-after-birth-treatment-systolic', '>=', 150, 'mm[Hg]', silent),
    diastolic: limit('india-after-birth-treatment-diastolic', '>=', 100, 'mm[Hg]', silent),
  },
  citations: {
    chronic: indiaDeck('before 20 weeks', 'read'),
    gestational: definition,
    preEclampsia: indiaDeck('pre-eclampsia', 'read'),
    superimposed: indiaDeck('pre-eclampsia on chronic hypertension', 'from-memory'),
    eclampsia: indiaDeck('a fit in pregnancy is eclampsia until another cause is proven', 'read'),
    afterBirth: indiaStg('after birth', 'from-memory'),
    home: silent,
    transient: definition,
  },
  care: indiaCare,
  actions: [],
};
