// Laboratory and bedside values in every unit they are compared in, with what the laboratory said about the sample.
import type { Observation } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import type { Analyte } from '../guidelines/guideline.ts';
import { haemolysis, laboratoryCodes } from '../terminology/laboratory-codes.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import { agreedRow, readValue, reportMissingSystem } from './coded-value.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { codingsOf, fieldsOf, listOf, textOf, wordingOf } from './fields.ts';
import { isWritten, notesOf } from './free-text.ts';
import { byUnitOf, readQuantity, type UsableQuantity } from './quantity.ts';
import { readQuantityText } from './quantity-text.ts';
import { sourceOf } from './source.ts';
import type { LaboratoryResult, Moment } from './timeline.ts';
import { unusable } from './unusable.ts';
import type { Writable } from './writable.ts';

const index = indexCodes(laboratoryCodes);

/** Which analyte a code names; undefined when it names none that a rule asks for. */
export function laboratoryAnalyteOf(code: unknown): Analyte | undefined {
  return rowsFor(codingsOf(code), index)[0]?.analyte;
}

/**
 * What was the value of this analyte?
 *
 * Given    received  an observation whose code `laboratoryAnalyteOf` recognises
 *          context   finds the specimen; takes notice of codings without a system
 *          at        its moment
 * Returns  the value; `upperReference` in the unit sent, absent when none or several were stated
 *          unusable  value-ambiguous (codings of two analytes, two values), value-missing,
 *                    value-absent-with-reason, value-not-readable, value-type-not-usable,
 *                    value-out-of-range, unit-missing, unit-unknown, code-missing
 * Throws   never
 * Notes    1. The unit is read, never inferred from the code.
 *          2. Haemolysed: said by the specimen's condition, the interpretation, or a note that does not deny it.
 * Source   fhir checklist 4.4; terminology.md section 4; decisions 20 and 21.
 */
export function readLaboratory(
  received: Received<Observation>,
  context: TimelineContext,
  at: Moment,
): LaboratoryResult | Unusable {
  const { resource } = received;
  const row = agreedRow(resource.code, index, (each) => each.analyte);
  if (row === 'conflict') {
    return unusable('value-ambiguous', 'code', 'The codings name different analytes. Send the codes of one.');
  }
  if (row === undefined) return unusable('code-missing', 'code', 'The code names no analyte that is read.');
  reportMissingSystem(received, resource.code, 'code', context);
  const read = readAmount(resource, row.analyte);
  if (read.kind === 'unusable') return read;
  const result: Writable<LaboratoryResult> = {
    analyte: row.analyte,
    at,
    measured: read.measured,
    byUnit: read.byUnit,
    haemolysed: isHaemolysed(received, context),
    asSent: read.asSent,
    source: sourceOf(received),
  };
  const upperReference = upperReferenceOf(resource, row.analyte, read.byUnit.sentUnit);
  if (upperReference !== undefined) result.upperReference = upperReference;
  return result;
}

function readAmount(resource: Observation, analyte: Analyte): UsableQuantity | Unusable {
  const sole = readValue(resource);
  if (sole.kind === 'unusable') return sole;
  switch (sole.name) {
    case 'valueQuantity':
      return readQuantity(sole.value, analyte);
    case 'valueString':
      return readQuantityText(sole.value, analyte, sole.name);
    case 'valueInteger':
      return readQuantity({ value: sole.value }, analyte, sole.name);
    default:
      return unusable(
        'value-type-not-usable',
        sole.name,
        'A laboratory value is sent as valueQuantity with its unit.',
      );
  }
}

function upperReferenceOf(resource: Observation, analyte: Analyte, sentUnit: string): number | undefined {
  if (resource.referenceRange === undefined) return undefined;
  const highs = new Set(
    listOf(resource.referenceRange)
      .filter(isNormalRange)
      .flatMap((range) => upperLimit(range['high'], analyte, sentUnit) ?? []),
  );
  const [only] = highs;
  return highs.size === 1 ? only : undefined;
}

function isNormalRange(range: Readonly<Record<string, unknown>>): boolean {
  const codes = codingsOf(range['type']).flatMap(({ code }) => code ?? []);
  return codes.length === 0 || codes.includes('normal');
}

function upperLimit(high: unknown, analyte: Analyte, sentUnit: string): number | undefined {
  const fields = fieldsOf(high);
  const hasUnit = textOf(fields['unit']) !== undefined || textOf(fields['code']) !== undefined;
  if (hasUnit) {
    const read = readQuantity(high, analyte);
    return read.kind === 'usable' ? read.byUnit.values[sentUnit] : undefined;
  }
  const value = fields['value'];
  return typeof value === 'number' ? byUnitOf(value, sentUnit, analyte)?.values[sentUnit] : undefined;
}

function isHaemolysed(received: Received<Observation>, context: TimelineContext): boolean {
  const { resource } = received;
  if (listOf(resource.interpretation).some(saysHaemolysed)) return true;
  if (isWritten(notesOf(resource), haemolysis.word, haemolysis.denied)) return true;
  const specimen =
    resource.specimen === undefined ? undefined : context.bundle.resolve(resource.specimen, received);
  if (specimen === undefined) return false;
  return (
    listOf(fieldsOf(specimen.resource)['condition']).some(saysHaemolysed) ||
    isWritten(notesOf(specimen.resource), haemolysis.word, haemolysis.denied)
  );
}

const haemolysisCodes: ReadonlySet<string> = new Set(haemolysis.codes);

function saysHaemolysed(concept: unknown): boolean {
  return (
    codingsOf(concept).some(({ code }) => code !== undefined && haemolysisCodes.has(code)) ||
    isWritten(wordingOf(concept) ?? '', haemolysis.word, haemolysis.denied)
  );
}
