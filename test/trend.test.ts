// Expected: decision 10: readings less than 30 minutes after the first belong to its occasion; story.md of the first story.
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { evaluateInFull } from '../src/index.ts';
import { trendOf } from '../src/trend.ts';

it('two readings five minutes apart are one visit with their average, 30+0 weeks', () => {
  const file = new URL('../examples/first-raised-reading/request.json', import.meta.url);
  const evaluation = evaluateInFull(JSON.parse(readFileSync(file, 'utf8')), { asOf: '2025-03-10T09:20:00Z' });
  const { visits, placeOf } = trendOf(evaluation);
  const [visit] = visits;
  expect(visits).toHaveLength(1);
  expect([visit?.systolicMmHg, visit?.diastolicMmHg, visit?.numberOfReadings]).toEqual([143, 89, 2]);
  expect(visit?.references).toHaveLength(2);
  expect(visit === undefined ? undefined : placeOf(visit.at).gestationalAgeDays).toBe(210);
});
