// The code tables against the terminology table (terminology.csv), which holds what was read and where.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loinc } from '../../src/terminology/loinc.ts';
import { systemAliases, systems } from '../../src/terminology/systems.ts';
import { readCsv } from '../support/csv.ts';
import { allRows } from './all-rows.ts';
import { codesFromMemory } from './codes-from-memory.ts';

interface TableRow {
  readonly concept: string;
  readonly kind: string;
  readonly system: string;
  readonly code: string;
  readonly display: string;
  readonly status: string;
  readonly source: string;
}

const table: readonly TableRow[] = readCsv(
  readFileSync(new URL('../data/terminology.csv', import.meta.url), 'utf8'),
).map((row) => ({
  concept: row['concept_key'] ?? '',
  kind: row['kind'] ?? '',
  system: row['system_uri'] ?? '',
  code: row['code'] ?? '',
  display: row['display'] ?? '',
  status: row['status'] ?? '',
  source: row['source_url_or_publication'] ?? '',
}));

const byKey = new Map<string, TableRow[]>();
for (const row of table) {
  const key = `${row.system}|${row.code}`;
  byKey.set(key, [...(byKey.get(key) ?? []), row]);
}

describe('the code tables agree with the terminology table', () => {
  it('reads all rows of the table', () => {
    expect(table.length).toBe(708);
  });

  it('holds as read only what the table says was read', () => {
    const wrong = allRows
      .filter((row) => row.known === 'read')
      .filter(
        (row) =>
          !byKey.get(`${row.system}|${row.checkedAs ?? row.code}`)?.some((each) => each.status === 'read'),
      );
    expect(wrong.map((row) => `${row.system}|${row.code}`)).toEqual([]);
  });

  it('lists every code that is from memory, and no other', () => {
    const listed = Object.entries(codesFromMemory).flatMap(([system, codes]) =>
      codes.map((code) => `${system}|${code}`),
    );
    const held = new Set(
      allRows.filter((row) => row.known === 'from-memory').map((row) => `${row.system}|${row.code}`),
    );
    expect([...held].sort()).toEqual([...listed].sort());
  });

  it('does not call from memory what was read', () => {
    const wrong = allRows
      .filter((row) => row.known === 'from-memory')
      .filter((row) => byKey.get(`${row.system}|${row.code}`)?.some((each) => each.status === 'read'));
    expect(wrong.map((row) => row.code)).toEqual([]);
  });

  it('prints a term exactly as it was read', () => {
    const wrong = allRows
      .filter((row) => row.display !== undefined && row.known === 'read')
      .filter((row) => !byKey.get(`${row.system}|${row.code}`)?.some((each) => each.display === row.display));
    expect(wrong.map((row) => `${row.code} ${row.display}`)).toEqual([]);
  });

  it('prints SNOMED CT terms only of the Global Patient Set', () => {
    const wrong = allRows
      .filter((row) => row.system === systems.snomed && row.display !== undefined)
      .filter(
        (row) =>
          !byKey.get(`${row.system}|${row.code}`)?.some((each) => each.source.includes('Global Patient Set')),
      );
    expect(wrong.map((row) => row.code)).toEqual([]);
  });

  it('prints no title of ICD-10, ICD-10-CM or ICD-11', () => {
    const icd: readonly string[] = [systems.icd10, systems.icd10cm, systems.icd11];
    expect(allRows.filter((row) => icd.includes(row.system) && row.display !== undefined)).toEqual([]);
  });

  it('recognises every LOINC code of an observation in the table', () => {
    const known = new Set<string>(Object.values(loinc).flatMap((rows) => rows.map((row) => row.code)));
    const missing = table
      .filter((row) => row.system === systems.loinc && (row.kind === 'observation' || row.kind === 'lab'))
      .filter((row) => !known.has(row.code));
    expect(missing).toEqual([]);
  });

  it('matches a prefix only where the longer code begins with it', () => {
    const wrong = allRows.filter((row) => row.checkedAs !== undefined && !row.checkedAs.startsWith(row.code));
    expect(wrong).toEqual([]);
  });

  it('spells the code systems as the table does', () => {
    const spelled: readonly string[] = Object.values(systems);
    const missing = table.filter((row) => row.kind === 'code-system' && !spelled.includes(row.system));
    // Systems we neither read nor write.
    expect(missing.map((row) => row.concept)).toEqual([
      'system-flag-category',
      'system-detected-issue-severity',
    ]);
  });

  it('sends every other spelling of a system to a spelling of ours', () => {
    const ours: readonly string[] = Object.values(systems);
    expect([...systemAliases.values()].filter((system) => !ours.includes(system))).toEqual([]);
    expect([...systemAliases.keys()].filter((alias) => alias !== alias.toLowerCase())).toEqual([]);
  });
});

describe('codes that public code often gets wrong (terminology.md section 12)', () => {
  const conceptOf = (code: string): string | undefined =>
    Object.entries(loinc).find(([, rows]) => rows.some((row) => row.code === code))?.[0];

  it.each([
    ['57735-3', 'urine-protein-presence-test-strip-automated'],
    ['20454-5', 'urine-protein-presence-test-strip'],
    ['5804-0', 'urine-protein-semiquantitative-test-strip'],
    ['21482-5', 'urine-protein-mass-concentration-24h'],
    ['14585-4', 'urine-albumin-creatinine-molar-ratio'],
    ['9318-7', 'urine-albumin-creatinine-mass-ratio'],
    ['41904-4', 'blood-pressure-measurement-site'],
    ['8357-6', 'blood-pressure-method'],
    ['8478-0', 'blood-pressure-mean-arterial'],
    ['5803-2', 'urine-ph'],
  ])('%s is %s', (code, concept) => {
    expect(conceptOf(code)).toBe(concept);
  });

  it.each(['5770-3', '8885-6'])('%s is no code of ours', (code) => {
    expect(conceptOf(code)).toBeUndefined();
  });

  it('ergotamine (RxNorm 4025) is not taken for ergometrine', () => {
    expect(allRows.filter((row) => row.system === systems.rxnorm && row.code === '4025')).toEqual([]);
  });
});
