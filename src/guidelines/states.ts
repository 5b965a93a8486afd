// States of the woman that several rules ask for. Data.
import type { Need } from './guideline.ts';

export const pregnant: Need = {
  called: 'pregnant',
  any: ['now-before-20-weeks', 'now-from-20-weeks', 'now-unknown'],
};
export const afterBirth: Need = 'now-after-birth';
export const toHospitalNow: Need = 'referral:hospital-with-intensive-care';
export const noEmergency: Need = { called: 'no emergency transfer', none: [toHospitalNow] };

/** Pre-eclampsia of any kind, or about to be called so. */
export const preEclampsiaOfAnyKind: Need = {
  called: 'any pre-eclampsia',
  any: [
    'class:pre-eclampsia',
    'class:pre-eclampsia-severe-features',
    'class:superimposed-pre-eclampsia',
    'class:postpartum-pre-eclampsia',
    'class:hellp',
    'class:eclampsia',
    'class:imminent-eclampsia',
  ],
};

/** Pre-eclampsia that is established. */
export const establishedPreEclampsia: Need = {
  called: 'established pre-eclampsia',
  any: [
    'class:pre-eclampsia',
    'class:pre-eclampsia-severe-features',
    'class:superimposed-pre-eclampsia',
    'class:hellp',
    'class:eclampsia',
  ],
};

export const gestational: Need = 'class:gestational-hypertension';
export const gestationalSevere: Need = 'class:gestational-hypertension-severe-range';
export const chronic: Need = 'class:chronic-hypertension';
export const undatedHypertension: Need = 'class:hypertension-timing-unknown';

/** Any hypertension that stands, confirmed or on record. */
export const anyHypertension: Need = {
  called: 'any hypertension',
  any: [
    preEclampsiaOfAnyKind,
    gestational,
    gestationalSevere,
    chronic,
    undatedHypertension,
    'class:postpartum-hypertension',
    'class:severe-unconfirmed',
  ],
};

/** Any hypertension, one raised contact included. */
export const anyRaised: Need = {
  called: 'any raised pressure or hypertension',
  any: [anyHypertension, 'class:raised-unconfirmed', 'raised-now'],
};

/** A hypertensive disorder of this pregnancy, after birth. */
export const knownAfterBirth: Need = {
  called: 'after birth, any hypertension of this pregnancy',
  all: [
    afterBirth,
    {
      any: [
        anyHypertension,
        'recorded-any-hypertension',
        'recorded-chronic',
        'recorded-postpartum',
        'confirmed-from-20-weeks',
      ],
    },
  ],
};

/** Pre-eclampsia of this pregnancy, after birth. */
export const preEclampsiaAfterBirth: Need = {
  called: 'after birth, any pre-eclampsia of this pregnancy',
  all: [
    afterBirth,
    {
      any: [
        preEclampsiaOfAnyKind,
        'recorded-pre-eclampsia',
        'recorded-superimposed',
        'recorded-hellp',
        'recorded-eclampsia',
      ],
    },
  ],
};

/** Signs that the kidneys fail. */
export const kidneyTrouble: Need = {
  called: 'signs that the kidneys fail',
  any: ['recorded-kidney-disease', 'kidney-impaired', 'oliguria'],
};
