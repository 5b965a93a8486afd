// Two published risk equations, from memory and not compared with print: off unless asked for. Data only.
import { ours, payne2014, vonDadelszen2011 } from './citations.ts';
import type { Classification } from './guideline.ts';
import type { RiskInput, RiskModel, RiskRange } from './risk-model.ts';
import { limit } from './shared-values.ts';

const cap = ours('a figure outside the range in which the equation was made says nothing');
const range = (input: RiskInput, low: number, high: number, unit: string): RiskRange => ({
  input,
  low: limit(`risk-${input}-low`, '>=', low, unit, cap),
  high: limit(`risk-${input}-high`, '<=', high, unit, cap),
});
const gestation = range('gestational-age', 20, 42, 'wk');

const freshWithin = limit(
  'risk-values-fresh-within',
  '<=',
  48,
  'h',
  ours('both equations look 48 hours ahead'),
);

const preEclampsia: readonly Classification[] = [
  'eclampsia',
  'imminent-eclampsia',
  'hellp',
  'pre-eclampsia-severe-features',
  'superimposed-pre-eclampsia',
  'pre-eclampsia',
];
const anyHypertensiveDisorder: readonly Classification[] = [
  ...preEclampsia,
  'severe-unconfirmed',
  'gestational-hypertension-severe-range',
  'gestational-hypertension',
  'chronic-hypertension',
  'hypertension-timing-unknown',
];

const neverReassuresWith: RiskModel['neverReassuresWith'] = {
  classes: [
    'eclampsia',
    'imminent-eclampsia',
    'hellp',
    'pre-eclampsia-severe-features',
    'severe-unconfirmed',
    'gestational-hypertension-severe-range',
  ],
  questions: [
    'severe-organ',
    'severe-open',
    'severe-current',
    'hellp-criteria',
    'danger-symptom',
    'danger-sign',
    'breathless',
    'lung-oedema',
    'chest-pain',
    'seizure',
    'oxygen-below-94',
  ],
};

const communityEquation = payne2014('equation of the model', 'from-memory', 'natural logarithm assumed');
const fullEquation = vonDadelszen2011('equation of the model', 'from-memory');

export const riskModels: readonly RiskModel[] = [
  {
    id: 'community-model-2014',
    title: 'Community model without laboratory tests, Payne 2014',
    predicts: 'death or major complication of the woman within 48 hours',
    population:
      '2081 women with any hypertensive disorder of pregnancy admitted in five low- and middle-income countries',
    appliesTo: anyHypertensiveDisorder,
    intercept: -5.77,
    terms: [
      { coefficient: -0.298, of: ['multiparous'] },
      { coefficient: -1.07, of: ['gestational-age'], logarithm: true },
      { coefficient: 1.34, of: ['systolic'], logarithm: true },
      { coefficient: -0.218, of: ['strip-2'] },
      { coefficient: 0.424, of: ['strip-3'] },
      { coefficient: 0.512, of: ['strip-4'] },
      { coefficient: 1.18, of: ['bleeding-with-abdominal-pain'] },
      { coefficient: 0.422, of: ['headache-or-visual-disturbance'] },
      { coefficient: 0.847, of: ['chest-pain-or-dyspnoea'] },
    ],
    ranges: [gestation],
    high: limit('community-model-high', '>=', 25, '%', payne2014('abstract', 'read')),
    freshWithin,
    neverReassuresWith,
    remarks: [
      'A strip of 2+ gives a lower figure than 1+ or none: a fact of how the equation was fitted, not of the woman.',
    ],
    citation: communityEquation,
    verified: false,
  },
  {
    id: 'full-model-2011',
    title: 'Full model with laboratory tests, von Dadelszen 2011',
    predicts: 'death or major complication of the woman within 48 hours',
    population: '2023 women with pre-eclampsia in tertiary hospitals',
    appliesTo: preEclampsia,
    intercept: 2.68,
    terms: [
      { coefficient: -0.0541, of: ['gestational-age'] },
      { coefficient: 1.23, of: ['chest-pain-or-dyspnoea'] },
      { coefficient: -0.0271, of: ['creatinine'] },
      { coefficient: 0.207, of: ['platelets'] },
      { coefficient: 4.0e-5, of: ['platelets', 'platelets'] },
      { coefficient: 0.0101, of: ['ast'] },
      { coefficient: -3.05e-6, of: ['ast', 'ast'] },
      { coefficient: 2.5e-4, of: ['creatinine', 'platelets'] },
      { coefficient: -6.99e-5, of: ['platelets', 'ast'] },
      { coefficient: -2.56e-3, of: ['platelets', 'oxygen-saturation'] },
    ],
    ranges: [gestation, range('oxygen-saturation', 90, 100, '%'), range('platelets', 30, 600, '10*9/L')],
    high: limit('full-model-high', '>=', 30, '%', vonDadelszen2011('likelihood ratios', 'read')),
    freshWithin,
    neverReassuresWith,
    remarks: [
      'With few platelets (below about 108 10*9/L) a higher creatinine gives a lower figure: a fact of how the equation was fitted.',
      'In early disease its figures were found too extreme, and in low-resource countries poorly calibrated.',
    ],
    citation: fullEquation,
    verified: false,
  },
];
