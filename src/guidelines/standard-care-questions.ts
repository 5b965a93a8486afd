// Questions that only advice rests on: treatment limits, kidney, strip grades. Data.
import { isshp2021, nice133, ours } from './citations.ts';
import type { Edition } from './edition.ts';
import type { Question } from './guideline.ts';
import { dosesWithin, freshness, limit } from './shared-values.ts';

const creatinine = limit('kidney-creatinine', '>=', 90, 'umol/L', isshp2021('definition, kidney', 'read'));
const platelets = limit('low-platelets', '<', 150, '10*9/L', isshp2021('definition, blood', 'read'));
const reduce = nice133('1.5.17', 'read');
const stripOnly = {
  ungradedPositive: 'cannot-tell',
  proteinCreatinineRatio: [],
  albuminCreatinineRatio: [],
  excretion24h: [],
} as const;

/** Every question that only advice rests on. */
export function careQuestions(edition: Edition): readonly Question[] {
  const strip = {
    check: 'proteinuria',
    span: 'current',
    periods: ['before-20-weeks', 'from-20-weeks', 'after-birth', 'unknown'],
    limits: edition.hypertension,
    lookBack: freshness,
    correctedWithin: freshness,
  } as const;
  return [
    {
      id: 'start-drug',
      asks: 'Does the newest pressure reach the level at which a drug is started in pregnancy?',
      check: 'pressure-raised-now',
      limits: edition.care.startDrug.limits,
      citation: edition.care.startDrug.advice.citation,
    },
    {
      id: 'after-birth-low',
      asks: 'Is the newest pressure so low that treatment after birth is reduced?',
      check: 'pressure-normal-now',
      freshWithin: freshness,
      limits: {
        systolic: limit('after-birth-reduce-systolic', '>=', 130, 'mm[Hg]', reduce),
        diastolic: limit('after-birth-reduce-diastolic', '>=', 80, 'mm[Hg]', reduce),
      },
      citation: reduce,
    },
    {
      id: 'strip-positive',
      asks: 'Does the newest strip show one plus or more?',
      ...strip,
      criteria: {
        ...stripOnly,
        strip: limit('strip-asks-ratio', '>=', 1, '{grade}', nice133('1.2.3', 'read')),
      },
      citation: nice133('1.2.3', 'read'),
    },
    {
      id: 'strip-trace',
      asks: 'Does the newest strip show a trace or more?',
      ...strip,
      criteria: {
        ...stripOnly,
        strip: limit('strip-trace', '>=', 0.5, '{grade}', ours('a trace is repeated')),
      },
      citation: ours('a trace is repeated'),
    },
    {
      id: 'kidney-impaired',
      asks: 'Is creatinine raised?',
      check: 'laboratory-reaches',
      analyte: 'creatinine',
      limit: creatinine,
      freshWithin: freshness,
      citation: creatinine.citation,
    },
    {
      id: 'platelets-low',
      asks: 'Are platelets low?',
      check: 'laboratory-reaches',
      analyte: 'platelets',
      limit: platelets,
      freshWithin: freshness,
      citation: platelets.citation,
    },
    {
      id: 'oliguria',
      asks: 'Is there little urine?',
      check: 'symptom-present',
      symptoms: ['oliguria'],
      freshWithin: freshness,
      whenUnasked: 'not-recorded',
      citation: nice133('terms used: pre-eclampsia', 'read'),
    },
    {
      id: 'several-fetuses',
      asks: 'Is more than one fetus recorded?',
      check: 'fetuses-reach',
      limit: limit(
        'several-fetuses-recorded',
        '>=',
        2,
        '{fetuses}',
        ours('a count of two or more is a multiple pregnancy'),
      ),
      citation: ours('a count of two or more is a multiple pregnancy'),
    },
    {
      id: 'methyldopa-in-use',
      asks: 'Is methyldopa in use?',
      check: 'medicine-active',
      medicines: ['methyldopa'],
      doses: { within: dosesWithin },
      citation: nice133('1.3.18 and 1.5.18', 'read'),
    },
  ];
}
