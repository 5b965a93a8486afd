// The report: parts that sum, figures that can be checked by hand, a page that stands alone.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { csvRow } from '../../src/replay/report/csv.ts';
import { wilson } from '../../src/replay/report/proportion.ts';
import { mergeReports, type Tally } from '../../src/replay/report/tally.ts';
import { readExport } from './clinic.ts';
import { about, folderOf, lines, pregnancy, remove, run, type Ran } from './runs.ts';

interface ReportJson {
  readonly sections: readonly {
    readonly id: string;
    readonly tables: readonly { readonly id: string; readonly rows: readonly (string | number)[][] }[];
  }[];
  readonly tally: Tally;
}
const reportOf = ({ files }: Ran): ReportJson => JSON.parse(files['report.json'] ?? '{}') as ReportJson;
const rowsOf = (report: ReportJson, table: string) =>
  report.sections.flatMap(({ tables }) => tables).find(({ id }) => id === table)?.rows ?? [];

async function reportAbout(
  resources: readonly unknown[],
  asked: Parameters<typeof run>[1] = {},
): Promise<ReportJson> {
  const folder = folderOf({ 'a.ndjson': lines(resources) });
  const ran = await run(folder, asked);
  remove(folder);
  return reportOf(ran);
}

describe('parts', () => {
  const tally = fc.dictionary(fc.constantFrom('a', 'b\tc', 'b\td', 'e'), fc.nat(1000));
  it('sum to the same in any order and any grouping', () => {
    fc.assert(
      fc.property(tally, tally, tally, (a, b, c) => {
        const whole = mergeReports([a, b, c]);
        expect(mergeReports([mergeReports([c, a]), b])).toEqual(whole);
        expect(JSON.stringify(mergeReports([b, c, a]))).toBe(JSON.stringify(whole));
      }),
    );
  });

  it('two halves of the women sum to the whole', async () => {
    const ada = about('ada', pregnancy({ '2024-05-01': [[150, 95]] }));
    const eve = about('eve', pregnancy({ '2024-05-01': [[118, 76]] }));
    const [whole, first, second] = await Promise.all(
      [[...ada, ...eve], ada, eve].map((each) => reportAbout(each)),
    );
    expect(mergeReports([first?.tally ?? {}, second?.tally ?? {}])).toEqual(whole?.tally);
  });
});

describe('figures', () => {
  // Newcombe 1998, Statistics in Medicine 17:857, table I, method 3 (score): 81 of 263 and 15 of 148; from memory.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
  ])('Wilson interval of %d in %d', (count, of, low, high) => {
    const interval = wilson(count, of);
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  });

  it('nothing of nothing has no share', () => {
    expect(wilson(0, 0)).toEqual({ count: 0, of: 0 });
  });

  it('a recorded diagnosis is set beside the answer given without it', async () => {
    const recorded = {
      resourceType: 'Condition',
      code: { coding: [{ system: 'http://snomed.info/sct', code: '48194001' }] },
      subject: { reference: 'Patient/ada' },
      recordedDate: '2024-05-10',
    };
    const raised = pregnancy({ '2024-05-01': [[150, 95]], '2024-05-03': [[150, 95]] });
    const found = await reportAbout([...about('ada', raised), { ...recorded, id: 'd' }]);
    expect(rowsOf(found, 'agreement')[1]?.slice(0, 5)).toEqual(['Gestational hypertension', 1, 0, 0, 0]);
    // The first card came on the first of May, the diagnosis on the tenth.
    expect(rowsOf(found, 'lead-time')[3]).toEqual(['8 to 28 days before', 1]);
    const normal = await reportAbout([
      ...about('ada', pregnancy({ '2024-05-11': [[118, 76]] })),
      { ...recorded, id: 'd' },
    ]);
    expect(rowsOf(normal, 'agreement')[1]?.slice(0, 5)).toEqual(['Gestational hypertension', 0, 1, 0, 0]);
  });

  it('a raised pressure without a urine test is a missed step', async () => {
    const report = await reportAbout(about('ada', pregnancy({ '2024-05-01': [[150, 95]] })));
    expect(report.tally['measure\turine-protein-when-raised\tdenominator']).toBe(1);
    expect(report.tally['measure\turine-protein-when-raised\tnumerator']).toBeUndefined();
  });
});

it('a cell that a spreadsheet would run is made harmless', () => {
  expect(csvRow(['=1+1', 'a,b', '"', 2])).toBe(`'=1+1,"a,b","""",2\r\n`);
});

describe('the report of a real clinic', () => {
  const example = join(import.meta.dirname, '..', '..', 'examples', 'replay-day-assessment');
  let ran: Ran;
  beforeAll(async () => {
    const folder = folderOf({ 'attendances.ndjson': lines(readExport().flat()) });
    ran = await run(folder, { guidelines: ['frontline', 'nice-2023'] });
    remove(folder);
    if (process.env['WRITE_EXAMPLES'] === undefined) return;
    mkdirSync(example, { recursive: true });
    for (const [name, text] of Object.entries(ran.files))
      if (name.startsWith('report')) writeFileSync(join(example, name), text);
  });

  // QUIRKS of the data set: about 58 % of its pressures end in zero, counted with a spreadsheet.
  it('shows that about 58 % of the pressures end in zero', () => {
    const rows = rowsOf(reportOf(ran), 'terminal-zeros').filter(([by]) => by === 'site');
    const total = (column: number): number => rows.reduce((sum, row) => sum + Number(row[column]), 0);
    expect((total(5) / total(4)) * 100).toBeGreaterThan(55);
    expect((total(5) / total(4)) * 100).toBeLessThan(61);
    expect(rows.every((row) => row.at(-1) === 'suspected')).toBe(true);
  });

  it('is one page without script and without any other file, a table in every section', () => {
    const page = ran.files['report.html'] ?? '';
    expect(page).not.toMatch(/<script|<link|src=|href=|url\((?!#marked)/);
    expect(page).toMatch(/@media print/);
    for (const section of page.split('<section').slice(1)) expect(section).toMatch(/<table>/);
    expect(page).not.toMatch(/accuracy/i);
  });

  it('wears the look of the page, with the caution before anything else', () => {
    const page = ran.files['report.html'] ?? '';
    expect(page).toContain(readFileSync(new URL('../../src/look/look.css', import.meta.url), 'utf8'));
    expect(page.indexOf('does not replace it')).toBeLessThan(page.indexOf('<main>'));
  });

  it('is committed as an example, and fresh', () => {
    const names = readdirSync(example)
      .filter((name) => name.startsWith('report'))
      .sort();
    expect(names).toEqual(
      Object.keys(ran.files)
        .filter((name) => name.startsWith('report'))
        .sort(),
    );
    for (const name of names) expect(readFileSync(join(example, name), 'utf8')).toBe(ran.files[name]);
  });
});
