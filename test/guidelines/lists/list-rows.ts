// Which symptoms, conditions and medicines a question looks for, edition by edition. From the clinical rules 1.3, 2.1, 2.5, 2.8, 2.9.
import type { ConditionId, MedicineId, SymptomId } from '../../../src/guidelines/guideline.ts';
import { everyEdition, except, type Edition } from '../limits/limit-row.ts';

export interface ListRow<Id> {
  readonly source: string;
  readonly editions: readonly Edition[];
  readonly question: string;
  /** These are looked for. */
  readonly names: readonly Id[];
  /** These are not; left out: everything else of the vocabulary. */
  readonly others?: readonly Id[];
}

export const allSymptoms = [
  'headache',
  'visual-disturbance',
  'epigastric-pain',
  'dyspnoea',
  'vomiting',
  'nausea',
  'chest-pain',
  'clonus',
  'hyperreflexia',
  'altered-mental-status',
  'seizure',
  'oliguria',
  'vaginal-bleeding',
  'abdominal-pain',
  'reduced-fetal-movement',
  'oedema',
  'pulmonary-oedema',
  'lung-crackles',
] as const satisfies readonly SymptomId[];

const symptomRow = (
  source: string,
  editions: readonly Edition[],
  question: string,
  names: readonly SymptomId[],
): ListRow<SymptomId> => ({ source, editions, question, names });

const danger: readonly SymptomId[] = [
  'headache',
  'visual-disturbance',
  'epigastric-pain',
  'dyspnoea',
  'clonus',
  'altered-mental-status',
];
const brain: readonly SymptomId[] = [
  'headache',
  'visual-disturbance',
  'clonus',
  'altered-mental-status',
  'seizure',
];
const acog: readonly SymptomId[] = ['headache', 'visual-disturbance', 'epigastric-pain', 'pulmonary-oedema'];

/** Signs of an organ, whatever the time: asked from 20 weeks on, and after birth. */
export const organSymptoms: readonly ListRow<SymptomId>[] = [
  symptomRow(
    '1.3 neurology and lungs, ISSHP (R S7); SOGC as ISSHP (decision 19)',
    ['isshp-2021', 'sogc-2022'],
    'organ',
    [...brain, 'pulmonary-oedema'],
  ),
  symptomRow('1.3 NICE (R S1), urine output and epigastric pain among it', ['nice-2023'], 'organ', [
    ...brain,
    'pulmonary-oedema',
    'oliguria',
    'epigastric-pain',
  ]),
  symptomRow('1.3 ACOG (R S3)', ['acog-2020'], 'organ', acog),
  symptomRow('decision 19: the union of the published criteria', ['frontline'], 'organ', [
    ...brain,
    'pulmonary-oedema',
    'oliguria',
    'epigastric-pain',
  ]),
  symptomRow(
    '1.3 protein alone makes it (WHO R S8, India R S11, S12)',
    ['who-2020', 'india-mohfw'],
    'organ',
    [],
  ),
];

export const severeSymptoms: readonly ListRow<SymptomId>[] = [
  symptomRow(
    '1.3 ACOG severe features (R S3); decision 19',
    ['frontline', 'acog-2020', 'sogc-2022'],
    'severe-organ',
    acog,
  ),
  symptomRow('1.3 WHO manual (M)', ['who-2020'], 'severe-organ', [
    'headache',
    'visual-disturbance',
    'hyperreflexia',
    'clonus',
    'dyspnoea',
    'pulmonary-oedema',
    'oliguria',
    'epigastric-pain',
  ]),
  symptomRow('1.3 Indian deck (R S11)', ['india-mohfw'], 'severe-organ', [
    'headache',
    'visual-disturbance',
    'oliguria',
    'epigastric-pain',
    'oedema',
  ]),
  symptomRow(
    '1.3 no severe label of organs (ISSHP M, NICE R S1)',
    ['isshp-2021', 'nice-2023'],
    'severe-organ',
    [],
  ),
];

/** What each question of the moment looks for. */
export const symptomRows: readonly ListRow<SymptomId>[] = (
  [
    ['2.1 rule 4', 'danger-symptom', ['headache', 'visual-disturbance', 'epigastric-pain', 'dyspnoea']],
    ['2.1 rule 4', 'danger-sign', ['clonus', 'altered-mental-status']],
    ['2.1 rule 6', 'breathless', ['dyspnoea', 'lung-crackles']],
    ['2.1 rule 6', 'lung-oedema', ['pulmonary-oedema']],
    ['ours: examined the same day', 'chest-pain', ['chest-pain']],
    ['2.1 rule 1', 'seizure', ['seizure']],
    ['2.1 rule 1', 'seizure-any-time', ['seizure']],
    ['2.1 rule 7', 'vaginal-bleeding', ['vaginal-bleeding']],
    ['2.1 rule 7', 'abdominal-pain', ['abdominal-pain', 'epigastric-pain']],
    ['2.1 rule 8', 'reduced-fetal-movement', ['reduced-fetal-movement']],
    ['1.3 urine output', 'oliguria', ['oliguria']],
  ] as const
).map(([source, question, names]) => symptomRow(source, everyEdition, question, names));

/** Beside one severe reading these confirm it (2.1 rules 3 and 4); while they last no lower reading closes it (decision 11). */
export const dangerBesideSevere = danger;

const conditionRow = (
  source: string,
  editions: readonly Edition[],
  question: string,
  names: readonly ConditionId[],
): ListRow<ConditionId> => ({ source, editions, question, names });

export const allConditions = [
  'chronic-hypertension',
  'gestational-hypertension',
  'pre-eclampsia',
  'pre-eclampsia-severe',
  'superimposed-pre-eclampsia',
  'hellp',
  'eclampsia',
  'postpartum-hypertension',
  'hypertension-in-pregnancy-unspecified',
  'trophoblastic-disease',
  'fetal-growth-restriction',
  'fetal-death',
  'placental-abruption',
  'disseminated-intravascular-coagulation',
  'stroke',
  'epilepsy',
  'multiple-pregnancy',
  'chronic-kidney-disease',
  'diabetes',
  'heart-failure',
] as const satisfies readonly ConditionId[];

const blood: readonly ConditionId[] = ['disseminated-intravascular-coagulation', 'stroke'];
const fetus: readonly ConditionId[] = ['fetal-growth-restriction', 'fetal-death'];

export const organConditions: readonly ListRow<ConditionId>[] = [
  conditionRow(
    '1.3 ISSHP: DIC, stroke, growth, stillbirth, abruption (R S7); decision 19',
    ['isshp-2021', 'sogc-2022', 'frontline'],
    'organ',
    [...blood, ...fetus, 'placental-abruption'],
  ),
  conditionRow('1.3 NICE: DIC, stroke, growth, stillbirth (R S1)', ['nice-2023'], 'organ', [
    ...blood,
    ...fetus,
  ]),
  conditionRow(
    '1.3 fetus and placenta are not criteria of ACOG (R S3), nor of WHO and India',
    ['acog-2020', 'who-2020', 'india-mohfw'],
    'organ',
    [],
  ),
];

/** A diagnosis in the record is respected; each question looks for its own. */
export const conditionRows: readonly ListRow<ConditionId>[] = (
  [
    ['recorded-chronic', ['chronic-hypertension']],
    ['recorded-gestational', ['gestational-hypertension']],
    ['recorded-pre-eclampsia', ['pre-eclampsia', 'pre-eclampsia-severe']],
    ['recorded-severe-pre-eclampsia', ['pre-eclampsia-severe']],
    ['recorded-superimposed', ['superimposed-pre-eclampsia']],
    ['recorded-hellp', ['hellp']],
    ['recorded-eclampsia', ['eclampsia']],
    ['recorded-postpartum', ['postpartum-hypertension']],
    [
      'recorded-any-hypertension',
      [
        'gestational-hypertension',
        'pre-eclampsia',
        'pre-eclampsia-severe',
        'superimposed-pre-eclampsia',
        'hellp',
        'eclampsia',
        'hypertension-in-pregnancy-unspecified',
      ],
    ],
    ['recorded-trophoblastic', ['trophoblastic-disease']],
    ['recorded-epilepsy', ['epilepsy']],
    ['recorded-abruption', ['placental-abruption']],
    ['recorded-multiple', ['multiple-pregnancy']],
    ['recorded-kidney-disease', ['chronic-kidney-disease']],
  ] as const
).map(([question, names]) => conditionRow('2.4 and decision 2: as recorded', everyEdition, question, names));

/** Taken for the pressure (2.8, 2.9). */
export const pressureMedicines: readonly MedicineId[] = [
  'labetalol',
  'nifedipine',
  'amlodipine',
  'methyldopa',
  'hydralazine',
  'dihydralazine',
  'nicardipine',
  'ace-inhibitor',
  'angiotensin-receptor-blocker',
  'renin-inhibitor',
  'neprilysin-inhibitor',
  'atenolol',
  'other-beta-blocker',
  'other-antihypertensive',
  'thiazide',
  'enalapril',
  'captopril',
];
const forOtherReasons: readonly MedicineId[] = [
  'magnesium-sulfate',
  'calcium-gluconate',
  'aspirin',
  'calcium-supplement',
  'statin',
  'nsaid',
  'ergometrine',
];

export const medicineRows: readonly ListRow<MedicineId>[] = [
  {
    source: '2.8 and 2.9: drugs that lower the pressure',
    editions: everyEdition,
    question: 'treated',
    names: pressureMedicines,
    others: forOtherReasons,
  },
  {
    source:
      '2.9 avoid: ACE inhibitors, ARBs, ARNI, renin inhibitors (R S1, S25), spironolactone, atenolol (R S25), statins (M); decision 27',
    editions: everyEdition,
    question: 'agent-to-avoid',
    names: [
      'ace-inhibitor',
      'angiotensin-receptor-blocker',
      'renin-inhibitor',
      'neprilysin-inhibitor',
      'aldosterone-antagonist',
      'atenolol',
      'enalapril',
      'captopril',
      'statin',
    ],
    others: ['labetalol', 'nifedipine', 'methyldopa', 'hydralazine', 'aspirin', 'magnesium-sulfate'],
  },
  {
    source:
      '2.5 rule 48 and decision 27: receptor blockers not while breast-feeding; enalapril and captopril allowed',
    editions: except(),
    question: 'agent-to-avoid-after-birth',
    names: ['angiotensin-receptor-blocker', 'renin-inhibitor', 'neprilysin-inhibitor'],
    others: ['enalapril', 'captopril', 'labetalol', 'nifedipine', 'atenolol'],
  },
  {
    source: '2.7',
    editions: everyEdition,
    question: 'magnesium-given',
    names: ['magnesium-sulfate'],
    others: pressureMedicines,
  },
  {
    source: '2.5 rule 48: methyldopa stops after birth (R S1)',
    editions: everyEdition,
    question: 'methyldopa-in-use',
    names: ['methyldopa'],
    others: ['labetalol', 'nifedipine', 'hydralazine'],
  },
];
