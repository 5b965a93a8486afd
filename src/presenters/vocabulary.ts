// Our public codes and the plain words for them. Data only; every presenter says the same word for the same code.
import type { Classification, ReferralLevel, Urgency } from '../guidelines/guideline.ts';

/** Base of our canonical addresses. A publisher of a fork replaces it here and nowhere else. */
export const canonicalBase = 'https://pregnancy-htn.example/fhir';

/** Our code systems, by what they code. */
export const codeSystems = {
  classification: `${canonicalBase}/CodeSystem/classification`,
  urgency: `${canonicalBase}/CodeSystem/urgency`,
  cardTopic: `${canonicalBase}/CodeSystem/card-topic`,
  missing: `${canonicalBase}/CodeSystem/missing`,
  issue: `${canonicalBase}/CodeSystem/issue`,
  overrideReason: `${canonicalBase}/CodeSystem/override-reason`,
} as const;

/** Key of our member in every CDS Hooks `extension`. */
export const extensionKey = 'org.pregnancy-htn.assessment';

/** Each class in words a nurse-midwife uses. */
export const classWords: Readonly<Record<Classification, string>> = {
  eclampsia: 'eclampsia',
  'imminent-eclampsia': 'imminent eclampsia',
  hellp: 'HELLP syndrome',
  'pre-eclampsia-severe-features': 'pre-eclampsia with severe features',
  'superimposed-pre-eclampsia': 'superimposed pre-eclampsia',
  'postpartum-pre-eclampsia': 'pre-eclampsia after birth',
  'severe-unconfirmed': 'severe pressure, not yet repeated',
  'pre-eclampsia': 'pre-eclampsia',
  'gestational-hypertension-severe-range': 'gestational hypertension in the severe range',
  'postpartum-hypertension': 'hypertension after birth',
  'gestational-hypertension': 'gestational hypertension',
  'cannot-classify': 'cannot be judged from these data',
  'white-coat-hypertension': 'white-coat hypertension',
  'chronic-hypertension': 'chronic hypertension',
  'hypertension-timing-unknown': 'hypertension, time in pregnancy unknown',
  'masked-hypertension': 'masked hypertension (raised at home)',
  'raised-unconfirmed': 'raised pressure, not yet confirmed',
  'isolated-proteinuria': 'protein in the urine without raised pressure',
  'transient-hypertension': 'raised pressure that has settled',
  normotensive: 'no raised blood pressure found',
};

/** Each urgency as an instruction. */
export const urgencyWords: Readonly<Record<Urgency, string>> = {
  emergency: 'EMERGENCY, act now',
  'same-day': 'act today',
  'within-48-hours': 'act within 48 hours',
  'within-7-days': 'act within 7 days',
  routine: 'routine care',
};

/** By when something missing is needed. */
export const neededByWords: Readonly<Record<Urgency, string>> = {
  emergency: 'now',
  'same-day': 'today',
  'within-48-hours': 'within 48 hours',
  'within-7-days': 'within 7 days',
  routine: 'at the next visit',
};

/** Where to, in words. */
export const referralWords: Readonly<Record<ReferralLevel, string>> = {
  'hospital-with-intensive-care': 'hospital able to operate and give intensive care',
  hospital: 'hospital',
  clinic: 'clinic follow-up',
};
