// The two stages as filters on standard input and output, for an engine that shuffles in between.
import type { Readable, Writable } from 'node:stream';
import { assessWomen } from './assess-bucket.ts';
import { readShared, type SharedLines } from './assemble-woman.ts';
import { isIndex } from './join-by-identifier.ts';
import { sharedKey } from './judge-line.ts';
import { pour } from './read-source.ts';
import { mergeReports, type Tally } from './report/tally.ts';
import { readSpoolLine, spoolLine, type SpooledLine } from './spool.ts';
import { assessOptionsOf, openExtractorOf, type AssessTask } from './tasks.ts';

/** Key of lines that are no results but sums, on the way out of `assess`. */
export const tallyKey = '#tally';
/** Key of the account of the lines read, on the way out of `extract`. */
export const countsKey = '#counts';

export interface Streams {
  readonly input: Readable;
  readonly output: Writable;
}

/**
 * Lines of resources in, kept lines out: `key TAB 0 TAB json`; last a line of counts.
 *
 * Notes    1. The shared key is `*`: those lines must reach every `assess`.
 */
export async function extractStage(
  { input, output }: Streams,
  siteFolder: string | undefined,
): Promise<void> {
  const held: string[] = [];
  const extractor = openExtractorOf({ readsEveryLine: false, siteFolder }, (key, json) =>
    held.push(spoolLine(key, 0, json)),
  );
  const chunks: AsyncIterable<Uint8Array> = input;
  for await (const chunk of chunks) {
    pour(chunk, extractor);
    if (held.length > 0) await written(output, held.splice(0).join(''));
  }
  const { counts, rejected, setAside } = extractor.end();
  held.push(
    spoolLine(
      countsKey,
      0,
      JSON.stringify({ ...counts, reasons: [...rejected, ...setAside].map(({ reason }) => reason) }),
    ),
  );
  await written(output, held.join(''));
}

/**
 * Kept lines in, grouped by woman (all lines of one follow each other), results out: `key TAB 0 TAB result`.
 *
 * Given    options  guidelines, view, window
 * Notes    1. Shared lines must come before every woman. Sums come last, under `#tally`.
 *          2. One woman at a time is held.
 */
export async function assessStage(
  { input, output }: Streams,
  task: Pick<AssessTask, 'options' | 'siteFolder'>,
): Promise<void> {
  const options = assessOptionsOf(task);
  const sharedLines: string[] = [];
  let shared: SharedLines | undefined;
  const tallies: Tally[] = [];
  let woman: SpooledLine[] = [];
  const assess = async (): Promise<void> => {
    if (woman.length === 0) return;
    shared ??= readShared(sharedLines);
    const { results, tally } = assessWomen(woman, shared, options);
    const [first] = woman;
    woman = [];
    tallies.push(tally);
    if (tallies.length > mostHeld) tallies.splice(0, tallies.length, mergeReports(tallies));
    await written(output, results.map((result) => spoolLine(first?.key ?? '', 0, result.trimEnd())).join(''));
  };
  for await (const text of linesOf(input)) {
    const line = readSpoolLine(text);
    if (line === undefined || line.key === countsKey || isIndex(line.key)) continue;
    if (line.key === sharedKey) {
      sharedLines.push(line.json);
      continue;
    }
    if (woman[0]?.key !== line.key) await assess();
    woman.push(line);
  }
  await assess();
  await written(output, spoolLine(tallyKey, 0, JSON.stringify(mergeReports(tallies))));
}

const mostHeld = 64;

async function* linesOf(input: Readable): AsyncGenerator<string> {
  let held = '';
  input.setEncoding('utf8');
  const chunks: AsyncIterable<string> = input;
  for await (const chunk of chunks) {
    const lines = (held + chunk).split('\n');
    held = lines.pop() ?? '';
    yield* lines;
  }
  if (held !== '') yield held;
}

function written(output: Writable, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    output.write(text, (error) => {
      if (error) reject(error);
      else resolve();
    });
  });
}
