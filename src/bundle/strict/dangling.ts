// References that can lead nowhere: a `urn:` names an entry of its own Bundle and nothing else.
import { isObject, listOf, memberOf, textOf } from '../json.ts';
import type { JsonObject } from '../json.ts';
import { fault, within } from './fault.ts';
import type { Fault } from './fault.ts';

const deepest = 32;
const mostFaults = 100;

/**
 * `urn:` references of a Bundle's resources that no fullUrl of the Bundle answers.
 *
 * Notes    1. A relative or absolute reference may exist on a server and is no fault.
 * Source   FHIR R4 4.0.1 Bundle, resolving references
 */
export function danglingFaults(bundle: JsonObject): readonly Fault[] {
  const entries = listOf(bundle.entry);
  const known = new Set(entries.flatMap((entry) => textOf(memberOf(entry, 'fullUrl')) ?? []));
  const faults: Fault[] = [];
  entries.forEach((entry, at) => {
    search(memberOf(entry, 'resource'), `${within('entry', at)}.resource`, { depth: 0, known, faults });
  });
  return faults;
}

interface Search {
  readonly depth: number;
  readonly known: ReadonlySet<string>;
  readonly faults: Fault[];
}

function search(value: unknown, element: string, state: Search): void {
  const { depth, known, faults } = state;
  if (depth > deepest || faults.length >= mostFaults) return;
  if (Array.isArray(value)) {
    value.forEach((item: unknown, at) => {
      search(item, within(element, at), { ...state, depth: depth + 1 });
    });
    return;
  }
  if (!isObject(value) || value.resourceType === 'Bundle') return;
  const { reference } = value;
  if (typeof reference === 'string' && reference.startsWith('urn:') && !known.has(reference)) {
    const message = 'No entry has this fullUrl: send the resource too, or mend the reference.';
    faults.push(fault('reference-unresolved', 'not-found', within(element, 'reference'), message));
  }
  for (const [name, member] of Object.entries(value))
    if (typeof member === 'object') search(member, within(element, name), { ...state, depth: depth + 1 });
}
