// Files of a data folder → inputs for the engine: what to send, as of when, about whom.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { readCsv } from './csv.ts';
import * as build from './resources.ts';

export interface DataInput {
  /** Path below the folder, with the line for files of many bundles. */
  readonly name: string;
  readonly input: unknown;
  /** The newest date found in the input, as an instant. */
  readonly asOf: string;
  /** `Patient/…` of each patient in the input; one run each. */
  readonly subjects: readonly string[];
}

export type JsonObject = Readonly<Record<string, unknown>>;
export const isObject = (value: unknown): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** All inputs below a folder. Definitions, dictionaries and answers of other services are not inputs. */
export function readInputs(folder: string): DataInput[] {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
  const perFile = paths.flatMap((path) => inputsOf(folder, path));
  const ndjsonFolders = [...new Set(paths.filter(isPlainNdjson).map((path) => dirname(path)))];
  return [...perFile, ...ndjsonFolders.flatMap((path) => gatherPatients(folder, path))];
}

const isPlainNdjson = (path: string): boolean =>
  path.endsWith('.ndjson') && !path.endsWith('.bundles.ndjson');

function inputsOf(folder: string, path: string): DataInput[] {
  if (path.includes('definitions')) return [];
  const text = (): string => readFileSync(join(folder, path), 'utf8');
  if (path.endsWith('.bundles.ndjson'))
    return lines(text()).map((line, index) => toInput(`${path}:${index + 1}`, line));
  if (path.endsWith('.json')) {
    const json: unknown = JSON.parse(text());
    const input = isObject(json) && 'hookInstance' in json ? prefetchBundle(json) : json;
    return isObject(input) && 'resourceType' in input ? [toInput(path, input)] : [];
  }
  return basename(path) === 'maternal-health-risk.csv' ? readMaternalHealthRisk(path, text()) : [];
}

const lines = (text: string): unknown[] =>
  text
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line): unknown => JSON.parse(line));

/** The resources a CDS Hooks request brings with it, as one bundle. */
function prefetchBundle(request: JsonObject): JsonObject {
  const prefetch = isObject(request['prefetch']) ? Object.values(request['prefetch']) : [];
  const entry = prefetch.filter(isObject).map((resource) => ({ resource }));
  return { resourceType: 'Bundle', type: 'collection', entry };
}

function toInput(name: string, input: unknown): DataInput {
  return { name, input, asOf: newestDate(input), subjects: patientsIn(input) };
}

const isoDate = /"((?:19|20)\d\d-\d\d-\d\d)(T\d\d:\d\d(?::\d\d)?(?:\.\d+)?)?(Z|[+-]\d\d:\d\d)?"/g;
const dayMilliseconds = 86_400_000;

function newestDate(input: unknown): string {
  const found = [...JSON.stringify(input).matchAll(isoDate)].map(([, day = '', time, zone = 'Z']) =>
    time === undefined
      ? Date.parse(`${day}T00:00:00Z`) + dayMilliseconds - 1
      : Date.parse(`${day}${time}${zone}`),
  );
  const valid = found.filter((instant) => !Number.isNaN(instant));
  return new Date(
    valid.length === 0 ? Date.parse('2026-01-01T00:00:00Z') : valid.reduce((a, b) => Math.max(a, b)),
  ).toISOString();
}

export function resourcesIn(input: unknown): JsonObject[] {
  if (!isObject(input)) return [];
  const entries = Array.isArray(input['entry']) ? input['entry'].filter(isObject) : [];
  return [input, ...entries.flatMap((entry) => resourcesIn(entry['resource']))];
}

const patientsIn = (input: unknown): string[] =>
  resourcesIn(input).flatMap((resource) =>
    resource['resourceType'] === 'Patient' && typeof resource['id'] === 'string'
      ? [`Patient/${resource['id']}`]
      : [],
  );

/** Files of one resource type each → one bundle a patient. */
function gatherPatients(folder: string, path: string): DataInput[] {
  const resources = readdirSync(join(folder, path))
    .filter(isPlainNdjson)
    .sort()
    .flatMap((name) => lines(readFileSync(join(folder, path, name), 'utf8')));
  const byPatient = new Map<string, JsonObject[]>();
  for (const resource of resources.filter(isObject)) {
    const owner = ownerOf(resource);
    byPatient.set(owner, [...(byPatient.get(owner) ?? []), resource]);
  }
  return [...byPatient].map(([owner, own]) =>
    toInput(`${path} ${owner}`, {
      resourceType: 'Bundle',
      type: 'collection',
      entry: own.map((resource) => ({ resource })),
    }),
  );
}

function ownerOf(resource: JsonObject): string {
  if (resource['resourceType'] === 'Patient') return `Patient/${String(resource['id'])}`;
  const subject = resource['subject'];
  return isObject(subject) ? String(subject['reference']) : 'nobody';
}

/** Teaching data without dates: one pressure each, at an invented time. */
function readMaternalHealthRisk(path: string, text: string): DataInput[] {
  const at = '2023-01-01T09:00:00Z';
  return readCsv(text).map((row, index) =>
    toInput(
      `${path}:${index + 2}`,
      build.bundleOf([build.pressure(at, Number(row['SystolicBP']), Number(row['DiastolicBP']))]),
    ),
  );
}
