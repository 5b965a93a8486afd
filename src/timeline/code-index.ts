// Finding the row of a code table for received codings. Hands on an index and its look-up.
import { systemAliases } from '../terminology/systems.ts';
import type { Coding } from './fields.ts';

interface CodedRow {
  readonly system: string;
  readonly code: string;
}

export type CodeIndex<Row> = ReadonlyMap<string, readonly Row[]>;

/** Prepares a table for look-up by code: one Map look-up per coding, then its system is compared. */
export function indexCodes<Row extends CodedRow>(rows: readonly Row[]): CodeIndex<Row> {
  const index = new Map<string, Row[]>();
  for (const row of rows) {
    const known = index.get(row.code);
    if (known === undefined) index.set(row.code, [row]);
    else known.push(row);
  }
  return index;
}

/**
 * Which rows of a table do these codings name?
 *
 * Given    codings  synonyms of one concept
 *          index    a prepared table
 * Returns  every matching row, in the order of the codings; empty when none matches
 * Throws   never
 * Notes    1. A coding without a system matches by its code alone; other spellings of a system count as it.
 * Source   fhir checklist F-V10.
 */
export function rowsFor<Row extends CodedRow>(
  codings: readonly Coding[],
  index: CodeIndex<Row>,
): readonly Row[] {
  let found: Row[] | undefined;
  for (const { system, code } of codings) {
    const rows = code === undefined ? undefined : index.get(code);
    if (rows === undefined) continue;
    for (const row of rows) if (isSystem(system, row.system)) (found ??= []).push(row);
  }
  return found ?? noRows;
}

const noRows: readonly never[] = [];

function isSystem(sent: string | undefined, system: string): boolean {
  if (sent === undefined || sent === system) return true;
  const plain = sent.toLowerCase().replace(/\/$/, '');
  return plain === system || systemAliases.get(plain) === system;
}
