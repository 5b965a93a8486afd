// The measures of a replay are those of the FHIR operation, for the same women and period.
import { rmSync } from 'node:fs';
import type { MeasureReport } from 'fhir/r4.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { measureIds } from '../../src/guidelines/measures.ts';
import { client } from '../http/client.ts';
import { about, folderOf, lines, pregnancy, run, type Ran } from './runs.ts';

const encounter = (day: string, site: string) => ({
  resourceType: 'Encounter' as const,
  status: 'finished' as const,
  class: { system: 'http://terminology.hl7.org/CodeSystem/v3-ActCode', code: 'AMB' },
  subject: { reference: 'Patient/1' },
  period: { start: `${day}T09:30:00Z` },
  serviceProvider: { reference: `Organization/${site}` },
});

const women = [
  ...about('ada', [...pregnancy({ '2024-05-01': [[150, 95]] }), encounter('2024-05-01', 'east')]),
  ...about('eve', [...pregnancy({ '2024-05-02': [[118, 76]] }), encounter('2024-05-02', 'west')]),
  ...about('may', [
    ...pregnancy({
      '2024-06-01': [
        [170, 112],
        [168, 110],
      ],
    }),
    encounter('2024-06-01', 'east'),
  ]),
  ...about('out', pregnancy({ '2023-12-30': [[150, 95]] })),
];
const window = { from: Date.parse('2024-01-01T00:00:00Z'), to: Date.parse('2024-12-31T23:59:59.999Z') };

/** Without what depends on the moment of asking. */
function timeless({ id: _id, date: _date, ...report }: MeasureReport): string {
  return JSON.stringify(report);
}

describe.each(['visit', 'end'] as const)('measures of a replay, view %s', (every) => {
  const folder = folderOf({ 'all.ndjson': lines(women) });
  let ran: Ran;
  beforeAll(async () => {
    ran = await run(folder, { every, ...window });
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each(measureIds)('%s is what the operation $evaluate-measure says', async (id) => {
    const asked = await client()
      .post(`/fhir/Measure/${id}/$evaluate-measure`)
      .query({ periodStart: '2024-01-01', periodEnd: '2024-12-31' })
      .send({ resourceType: 'Bundle', type: 'collection', entry: women.map((resource) => ({ resource })) });
    const report = JSON.parse(ran.files[`measure-${id}.json`] ?? '{}') as MeasureReport;
    expect(report.type).toBe('summary');
    expect(timeless(report)).toBe(timeless(asked.body as MeasureReport));
  });
});

it('without a whole window no MeasureReport is written: a measure needs its period', async () => {
  const folder = folderOf({ 'all.ndjson': lines(women) });
  const ran = await run(folder, { from: window.from });
  rmSync(folder, { recursive: true });
  expect(Object.keys(ran.files).filter((name) => name.startsWith('measure-'))).toEqual([]);
});
