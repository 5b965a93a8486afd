// What a urine strip can say about protein: codes, words, and the labels of its colour bins. Data only.
import type { SystemCode } from './code-row.ts';
import { systems } from './systems.ts';

/** 0 negative, 0.5 trace, 1 to 4; positive without a grade; or a word whose scale must be asked for. */
export type StripMeaning = 0 | 0.5 | 1 | 2 | 3 | 4 | 'positive-ungraded' | 'scale-unknown' | 'no-result';

export interface StripCode extends SystemCode {
  readonly grade: StripMeaning;
  /** Highest grade of the scale, when it is not four. */
  readonly outOf?: 3;
}

const l = { system: systems.loinc, known: 'read' } as const;
const s = { system: systems.snomed, known: 'read' } as const;

/** Answers and qualifiers. Source: terminology.csv. */
export const stripCodes: readonly StripCode[] = [
  { ...l, code: 'LA6577-6', display: 'Negative', grade: 0 },
  { ...l, code: 'LA11883-8', display: 'Not detected', grade: 0 },
  { ...l, code: 'LA11832-5', display: 'Trace', grade: 0.5 },
  // One public file calls this answer 2+; it is 1+.
  { ...l, code: 'LA11841-6', display: '1+', grade: 1 },
  { ...l, code: 'LA11842-4', display: '2+', grade: 2 },
  { ...l, code: 'LA11843-2', display: '3+', grade: 3 },
  { ...l, code: 'LA11844-0', display: '4+', grade: 4 },
  { ...l, code: 'LA6576-8', display: 'Positive', grade: 'positive-ungraded' },
  { ...l, code: 'LA8983-4', display: 'Small', grade: 'scale-unknown' },
  { ...l, code: 'LA6751-7', display: 'Moderate', grade: 'scale-unknown' },
  { ...l, code: 'LA8981-8', display: 'Large', grade: 'scale-unknown' },
  { ...l, code: 'LA11884-6', display: 'Indeterminate', grade: 'no-result' },
  { ...l, code: 'LA9663-1', display: 'Inconclusive', grade: 'no-result' },
  { ...s, code: '260385009', display: 'Negative (qualifier value)', grade: 0 },
  { ...s, code: '260415000', display: 'Not detected (qualifier value)', grade: 0 },
  { ...s, code: '2667000', display: 'Absent (qualifier value)', grade: 0 },
  { ...s, code: '260405006', display: 'Trace (qualifier value)', grade: 0.5 },
  { ...s, code: '260347006', display: 'Present + out of ++++ (qualifier value)', grade: 1 },
  { ...s, code: '260348001', display: 'Present ++ out of ++++ (qualifier value)', grade: 2 },
  { ...s, code: '260349009', display: 'Present +++ out of ++++ (qualifier value)', grade: 3 },
  { ...s, code: '260350009', display: 'Present ++++ out of ++++ (qualifier value)', grade: 4 },
  {
    ...s,
    code: '441614007',
    display: 'Present one plus out of three plus (qualifier value)',
    grade: 1,
    outOf: 3,
  },
  {
    ...s,
    code: '441517005',
    display: 'Present two plus out of three plus (qualifier value)',
    grade: 2,
    outOf: 3,
  },
  {
    ...s,
    code: '441521003',
    display: 'Present three plus out of three plus (qualifier value)',
    grade: 3,
    outOf: 3,
  },
  { ...s, code: '10828004', display: 'Positive (qualifier value)', grade: 'positive-ungraded' },
  { ...s, code: '260408008', display: 'Weakly positive (qualifier value)', grade: 'positive-ungraded' },
];

/** Findings that name urine protein and its grade in one code; seen as value and as code of an observation. */
export const stripFindingCodes: readonly StripCode[] = [
  { ...s, code: '167273002', display: 'Urine protein test negative (finding)', grade: 0 },
  { ...s, code: '167274008', display: 'Urine protein test = trace (finding)', grade: 0.5 },
  { ...s, code: '167275009', display: 'Urine protein test = + (finding)', grade: 1 },
  { ...s, code: '167276005', display: 'Urine protein test = ++ (finding)', grade: 2 },
  { ...s, code: '167277001', display: 'Urine protein test = +++ (finding)', grade: 3 },
  { ...s, code: '167278006', display: 'Urine protein test = ++++ (finding)', grade: 4 },
];

/**
 * Words for a grade, lower case. Signs (`2+`, `+2`, `++`) follow a rule and are not listed.
 * Source: terminology.md section 2 (negatif, negatief, negativo, traços seen in files; the rest from memory).
 */
export const stripWords: readonly (readonly [StripMeaning, readonly string[]])[] = [
  [
    0,
    [
      'negative',
      'neg',
      'nil',
      'absent',
      'none',
      'not detected',
      'no protein',
      'no proteinuria',
      '-',
      '-ve',
      'negatif',
      'negatief',
      'negativo',
      'negativ',
      'négatif',
      'ausente',
      'hasi',
    ],
  ],
  [
    0.5,
    [
      'trace',
      'traces',
      'tr',
      '+/-',
      '±',
      '+-',
      'traços',
      'traço',
      'tracos',
      'trazas',
      'traza',
      'spuren',
      'spur',
      'spoor',
    ],
  ],
  [1, ['one plus', 'plus one', 'plus']],
  [2, ['two plus', 'plus two']],
  [3, ['three plus', 'plus three']],
  [4, ['four plus', 'plus four']],
  [
    'positive-ungraded',
    [
      'positive',
      'pos',
      '+ve',
      'present',
      'abnormal',
      'detected',
      'positif',
      'positivo',
      'positief',
      'positiv',
    ],
  ],
  ['scale-unknown', ['small', 'moderate', 'large']],
  ['no-result', ['indeterminate', 'inconclusive', 'invalid', 'unknown', 'not done']],
];

/** Interpretation codes that settle a strip sent without a value. */
export const stripInterpretations: Readonly<Record<string, StripMeaning>> = {
  NEG: 0,
  ND: 0,
  POS: 'positive-ungraded',
  DET: 'positive-ungraded',
};

/**
 * Labels of the colour bins in mg/dL, both ends inclusive; a number between two bins is no bin label.
 * Source: clinical-rules 1.6 (trace 10-20, 1+ 30, 2+ 100, 3+ 300, 4+ 1000, 2000 by brand), read.
 */
export const stripBins: readonly {
  readonly from: number;
  readonly to: number;
  readonly grade: 0 | 0.5 | 1 | 2 | 3 | 4;
}[] = [
  { from: 0, to: 0, grade: 0 },
  { from: 10, to: 20, grade: 0.5 },
  { from: 30, to: 30, grade: 1 },
  { from: 100, to: 100, grade: 2 },
  { from: 300, to: 300, grade: 3 },
  { from: 1000, to: 1000, grade: 4 },
  { from: 2000, to: 2000, grade: 4 },
];
