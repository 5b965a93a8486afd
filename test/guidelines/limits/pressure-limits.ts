// Limits of pressure, from the tables of the clinical rules (1.1, 1.6, 2.5).
import type { FhirResource } from 'fhir/r4.js';
import * as build from '../../support/resources.ts';
import {
  except,
  everyEdition,
  morning,
  secondsAfter,
  sixDaysAfterBirth,
  thirtyWeeks,
  type LimitRow,
} from './limit-row.ts';

type Half = 'systolic' | 'diastolic';
type Rest = Pick<LimitRow, 'source' | 'editions' | 'question' | 'counts'> & Partial<LimitRow>;

/** The other half stays low. */
const reading = (half: Half, value: number, unit: 'mm[Hg]' | 'kPa' = 'mm[Hg]'): FhirResource => {
  const kPa = unit === 'kPa';
  return half === 'systolic'
    ? build.pressure(morning, value, kPa ? 9 : 65, { unit })
    : build.pressure(morning, kPa ? 16.6 : 125, value, { unit });
};

const inMmHg = (half: Half, limit: number, when: FhirResource, rest: Rest): LimitRow => ({
  what: `${half} ${String(limit)}`,
  values: [limit - 1, limit, limit + 1],
  unit: 'mm[Hg]',
  woman: (value) => [when, reading(half, value)],
  ...rest,
});

/** Two readings of one contact half a millimetre around the value: their average is what counts (2.3 rule 17). */
const onAverage = (half: Half, limit: number, when: FhirResource, rest: Rest): LimitRow => ({
  what: `${half} ${String(limit)} on average`,
  values: [limit - 0.5, limit, limit + 0.5],
  unit: 'mm[Hg]',
  woman: (value) => [
    when,
    reading(half, value - 0.5),
    build.pressure(secondsAfter(morning, 120), ...pairOf(half, value + 0.5)),
  ],
  ...rest,
});
const pairOf = (half: Half, value: number): [number, number] =>
  half === 'systolic' ? [value, 65] : [125, value];

/** kPa is converted and rounded to whole mm[Hg] (1.6): the values given are 1 below, at and 1 above in mm[Hg]. */
const inKPa = (half: Half, limit: number, values: LimitRow['values'], rest: Rest): LimitRow => ({
  what: `${half} ${String(limit)} mm[Hg] in kPa`,
  values,
  unit: 'kPa',
  woman: (value) => [thirtyWeeks, reading(half, value, 'kPa')],
  ...rest,
});

const raised: Rest = {
  source: '1.1 hypertension: 140 or 90 and above in every column (R S1, S3, S7, S11, S13, S33)',
  editions: everyEdition,
  question: 'raised-now',
  counts: 'from',
};
const severe: Rest = {
  source: '1.1 severe: 160 or 110 and above (R S3, S11, S13, S33; ISSHP M)',
  editions: except('nice-2023'),
  question: 'severe-open',
  counts: 'from',
};
const severeNice: Rest = {
  source: '1.1 severe, NICE: over 160 or over 110 (R S1); decision 13',
  editions: ['nice-2023'],
  question: 'severe-open',
  counts: 'over',
};
const homeRaised: Rest = {
  source: '1.1 home threshold: 135/85 and above (R S13, S22)',
  editions: ['frontline', 'isshp-2021', 'sogc-2022'],
  question: 'home-raised',
  counts: 'from',
};
const homeBelow: Rest = { ...homeRaised, question: 'home-below', counts: 'below' };

const homeRow = (half: Half, limit: number, rest: Rest): LimitRow => ({
  what: `home average, ${half} ${String(limit)}, ${rest.question}`,
  values: [limit - 1, limit, limit + 1],
  unit: 'mm[Hg]',
  woman: (value) => [
    thirtyWeeks,
    build.homeMean({
      from: '2025-03-03T07:00:00Z',
      to: '2025-03-09T19:00:00Z',
      systolicMmHg: half === 'systolic' ? value : 125,
      diastolicMmHg: half === 'diastolic' ? value : 75,
      readings: 14,
    }),
  ],
  ...rest,
});

const sameDay: Rest = {
  source: 'decision 7: after birth, from 150/100 same-day (NICE R S1 1.4.11; ACOG M)',
  editions: except('isshp-2021'),
  question: 'after-birth-raised-same-day',
  counts: 'from',
};
const treated: Rest = {
  source: '2.5 rule 44: start from 150/100 (NICE R, ACOG M); the others are silent, as decision 7',
  editions: except('isshp-2021', 'sogc-2022'),
  question: 'after-birth-treatment',
  counts: 'from',
};
const reduce: Rest = {
  source: '2.5 rule 45: reduce below 130/80 (R S1 1.5.17)',
  editions: everyEdition,
  question: 'after-birth-low',
  counts: 'below',
};
const start: Rest = {
  source: '1.1 start drug: 140/90 (ISSHP R S15, ACOG chronic R S5, NICE R S1, SOGC R S36, WHO M)',
  editions: except('india-mohfw'),
  question: 'start-drug',
  counts: 'from',
};
const startIndia: Rest = {
  source: '1.1 start drug: diastolic over 100 in the training deck (R S11); severe systolic at once (M)',
  editions: ['india-mohfw'],
  question: 'start-drug',
  counts: 'over',
};

export const pressureLimits: readonly LimitRow[] = [
  inMmHg('systolic', 140, thirtyWeeks, raised),
  inMmHg('diastolic', 90, thirtyWeeks, raised),
  inKPa('systolic', 140, [18.5, 18.6, 18.8], raised),
  inKPa('diastolic', 90, [11.9, 12, 12.1], raised),
  inMmHg('systolic', 140, thirtyWeeks, { ...raised, question: 'normal-now', counts: 'below' }),
  inMmHg('diastolic', 90, thirtyWeeks, { ...raised, question: 'normal-now', counts: 'below' }),
  inMmHg('systolic', 140, thirtyWeeks, { ...raised, question: 'raised-once' }),
  inMmHg('diastolic', 90, thirtyWeeks, { ...raised, question: 'raised-once' }),
  inMmHg('systolic', 160, thirtyWeeks, severe),
  inMmHg('diastolic', 110, thirtyWeeks, severe),
  inMmHg('systolic', 160, thirtyWeeks, severeNice),
  inMmHg('diastolic', 110, thirtyWeeks, severeNice),
  inKPa('systolic', 160, [21.2, 21.3, 21.4], severe),
  inKPa('diastolic', 110, [14.5, 14.7, 14.8], severe),
  inKPa('systolic', 160, [21.2, 21.3, 21.4], severeNice),
  inKPa('diastolic', 110, [14.5, 14.7, 14.8], severeNice),
  onAverage('diastolic', 90, thirtyWeeks, raised),
  onAverage('diastolic', 90, thirtyWeeks, start),
  onAverage('diastolic', 80, sixDaysAfterBirth, reduce),
  ...[homeRaised, homeBelow].map((rest): LimitRow => ({
    ...homeRow('diastolic', 85, rest),
    values: [84.5, 85, 85.5],
  })),
  homeRow('systolic', 135, homeRaised),
  homeRow('diastolic', 85, homeRaised),
  homeRow('systolic', 135, homeBelow),
  homeRow('diastolic', 85, homeBelow),
  homeRow('systolic', 160, { ...severe, question: 'home-severe' }),
  homeRow('diastolic', 110, { ...severe, question: 'home-severe' }),
  homeRow('systolic', 140, { ...raised, question: 'home-raised-no-clinic' }),
  homeRow('diastolic', 90, { ...raised, question: 'home-raised-no-clinic' }),
  inMmHg('systolic', 150, sixDaysAfterBirth, sameDay),
  inMmHg('diastolic', 100, sixDaysAfterBirth, sameDay),
  ...(['after-birth-raised-same-day', 'after-birth-treatment'] as const).flatMap((question) => {
    const isshp: Rest = {
      source: '2.5 rule 44, ISSHP: 140/90 (M)',
      editions: ['isshp-2021'],
      question,
      counts: 'from',
    };
    return [
      inMmHg('systolic', 140, sixDaysAfterBirth, isshp),
      inMmHg('diastolic', 90, sixDaysAfterBirth, isshp),
    ];
  }),
  inMmHg('systolic', 150, sixDaysAfterBirth, treated),
  inMmHg('diastolic', 100, sixDaysAfterBirth, treated),
  ...(['systolic', 'diastolic'] as const).map((half) =>
    inMmHg(half, half === 'systolic' ? 160 : 110, sixDaysAfterBirth, {
      source: '2.5 rule 44, SOGC 2022: kept below 160/110 at first (R S36)',
      editions: ['sogc-2022'],
      question: 'after-birth-treatment',
      counts: 'from',
    }),
  ),
  inMmHg('systolic', 130, sixDaysAfterBirth, reduce),
  inMmHg('diastolic', 80, sixDaysAfterBirth, reduce),
  inMmHg('systolic', 140, thirtyWeeks, start),
  inMmHg('diastolic', 90, thirtyWeeks, start),
  inMmHg('systolic', 160, thirtyWeeks, { ...startIndia, counts: 'from' }),
  inMmHg('diastolic', 100, thirtyWeeks, startIndia),
];
