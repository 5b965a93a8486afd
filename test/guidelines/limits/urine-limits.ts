// Limits of urine protein, from the table of the clinical rules (1.2, 1.6) and decisions 17 and 18.
import type { Outcome } from '../../../src/findings/finding.ts';
import type { StripAnswer } from '../../support/codes.ts';
import * as build from '../../support/resources.ts';
import {
  dated,
  morning,
  raisedTwice,
  sixDaysAfterBirth,
  thirtyWeeks,
  type Edition,
  type LimitRow,
} from './limit-row.ts';

const question = 'protein-from-20-weeks';

const ratio = (
  unit: 'mg/mmol' | 'g/mol' | 'mg/mg' | 'mg/g',
  values: LimitRow['values'],
  editions: readonly Edition[],
  source: string,
): LimitRow => ({
  what: `protein/creatinine ratio ${String(values[1])} ${unit}`,
  source,
  editions,
  question,
  counts: 'from',
  values,
  unit,
  woman: (value) => [thirtyWeeks, ...raisedTwice, build.ratio(morning, value, unit)],
});

const albumin = (unit: string, values: LimitRow['values']): LimitRow => ({
  what: `albumin/creatinine ratio ${String(values[1])} ${unit}`,
  source: '1.2 ACR 8 mg/mmol, 71 mg/g, and above (R S1, S7; SOGC and frontline as these)',
  editions: ['isshp-2021', 'nice-2023', 'sogc-2022', 'frontline'],
  question,
  counts: 'from',
  values,
  unit,
  woman: (value) => [thirtyWeeks, ...raisedTwice, build.albuminRatio(morning, value, unit)],
});

const day24 = (
  unit: 'mg/(24.h)' | 'g/(24.h)',
  values: LimitRow['values'],
  rest: Pick<LimitRow, 'source' | 'editions' | 'counts'>,
): LimitRow => ({
  what: `protein in 24 hours ${String(values[1])} ${unit}`,
  question,
  values,
  unit,
  woman: (value) => [thirtyWeeks, ...raisedTwice, build.protein24h(morning, value, unit)],
  ...rest,
});

const molar: readonly Edition[] = ['isshp-2021', 'nice-2023', 'who-2020', 'sogc-2022', 'frontline'];
const molarSource = '1.2 PCR 30 mg/mmol and above (R S1, S7; WHO and SOGC M; frontline decision 18)';
const mass: readonly Edition[] = ['acog-2020', 'india-mohfw'];
const massSource = '1.2 PCR 0.3 mg/mg and above (R S3; India prints none, as 300 mg in 24 h, D)';
const from300 = {
  source: '1.2 300 mg in 24 h and above (R S3, S7; NICE and SOGC M)',
  editions: ['isshp-2021', 'acog-2020', 'nice-2023', 'sogc-2022', 'frontline'],
  counts: 'from',
} as const;
const over300 = {
  source: '1.2 over 300 mg in 24 h (R S8, S12)',
  editions: ['who-2020', 'india-mohfw'],
  counts: 'over',
} as const;

/** The same measures at other times of the pregnancy, for the questions of those times. */
const atOtherTimes: readonly LimitRow[] = (
  [
    ['protein-before-20-weeks', [dated(115)]],
    ['protein-now', [dated(115)]],
    ['protein-now', []],
    ['protein-after-birth', [sixDaysAfterBirth]],
    ['protein-now', [sixDaysAfterBirth]],
    [question, []],
  ] as const
).flatMap(([asked, days]) =>
  [
    ratio('mg/mmol', [29.8, 30, 30.2], molar, molarSource),
    ratio('mg/mg', [0.298, 0.3, 0.302], mass, massSource),
    albumin('mg/mmol', [7.95, 8, 8.05]),
    day24('mg/(24.h)', [298, 300, 302], from300),
    day24('mg/(24.h)', [298, 300, 302], over300),
  ].map((row) => ({
    ...row,
    question: asked,
    woman: (value: number) => [...days, ...row.woman(value).filter((fact) => fact !== thirtyWeeks)],
  })),
);

export const urineLimits: readonly LimitRow[] = [
  ...atOtherTimes,
  ratio('mg/mmol', [29.8, 30, 30.2], molar, molarSource),
  ratio('g/mol', [29.8, 30, 30.2], molar, molarSource),
  // 30 mg/mmol is 0.265 mg/mg (1.6).
  ratio('mg/mg', [0.264, 0.26526, 0.267], molar, molarSource),
  ratio('mg/g', [264, 265.26, 267], molar, molarSource),
  ratio('mg/mg', [0.298, 0.3, 0.302], mass, massSource),
  ratio('mg/g', [298, 300, 302], mass, massSource),
  // 0.3 mg/mg is 33.9 mg/mmol (1.6).
  ratio('mg/mmol', [33.7, 33.94, 34.1], mass, massSource),
  ratio('g/mol', [33.7, 33.94, 34.1], mass, massSource),
  albumin('mg/mmol', [7.95, 8, 8.05]),
  albumin('mg/g', [70.3, 70.74, 71.2]),
  day24('mg/(24.h)', [298, 300, 302], from300),
  day24('g/(24.h)', [0.298, 0.3, 0.302], from300),
  day24('mg/(24.h)', [298, 300, 302], over300),
  day24('g/(24.h)', [0.298, 0.3, 0.302], over300),
  {
    what: 'a ratio of 40 mg/mmol at 12 weeks, now doubled',
    source: '2.4 rules 32 and 38: new or doubled protein (R, table of CJASN)',
    editions: molar,
    question,
    counts: 'from',
    values: [79.5, 80, 80.5],
    unit: 'mg/mmol',
    woman: (value) => [
      dated(214),
      build.ratio('2024-11-01T09:00:00Z', 40, 'mg/mmol'),
      ...raisedTwice,
      build.ratio(morning, value, 'mg/mmol'),
    ],
  },
];

export interface StripRow {
  readonly source: string;
  readonly editions: readonly Edition[];
  readonly question: string;
  readonly expected: Readonly<Record<StripAnswer, Outcome>>;
}

const [yes, no, open] = ['met', 'not-met', 'cannot-tell'] as const;

/** What each grade of a strip says beside raised pressure. */
export const stripRows: readonly StripRow[] = [
  {
    source: 'decision 17: frontline counts 1+, and "positive" as 1+; a trace is repeated',
    editions: ['frontline'],
    question,
    expected: { negative: no, trace: no, '1+': yes, '2+': yes, '3+': yes, '4+': yes, positive: yes },
  },
  {
    source:
      '1.2 2+ diagnoses (R S1, S3, S7; WHO and SOGC M), 1+ asks for a ratio (R S1; else M); decision 17',
    editions: ['isshp-2021', 'acog-2020', 'nice-2023', 'who-2020', 'sogc-2022'],
    question,
    expected: { negative: no, trace: no, '1+': open, '2+': yes, '3+': yes, '4+': yes, positive: open },
  },
  {
    source: '1.2 the Indian deck counts a trace (R S11)',
    editions: ['india-mohfw'],
    question,
    expected: { negative: no, trace: yes, '1+': yes, '2+': yes, '3+': yes, '4+': yes, positive: open },
  },
  {
    source: '1.2 heavy protein: 3+ and 4+ in the Indian deck (R S11)',
    editions: ['india-mohfw'],
    question: 'heavy-protein',
    expected: { negative: no, trace: no, '1+': no, '2+': no, '3+': yes, '4+': yes, positive: open },
  },
  {
    source: '1.2 1+ triggers a ratio (R S1)',
    editions: ['frontline', 'nice-2023', 'india-mohfw'],
    question: 'strip-positive',
    expected: { negative: no, trace: no, '1+': yes, '2+': yes, '3+': yes, '4+': yes, positive: open },
  },
  {
    source: 'X10 a trace is repeated',
    editions: ['frontline', 'nice-2023', 'india-mohfw'],
    question: 'strip-trace',
    expected: { negative: no, trace: yes, '1+': yes, '2+': yes, '3+': yes, '4+': yes, positive: open },
  },
];
