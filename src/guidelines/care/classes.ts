// Classes for which a drug may be started. Data.
import type { Need } from '../guideline.ts';

export const anyConfirmed: Need = {
  any: [
    'class:gestational-hypertension',
    'class:gestational-hypertension-severe-range',
    'class:chronic-hypertension',
    'class:pre-eclampsia',
    'class:pre-eclampsia-severe-features',
    'class:superimposed-pre-eclampsia',
    'class:hypertension-timing-unknown',
  ],
};
export const chronicOnly: Need = { any: ['class:chronic-hypertension', 'class:superimposed-pre-eclampsia'] };
