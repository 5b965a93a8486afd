// Which symptom a concept names, how severe it is, and whether it is over.
import type { SymptomId } from '../guidelines/guideline.ts';
import {
  relief,
  severityCodes,
  severityWords,
  symptomHolderCodes,
  symptomNames,
} from '../terminology/severity.ts';
import { symptomCodes } from '../terminology/symptom-codes.ts';
import { classifiedRows, indexClassified } from './classified-codes.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import { codingsOf, fieldsOf, textOf } from './fields.ts';
import { isWritten } from './free-text.ts';
import type { Symptom } from './timeline.ts';

interface SymptomRow {
  readonly system: string;
  readonly code: string;
  readonly symptoms: readonly SymptomId[];
}

const rows: readonly SymptomRow[] = symptomCodes;
const index = indexClassified(rows);
const holders = indexCodes(symptomHolderCodes);
const severities = indexCodes(severityCodes);

const names: ReadonlyMap<string, readonly SymptomId[]> = new Map(
  symptomNames.flatMap((row) =>
    row.names.map((name): [string, readonly SymptomId[]] => [name, row.symptoms]),
  ),
);

/**
 * Which symptoms does a concept name?
 *
 * Given    concept  a CodeableConcept as sent
 * Returns  each symptom once; empty when it names none
 * Throws   never
 * Notes    1. The text counts only when no coding is recognised, and only when it is nothing but the name.
 */
export function symptomsOf(concept: unknown): readonly SymptomId[] {
  const coded = classifiedRows(concept, index).flatMap((row) => row.symptoms);
  return coded.length > 0 ? [...new Set(coded)] : symptomsNamed(textOf(fieldsOf(concept)['text']) ?? '');
}

/** The symptom a text names and nothing else ("Severe headache"). */
export function symptomsNamed(text: string): readonly SymptomId[] {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/\.$/, '')
    .replace(/^(?:severe|moderate|mild|persistent)\s+/, '');
  return names.get(plain) ?? [];
}

/** Is this a code under which the symptom stands in the value? */
export function isSymptomHolder(code: unknown): boolean {
  return rowsFor(codingsOf(code), holders).length > 0;
}

export function severityOfConcept(concept: unknown): Symptom['severity'] {
  return (
    rowsFor(codingsOf(concept), severities)[0]?.severity ?? severityWritten(textOf(fieldsOf(concept)['text']))
  );
}

export function severityWritten(text: string | undefined): Symptom['severity'] {
  if (text === undefined) return undefined;
  return severityWords.find(({ word, denied }) => isWritten(text, word, denied))?.severity;
}

export function isRelieved(text: string): boolean {
  return isWritten(text, relief.word, relief.denied);
}
