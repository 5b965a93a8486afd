// Local codes, units and strip words to ours, before anything is read. Hands on a copy and a remark for each change.
import type { Issue } from '../errors.ts';
import { urineProteinCodes } from '../terminology/urine-codes.ts';
import { mapKey } from './map-key.ts';
import type { CodeMap, Mapping, SiteSetup } from './site.ts';

type Json = Readonly<Record<string, unknown>>;

export interface Adapted {
  readonly input: unknown;
  /** One information issue of the code `mapped-by-site` for each change, in the order of the input. */
  readonly remarks: readonly Issue[];
}

/** Deeper than any resource nests; deeper values are handed on unchanged. */
const deepest = 64;

/**
 * What was submitted, with the site's own codes read as ours.
 *
 * Given    input  as submitted, of any shape
 *          site   maps that were checked when they were loaded
 * Returns  the input itself when nothing is mapped; else a copy of the parts that change: our coding added after
 *          the local ones, the unit code put in place of the local one, a strip word given its coding
 * Throws   never
 * Notes    1. Nothing is taken away: the local coding and the words stay beside ours.
 *          2. Paths in the input stay as they are.
 *          3. Strip words are read only in an Observation whose code is one of urine protein.
 * Source   fhir.md F-S02, F-S03
 */
export function adaptInput(input: unknown, site: SiteSetup): Adapted {
  if (site.codes.size + site.units.size + site.stripTexts.size === 0) return { input, remarks: [] };
  const remarks: Issue[] = [];
  const root = isJson(input) && typeof input['resourceType'] === 'string' ? input['resourceType'] : '';
  const adapted = adaptValue({ site, remarks }, input, { path: root, depth: 0 });
  return { input: adapted, remarks };
}

interface Work {
  readonly site: SiteSetup;
  readonly remarks: Issue[];
}

interface Spot {
  readonly path: string;
  readonly depth: number;
}

function isJson(value: unknown): value is Json {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

/** A copy only where something inside changed. */
function adaptValue(work: Work, value: unknown, { path, depth }: Spot): unknown {
  if (depth > deepest) return value;
  if (Array.isArray(value)) {
    const list: readonly unknown[] = value;
    const next = list.map((item, at) => adaptValue(work, item, { path: `${path}[${at}]`, depth: depth + 1 }));
    return next.some((item, at) => item !== list[at]) ? next : value;
  }
  if (!isJson(value)) return value;
  const entries = Object.entries(value).map(([name, member]): [string, unknown] => {
    if (typeof member !== 'object' || member === null) return [name, member];
    return [
      name,
      adaptValue(work, member, { path: path === '' ? name : `${path}.${name}`, depth: depth + 1 }),
    ];
  });
  const inner = entries.some(([name, member]) => member !== value[name])
    ? Object.fromEntries(entries)
    : value;
  return adaptObject(work, inner, path);
}

function adaptObject(work: Work, value: Json, path: string): Json {
  if (Array.isArray(value['coding'])) return withOurCoding(work, value, path);
  if (typeof value['value'] === 'number' || typeof value['unit'] === 'string')
    return withOurUnit(work, value, path);
  return value['resourceType'] === 'Observation' ? withStripCoding(work, value, path) : value;
}

function remark(work: Work, expression: string, { system, code, map }: Mapping): void {
  const message = `Read as ${code} of ${system}, by the site's map ${map}.`;
  work.remarks.push({
    severity: 'information',
    code: 'mapped-by-site',
    type: 'informational',
    expression,
    message,
  });
}

function found(map: CodeMap, system: unknown, code: unknown): Mapping | undefined {
  if (typeof code !== 'string') return undefined;
  return map.get(mapKey(typeof system === 'string' ? system : '', code));
}

function codingOf({ system, code, display }: Mapping): Json {
  return display === undefined ? { system, code } : { system, code, display };
}

function withOurCoding(work: Work, concept: Json, path: string): Json {
  const codings = listOf(concept['coding']);
  const added: Json[] = [];
  codings.forEach((coding, at) => {
    if (!isJson(coding)) return;
    const mapping = found(work.site.codes, coding['system'], coding['code']);
    if (mapping === undefined || has(codings, mapping) || has(added, mapping)) return;
    added.push(codingOf(mapping));
    remark(work, `${path}.coding[${at}]`, mapping);
  });
  return added.length === 0 ? concept : { ...concept, coding: [...codings, ...added] };
}

function has(codings: readonly unknown[], { system, code }: Mapping): boolean {
  return codings.some((coding) => isJson(coding) && coding['system'] === system && coding['code'] === code);
}

/** A Quantity by its code and system, else by its unit text (source system empty or `urn:text`). */
function withOurUnit(work: Work, quantity: Json, path: string): Json {
  const { units } = work.site;
  const mapping =
    found(units, quantity['system'], quantity['code']) ??
    (quantity['code'] === undefined ? found(units, textSystem, quantity['unit']) : undefined);
  if (mapping === undefined) return quantity;
  remark(work, path, mapping);
  return { ...quantity, system: mapping.system, code: mapping.code };
}

/** The source system of a map whose sources are plain words. */
export const textSystem = 'urn:text';

const proteinCodes: ReadonlySet<string> = new Set(
  urineProteinCodes.map(({ system, code }) => `${system}|${code}`),
);

function isUrineProtein(observation: Json): boolean {
  const { code } = observation;
  return listOf(isJson(code) ? code['coding'] : undefined).some(
    (coding) => isJson(coding) && proteinCodes.has(`${String(coding['system'])}|${String(coding['code'])}`),
  );
}

function withStripCoding(work: Work, observation: Json, path: string): Json {
  if (work.site.stripTexts.size === 0 || !isUrineProtein(observation)) return observation;
  const words = observation['valueString'];
  const concept = observation['valueCodeableConcept'];
  const mapping = found(
    work.site.stripTexts,
    textSystem,
    words ?? (isJson(concept) ? concept['text'] : undefined),
  );
  if (mapping === undefined) return observation;
  if (typeof words === 'string') {
    remark(work, `${path}.valueString`, mapping);
    const rest = Object.fromEntries(Object.entries(observation).filter(([name]) => name !== 'valueString'));
    return { ...rest, valueCodeableConcept: { coding: [codingOf(mapping)], text: words } };
  }
  if (!isJson(concept) || concept['coding'] !== undefined) return observation;
  remark(work, `${path}.valueCodeableConcept`, mapping);
  return { ...observation, valueCodeableConcept: { ...concept, coding: [codingOf(mapping)] } };
}
