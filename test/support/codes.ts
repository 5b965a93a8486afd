// Codes the tests write, by clinical word: LOINC, SNOMED CT and ATC as in the terminology table.

export const stripAnswers = {
  negative: 'LA6577-6',
  trace: 'LA11832-5',
  '1+': 'LA11841-6',
  '2+': 'LA11842-4',
  '3+': 'LA11843-2',
  '4+': 'LA11844-0',
  positive: 'LA6576-8',
} as const;
export type StripAnswer = keyof typeof stripAnswers;

export const laboratoryCodes = {
  platelets: '777-3',
  creatinine: '2160-0',
  'creatinine-moles': '14682-9',
  alt: '1742-6',
  ast: '1920-8',
  ldh: '14804-9',
  bilirubin: '1975-2',
  haemoglobin: '718-7',
  urate: '14933-6',
  'sflt1-plgf-ratio': '74757-6',
  'oxygen-saturation': '59408-5',
  'fundal-height': '11881-0',
  'body-mass-index': '39156-5',
  'heart-rate': '8867-4',
  'respiratory-rate': '9279-1',
} as const;
export type LaboratoryName = keyof typeof laboratoryCodes;

export const symptomCodes = {
  headache: '25064002',
  'visual-disturbance': '63102001',
  'epigastric-pain': '79922009',
  'right-upper-quadrant-pain': '301717006',
  dyspnoea: '267036007',
  vomiting: '422400008',
  'chest-pain': '29857009',
  hyperreflexia: '86854008',
  'altered-mental-status': '419284004',
  seizure: '91175000',
  oliguria: '83128009',
  oedema: '267038008',
  'pulmonary-oedema': '19242006',
  coma: '371632003',
  'vaginal-bleeding': '289530006',
  'reduced-fetal-movement': '276369006',
  clonus: '39055007',
  'abdominal-pain': '21522001',
  'lung-crackles': undefined,
} as const;
export type SymptomName = keyof typeof symptomCodes;

export const conditionCodes = {
  'chronic-hypertension': '59621000',
  'trophoblastic-disease': '416402001',
  stroke: '230690007',
  'chronic-kidney-disease': '709044004',
  'history-of-severe-pre-eclampsia': '161807003',
  'pre-eclampsia': '398254007',
  'gestational-hypertension': '48194001',
  'multiple-pregnancy': '16356006',
  'gestational-diabetes': '11687002',
  'pre-eclampsia-severe': '46764007',
  'superimposed-pre-eclampsia': '67359005',
  hellp: '95605009',
  eclampsia: '15938005',
  epilepsy: '84757009',
  'postpartum-hypertension': '40521000119100',
  'placental-abruption': '415105001',
  'fetal-growth-restriction': '22033007',
} as const;
export type ConditionName = keyof typeof conditionCodes;

export const medicineCodes = {
  labetalol: ['C07AG01', 'labetalol'],
  nifedipine: ['C08CA05', 'nifedipine'],
  methyldopa: ['C02AB01', 'methyldopa'],
  lisinopril: ['C09AA03', 'lisinopril'],
  enalapril: ['C09AA02', 'enalapril'],
  hydralazine: ['C02DB02', 'hydralazine'],
  aspirin: ['B01AC06', 'acetylsalicylic acid'],
  'magnesium-sulfate': ['B05XA05', 'magnesium sulfate'],
} as const;
export type MedicineName = keyof typeof medicineCodes;
