// Runs of a replay over files made for a test.
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { FhirResource } from 'fhir/r4.js';
import type { Accounting } from '../../src/replay/accounting.ts';
import { findSources } from '../../src/replay/find-sources.ts';
import { runReplay, type ReplayOptions } from '../../src/replay/run-replay.ts';
import * as build from '../support/resources.ts';

export const lines = (resources: readonly unknown[]): string =>
  resources.map((resource) => `${JSON.stringify(resource)}\n`).join('');

/** A folder with files of these names and texts. */
export function folderOf(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'replay-'));
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  return folder;
}

export interface Ran {
  readonly accounting: Accounting;
  readonly out: string;
  /** Every file of the folder by name. */
  readonly files: Readonly<Record<string, string>>;
  readonly results: readonly Record<string, unknown>[];
}

export async function run(
  folder: string,
  asked: Partial<ReplayOptions['assess']> = {},
  options: Partial<ReplayOptions> = {},
): Promise<Ran> {
  const out = options.out ?? mkdtempSync(join(tmpdir(), 'replay-out-'));
  const accounting = await runReplay(
    findSources([folder]),
    {
      threads: 1,
      resume: false,
      ...options,
      out,
      assess: { guidelines: ['frontline'], every: 'visit', everyone: false, ...asked },
    },
    () => undefined,
  );
  const files = Object.fromEntries(
    readdirSync(out)
      .filter((name) => !name.startsWith('.'))
      .map((name) => [name, readFileSync(join(out, name), 'utf8')]),
  );
  return { accounting, out, files, results: parsedLines(files['results.ndjson'] ?? '') };
}

export const parsedLines = (text: string): Record<string, unknown>[] =>
  text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Record<string, unknown>);

export const remove = (folder: string): void => rmSync(folder, { recursive: true, force: true });

/** The same resources about another woman, with ids of their own. */
export function about(woman: string, resources: readonly FhirResource[]): FhirResource[] {
  return resources.map(
    (resource, at) =>
      ({
        ...resource,
        id: resource.resourceType === 'Patient' ? woman : `${woman}-${at}`,
        ...('subject' in resource ? { subject: { reference: `Patient/${woman}` } } : {}),
      }) as FhirResource,
  );
}

/** A pregnancy with pressures on the days given, each a pair or several of one day at 10:00, 10:10 … */
export function pregnancy(
  days: Readonly<Record<string, readonly (readonly [number, number])[]>>,
  dueDate = '2024-09-01',
): FhirResource[] {
  const pressures = Object.entries(days).flatMap(([day, pairs]) =>
    pairs.map(([systolic, diastolic], at) =>
      build.pressure(`${day}T10:${String(at * 10).padStart(2, '0')}:00Z`, systolic, diastolic),
    ),
  );
  return [build.patient(), build.dueDate('2024-03-01T09:00:00Z', dueDate), ...pressures];
}
