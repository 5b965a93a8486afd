// Limits of blood tests, from the tables of the clinical rules (1.3, 1.6) and decisions 9, 19 to 22.
import type { LaboratoryName } from '../../support/codes.ts';
import * as build from '../../support/resources.ts';
import {
  dated,
  laboratory,
  morning,
  sixDaysAfterBirth,
  thirtyWeeks,
  type Edition,
  type LimitRow,
} from './limit-row.ts';

const isshpLevel: readonly Edition[] = ['isshp-2021', 'nice-2023', 'frontline', 'sogc-2022'];
const acogLevel = { editions: ['acog-2020'], question: 'organ-from-20-weeks' } as const;
const acogSevere = { editions: ['frontline', 'acog-2020', 'sogc-2022'], question: 'severe-organ' } as const;
type Rest = Pick<LimitRow, 'source' | 'counts'> & Partial<LimitRow>;

const test = (
  analyte: LaboratoryName,
  unit: string,
  values: LimitRow['values'],
  rest: Rest,
  upperLimit?: number,
): LimitRow => ({
  what: `${analyte} ${String(values[1])} ${unit}`,
  editions: isshpLevel,
  question: 'organ-from-20-weeks',
  values,
  unit,
  woman: (value) => [
    thirtyWeeks,
    ...laboratory(upperLimit === undefined ? [analyte, value, unit] : [analyte, value, unit, upperLimit]),
  ],
  ...rest,
});

/** The same limit asked twice: as a criterion of ACOG, and as a severe feature where ACOG's grading is used. */
const asCriterionAndSevere = (make: (rest: Partial<LimitRow>) => LimitRow): readonly LimitRow[] => [
  make(acogLevel),
  make(acogSevere),
];

const below150: Rest = {
  source: '1.3 platelets below 150 (R S1, S7; frontline and SOGC: decision 19)',
  counts: 'below',
};
const from90: Rest = { source: '1.3 creatinine 90 umol/L and above (R S1, S7)', counts: 'from' };
const over40: Rest = { source: '1.3 AST or ALT over 40 IU/L (R S1, S7)', counts: 'over' };
const below100: Rest = { source: '1.3 ACOG: platelets below 100 (R S3)', counts: 'below' };
const overAcog: Rest = { source: '1.3 ACOG: creatinine over 1.1 mg/dL, 97 umol/L (R S3)', counts: 'over' };
const twice: Rest = {
  source: '1.3 ACOG: twice the upper limit and above (R S3); decision 21',
  counts: 'from',
};

const upperLimit = (counts: LimitRow['counts'], values: LimitRow['values'], alt: number): LimitRow => ({
  what: `upper limit ${String(values[1])} printed by the laboratory, ALT ${String(alt)}`,
  source: 'decision 21: the printed limit when it is plausible, else 40; the plausible range is ours',
  ...acogSevere,
  counts,
  values,
  unit: 'U/L',
  woman: (printed) => [thirtyWeeks, ...laboratory(['alt', alt, 'U/L', printed])],
});

const saturation = (question: string, limit: number, rest: Rest): LimitRow => ({
  what: `oxygen saturation ${String(limit)}`,
  question,
  editions: ['frontline', 'acog-2020', 'sogc-2022', 'isshp-2021', 'nice-2023', 'who-2020', 'india-mohfw'],
  values: [limit - 0.5, limit, limit + 0.5],
  unit: '%',
  woman: (value) => [thirtyWeeks, ...laboratory(['oxygen-saturation', value, '%'])],
  ...rest,
});

const growthFactors = (what: string, days: number, values: LimitRow['values']): LimitRow => ({
  what,
  source:
    '2.4 rule 36: from 85 before 34+0, from 110 from 34+0 (R S42; as a criterion of ISSHP M, decision 24)',
  editions: ['isshp-2021'],
  question: 'organ-from-20-weeks',
  counts: 'from',
  values,
  unit: '1',
  woman: (value) => [dated(days), ...laboratory(['sflt1-plgf-ratio', value, '1'])],
});

const when = {
  early: { days: [dated(115)], question: 'organ-before-20-weeks' },
  undated: { days: [], question: 'organ-from-20-weeks' },
  afterBirth: { days: [sixDaysAfterBirth], question: 'organ-after-birth' },
} as const;

/** The limits of the first level at other times; each test measured then. */
const atOtherTimes: readonly LimitRow[] = Object.values(when).flatMap(({ days, question }) => {
  const at = (
    analyte: LaboratoryName,
    unit: string,
    values: LimitRow['values'],
    rest: Rest,
    upper?: number,
  ): LimitRow => ({
    ...test(analyte, unit, values, rest, upper),
    question,
    woman: (value) => [
      ...days,
      ...laboratory(upper === undefined ? [analyte, value, unit] : [analyte, value, unit, upper]),
    ],
  });
  const frontline = { editions: ['frontline'] } as const;
  return [
    at('platelets', '10*9/L', [149, 150, 151], below150),
    at('creatinine', 'umol/L', [89.5, 90, 90.5], from90),
    at('alt', 'U/L', [39.8, 40, 40.2], over40),
    at('ast', 'U/L', [39.8, 40, 40.2], over40),
    at('alt', 'U/L', [37.8, 38, 38.2], { ...twice, ...frontline }, 19),
    at('ast', 'U/L', [37.8, 38, 38.2], { ...twice, ...frontline }, 19),
  ];
});

/** Creatinine of 0.5 mg/dL long ago, doubled now. */
const doubled = (
  question: string,
  editions: readonly Edition[],
  days: ReturnType<LimitRow['woman']>,
  rest: Partial<LimitRow> = {},
): LimitRow => ({
  what: 'creatinine 0.5 before 20 weeks, now doubled',
  source: '1.3 ACOG: doubling (R S3); X25; decision 19',
  question,
  counts: 'from',
  editions,
  values: [0.995, 1, 1.005],
  unit: 'mg/dL',
  woman: (value) => [
    ...days,
    build.lab('2024-10-14T09:00:00Z', 'creatinine', 0.5, 'mg/dL'),
    ...laboratory(['creatinine', value, 'mg/dL']),
  ],
  ...rest,
});
/** The doubling is explained: no other answer at any value. */
const explained = (question: string, editions: readonly Edition[], days: ReturnType<LimitRow['woman']>) =>
  doubled(question, editions, [...days, build.condition('chronic-kidney-disease', '2020-01-01')], {
    what: 'creatinine doubled, with kidney disease on record',
    source: '1.3 ACOG: doubling without other renal disease (R S3)',
    beyond: 'not-met',
  });
const bornAt40 = [build.dueDate('2024-11-01', '2025-03-04'), sixDaysAfterBirth];

const doubling: readonly LimitRow[] = [doubled, explained].flatMap((row) => [
  row('organ-from-20-weeks', ['acog-2020', 'frontline'], [thirtyWeeks]),
  row('severe-organ', acogSevere.editions, [thirtyWeeks]),
  row('organ-after-birth', ['acog-2020', 'frontline'], bornAt40),
  {
    ...row('organ-before-20-weeks', ['acog-2020', 'frontline'], [dated(115)]),
    woman: (value) => [
      dated(115),
      ...(row === explained ? [build.condition('chronic-kidney-disease', '2020-01-01')] : []),
      build.lab('2025-01-14T09:00:00Z', 'creatinine', 0.5, 'mg/dL'),
      ...laboratory(['creatinine', value, 'mg/dL']),
    ],
  },
]);

export const organLimits: readonly LimitRow[] = [
  ...atOtherTimes,
  ...doubling,
  {
    ...test('platelets', '10*9/L', [99, 100, 101], below100),
    ...acogSevere,
    what: 'platelets 100 10*9/L, undated',
    woman: (value) => laboratory(['platelets', value, '10*9/L']),
  },
  {
    ...test('platelets', '10*9/L', [149, 150, 151], below150),
    question: 'organ-after-birth',
    what: 'platelets 150 10*9/L of the last days before birth',
    woman: (value) => [
      build.dueDate('2024-11-01', '2025-03-20'),
      build.birth('2025-03-10T12:00:00Z'),
      ...laboratory(['platelets', value, '10*9/L']),
    ],
  },
  {
    ...test('platelets', '10*9/L', [149, 150, 151], below150),
    question: 'organ-after-birth',
    what: 'platelets 150 10*9/L, undated',
    woman: (value) => laboratory(['platelets', value, '10*9/L']),
  },
  test('platelets', '10*9/L', [149, 150, 151], below150),
  test('platelets', '10*3/uL', [149, 150, 151], below150),
  test('platelets', '/uL', [149_000, 150_000, 151_000], below150),
  test('creatinine', 'umol/L', [89.5, 90, 90.5], from90),
  // 90 umol/L is 1.018 mg/dL (1.6).
  test('creatinine', 'mg/dL', [1.01, 1.0181, 1.02], from90),
  ...(['alt', 'ast'] as const).flatMap((enzyme) => [
    test(enzyme, 'U/L', [39.8, 40, 40.2], over40),
    test(enzyme, '[IU]/L', [39.8, 40, 40.2], over40),
    // 40 U/L is 0.667 ukat/L.
    test(enzyme, 'ukat/L', [0.664, 0.6666, 0.67], over40),
    ...asCriterionAndSevere((which) => test(enzyme, 'U/L', [59.5, 60, 60.5], { ...twice, ...which }, 30)),
    ...asCriterionAndSevere((which) => test(enzyme, 'U/L', [79.5, 80, 80.5], { ...twice, ...which })),
    test(enzyme, 'U/L', [37.8, 38, 38.2], { ...twice, editions: ['frontline'], source: 'X28' }, 19),
  ]),
  upperLimit('from', [9.95, 10, 10.05], 21),
  upperLimit('over', [69.5, 70, 70.5], 100),
  ...asCriterionAndSevere((which) => test('platelets', '10*9/L', [99, 100, 101], { ...below100, ...which })),
  ...asCriterionAndSevere((which) =>
    test('creatinine', 'mg/dL', [1.095, 1.1, 1.105], { ...overAcog, ...which }),
  ),
  ...asCriterionAndSevere((which) =>
    test('creatinine', 'umol/L', [96.5, 97, 97.5], { ...overAcog, ...which }),
  ),
  saturation('oxygen-below-90', 90, {
    source: 'decision 9: below 90 an emergency (1.3, R S1)',
    counts: 'below',
  }),
  saturation('oxygen-below-94', 94, { source: 'decision 9: 90 to 93 reduced', counts: 'below' }),
  saturation('severe-organ', 94, {
    source: '1.3 saturation below 94 alerts (D): taken for lung oedema where severity is graded by ACOG',
    counts: 'below',
    editions: acogSevere.editions,
  }),
  growthFactors('growth-factor ratio at 30+4', 214, [84.5, 85, 85.5]),
  growthFactors('growth-factor ratio at 34+0', 238, [109.5, 110, 110.5]),
  {
    ...growthFactors('growth-factor ratio of 100 at 33+6, 34+0, 34+1', 0, [237, 238, 239]),
    counts: 'below',
    unit: 'd',
    woman: (days) => [dated(days), ...laboratory(['sflt1-plgf-ratio', 100, '1'])],
  },
  {
    what: 'platelets fallen from 200, by 30 in a hundred',
    source: 'X26 shows a fall of a third as a trend; the limit of 30 % is ours',
    editions: ['frontline', 'acog-2020', 'sogc-2022', 'isshp-2021', 'nice-2023', 'who-2020', 'india-mohfw'],
    question: 'platelets-falling',
    counts: 'up-to',
    values: [139.8, 140, 140.2],
    unit: '10*9/L',
    woman: (value) => [
      thirtyWeeks,
      build.lab('2025-02-10T09:00:00Z', 'platelets', 200, '10*9/L'),
      build.lab(morning, 'platelets', value, '10*9/L'),
    ],
  },
  test('creatinine', 'umol/L', [89.5, 90, 90.5], { ...from90, question: 'kidney-impaired' }),
  test('platelets', '10*9/L', [149, 150, 151], { ...below150, question: 'platelets-low' }),
];
