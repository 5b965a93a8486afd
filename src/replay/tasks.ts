// The two kinds of work a thread can be given, and how each is done.
import { closeSync, existsSync, openSync, readFileSync, readSync } from 'node:fs';
import { adaptInput } from '../site/adapt-input.ts';
import { loadSite } from '../http/site-folder.ts';
import { assessWomen, type Settled } from './assess-bucket.ts';
import { readShared, type SharedLines } from './assemble-woman.ts';
import type { AssessOptions } from './assess-woman.ts';
import { openExtractor, type Extracted, type Extractor } from './extract.ts';
import type { SourceFile } from './find-sources.ts';
import { sharedKey } from './judge-line.ts';
import { openFastFilter } from './simd-filter.ts';
import { canBeCut, pour, readRange, readWhole, type ByteRange } from './read-source.ts';
import type { Tally } from './report/tally.ts';
import { bucketOf, readSpoolLine, spoolLine, type Section, type SpooledLine } from './spool.ts';
import { openWholeFile, writeWhole } from './write-file.ts';

export interface ExtractTask {
  readonly kind: 'extract';
  /** Name of what it writes, without an ending. */
  readonly path: string;
  readonly file: SourceFile;
  readonly fileIndex: number;
  readonly range: ByteRange;
  readonly buckets: number;
  readonly readsEveryLine: boolean;
  readonly siteFolder?: string | undefined;
}

export interface ExtractDone extends Extracted {
  readonly sections: readonly Section[];
}

export interface Spool {
  readonly path: string;
  readonly sections: readonly Section[];
}

export interface AssessTask {
  readonly kind: 'assess';
  readonly path: string;
  readonly bucket: number;
  /** The bucket of shared lines is the one after the last. */
  readonly buckets: number;
  readonly spools: readonly Spool[];
  readonly options: Omit<AssessOptions, 'site'>;
  readonly siteFolder?: string | undefined;
}

export interface AssessDone {
  readonly tally: Tally;
  readonly failed: number;
  readonly settled: readonly (readonly [file: number, counts: Settled])[];
}

export type Task = ExtractTask | AssessTask;
export type Done = ExtractDone | AssessDone;

/** Does the work and writes what came of it, its account last: where that is, the work is done. */
export async function doTask(task: Task): Promise<Done> {
  const done = task.kind === 'extract' ? await extract(task) : assess(task);
  writeWhole(`${task.path}.json`, JSON.stringify(done));
  return done;
}

const flushBytes = 16 << 20;

async function extract(task: ExtractTask): Promise<ExtractDone> {
  const out = openWholeFile(`${task.path}.spool`);
  const sections: Section[] = [];
  let held = new Map<number, string[]>();
  let heldBytes = 0;
  const flush = (): void => {
    for (const [bucket, lines] of [...held].sort(([a], [b]) => a - b)) {
      const from = out.length();
      out.write(lines.join(''));
      sections.push({ bucket, from, length: out.length() - from });
    }
    held = new Map();
    heldBytes = 0;
  };
  const extractor = openExtractorOf(task, (key, json, isFirst) => {
    const bucket = key === sharedKey ? task.buckets : bucketOf(key, task.buckets);
    const lines = held.get(bucket) ?? [];
    lines.push(spoolLine(key, isFirst ? task.fileIndex : -1, json));
    held.set(bucket, lines);
    heldBytes += json.length;
    if (heldBytes > flushBytes) flush();
  });
  if (canBeCut(task.file)) readRange(task.file.path, task.range, extractor);
  else for await (const chunk of readWhole(task.file)) pour(chunk, extractor);
  const extracted = extractor.end();
  flush();
  out.finish();
  return { ...extracted, sections };
}

type Keep = (key: string, json: string, isFirst: boolean) => void;

/** An extractor for a site, if one is named. */
export function openExtractorOf(
  { readsEveryLine, siteFolder }: Pick<ExtractTask, 'readsEveryLine' | 'siteFolder'>,
  keep: Keep,
): Extractor {
  const setup = siteFolder === undefined ? undefined : loadSite(siteFolder).setup;
  const local = [...(setup?.codes.keys() ?? [])].map((key) => key.slice(key.lastIndexOf('|') + 1));
  return openExtractor({
    filter: openFastFilter(local),
    readsEveryLine,
    keep,
    ...(setup === undefined ? {} : { adapt: (value: unknown) => adaptInput(value, setup).input }),
  });
}

function assess(task: AssessTask): AssessDone {
  const options = assessOptionsOf(task);
  const lines = linesOf(task.spools, task.bucket);
  const { results, tally, settled, failed } = assessWomen(lines, sharedOf(task), options);
  writeWhole(`${task.path}.ndjson`, results.join(''));
  return { tally, failed, settled: [...settled] };
}

/** Options with what a site adds. */
export function assessOptionsOf({
  options,
  siteFolder,
}: Pick<AssessTask, 'options' | 'siteFolder'>): AssessOptions {
  if (siteFolder === undefined) return options;
  const { guideline: _guideline, ...site } = loadSite(siteFolder).options;
  return { ...options, site };
}

let sharedOfRun: { readonly key: string; readonly shared: SharedLines } | undefined;

/** The shared lines are the same for every bucket of a run: a thread reads them once. */
function sharedOf({ spools, buckets }: AssessTask): SharedLines {
  const key = spools.map(({ path }) => path).join();
  if (sharedOfRun?.key === key) return sharedOfRun.shared;
  const shared = readShared(linesOf(spools, buckets).map(({ json }) => json));
  sharedOfRun = { key, shared };
  return shared;
}

function linesOf(spools: readonly Spool[], bucket: number): readonly SpooledLine[] {
  return spools.flatMap(({ path, sections }) => {
    const own = sections.filter((section) => section.bucket === bucket);
    if (own.length === 0) return [];
    const descriptor = openSync(path, 'r');
    try {
      return own.flatMap((section) => linesIn(descriptor, section));
    } finally {
      closeSync(descriptor);
    }
  });
}

function linesIn(descriptor: number, { from, length }: Section): readonly SpooledLine[] {
  const bytes = Buffer.allocUnsafe(length);
  for (let at = 0; at < length;) at += readSync(descriptor, bytes, at, length - at, from + at);
  return bytes
    .toString('utf8')
    .split('\n')
    .flatMap((line) => readSpoolLine(line) ?? []);
}

/** What an earlier run left of a task: its account, when it was finished. */
export function doneBefore(path: string): Done | undefined {
  const file = `${path}.json`;
  if (!existsSync(file)) return undefined;
  const value: unknown = JSON.parse(readFileSync(file, 'utf8'));
  return isDone(value) ? value : undefined;
}

/** Only this program writes these files: two members tell that it is one of them. */
function isDone(value: unknown): value is Done {
  if (typeof value !== 'object' || value === null) return false;
  return ('sections' in value && 'counts' in value) || ('tally' in value && 'settled' in value);
}
