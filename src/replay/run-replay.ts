// A whole run: sources to the files of a folder.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { accountFor, notedLines, type Accounting, type Stretch } from './accounting.ts';
import type { AssessOptions } from './assess-woman.ts';
import { standardInput, type SourceFile, type Sources } from './find-sources.ts';
import { openPool, type Pool } from './pool.ts';
import type { Progress } from './progress.ts';
import { canBeCut } from './read-source.ts';
import { mergeReports } from './report/tally.ts';
import type { Spool } from './spool-file.ts';
import {
  doneBefore,
  type AssessDone,
  type AssessTask,
  type Done,
  type ExtractDone,
  type ExtractTask,
  type JoinDone,
  type JoinTask,
  type Task,
} from './tasks.ts';
import { discardUnfinished, writeWhole } from './write-file.ts';
import { writeOutputs } from './write-outputs.ts';

export interface ReplayOptions {
  readonly out: string;
  readonly threads: number;
  readonly resume: boolean;
  readonly assess: Omit<AssessOptions, 'site'>;
  readonly siteFolder?: string | undefined;
  /** Bytes of one piece of work; smaller in tests. */
  readonly rangeBytes?: number;
  /** Results as Parquet too. */
  readonly parquet?: boolean;
  /** Asks to stop: what is finished stays for `resume`, what is half written goes. */
  readonly signal?: AbortSignal;
}

const workFolder = '.replay-work';
const rangeBytesUsual = 16 << 20;
const bytesPerBucket = 16 << 20;
const fewestBuckets = 16;
const mostBuckets = 512;

/**
 * Replays sources into a folder.
 *
 * Given    sources  as found
 *          options  where to, how many threads, what to ask
 *          say      told how far it is
 * Returns  the account; in the folder `results.ndjson`, `rejected.ndjson`, `accounting.json` and the report
 * Throws   errors of the file system; Interrupted when `signal` asked to stop
 * Notes    1. What is unfinished lies in `.replay-work` of the folder; `resume` goes on from it when sources and
 *             options are the same. A file of the folder is whole or not there.
 *          2. Threads, ranges and buckets decide nothing about the content.
 */
export async function runReplay(
  sources: Sources,
  options: ReplayOptions,
  say: (progress: Progress) => void,
): Promise<Accounting> {
  const work = join(options.out, workFolder);
  openWork(work, sources, options);
  const pool = openPool(options.threads, options.signal);
  try {
    const accounting = await runStages({ sources, options, work, pool, say });
    rmSync(work, { recursive: true, force: true });
    return accounting;
  } finally {
    await pool.close();
    for (const folder of [options.out, work]) discardUnfinished(folder);
  }
}

interface Run {
  readonly sources: Sources;
  readonly options: ReplayOptions;
  readonly work: string;
  readonly pool: Pool;
  readonly say: (progress: Progress) => void;
}

async function runStages({ sources, options, work, pool, say }: Run): Promise<Accounting> {
  const bytes = sources.files.reduce((sum, file) => sum + file.bytes, 0);
  const buckets = Math.min(mostBuckets, Math.max(fewestBuckets, Math.ceil(bytes / bytesPerBucket)));
  const extractTasks = sources.files.flatMap((file, fileIndex) =>
    rangesOf(file, options.rangeBytes ?? rangeBytesUsual).map((range, at) => ({
      kind: 'extract' as const,
      path: join(work, `x${fileIndex}-${at}`),
      file,
      fileIndex,
      range,
      buckets,
      readsEveryLine: sources.mayHoldVersions,
      siteFolder: options.siteFolder,
    })),
  );
  const extracted = await extractAll(extractTasks, pool, say);
  const stretches: readonly Stretch[] = extractTasks.flatMap(({ fileIndex }, at) => {
    const done = extracted[at];
    return done === undefined ? [] : [{ fileIndex, done }];
  });
  const read = extractTasks.map(({ path }, at) => ({
    path: `${path}.spool`,
    sections: extracted[at]?.sections ?? [],
  }));
  const spools = [
    ...read,
    await joinAll({ kind: 'join', path: join(work, 'j'), buckets, spools: read }, pool),
  ];
  const assessTasks = Array.from({ length: buckets }, (_, bucket) => ({
    kind: 'assess' as const,
    path: join(work, `r${bucket}`),
    bucket,
    buckets,
    spools,
    options: options.assess,
    siteFolder: options.siteFolder,
  }));
  const assessed = await assessAll(assessTasks, pool, say);
  const accounting = accountFor(sources.files, stretches, assessed, sources.warnings);
  await writeOutputs(options, {
    results: assessTasks.map(({ path }) => `${path}.ndjson`),
    tally: mergeReports(assessed.map(({ tally }) => tally)),
    accounting,
    noted: notedLines(sources.files, stretches),
  });
  return accounting;
}

function rangesOf(file: SourceFile, rangeBytes: number): readonly { from: number; to: number }[] {
  if (!canBeCut(file)) return [{ from: 0, to: file.bytes }];
  return Array.from({ length: Math.max(1, Math.ceil(file.bytes / rangeBytes)) }, (_, at) => ({
    from: at * rangeBytes,
    to: Math.min((at + 1) * rangeBytes, file.bytes),
  }));
}

/** Empties the work folder unless it belongs to the same run and may be gone on with. */
function openWork(
  work: string,
  sources: Sources,
  { assess, siteFolder, resume, rangeBytes }: ReplayOptions,
): void {
  const files = sources.files.map(({ path, bytes }) => [
    path,
    bytes,
    path === standardInput ? 'stdin' : statSync(path).mtimeMs,
  ]);
  const about = createHash('sha256')
    .update(JSON.stringify([files, sources.mayHoldVersions, assess, siteFolder ?? '', rangeBytes ?? 0]))
    .digest('hex');
  const mark = join(work, 'run');
  const isSame = existsSync(mark) && readFileSync(mark, 'utf8') === about;
  const isStream = sources.files.some(({ path }) => path === standardInput);
  if (!(resume && isSame) || isStream) rmSync(work, { recursive: true, force: true });
  mkdirSync(work, { recursive: true });
  writeWhole(mark, about);
}

async function extractAll(
  tasks: readonly ExtractTask[],
  pool: Pool,
  say: (progress: Progress) => void,
): Promise<readonly ExtractDone[]> {
  const totalBytes = tasks.reduce((sum, { range }) => sum + range.to - range.from, 0);
  const so = { bytes: 0, lines: 0, done: 0 };
  return runAll(tasks, pool, isExtractDone, (at, { counts }) => {
    const range = tasks[at]?.range;
    so.done += 1;
    so.bytes += range === undefined ? 0 : range.to - range.from;
    so.lines += counts.lines;
    say({ stage: 'extract', of: tasks.length, totalBytes, women: 0, ...so });
  });
}

/** One task: it is quick, and most exports name everybody by reference. */
async function joinAll(task: JoinTask, pool: Pool): Promise<Spool> {
  const [done] = await runAll([task], pool, isJoinDone, () => undefined);
  return { path: `${task.path}.spool`, sections: done?.sections ?? [] };
}

async function assessAll(
  tasks: readonly AssessTask[],
  pool: Pool,
  say: (progress: Progress) => void,
): Promise<readonly AssessDone[]> {
  const so = { done: 0, women: 0 };
  return runAll(tasks, pool, isAssessDone, (_at, { tally }) => {
    so.done += 1;
    so.women += tally['women'] ?? 0;
    say({ stage: 'assess', of: tasks.length, bytes: 0, totalBytes: 0, lines: 0, ...so });
  });
}

const isExtractDone = (done: Done): done is ExtractDone => 'counts' in done;
const isJoinDone = (done: Done): done is JoinDone => 'joined' in done;
const isAssessDone = (done: Done): done is AssessDone => 'tally' in done;

/** Every task, those finished by an earlier run from their account; results in the order of the tasks. */
async function runAll<Kind extends Done>(
  tasks: readonly Task[],
  pool: Pool,
  isKind: (done: Done) => done is Kind,
  onDone: (at: number, done: Kind) => void,
): Promise<readonly Kind[]> {
  const results: Kind[] = [];
  const take = (at: number, done: Done | undefined): boolean => {
    if (done === undefined || !isKind(done)) return false;
    results[at] = done;
    onDone(at, done);
    return true;
  };
  const open = tasks.flatMap((task, at) => (take(at, doneBefore(task.path)) ? [] : [{ task, at }]));
  await pool.run(
    open.map(({ task }) => task),
    (place, done) => take(open[place]?.at ?? 0, done),
  );
  return results;
}
