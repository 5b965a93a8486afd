// The files of a finished run.
import { join } from 'node:path';
import type { Accounting, NotedInFile } from './accounting.ts';
import { mergeResults } from './merge-results.ts';
import { openChanges } from './report/changes.ts';
import type { Tally } from './report/tally.ts';
import { writeReport } from './report/write-report.ts';
import type { ReplayOptions } from './run-replay.ts';
import { openWholeFile, writeWhole } from './write-file.ts';

export interface Outputs {
  /** Files of result lines, as `mergeResults` takes them. */
  readonly results: readonly string[];
  readonly tally: Tally;
  readonly accounting: Accounting;
  readonly noted: readonly NotedInFile[];
}

/** Writes them; each is whole or not there. */
export async function writeOutputs(
  { out, assess, parquet }: Pick<ReplayOptions, 'out' | 'assess' | 'parquet'>,
  { results: parts, tally, accounting, noted }: Outputs,
): Promise<void> {
  const results = openWholeFile(join(out, 'results.ndjson'));
  const changes = openChanges(assess.guidelines.length > 1 ? join(out, 'changes.csv') : undefined);
  // Loaded when it is asked for.
  const table =
    parquet === true
      ? (await import('./parquet.ts')).openResultTable(join(out, 'results.parquet'))
      : undefined;
  mergeResults(parts, results, (line) => {
    changes.line(line);
    table?.line(line);
  });
  results.finish();
  changes.finish();
  table?.finish();
  writeWhole(join(out, 'accounting.json'), `${JSON.stringify(accounting, null, 2)}\n`);
  writeWhole(join(out, 'rejected.ndjson'), noted.map((each) => `${JSON.stringify(each)}\n`).join(''));
  writeReport(out, { tally, options: assess, accounting });
}
