// What one line holds, and whose it is.
import { restTail, withoutVersion } from '../bundle/addresses.ts';
import { identifierKey, isObject, isResource, listOf, memberOf, textOf } from '../bundle/json.ts';
import type { ResourceJson } from '../bundle/json.ts';
import { subjectsOf } from '../bundle/read-bundle.ts';
import { READ_TYPES } from '../bundle/read-types.ts';
import { isBirth } from '../timeline/birth.ts';
import { observationKindOf } from '../timeline/observation-kind.ts';

/** Key of what belongs to everybody who refers to it: medicines, devices, samples, deletions. */
export const sharedKey = '*';

export type LineFate =
  | {
      readonly kind: 'kept';
      readonly keys: readonly string[];
      /** Of a Patient: by which other lines may name her. */
      readonly identifiers?: readonly string[];
    }
  | { readonly kind: 'not-needed' }
  | { readonly kind: 'set-aside'; readonly reason: string }
  | { readonly kind: 'rejected'; readonly reason: string };

const notNeeded: LineFate = { kind: 'not-needed' };

/**
 * What becomes of a parsed line.
 *
 * Given    value  parsed JSON
 * Returns  kept under the keys of its woman (`Patient/1`), or of several for a Bundle about several; not needed;
 *          set aside, with the reason, where it names nobody; rejected where it is no resource
 * Throws   never
 * Notes    1. References are taken as relative to one exporting server (F-K02).
 *          2. A Bundle is kept whole: its own addresses (urn:uuid) mean nothing outside it.
 *          3. An Observation entered in error is kept whatever its code: others may be derived from it.
 */
export function judgeLine(value: unknown): LineFate {
  if (!isObject(value)) return { kind: 'rejected', reason: 'not-an-object' };
  if (!isResource(value)) return { kind: 'rejected', reason: 'not-a-resource' };
  if (value.resourceType === 'Bundle') return judgeBundle(value);
  if (value.resourceType === 'Parameters') return judgeParameters(value);
  if (!READ_TYPES.has(value.resourceType)) return notNeeded;
  return mayMatter(value) ? keyed(value) : notNeeded;
}

function mayMatter(resource: ResourceJson): boolean {
  switch (resource.resourceType) {
    case 'Observation':
      return observationKindOf(resource) !== undefined || resource['status'] === 'entered-in-error';
    case 'Procedure':
      return isBirth(resource);
    default:
      return true;
  }
}

function keyed(resource: ResourceJson): LineFate {
  if (resource.resourceType === 'Patient') {
    const id = textOf(resource.id);
    return id === undefined
      ? { kind: 'set-aside', reason: 'identity-missing' }
      : {
          kind: 'kept',
          keys: [`Patient/${id}`],
          identifiers: listOf(resource['identifier']).flatMap((each) => identifierKey(each) ?? []),
        };
  }
  const element = READ_TYPES.get(resource.resourceType)?.subjectElement;
  const person = element === undefined ? undefined : personKey(resource[element]);
  if (person !== undefined)
    return isPerson(person)
      ? { kind: 'kept', keys: [person] }
      : { kind: 'set-aside', reason: 'other-subject' };
  return READ_TYPES.get(resource.resourceType)?.required === true
    ? { kind: 'set-aside', reason: 'subject-missing' }
    : { kind: 'kept', keys: [sharedKey] };
}

const isPerson = (key: string): boolean => /^Patient[/?]|^urn:/i.test(key);

/** `Patient/1` however it is written; `Patient?identifier=system|value` where only an identifier is given. */
export function personKey(reference: unknown): string | undefined {
  const text = textOf(memberOf(reference, 'reference'));
  if (text === undefined || text.startsWith('#')) {
    const identifier = identifierKey(memberOf(reference, 'identifier'));
    return identifier === undefined ? undefined : `Patient?identifier=${identifier}`;
  }
  const plain = withoutVersion(text);
  return restTail(plain) ?? plain;
}

function judgeBundle(bundle: ResourceJson): LineFate {
  if (isDeletion(bundle)) return { kind: 'kept', keys: [sharedKey] };
  return keptOf(bundle, subjectsOf(bundle));
}

function keptOf(container: ResourceJson, subjects: readonly string[]): LineFate {
  const keys = subjects.filter(isPerson);
  if (keys.length > 0) return { kind: 'kept', keys };
  const holds = listOf(container['entry'] ?? container['parameter']).length > 0;
  return holds ? { kind: 'set-aside', reason: 'subject-missing' } : notNeeded;
}

/** A transaction that only deletes: a line of the `deleted` files of an export (F-K06). */
function isDeletion(bundle: ResourceJson): boolean {
  const entries = listOf(bundle['entry']);
  return (
    entries.length > 0 &&
    entries.every(
      (entry) =>
        memberOf(entry, 'resource') === undefined &&
        memberOf(memberOf(entry, 'request'), 'method') === 'DELETE',
    )
  );
}

/** `Type/id` of what a deletion names. */
export function deletedBy(bundle: unknown): readonly string[] {
  return listOf(memberOf(bundle, 'entry')).flatMap((entry) => {
    const url = textOf(memberOf(memberOf(entry, 'request'), 'url'));
    return url === undefined ? [] : (restTail(withoutVersion(url)) ?? []);
  });
}

/** The first line of a block of an export organised by patient (F-K07) holds nothing itself. */
function judgeParameters(parameters: ResourceJson): LineFate {
  const parts = listOf(parameters['parameter']);
  const isHeader = parts.some((part) => memberOf(part, 'name') === 'header');
  return isHeader || !parts.some(holdsResource) ? notNeeded : keptOf(parameters, subjectsOf(parameters));
}

function holdsResource(part: unknown): boolean {
  return memberOf(part, 'resource') !== undefined || listOf(memberOf(part, 'part')).some(holdsResource);
}
