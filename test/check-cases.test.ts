// The open rows of the check cases and the threshold rows, each with its basis, against every guideline they name.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { classifications } from '../src/guidelines/guideline.ts';
import { guidelineIds } from '../src/guidelines/registry.ts';
import { readCaseFile } from './support/case-schema.ts';
import { guidelinesOf, runCases } from './support/run-cases.ts';

const folder = join(import.meta.dirname, 'cases');
const thresholds = join(folder, 'thresholds');
const checkCases = readCaseFile(join(folder, 'check-cases.json'));
const thresholdCases = readdirSync(thresholds)
  .sort()
  .map((name) => readCaseFile(join(thresholds, name)));
const files = [checkCases, ...thresholdCases];

describe('the case files', () => {
  it('hold the forty open rows', () => {
    const ids = new Set(checkCases.rows.map((row) => row.id.slice(0, 'A00'.length)));
    expect(ids.size).toBe(40);
  });

  it('give every row its own id', () => {
    const ids = files.flatMap((file) => file.rows.map((row) => row.id));
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });

  it('expect only classes of the vocabulary', () => {
    const known = new Set<string>(classifications);
    const named = files.flatMap((file) =>
      file.rows.flatMap((row) =>
        Object.values(row.expect).flatMap((expected) => [
          ...(expected.classification ?? []),
          ...(expected.anyOf ?? []).flat(),
          ...(expected.excludes ?? []),
        ]),
      ),
    );
    expect(named.filter((name) => !known.has(name))).toEqual([]);
  });

  it('name only guidelines that are registered', () => {
    expect([...new Set(files.flatMap(guidelinesOf))].filter((id) => !guidelineIds.includes(id))).toEqual([]);
  });
});

for (const file of files) runCases(file);
