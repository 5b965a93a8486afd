// Invariants of a Bundle, bdl-1 to bdl-12 and inv-1 of Parameters; each is compared with its FHIRPath in the tests.
import { isObject, listOf, memberOf, textOf } from '../json.ts';
import type { JsonObject } from '../json.ts';
import { fault, within } from './fault.ts';
import type { Check, Fault } from './fault.ts';

const requestTypes: readonly unknown[] = ['batch', 'transaction', 'history'];
const responseTypes: readonly unknown[] = ['batch-response', 'transaction-response', 'history'];

/**
 * The invariants of its own that a Bundle or a Parameters breaks.
 *
 * Source   FHIR R4 4.0.1 StructureDefinition Bundle (bdl-1 to bdl-12; bdl-6 is not among them), Parameters (inv-1)
 */
export const bundleFaults: Check = (resource) => {
  if (resource.resourceType === 'Parameters') return parameterFaults(resource.parameter, 'parameter', 0);
  if (resource.resourceType !== 'Bundle') return [];
  return [
    ...wholeFaults(resource),
    ...listOf(resource.entry).flatMap((entry, at) => entryFaults(resource, entry, at)),
  ];
};

function broken(key: string, element: string, message: string): Fault {
  return fault(key, 'invariant', element, message);
}

function wholeFaults(bundle: JsonObject): readonly Fault[] {
  const { type } = bundle;
  const entries = listOf(bundle.entry);
  const found: Fault[] = [];
  if (bundle.total !== undefined && type !== 'searchset' && type !== 'history')
    found.push(broken('bdl-1', 'total', 'Only a searchset or a history has a total: leave it out.'));
  found.push(...repeated(bundle, entries));
  if (type === 'document') found.push(...documentFaults(bundle, entries));
  if (type === 'message' && typeOfEntry(entries[0]) !== 'MessageHeader')
    found.push(broken('bdl-12', 'entry', 'A message begins with a MessageHeader: put it first.'));
  return found;
}

function documentFaults(bundle: JsonObject, entries: readonly unknown[]): readonly Fault[] {
  const found: Fault[] = [];
  if (
    memberOf(bundle.identifier, 'system') === undefined ||
    memberOf(bundle.identifier, 'value') === undefined
  )
    found.push(
      broken('bdl-9', 'identifier', 'A document has an identifier with system and value: fill both.'),
    );
  if (bundle.timestamp === undefined)
    found.push(broken('bdl-10', 'timestamp', 'A document has a timestamp: fill it.'));
  if (typeOfEntry(entries[0]) !== 'Composition')
    found.push(broken('bdl-11', 'entry', 'A document begins with a Composition: put it first.'));
  return found;
}

function typeOfEntry(entry: unknown): unknown {
  return memberOf(memberOf(entry, 'resource'), 'resourceType');
}

/** bdl-7: the same fullUrl and version twice. */
function repeated(bundle: JsonObject, entries: readonly unknown[]): readonly Fault[] {
  if (bundle.type === 'history') return [];
  const seen = new Set<string>();
  return entries.flatMap((entry, at): readonly Fault[] => {
    const fullUrl = textOf(memberOf(entry, 'fullUrl'));
    if (fullUrl === undefined) return [];
    const version = textOf(memberOf(memberOf(memberOf(entry, 'resource'), 'meta'), 'versionId')) ?? '';
    const key = `${fullUrl}${version}`;
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    const element = `${within('entry', at)}.fullUrl`;
    return [broken('bdl-7', element, 'This fullUrl stands in the Bundle before: each may occur once.')];
  });
}

function entryFaults(bundle: JsonObject, entry: unknown, at: number): readonly Fault[] {
  if (!isObject(entry)) return [];
  const element = within('entry', at);
  const found: Fault[] = [];
  const say = (key: string, member: string, message: string) =>
    void found.push(broken(key, member === '' ? element : `${element}.${member}`, message));
  const { type } = bundle;
  if (entry.search !== undefined && type !== 'searchset')
    say('bdl-2', 'search', 'Only a searchset has search in its entries: leave it out.');
  if ((entry.request !== undefined) !== requestTypes.includes(type))
    say(
      'bdl-3',
      'request',
      'Every entry of a batch, transaction or history has a request, and no other: mend request or type.',
    );
  if ((entry.response !== undefined) !== responseTypes.includes(type))
    say(
      'bdl-4',
      'response',
      'Every entry of a response or history has a response, and no other: mend response or type.',
    );
  if (entry.resource === undefined && entry.request === undefined && entry.response === undefined)
    say('bdl-5', '', 'The entry holds no resource, request or response: fill it or leave it out.');
  if (textOf(entry.fullUrl)?.includes('/_history/') === true)
    say('bdl-8', 'fullUrl', 'A fullUrl names no version: leave /_history/ out.');
  return found;
}

const deepest = 5;

function parameterFaults(list: unknown, element: string, depth: number): readonly Fault[] {
  if (depth > deepest) return [];
  return listOf(list).flatMap((parameter, at) => {
    if (!isObject(parameter)) return [];
    const here = within(element, at);
    const values = Object.keys(parameter).filter((key) => /^_?value[A-Z]/.test(key)).length > 0;
    const filled = [values, parameter.resource !== undefined, parameter.part !== undefined].filter(
      Boolean,
    ).length;
    const own =
      filled === 1
        ? []
        : [broken('inv-1', here, 'A parameter has one of value, resource and part: keep one.')];
    return [...own, ...parameterFaults(parameter.part, `${here}.part`, depth + 1)];
  });
}
