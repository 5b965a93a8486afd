// Organ criteria and HELLP limits, each written once and cited to the publication that prints it. Data only.
import {
  acog222,
  hellpTable,
  hellpTennessee,
  isshp2021,
  nice133,
  ours,
  who2017,
  indiaDeck,
} from './citations.ts';
import type { Citation, HellpDefinition, OrganCriterion, SymptomId, ConditionId } from './guideline.ts';
import { limit } from './shared-values.ts';

const symptom = (
  id: string,
  organ: string,
  symptoms: readonly SymptomId[],
  citation: Citation,
): OrganCriterion => ({ id, kind: 'symptom', organ, symptoms, citation });
const condition = (
  id: string,
  organ: string,
  conditions: readonly ConditionId[],
  citation: Citation,
): OrganCriterion => ({ id, kind: 'condition', organ, conditions, citation });

const isshpTable = isshp2021(
  'definition of pre-eclampsia, as reproduced in BMC Nephrology 2019 table 2',
  'read',
);
const niceDefinition = nice133('terms used: pre-eclampsia', 'read');
const acogTable = acog222('diagnostic criteria, as reproduced in three tables', 'read');

/** Level at which ISSHP detects. */
export const isshpOrgans: readonly OrganCriterion[] = [
  {
    id: 'platelets-below-150',
    kind: 'laboratory',
    organ: 'blood',
    analytes: ['platelets'],
    limit: limit('isshp-platelets', '<', 150, '10*9/L', isshpTable),
  },
  {
    id: 'creatinine-90-or-more',
    kind: 'laboratory',
    organ: 'kidney',
    analytes: ['creatinine'],
    limit: limit('isshp-creatinine', '>=', 90, 'umol/L', isshpTable),
  },
  {
    id: 'liver-enzymes-above-40',
    kind: 'laboratory',
    organ: 'liver',
    analytes: ['alt', 'ast'],
    limit: limit('isshp-transaminases', '>', 40, 'U/L', isshpTable),
  },
  symptom(
    'brain-sign',
    'brain',
    ['headache', 'visual-disturbance', 'clonus', 'altered-mental-status', 'seizure'],
    isshpTable,
  ),
  symptom('lung-oedema', 'lung', ['pulmonary-oedema'], isshpTable),
  condition(
    'blood-clotting-disorder',
    'blood',
    ['disseminated-intravascular-coagulation', 'stroke'],
    isshpTable,
  ),
  condition(
    'placental-sign',
    'placenta',
    ['fetal-growth-restriction', 'fetal-death', 'placental-abruption'],
    isshpTable,
  ),
];

const angiogenic = isshp2021(
  'angiogenic imbalance as a criterion',
  'from-memory',
  'cut-offs 85 and 110 read in PMC5309866',
);
const week20 = limit('growth-factor-week-20', '>=', 140, 'd', angiogenic);
const week34 = limit('growth-factor-week-34', '>=', 238, 'd', angiogenic);
const growthFactors = (
  id: string,
  ratio: number,
  part: Partial<Extract<OrganCriterion, { kind: 'laboratory' }>>,
): OrganCriterion => ({
  id,
  kind: 'laboratory',
  organ: 'placenta',
  analytes: ['sflt1-plgf-ratio'],
  limit: limit(`isshp-${id}`, '>=', ratio, '1', angiogenic),
  unlessRecorded: ['multiple-pregnancy'],
  isAdjunct: true,
  ...part,
});

/** ISSHP 2021 adds an imbalance of growth factors (from memory); never used in multiple pregnancy, never reassuring. */
export const isshpGrowthFactors: readonly OrganCriterion[] = [
  growthFactors('growth-factor-imbalance-before-34-weeks', 85, { fromAge: week20, beforeAge: week34 }),
  growthFactors('growth-factor-imbalance-from-34-weeks', 110, { fromAge: week34 }),
];

export const niceOrgans: readonly OrganCriterion[] = [
  {
    id: 'platelets-below-150',
    kind: 'laboratory',
    organ: 'blood',
    analytes: ['platelets'],
    limit: limit('nice-platelets', '<', 150, '10*9/L', niceDefinition),
  },
  {
    id: 'creatinine-90-or-more',
    kind: 'laboratory',
    organ: 'kidney',
    analytes: ['creatinine'],
    limit: limit('nice-creatinine', '>=', 90, 'umol/L', niceDefinition),
  },
  {
    id: 'liver-enzymes-above-40',
    kind: 'laboratory',
    organ: 'liver',
    analytes: ['alt', 'ast'],
    limit: limit('nice-transaminases', '>', 40, 'U/L', niceDefinition),
  },
  symptom(
    'brain-sign',
    'brain',
    ['headache', 'visual-disturbance', 'clonus', 'altered-mental-status', 'seizure'],
    niceDefinition,
  ),
  symptom('epigastric-pain', 'liver', ['epigastric-pain'], niceDefinition),
  symptom('lung-oedema', 'lung', ['pulmonary-oedema'], nice133('1.5.2', 'read')),
  symptom('little-urine', 'kidney', ['oliguria'], niceDefinition),
  condition(
    'blood-clotting-disorder',
    'blood',
    ['disseminated-intravascular-coagulation', 'stroke'],
    niceDefinition,
  ),
  condition('placental-sign', 'placenta', ['fetal-growth-restriction', 'fetal-death'], niceDefinition),
];

/** ACOG: each is both a criterion of the disease and a severe feature. */
export const acogOrgans: readonly OrganCriterion[] = [
  {
    id: 'platelets-below-100',
    kind: 'laboratory',
    organ: 'blood',
    analytes: ['platelets'],
    limit: limit('acog-platelets', '<', 100, '10*9/L', acogTable),
  },
  {
    id: 'creatinine-above-1.1',
    kind: 'laboratory',
    organ: 'kidney',
    analytes: ['creatinine'],
    limit: {
      ...limit('acog-creatinine', '>', 1.1, 'mg/dL', acogTable),
      alsoPrintedAs: [{ value: 97, unit: 'umol/L' }],
    },
  },
  {
    id: 'creatinine-doubled',
    kind: 'multiple-of-baseline',
    organ: 'kidney',
    analytes: ['creatinine'],
    limit: limit('acog-creatinine-doubling', '>=', 2, '1', acogTable),
    unlessRecorded: ['chronic-kidney-disease'],
  },
  {
    id: 'liver-enzymes-twice-upper-limit',
    kind: 'multiple-of-upper-limit',
    organ: 'liver',
    analytes: ['alt', 'ast'],
    limit: limit('acog-transaminases', '>=', 2, '1', acogTable),
    assumedUpperLimit: limit(
      'assumed-transaminase-upper-limit',
      '<=',
      40,
      'U/L',
      ours('used when the laboratory states no plausible upper limit'),
    ),
    plausibleUpperLimit: {
      low: limit(
        'plausible-upper-limit-low',
        '>=',
        10,
        'U/L',
        ours('an upper limit of a transaminase outside this range is not believed'),
      ),
      high: limit(
        'plausible-upper-limit-high',
        '<=',
        70,
        'U/L',
        ours('an upper limit of a transaminase outside this range is not believed'),
      ),
    },
  },
  symptom('epigastric-pain', 'liver', ['epigastric-pain'], acogTable),
  symptom('headache', 'brain', ['headache'], acogTable),
  symptom('disturbed-sight', 'brain', ['visual-disturbance'], acogTable),
  symptom('lung-oedema', 'lung', ['pulmonary-oedema'], acogTable),
];

/** Grades severity only: low saturation in a woman with the disease is taken for possible pulmonary oedema. */
const possibleLungOedema: OrganCriterion = {
  id: 'possible-lung-oedema',
  kind: 'laboratory',
  organ: 'lung',
  analytes: ['oxygen-saturation'],
  limit: limit(
    'possible-lung-oedema-saturation',
    '<',
    94,
    '%',
    ours('low saturation is taken for pulmonary oedema until excluded'),
  ),
  isAdjunct: true,
};

/** ACOG's severe features, with the sign of pulmonary oedema that a clinic can measure. */
export const acogSevereOrgans: readonly OrganCriterion[] = [...acogOrgans, possibleLungOedema];

/** Blood results that count as severe, whatever the pressure; a kidney known to be ill is no news. */
export const severeResults: readonly OrganCriterion[] = acogOrgans.flatMap(
  (item): readonly OrganCriterion[] =>
    item.kind === 'multiple-of-upper-limit'
      ? [item]
      : item.kind === 'laboratory'
        ? [{ ...item, unlessRecorded: item.organ === 'kidney' ? ['chronic-kidney-disease'] : [] }]
        : [],
);

/** First level: the union of the published criteria, so that nothing is missed. */
export const unionOrgans: readonly OrganCriterion[] = [
  ...isshpOrgans,
  ...acogOrgans.filter(
    (item) => item.kind === 'multiple-of-baseline' || item.kind === 'multiple-of-upper-limit',
  ),
  symptom('epigastric-pain', 'liver', ['epigastric-pain'], acogTable),
  symptom('little-urine', 'kidney', ['oliguria'], niceDefinition),
];

const whoSigns = who2017('severe pre-eclampsia', 'from-memory');
export const whoSevereOrgans: readonly OrganCriterion[] = [
  symptom('brain-sign', 'brain', ['headache', 'visual-disturbance', 'hyperreflexia', 'clonus'], whoSigns),
  symptom('breathing-difficulty', 'lung', ['dyspnoea', 'pulmonary-oedema'], whoSigns),
  symptom('little-urine', 'kidney', ['oliguria'], whoSigns),
  symptom('upper-abdominal-pain', 'liver', ['epigastric-pain'], whoSigns),
];

const deckSigns = indiaDeck('severe pre-eclampsia', 'read');
export const indiaSevereOrgans: readonly OrganCriterion[] = [
  symptom('brain-sign', 'brain', ['headache', 'visual-disturbance'], deckSigns),
  symptom('little-urine', 'kidney', ['oliguria'], deckSigns),
  symptom('epigastric-pain', 'liver', ['epigastric-pain'], deckSigns),
  symptom('abnormal-oedema', 'fluid', ['oedema'], deckSigns),
];

const tennessee = hellpTennessee('triad', 'read');
const mississippi = hellpTable('table 1', 'read');
const classOf = (name: string, platelets: number, enzyme: number) => ({
  name: `class ${name}`,
  platelets: limit(`mississippi-${name}-platelets`, '<=', platelets, '10*9/L', mississippi),
  transaminase: limit(`mississippi-${name}-transaminase`, '>=', enzyme, 'U/L', mississippi),
  ldh: limit(`mississippi-${name}-ldh`, '>=', 600, 'U/L', mississippi),
});

/** Class 1 is the worst; a web page that prints them in reverse is wrong. */
export const hellpDefinition: HellpDefinition = {
  tennessee: {
    ldh: limit('tennessee-ldh', '>', 600, 'U/L', tennessee),
    bilirubin: limit('tennessee-bilirubin', '>', 1.2, 'mg/dL', tennessee),
    ast: limit('tennessee-ast', '>=', 70, 'U/L', tennessee),
    platelets: limit('tennessee-platelets', '<', 100, '10*9/L', tennessee),
  },
  mississippi: [classOf('1', 50, 70), classOf('2', 100, 70), classOf('3', 150, 40)],
};
