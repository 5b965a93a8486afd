// The walk through what was submitted: every resource becomes a slot, in the order received.
import { RequestError } from '../errors.ts';
import type { Issue } from '../errors.ts';
import { conditionOf, isOddFullUrl, restTail, withoutVersion } from './addresses.ts';
import {
  sayBundleType,
  sayEmpty,
  sayNextPage,
  sayNoResource,
  sayOddFullUrl,
  sayOddId,
  sayOutcome,
} from './entry-issues.ts';
import { warning } from './issues.ts';
import { isObject, isResource, listOf, memberOf, textOf } from './json.ts';
import type { JsonObject, ResourceJson } from './json.ts';
import type { Removal, Slot, Walked } from './slot.ts';

/** Bundles inside bundles (and Parameters parts inside parts) are followed this far. */
const DEEPEST = 5;
/** More than any bundle has entries: keeps the ranks of one bundle below those of the next. */
const RANKS_PER_BUNDLE = 1e9;

interface Walk {
  readonly slots: Slot[];
  readonly removals: Removal[];
  readonly issues: Issue[];
  bundles: number;
}

/** The bundle an entry stands in. */
interface Bundle {
  readonly ordinal: number;
  readonly isHistory: boolean;
}

interface Place {
  readonly path: string;
  readonly depth: number;
  readonly fullUrl?: string | undefined;
  readonly method?: string | undefined;
  readonly rank?: number;
}

/**
 * Everything received, one slot per resource, with what the bundles say about themselves.
 *
 * Given    input  a Bundle of any type, a Parameters, a single resource, or an array of these (NDJSON lines)
 * Returns  slots in the order received; removals (DELETE entries); issues of bundles and entries
 * Throws   RequestError 400 `structure` when the input is no resource at all
 * Notes    1. A nested Bundle is not counted itself, its entries are; deeper than five levels it is counted and set aside.
 *          2. Nothing in a transaction or batch is executed: POST and PUT bodies are data.
 * Source   FHIR R4 4.0.1 Bundle; ours where the page leaves it open
 */
export function walkEntries(input: unknown): Walked {
  const walk: Walk = { slots: [], removals: [], issues: [], bundles: 0 };
  if (Array.isArray(input)) {
    input.forEach((item, at) => {
      walkLine(walk, item, `[${at}]`);
    });
    return walk;
  }
  if (!isResource(input)) throw notAResource();
  const place: Place = { path: input.resourceType, depth: 0 };
  if (input.resourceType === 'Bundle') walkBundle(walk, input, place);
  else if (input.resourceType === 'Parameters')
    walkParameters(walk, input.parameter, `${place.path}.parameter`, 0);
  else addSlot(walk, input, place);
  return walk;
}

function notAResource(): RequestError {
  const message = 'The body is no FHIR resource: send a JSON object with a resourceType, such as a Bundle.';
  return new RequestError(400, [
    { severity: 'error', code: 'not-a-resource', type: 'structure', expression: '', message },
  ]);
}

function walkLine(walk: Walk, line: unknown, path: string): void {
  const before = walk.slots.length;
  if (memberOf(line, 'resourceType') !== 'Parameters') {
    walkResource(walk, line, { path, depth: 0 });
    return;
  }
  walkParameters(walk, memberOf(line, 'parameter'), `${path}.parameter`, 0);
  if (walk.slots.length === before) addSlot(walk, line, { path, depth: 0 });
}

function walkResource(walk: Walk, value: unknown, place: Place): void {
  if (memberOf(value, 'resourceType') !== 'Bundle' || !isObject(value)) {
    addSlot(walk, value, place);
    return;
  }
  if (place.depth >= DEEPEST) {
    addSlot(walk, value, place, 'too-deep');
    return;
  }
  walkBundle(walk, value, { path: place.path, depth: place.depth + 1 });
}

function walkParameters(walk: Walk, parameters: unknown, path: string, depth: number): void {
  listOf(parameters).forEach((parameter, at) => {
    const here = `${path}[${at}]`;
    const resource = memberOf(parameter, 'resource');
    if (resource !== undefined) walkResource(walk, resource, { path: `${here}.resource`, depth });
    const part = memberOf(parameter, 'part');
    if (part === undefined) return;
    if (depth < DEEPEST) walkParameters(walk, part, `${here}.part`, depth + 1);
    else
      walk.issues.push(
        warning(
          'too-deep',
          'too-costly',
          `${here}.part`,
          'Nested too deep and not read: send fewer levels of parts.',
        ),
      );
  });
}

function walkBundle(walk: Walk, bundle: JsonObject, place: Place): void {
  const type = textOf(bundle.type);
  sayBundleType(walk.issues, type, place.path);
  sayNextPage(walk.issues, bundle.link, place.path);
  if (bundle.entry !== undefined && !Array.isArray(bundle.entry)) {
    const expression = `${place.path}.entry`;
    walk.issues.push({
      ...warning('malformed', 'structure', expression, 'entry is not an array: send an array of entries.'),
      severity: 'error',
    });
  }
  const within: Bundle = { ordinal: walk.bundles++, isHistory: type === 'history' };
  const entries = listOf(bundle.entry);
  for (let at = 0; at < entries.length; at++) {
    walkEntry(walk, entries[at], `${place.path}.entry[${at}]`, { within, at, depth: place.depth });
  }
}

function walkEntry(
  walk: Walk,
  entry: unknown,
  path: string,
  where: { readonly within: Bundle; readonly at: number; readonly depth: number },
): void {
  if (!isObject(entry)) {
    sayEmpty(walk.issues, path);
    return;
  }
  const { ordinal, isHistory } = where.within;
  const rank = ordinal * RANKS_PER_BUNDLE + (isHistory ? -where.at : where.at);
  const method = entry.request === undefined ? undefined : textOf(memberOf(entry.request, 'method'));
  if (method === 'DELETE') addRemoval(walk, entry, path, { rank, inHistory: isHistory });
  if (entry.response !== undefined) sayOutcome(walk.issues, entry.response, path);
  if (entry.resource === undefined) {
    sayNoResource(walk.issues, entry, method, path);
    return;
  }
  const fullUrl = textOf(entry.fullUrl);
  walkResource(walk, entry.resource, { path: `${path}.resource`, depth: where.depth, fullUrl, method, rank });
}

function addSlot(walk: Walk, value: unknown, place: Place, fault?: Slot['fault']): void {
  const { path, fullUrl } = place;
  const index = walk.slots.length;
  const resource: ResourceJson | undefined = isResource(value) ? value : undefined;
  const type = resource === undefined ? 'unknown' : resource.resourceType;
  const id = resource === undefined ? undefined : textOf(resource.id);
  if (resource?.id !== undefined && id === undefined) sayOddId(walk.issues, path);
  if (id !== undefined && fullUrl !== undefined && isOddFullUrl(fullUrl, id))
    sayOddFullUrl(walk.issues, path);
  const why = fault ?? (resource === undefined ? 'not-a-resource' : undefined);
  const slot = {
    index,
    path,
    reference: id === undefined ? (fullUrl ?? path) : `${type}/${id}`,
    type,
    id,
    fullUrl,
    resource,
    method: place.method,
    rank: place.rank ?? index,
  };
  walk.slots.push(why === undefined ? slot : { ...slot, fault: why });
}

function addRemoval(
  walk: Walk,
  entry: JsonObject,
  path: string,
  order: { rank: number; inHistory: boolean },
): void {
  const url = textOf(memberOf(entry.request, 'url'));
  const condition = url === undefined ? undefined : conditionOf(url);
  const [type, id] = condition ? [condition.type] : (restTail(withoutVersion(url ?? '')) ?? '').split('/');
  if (type === undefined || (id === undefined && condition === undefined)) {
    const message =
      'This DELETE names no resource that can be found here: give Type/id or Type?identifier=system|value.';
    walk.issues.push(warning('delete-not-understood', 'value', `${path}.request.url`, message));
    return;
  }
  const etag = textOf(memberOf(entry.response, 'etag'));
  walk.removals.push({
    type,
    id,
    identifier: condition?.identifier,
    versionId: etag === undefined ? undefined : /^(?:W\/)?"(.+)"$/.exec(etag)?.[1],
    lastUpdated: textOf(memberOf(entry.response, 'lastModified')),
    ...order,
  });
}
