// Advice and magnesium figures that several editions share. Data.
import {
  acog203,
  acog767,
  easterling2019,
  magnesiumReview,
  nice133,
  ukMagnesiumLabel,
  usMagnesiumTeaching,
  who2017,
} from '../citations.ts';
import type { Advice, MagnesiumSigns } from '../care.ts';
import { decidedByPrescriber, figure, say } from '../sentences.ts';
import { limit } from '../shared-values.ts';

const regimens = magnesiumReview('table 2', 'read');

/** ACOG: time and target of acute treatment; the only ones read. */
export const acuteWithinAnHour: Advice = {
  said: say(
    `Lower severe pressure within {within} of its confirmation, to {systolic:bare}/{diastolic}: to lower, not to normalise. ${decidedByPrescriber}`,
    {
      within: figure('acute-treatment-within', 30, 'min', acog767('first-line therapy', 'read'), 60),
      systolic: figure('acute-target-systolic', 140, 'mm[Hg]', acog767('target', 'read'), 150),
      diastolic: figure('acute-target-diastolic', 90, 'mm[Hg]', acog767('target', 'read'), 100),
    },
  ),
  citation: acog767('first-line therapy', 'read'),
};

export const pritchardLoading: Advice = {
  said: say(
    `Magnesium sulfate, loading dose: {vein} of {weak} into a vein over {minutes}, then {muscle} of {strong} deep into each buttock; where the full course cannot be given, the loading dose and then transfer. ${decidedByPrescriber}`,
    {
      vein: figure('pritchard-vein', 4, 'g', regimens),
      weak: figure('pritchard-vein-strength', 20, '%', regimens),
      minutes: figure('pritchard-minutes', 15, 'min', regimens, 20),
      muscle: figure('pritchard-muscle', 5, 'g', regimens),
      strong: figure('pritchard-muscle-strength', 50, '%', regimens),
    },
  ),
  citation: magnesiumReview(
    'table 2',
    'from-memory',
    'doses read; loading dose and transfer from memory of WHO',
  ),
};

/** Breathing at 16 or more: the cautious limit. */
export const cautiousSigns: MagnesiumSigns = {
  slowBreathing: limit(
    'magnesium-slow-breathing',
    '<',
    16,
    '/min',
    ukMagnesiumLabel('eclampsia', 'read', 'the label asks for more than 16'),
  ),
  said: say(
    'Before each further dose of magnesium: breathing at least {breaths}, knee jerk present, urine at least {urine} over {hours}. If one is lost, no further dose.',
    {
      breaths: figure('magnesium-breathing', 16, '/min', ukMagnesiumLabel('eclampsia', 'read')),
      urine: figure('magnesium-urine', 30, 'mL/h', who2017('magnesium', 'from-memory')),
      hours: figure('magnesium-urine-hours', 4, 'h', who2017('magnesium', 'from-memory')),
    },
  ),
  citation: who2017(
    'magnesium',
    'from-memory',
    'labels read: breathing above 16, urine above 25 mL/h or 100 mL in 4 h; others stop at 12 breaths',
  ),
};

export const americanSigns: MagnesiumSigns = {
  slowBreathing: limit(
    'magnesium-slow-breathing-american',
    '<=',
    12,
    '/min',
    usMagnesiumTeaching('toxicity', 'read'),
  ),
  said: say(
    'Before each further dose of magnesium: breathing above {breaths}, knee jerk present, urine above {urine}. Other publications stop at {cautious}. If one is lost, no further dose.',
    {
      breaths: figure('magnesium-breathing-american', 12, '/min', usMagnesiumTeaching('toxicity', 'read')),
      urine: figure('magnesium-urine-american', 30, 'mL/h', usMagnesiumTeaching('toxicity', 'read')),
      cautious: figure('magnesium-breathing-elsewhere', 16, '/min', ukMagnesiumLabel('eclampsia', 'read')),
    },
  ),
  citation: usMagnesiumTeaching('toxicity', 'read'),
};

export const oralDrugs = `Labetalol, nifedipine (extended release) or methyldopa by mouth. ${decidedByPrescriber}`;
export const oralDrugsCitation = acog203('oral drug table', 'read');
export const trial = easterling2019('abstract', 'read');
export const niceTables = nice133('tables 1 and 2; 1.3, 1.4, 1.5', 'read');
