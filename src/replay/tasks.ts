// The kinds of work a thread can be given, and how each is done.
import { existsSync, readFileSync } from 'node:fs';
import { adaptInput } from '../site/adapt-input.ts';
import { loadSite } from '../http/site-folder.ts';
import { assessWomen, type Settled } from './assess-bucket.ts';
import { readShared, type SharedLines } from './assemble-woman.ts';
import type { AssessOptions } from './assess-woman.ts';
import { openExtractor, type Extracted, type Extractor } from './extract.ts';
import type { SourceFile } from './find-sources.ts';
import { ownersOf } from './join-by-identifier.ts';
import { openFastFilter } from './simd-filter.ts';
import { canBeCut, pour, readRange, readWhole, type ByteRange } from './read-source.ts';
import type { Tally } from './report/tally.ts';
import { bucketOf, type Section } from './spool.ts';
import {
  byIdentifierBucket,
  indexBucket,
  linesOf,
  openSpool,
  sharedBucket,
  type Spool,
} from './spool-file.ts';
import { writeWhole } from './write-file.ts';

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

export interface JoinTask {
  readonly kind: 'join';
  readonly path: string;
  readonly buckets: number;
  readonly spools: readonly Spool[];
}

export interface JoinDone {
  /** Identifiers that were found to be of one woman. */
  readonly joined: number;
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

export type Task = ExtractTask | JoinTask | AssessTask;
export type Done = ExtractDone | JoinDone | AssessDone;

/** Does the work and writes what came of it, its account last: where that is, the work is done. */
export async function doTask(task: Task): Promise<Done> {
  const done = await work(task);
  writeWhole(`${task.path}.json`, JSON.stringify(done));
  return done;
}

function work(task: Task): Done | Promise<Done> {
  switch (task.kind) {
    case 'extract':
      return extract(task);
    case 'join':
      return join(task);
    case 'assess':
      return assess(task);
  }
}

async function extract(task: ExtractTask): Promise<ExtractDone> {
  const spool = openSpool(`${task.path}.spool`, task.buckets);
  const extractor = openExtractorOf(task, (key, json, isFirst) =>
    spool.keep({ key, file: isFirst ? task.fileIndex : -1, json }),
  );
  if (canBeCut(task.file)) readRange(task.file.path, task.range, extractor);
  else for await (const chunk of readWhole(task.file)) pour(chunk, extractor);
  return { ...extractor.end(), sections: spool.finish() };
}

/** Lines by an identifier only, under the reference of their woman where a Patient line tells who she is. */
function join({ path, spools, buckets }: JoinTask): JoinDone {
  const asked = new Set<string>();
  for (const { key } of linesOf(spools, byIdentifierBucket(buckets))) asked.add(key);
  const owners = asked.size === 0 ? undefined : ownersOf(asked, linesOf(spools, indexBucket(buckets)));
  const spool = openSpool(`${path}.spool`, buckets, bucketOf);
  for (const line of linesOf(spools, byIdentifierBucket(buckets)))
    spool.keep({ ...line, key: owners?.get(line.key) ?? line.key });
  return { joined: owners?.size ?? 0, sections: spool.finish() };
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
  const lines = [...linesOf(task.spools, task.bucket)];
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
  const shared = readShared([...linesOf(spools, sharedBucket(buckets))].map(({ json }) => json));
  sharedOfRun = { key, shared };
  return shared;
}

/** What an earlier run left of a task: its account, when it was finished. */
export function doneBefore(path: string): Done | undefined {
  const file = `${path}.json`;
  if (!existsSync(file)) return undefined;
  const value: unknown = JSON.parse(readFileSync(file, 'utf8'));
  return isDone(value) ? value : undefined;
}

/** Only this program writes these files: their members tell that it is one of them. */
function isDone(value: unknown): value is Done {
  if (typeof value !== 'object' || value === null) return false;
  return 'sections' in value || ('tally' in value && 'settled' in value);
}
