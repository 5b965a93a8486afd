// Which reader an observation belongs to, by its codes. Hands on one name.
import { laboratoryCodes } from '../terminology/laboratory-codes.ts';
import {
  birthObservationCodes,
  countCodes,
  datingCodes,
  pregnancyStatusCodes,
} from '../terminology/pregnancy-codes.ts';
import { pressureCodes, pressurePanelCodes, unusedPressureCodes } from '../terminology/pressure-codes.ts';
import { urineProteinCodes, urineSignCodes } from '../terminology/urine-codes.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import { isDating } from './dating-facts.ts';
import type { Fields } from './fields.ts';
import { codingsOf } from './fields.ts';
import { laboratoryAnalyteOf } from './laboratory.ts';
import { findingsIn } from './observed-findings.ts';
import { isPressure } from './pressure-panel.ts';
import { circumstanceCodes } from './pressure-technique.ts';
import { isSymptomObservation } from './symptoms.ts';
import { urineProteinKindOf, urineSignOf } from './urine-protein.ts';

export type ObservationKind =
  | 'pressure'
  | 'pressure-circumstance'
  | 'dating'
  | 'birth'
  | 'count'
  | 'pregnancy-status'
  | 'urine-protein'
  | 'urine-sign'
  | 'laboratory'
  | 'symptom'
  | 'finding';

const tables = [
  ['pressure', [...pressureCodes, ...pressurePanelCodes, ...unusedPressureCodes]],
  ['pressure-circumstance', circumstanceCodes],
  ['dating', datingCodes],
  ['birth', birthObservationCodes],
  ['count', countCodes],
  ['pregnancy-status', pregnancyStatusCodes],
  ['urine-protein', urineProteinCodes],
  ['urine-sign', urineSignCodes],
  ['laboratory', laboratoryCodes],
] as const;

const index = indexCodes(
  tables.flatMap(([kind, rows]) => rows.map(({ system, code }) => ({ system, code, kind }))),
);

/**
 * Which reader does this observation belong to?
 *
 * Given    fields  an observation
 * Returns  the kind of its first known code; without one, the kind its components, its value or its words
 *          name; undefined when no rule asks for it
 * Throws   never
 * Notes    1. One look-up for each coding; only an observation without a known code is looked at further.
 */
export function observationKindOf(fields: Fields): ObservationKind | undefined {
  const known = rowsFor(codingsOf(fields['code']), index)[0];
  if (known !== undefined) return known.kind;
  if (fields['component'] !== undefined && isPressure(fields)) return 'pressure';
  if (fields['component'] !== undefined && isDating(fields)) return 'dating';
  if (urineProteinKindOf(fields['code']) !== undefined) return 'urine-protein';
  if (urineSignOf(fields['code']) !== undefined) return 'urine-sign';
  if (laboratoryAnalyteOf(fields['code']) !== undefined) return 'laboratory';
  if (findingsIn(fields['code']).length > 0) return 'finding';
  return isSymptomObservation(fields) ? 'symptom' : undefined;
}
