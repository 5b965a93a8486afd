// States of the woman that several rules ask for. Data.
import type { Edition } from './edition.ts';
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

/** A reading is in the severe range, whether repeated or not. */
export const severeReading: Need = { any: ['severe-open', 'severe-current'] };

/** In eclampsia one severe reading is treated and not waited for (rule 1). */
export const severeInAFit: Need = {
  called: 'a severe reading in eclampsia',
  all: ['severe-open', 'class:eclampsia'],
};

export const gestational: Need = 'class:gestational-hypertension';
export const gestationalSevere: Need = 'class:gestational-hypertension-severe-range';
export const chronic: Need = 'class:chronic-hypertension';
/** Chronic hypertension that pre-eclampsia has not joined. */
export const chronicAlone: Need = {
  called: 'chronic hypertension without pre-eclampsia',
  all: [chronic, { none: [preEclampsiaOfAnyKind] }],
};
export const undatedHypertension: Need = 'class:hypertension-timing-unknown';

/** Raised in the clinic and not at home, in the first half of pregnancy: watched, not treated. */
const whiteCoatAlone: Need = {
  called: 'before 20+0 weeks, not raised at home',
  all: ['home-below-on-record', 'now-before-20-weeks'],
};

/** Confirmed hypertension for which a drug may be started; an edition without home limits knows no white-coat. */
export const forDrugs = ({ home, care }: Edition): Need =>
  home === undefined ? care.startDrug.classes : { all: [care.startDrug.classes, { none: [whiteCoatAlone] }] };

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

const hypertensionOfThisPregnancy: Need = {
  any: [
    anyHypertension,
    'recorded-any-hypertension',
    'recorded-chronic',
    'recorded-postpartum',
    'confirmed-from-20-weeks',
    'confirmed-after-birth',
  ],
};

const preEclampsiaOfThisPregnancy: Need = {
  any: [
    preEclampsiaOfAnyKind,
    'recorded-pre-eclampsia',
    'recorded-superimposed',
    'recorded-hellp',
    'recorded-eclampsia',
    {
      all: [
        { any: ['confirmed-from-20-weeks', 'confirmed-after-birth'] },
        { any: ['protein-from-20-weeks', 'protein-after-birth'] },
      ],
    },
  ],
};

/** A hypertensive disorder of this pregnancy, after birth. */
export const knownAfterBirth: Need = {
  called: 'after birth, any hypertension of this pregnancy',
  all: [afterBirth, hypertensionOfThisPregnancy],
};

/** Pre-eclampsia of this pregnancy, after birth. */
export const preEclampsiaAfterBirth: Need = {
  called: 'after birth, any pre-eclampsia of this pregnancy',
  all: [afterBirth, preEclampsiaOfThisPregnancy],
};

/** The weeks in which she is to be reviewed. */
export const knownAtReview: Need = {
  called: 'six to twelve weeks after birth, any hypertension of this pregnancy',
  all: ['review-due', hypertensionOfThisPregnancy],
};
export const preEclampsiaAtReview: Need = {
  called: 'six to twelve weeks after birth, any pre-eclampsia of this pregnancy',
  all: ['review-due', preEclampsiaOfThisPregnancy],
};

/** Signs that the kidneys fail. */
export const kidneyTrouble: Need = {
  called: 'signs that the kidneys fail',
  any: ['recorded-kidney-disease', 'kidney-impaired', 'oliguria'],
};
