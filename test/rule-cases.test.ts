// Every class and urgency rule has rows in four groups, or says why a group cannot exist.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { guidelineIds, guidelineOf } from '../src/guidelines/registry.ts';
import { readCaseFile } from './support/case-schema.ts';
import { runCases } from './support/run-cases.ts';

const folder = join(import.meta.dirname, 'cases', 'rules');
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.json'))
  .sort()
  .map((name) => readCaseFile(join(folder, name)));
const groups = ['met', 'not-met', 'cannot-tell', 'not-applicable'] as const;

const rules = new Set(
  guidelineIds.flatMap((id) => {
    const guideline = guidelineOf(id);
    return guideline === undefined
      ? []
      : [
          ...guideline.classRules.map((rule) => `class:${rule.id}`),
          ...guideline.urgencyRules.map((rule) => `urgency:${rule.id}`),
        ];
  }),
);

describe('the case files of rules', () => {
  it('name rules that exist', () => {
    const named = files.flatMap(({ rule }) => (rule === undefined ? [] : [rule]));
    expect(named.filter((rule) => !rules.has(rule))).toEqual([]);
  });

  it.each([...rules])('%s has a row in each group, or a reason why there is none', (rule) => {
    const own = files.filter((file) => file.rule === rule);
    const rows = own.flatMap((file) => file.rows);
    const filled = new Set(
      rows.flatMap((row) => Object.values(row.expect).map((expected) => expected.rules?.[rule])),
    );
    const excused = new Set(own.flatMap(({ noRows }) => Object.keys(noRows ?? {})));
    expect(groups.filter((group) => !filled.has(group) && !excused.has(group))).toEqual([]);
    expect(groups.filter((group) => filled.has(group) && excused.has(group))).toEqual([]);
  });
});

for (const file of files) runCases(file);
