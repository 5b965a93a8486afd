// Look-up in tables whose systems are hierarchies: ICD and ATC codes match by prefix, the rest whole.
import { systems } from '../terminology/systems.ts';
import { canonicalSystem } from './coded-value.ts';
import { codingsOf } from './fields.ts';

interface CodedRow {
  readonly system: string;
  readonly code: string;
}

export type ClassifiedIndex<Row> = ReadonlyMap<string, ReadonlyMap<string, Row>>;

/** Systems in which a longer code is a kind of the shorter one. */
const hierarchies: ReadonlySet<string> = new Set([
  systems.icd10,
  systems.icd10cm,
  systems.icd11,
  systems.atc,
]);
const shortestPrefix = 3;

/** Prepares a table for look-up: a map per system. */
export function indexClassified<Row extends CodedRow>(rows: readonly Row[]): ClassifiedIndex<Row> {
  const index = new Map<string, Map<string, Row>>();
  for (const row of rows) {
    const codes = index.get(row.system) ?? new Map<string, Row>();
    codes.set(plainCode(row.system, row.code), row);
    index.set(row.system, codes);
  }
  return index;
}

/**
 * Which rows do the codings of a concept name?
 *
 * Given    concept  a CodeableConcept as sent
 *          index    a prepared table
 * Returns  at most one row per coding, the most specific; empty when none matches
 * Throws   never
 * Notes    1. Dots and dagger signs of ICD codes are ignored: O1410 is O14.10. Of an ICD-11 cluster the stem counts.
 *          2. A coding without a system is tried in every system of the table, the first match counts.
 * Source   terminology.md, "How to read the tables"; fhir checklist F-V10.
 */
export function classifiedRows<Row extends CodedRow>(
  concept: unknown,
  index: ClassifiedIndex<Row>,
): readonly Row[] {
  return codingsOf(concept).flatMap(({ system, code }) => {
    if (code === undefined) return [];
    const row = rowOf(canonicalSystem(system), code, index);
    return row === undefined ? [] : [row];
  });
}

function rowOf<Row extends CodedRow>(
  system: string | undefined,
  code: string,
  index: ClassifiedIndex<Row>,
): Row | undefined {
  if (system !== undefined) return rowIn(system, code, index);
  for (const each of index.keys()) {
    const row = rowIn(each, code, index);
    if (row !== undefined) return row;
  }
  return undefined;
}

function rowIn<Row extends CodedRow>(
  system: string,
  code: string,
  index: ClassifiedIndex<Row>,
): Row | undefined {
  const codes = index.get(system);
  if (codes === undefined) return undefined;
  const plain = plainCode(system, code);
  if (!hierarchies.has(system)) return codes.get(plain);
  for (let length = plain.length; length >= shortestPrefix; length -= 1) {
    const row = codes.get(plain.slice(0, length));
    if (row !== undefined) return row;
  }
  return undefined;
}

function plainCode(system: string, code: string): string {
  if (!hierarchies.has(system)) return code.trim();
  const stem = code.split(/[/&]/)[0] ?? code;
  return stem.toUpperCase().replace(/[^A-Z0-9]/g, '');
}
