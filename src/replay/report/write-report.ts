// The report in its forms: JSON, CSV for each table, one page of HTML.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { caution } from '../../presenters/caution.ts';
import type { Accounting } from '../accounting.ts';
import type { AssessOptions } from '../assess-woman.ts';
import { writeWhole } from '../write-file.ts';
import { csvRow } from './csv.ts';
import { toHtml } from './html.ts';
import { measureReports } from './measure-reports.ts';
import { sectionsOf } from './sections.ts';
import { countOf, type Tally } from './tally.ts';

export interface ReportInput {
  readonly tally: Tally;
  readonly options: Omit<AssessOptions, 'site'>;
  /** Absent where lines were counted elsewhere. */
  readonly accounting?: Accounting;
}

const title = 'What would have been said';

/** Writes `report.json`, `report.html`, `report-<table>.csv` and, for a window, `measure-<id>.json` into a folder. */
export function writeReport(folder: string, { tally, options, accounting }: ReportInput): void {
  const { guidelines, every } = options;
  mkdirSync(folder, { recursive: true });
  const sections = sectionsOf(tally, { guidelines, every });
  const window = windowText(options);
  writeWhole(
    join(folder, 'report.json'),
    `${JSON.stringify({ guidelines, every, window, sections, tally }, null, 2)}\n`,
  );
  for (const table of sections.flatMap(({ tables }) => tables))
    writeWhole(join(folder, `report-${table.id}.csv`), [table.columns, ...table.rows].map(csvRow).join(''));
  for (const { name, text } of measureReports(tally, options)) writeWhole(join(folder, name), text);
  writeWhole(
    join(folder, 'report.html'),
    toHtml({
      title,
      lead: [
        `Guideline: ${guidelines.join(', beside it ')}. Judged at ${every === 'visit' ? 'every visit' : 'the end'}, ${window}.`,
        `${countOf(tally, 'persons')} persons read, ${countOf(tally, 'women')} with a sign of a pregnancy in the record; ${countOf(tally, 'failed')} could not be judged at all.`,
        ...(accounting === undefined ? [] : [accountText(accounting)]),
      ],
      sections,
      caution,
    }),
  );
}

function windowText({ from, to }: Omit<AssessOptions, 'site'>): string {
  const day = (at: number): string => new Date(at).toISOString().slice(0, 10);
  const parts = [
    ...(from === undefined ? [] : [`from ${day(from)}`]),
    ...(to === undefined ? [] : [`to ${day(to)}`]),
  ];
  return parts.length === 0 ? 'over all of the record' : parts.join(' ');
}

function accountText({ total: { lines, used, notNeeded, setAside, rejected } }: Accounting): string {
  return `${lines} lines read: ${used} used, ${notNeeded} not needed, ${setAside} set aside, ${rejected} rejected.`;
}
