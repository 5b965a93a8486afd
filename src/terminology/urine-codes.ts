// Which observation codes hold a urine result, and of which kind. Data only.
import type { SystemCode } from './code-row.ts';
import { loinc } from './loinc.ts';
import { systems } from './systems.ts';

/** Kinds are never converted into each other. `strip-mass` is a strip that reports the label of its colour bin. */
export type UrineProteinKind =
  | 'strip'
  | 'strip-mass'
  | 'strip-ratio'
  | 'protein-creatinine-ratio'
  | 'albumin-creatinine-ratio'
  | 'excretion-24h'
  | 'concentration';

export interface UrineProteinCode extends SystemCode {
  readonly kind: UrineProteinKind;
}

export type UrineSignName = 'nitrite' | 'leucocytes' | 'blood';

export interface UrineSignCode extends SystemCode {
  readonly sign: UrineSignName;
}

const of = (
  kind: UrineProteinKind,
  ...concepts: readonly (keyof typeof loinc)[]
): readonly UrineProteinCode[] =>
  concepts.flatMap((concept) => loinc[concept].map((row) => ({ ...row, system: systems.loinc, kind })));

const sign = (name: UrineSignName, concept: keyof typeof loinc): readonly UrineSignCode[] =>
  loinc[concept].map((row) => ({ ...row, system: systems.loinc, sign: name }));

/** Source: terminology.md section 2. */
export const urineProteinCodes: readonly UrineProteinCode[] = [
  ...of(
    'strip',
    'urine-protein-presence-test-strip',
    'urine-protein-presence-test-strip-automated',
    'urine-protein-presence',
    'urine-protein-presence-sulfosalicylic-acid',
  ),
  ...of(
    'strip-mass',
    'urine-protein-semiquantitative-test-strip',
    'urine-protein-semiquantitative-test-strip-automated',
  ),
  ...of('strip-ratio', 'urine-protein-creatinine-ratio-test-strip'),
  ...of('concentration', 'urine-protein-mass-concentration', 'urine-protein-mass-concentration-24h'),
  ...of('excretion-24h', 'urine-protein-excretion-24h'),
  ...of(
    'protein-creatinine-ratio',
    'urine-protein-creatinine-mass-ratio',
    'urine-protein-creatinine-ratio',
    'urine-protein-creatinine-mass-ratio-24h',
    'urine-protein-creatinine-ratio-24h',
    'urine-protein-creatinine-mass-ratio-12h',
  ),
  ...of(
    'albumin-creatinine-ratio',
    'urine-albumin-creatinine-mass-ratio',
    'urine-albumin-creatinine-mass-ratio-24h',
    'urine-albumin-creatinine-ratio',
    'urine-albumin-creatinine-molar-ratio',
  ),
  { system: systems.snomed, code: '167271000', known: 'read', kind: 'strip' },
  { system: systems.snomed, code: '57378007', known: 'from-memory', kind: 'strip' },
  { system: systems.snomed, code: '19518008', known: 'read', kind: 'excretion-24h' },
];

export const urineSignCodes: readonly UrineSignCode[] = [
  ...sign('nitrite', 'urine-nitrite'),
  ...sign('leucocytes', 'urine-leukocytes'),
  ...sign('blood', 'urine-blood'),
];

/** Strips under these codes were read by a device. */
export const urineAnalyserCodes: readonly SystemCode[] = [
  ...loinc['urine-protein-presence-test-strip-automated'],
  ...loinc['urine-protein-semiquantitative-test-strip-automated'],
].map((row) => ({ ...row, system: systems.loinc }));
