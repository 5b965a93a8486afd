// Which observation codes hold which laboratory or bedside value. Data only.
import type { CodeRow, SystemCode } from './code-row.ts';
import { loinc, type LoincConcept } from './loinc.ts';
import { systems } from './systems.ts';

/** Concepts of the LOINC table per analyte; the timeline checks that every analyte is here. */
const conceptsByAnalyte = [
  ['platelets', ['platelets']],
  ['creatinine', ['creatinine-mass', 'creatinine-moles']],
  ['alt', ['alt']],
  ['ast', ['ast']],
  ['ldh', ['ldh']],
  ['bilirubin', ['bilirubin-total-mass', 'bilirubin-total-moles']],
  ['haemoglobin', ['haemoglobin', 'haemoglobin-moles']],
  ['urate', ['urate-mass', 'urate-moles']],
  ['fibrinogen', ['fibrinogen']],
  ['sflt1-plgf-ratio', ['sflt1-plgf-ratio']],
  ['plgf', ['plgf']],
  ['oxygen-saturation', ['oxygen-saturation-pulse-oximetry', 'oxygen-saturation']],
  ['heart-rate', ['heart-rate']],
  ['respiratory-rate', ['respiratory-rate']],
  ['body-mass-index', ['body-mass-index']],
  ['fundal-height', ['fundal-height']],
  ['urine-output', ['urine-output']],
  ['hcg', ['hcg-serum']],
  ['potassium', ['potassium']],
  ['magnesium', ['magnesium']],
  ['urine-specific-gravity', ['urine-specific-gravity']],
  ['urine-ph', ['urine-ph']],
] as const satisfies readonly (readonly [string, readonly LoincConcept[]])[];

export type AnalyteName = (typeof conceptsByAnalyte)[number][0];

export interface LaboratoryCode extends SystemCode {
  readonly analyte: AnalyteName;
}

const rowsOf = (concept: LoincConcept): readonly CodeRow[] => loinc[concept];

/** Source: terminology.md sections 3 and 4. */
export const laboratoryCodes: readonly LaboratoryCode[] = conceptsByAnalyte.flatMap(([analyte, concepts]) =>
  concepts.flatMap((concept) => rowsOf(concept).map((row) => ({ ...row, system: systems.loinc, analyte }))),
);

/** Codes and words that say a sample was haemolysed. HL7 v2 table 0493, from memory. */
export const haemolysis = {
  codes: ['HEM'],
  word: /h(?:a)?emoly[sz]/i,
  /** The word, denied. */
  denied: /\b(?:no|not|non|nil|without|negative for|free of)\b[^.;]{0,24}h(?:a)?emoly[sz]/i,
} as const;
