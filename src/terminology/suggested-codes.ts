// Codes we write: for a suggested condition by its class, for a referral by its level. Data only.
import type { SystemCode } from './code-row.ts';
import { systems } from './systems.ts';

/** Codes of one suggestion, SNOMED CT first, then ICD-10, ICD-10-CM, ICD-11 where one fits. */
export interface SuggestedCodes {
  readonly codes: readonly SystemCode[];
  /** Used instead when the class is given after a birth. */
  readonly afterBirth?: readonly SystemCode[];
}

const snomed = (code: string, display?: string): SystemCode =>
  display === undefined
    ? { system: systems.snomed, code, known: 'read' }
    : { system: systems.snomed, code, display, known: 'read' };
const icd10 = (code: string): SystemCode => ({ system: systems.icd10, code, known: 'read' });
const icd10cm = (code: string): SystemCode => ({ system: systems.icd10cm, code, known: 'read' });
const icd11 = (code: string): SystemCode => ({ system: systems.icd11, code, known: 'read' });

const raised: SuggestedCodes = {
  codes: [
    snomed('371622005', 'Elevated blood pressure reading without diagnosis of hypertension (situation)'),
    icd10('R03.0'),
    icd10cm('R03.0'),
    icd11('MC80.0'),
  ],
};

const gestational: SuggestedCodes = {
  codes: [
    snomed('48194001', 'Pregnancy-induced hypertension (disorder)'),
    icd10('O13'),
    icd10cm('O13.9'),
    icd11('JA23'),
  ],
};

/**
 * Class of the answer to the codes of the condition it suggests. A class without an entry suggests none.
 *
 * Notes    1. SNOMED CT terms only for the Global Patient Set (CC BY 4.0); no term otherwise. No ICD titles.
 *          2. ICD-10-CM codes are those of an unspecified trimester, since a trimester is not part of the class;
 *             after a birth the code of the puerperium, where one was read, else none.
 *          3. Ours, for want of a code of its own: imminent eclampsia as severe pre-eclampsia in ICD-10;
 *             masked hypertension as a finding of increased pressure; transient and post-partum hypertension
 *             as gestational hypertension in WHO ICD-10.
 * Source   terminology.csv section 6.
 */
export const suggestedConditionCodes = {
  eclampsia: {
    codes: [snomed('15938005', 'Eclampsia (disorder)'), icd10('O15.9'), icd10cm('O15.9'), icd11('JA25.3')],
    afterBirth: [snomed('303063000'), icd10('O15.2'), icd10cm('O15.2'), icd11('JA25.2')],
  },
  'imminent-eclampsia': {
    codes: [snomed('237282002'), icd10('O14.1'), icd10cm('O14.10'), icd11('JA24.1')],
    afterBirth: [snomed('237282002'), icd10('O14.1'), icd10cm('O14.15'), icd11('JA24.1')],
  },
  hellp: {
    codes: [snomed('95605009'), icd10('O14.2'), icd10cm('O14.20'), icd11('JA24.2')],
    afterBirth: [snomed('95605009'), icd10('O14.2'), icd11('JA24.2')],
  },
  'pre-eclampsia-severe-features': {
    codes: [
      snomed('46764007', 'Severe pre-eclampsia (disorder)'),
      icd10('O14.1'),
      icd10cm('O14.10'),
      icd11('JA24.1'),
    ],
    afterBirth: [
      snomed('46764007', 'Severe pre-eclampsia (disorder)'),
      icd10('O14.1'),
      icd10cm('O14.15'),
      icd11('JA24.1'),
    ],
  },
  'superimposed-pre-eclampsia': {
    codes: [
      snomed('67359005', 'Pre-eclampsia added to pre-existing hypertension (disorder)'),
      icd10('O11'),
      icd10cm('O11.9'),
      icd11('JA21'),
    ],
    afterBirth: [
      snomed('67359005', 'Pre-eclampsia added to pre-existing hypertension (disorder)'),
      icd10('O11'),
      icd10cm('O11.5'),
      icd11('JA21'),
    ],
  },
  'postpartum-pre-eclampsia': {
    codes: [snomed('398254007', 'Pre-eclampsia (disorder)'), icd10('O14.9'), icd11('JA24.Z')],
  },
  'severe-unconfirmed': raised,
  'pre-eclampsia': {
    codes: [
      snomed('398254007', 'Pre-eclampsia (disorder)'),
      icd10('O14.9'),
      icd10cm('O14.90'),
      icd11('JA24.Z'),
    ],
  },
  'gestational-hypertension-severe-range': gestational,
  'postpartum-hypertension': {
    codes: [snomed('40521000119100'), icd10('O13'), icd10cm('O13.5'), icd11('JA23')],
  },
  'gestational-hypertension': gestational,
  'white-coat-hypertension': {
    codes: [
      snomed('697930002', 'Labile hypertension due to being in a clinical environment (disorder)'),
      icd10('R03.0'),
      icd10cm('R03.0'),
      icd11('MC80.00'),
    ],
  },
  'chronic-hypertension': {
    codes: [
      snomed(
        '37618003',
        'Chronic hypertension complicating AND/OR reason for care during pregnancy (disorder)',
      ),
      // The table holds the category O10 only, which is not a code to record; .9 is "unspecified".
      { system: systems.icd10, code: 'O10.9', known: 'from-memory' },
      icd10cm('O10.919'),
      icd11('JA20'),
    ],
    afterBirth: [
      snomed(
        '24042004',
        'Chronic hypertension complicating AND/OR reason for care during puerperium (disorder)',
      ),
      { system: systems.icd10, code: 'O10.9', known: 'from-memory' },
      icd11('JA20'),
    ],
  },
  'hypertension-timing-unknown': {
    codes: [
      snomed('288250001', 'Maternal hypertension (disorder)'),
      icd10('O16'),
      icd10cm('O16.9'),
      icd11('JA2Z'),
    ],
  },
  'masked-hypertension': {
    codes: [
      snomed('24184005', 'Finding of increased blood pressure (finding)'),
      icd10('R03.0'),
      icd10cm('R03.0'),
    ],
  },
  'raised-unconfirmed': raised,
  'isolated-proteinuria': {
    codes: [
      snomed('34165000', 'Gestational proteinuria (disorder)'),
      icd10('O12.1'),
      icd10cm('O12.1'),
      icd11('JA22.0'),
    ],
  },
  'transient-hypertension': {
    codes: [
      snomed('237279007', 'Transient hypertension of pregnancy (disorder)'),
      icd10('O13'),
      icd10cm('O13.9'),
    ],
  },
} as const satisfies Readonly<Record<string, SuggestedCodes>>;

/**
 * Level of referral to the code of the ServiceRequest. Urgency travels in its priority.
 *
 * Source   terminology.csv section 8.
 */
export const suggestedReferralCodes = {
  'hospital-with-intensive-care': [snomed('183452005', 'Emergency hospital admission (procedure)')],
  hospital: [snomed('310449005', 'Referral to hospital (procedure)')],
  clinic: [snomed('183548008', 'Referral to obstetrics service (procedure)')],
} as const satisfies Readonly<Record<string, readonly SystemCode[]>>;

/** Codes under which a running referral or admission of ours or of others may already be on the chart. */
export const referralCodes: readonly SystemCode[] = [
  snomed('3457005', 'Patient referral (procedure)'),
  snomed('183548008', 'Referral to obstetrics service (procedure)'),
  snomed('308484001'),
  snomed('306297007'),
  snomed('310449005', 'Referral to hospital (procedure)'),
  snomed('306104004', 'Referral to accident and emergency service (procedure)'),
  snomed('183452005', 'Emergency hospital admission (procedure)'),
  snomed('183460006'),
  snomed('107724000', 'Patient transfer (procedure)'),
  snomed('429202003', 'Transfer of care to hospital (procedure)'),
];
