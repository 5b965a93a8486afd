// The context of a hook, checked against its table and read with tolerance for what the published samples show.
import type { Issue } from '../errors.ts';
import type { Proposed } from '../presenters/card-context.ts';
import type { ContextField, ServedHook } from './cds-service-table.ts';
import { isObject } from './json-object.ts';
import { isOfOlderRelease } from './older-release.ts';
import { requestIssue } from './request-issues.ts';

type Context = Readonly<Record<string, unknown>>;

/**
 * What is wrong with the context of a hook.
 *
 * Returns  one issue for each fault, naming the field (rows, H-03); empty when it can be used
 * Notes    1. Fields the table does not have are ignored. A bundle may lack type, fullUrl and ids, and a single
 *             resource counts as a bundle of one (H-01, H-02).
 */
export function contextIssues(context: unknown, hook: ServedHook): readonly Issue[] {
  if (context === undefined) return [required('context')];
  if (!isObject(context)) {
    return [requestIssue('not-an-object', 'structure', 'context', 'It must be a JSON object.')];
  }
  return hook.fields.flatMap((field) => fieldIssues(context, field));
}

function fieldIssues(context: Context, { name, isRequired, kind }: ContextField): readonly Issue[] {
  const value = context[name];
  const place = `context.${name}`;
  if (value === undefined || value === null || value === '') return isRequired ? [required(place)] : [];
  switch (kind) {
    case 'user':
    case 'id':
      return typeof value === 'string' ? [] : [malformed(place, 'It must be text.')];
    case 'patient':
      if (typeof value !== 'string') return [malformed(place, 'It must be text.')];
      return bareId(value) === undefined
        ? [requestIssue('patient-id', 'value', place, 'It must be the bare id of a Patient, such as 123.')]
        : [];
    case 'references':
      return Array.isArray(value) ? [] : [malformed(place, 'It must be a list of references.')];
    case 'bundle':
      return bundleIssues(value, place);
  }
}

function bundleIssues(value: unknown, place: string): readonly Issue[] {
  if (!isObject(value) || (typeof value['resourceType'] !== 'string' && !Array.isArray(value['entry']))) {
    return [malformed(place, 'It must be a FHIR Bundle.')];
  }
  const message = 'A resource is written in an older FHIR release; this service reads R4 (4.0.1).';
  return entriesOf(value).some(({ resource }) => isOfOlderRelease(resource))
    ? [requestIssue('older-release', 'not-supported', place, message)]
    : [];
}

interface Entry {
  readonly resource: Readonly<Record<string, unknown>>;
  readonly fullUrl?: string;
}

/** Entries of a Bundle that hold a resource; a resource that is no Bundle is an entry of its own. */
function entriesOf(bundle: unknown): readonly Entry[] {
  if (!isObject(bundle)) return [];
  if (bundle['resourceType'] !== 'Bundle' && !Array.isArray(bundle['entry'])) return [{ resource: bundle }];
  const entries: readonly unknown[] = Array.isArray(bundle['entry']) ? bundle['entry'] : [];
  return entries.filter(isObject).flatMap((entry) => {
    // Samples also show the resource itself where its entry should stand.
    const resource = typeof entry['resourceType'] === 'string' ? entry : entry['resource'];
    if (!isObject(resource)) return [];
    const { fullUrl } = entry;
    return [typeof fullUrl === 'string' ? { resource, fullUrl } : { resource }];
  });
}

/** The entries a hook brings to be judged with the chart. */
export function broughtBy(context: Context, { brings }: ServedHook): readonly Entry[] {
  return brings === undefined ? [] : entriesOf(context[brings]);
}

/**
 * What a hook proposes, with the references by which an answer names it.
 *
 * Given    context   checked
 *          hook      that sent it
 *          at        index in the judged bundle at which what the hook brings begins
 * Returns  the proposals that are selected, or all where nothing is selected among them; undefined when the hook
 *          proposes nothing
 */
export function proposedBy(context: Context, hook: ServedHook, at: number): readonly Proposed[] | undefined {
  if (hook.proposes === undefined) return undefined;
  const all = entriesOf(context[hook.proposes]).map((entry, index) => ({
    references: referencesOf(entry, at + index),
    resource: entry.resource,
  }));
  if (!hook.fields.some(({ name }) => name === 'selections')) return all;
  const chosen: readonly unknown[] = Array.isArray(context['selections']) ? context['selections'] : [];
  return all.filter(({ references }) => references.some((reference) => chosen.includes(reference)));
}

function referencesOf({ resource, fullUrl }: Entry, index: number): readonly string[] {
  const { resourceType, id } = resource;
  return [
    ...(typeof resourceType === 'string' && typeof id === 'string' ? [`${resourceType}/${id}`] : []),
    ...(fullUrl === undefined ? [] : [fullUrl]),
    `Bundle.entry[${index}].resource`,
  ];
}

function required(expression: string): Issue {
  return requestIssue('required', 'required', expression, `\`${expression}\` is required.`);
}

function malformed(expression: string, message: string): Issue {
  return requestIssue('context-field', 'structure', expression, message);
}

/** `123` from `123`, `Patient/123` or an absolute address of a Patient; undefined for anything else. */
export function bareId(value: unknown): string | undefined {
  if (typeof value !== 'string') return undefined;
  const found = /^(?:(?:https?:\/\/\S+\/)?Patient\/)?([A-Za-z0-9\-._]{1,64})(?:\/_history\/\S+)?$/.exec(
    value,
  );
  return found?.[1];
}
