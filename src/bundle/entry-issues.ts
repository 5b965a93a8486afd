// What bundles and entries say about themselves, as issues.
import type { Issue } from '../errors.ts';
import { information, warning } from './issues.ts';
import { listOf, memberOf } from './json.ts';
import type { JsonObject } from './json.ts';
import type { Slot } from './slot.ts';

const BUNDLE_TYPES: ReadonlySet<string> = new Set([
  'searchset',
  'collection',
  'transaction',
  'batch',
  'transaction-response',
  'batch-response',
  'history',
  'document',
  'message',
  'subscription-notification',
]);

export function sayBundleType(issues: Issue[], type: string | undefined, path: string): void {
  if (type !== undefined && BUNDLE_TYPES.has(type)) return;
  const [code, kind] =
    type === undefined ? ['bundle-type-missing', 'required'] : ['bundle-type-unknown', 'code-invalid'];
  const message = 'The Bundle has no type of R4 and is read as a collection: state its type.';
  issues.push(warning(code, kind, `${path}.type`, message));
}

export function sayNextPage(issues: Issue[], link: unknown, path: string): void {
  listOf(link).forEach((item, at) => {
    if (memberOf(item, 'relation') !== 'next') return;
    const message = 'There are further pages, which were not read: send all pages in one Bundle.';
    issues.push(warning('incomplete', 'incomplete', `${path}.link[${at}]`, message));
  });
}

export function sayOutcome(issues: Issue[], response: unknown, path: string): void {
  const outcome = memberOf(response, 'outcome');
  if (outcome === undefined) return;
  const message =
    'The server that answered this entry reported an outcome: see whether something is missing.';
  issues.push(warning('outcome-received', 'incomplete', `${path}.response.outcome`, message));
}

export function sayNoResource(
  issues: Issue[],
  entry: JsonObject,
  method: string | undefined,
  path: string,
): void {
  if (method === 'DELETE' || entry.response !== undefined) return;
  if (entry.request === undefined) {
    sayEmpty(issues, path);
    return;
  }
  const message = 'This request carries no resource and is not executed: send the resource itself.';
  issues.push(warning('request-not-executed', 'not-supported', `${path}.request`, message));
}

export function sayEmpty(issues: Issue[], path: string): void {
  const message = 'The entry holds no resource, request or response: fill it or leave it out.';
  issues.push(warning('entry-empty', 'invariant', path, message));
}

export function sayOddId(issues: Issue[], path: string): void {
  const message = 'The id is no text and was not used: send it as a JSON string.';
  issues.push(warning('id-not-text', 'value', `${path}.id`, message));
}

export function sayOddFullUrl(issues: Issue[], path: string): void {
  const message =
    'The fullUrl of this entry does not end with the id of its resource; the id was taken: make them agree.';
  issues.push(warning('full-url-mismatch', 'value', path.replace(/\.resource$/, '.fullUrl'), message));
}

/** An OperationOutcome among the resources tells of something that may be missing. */
export function sayOperationOutcome(slot: Slot): Issue {
  const message = 'An OperationOutcome came with the data: see whether something is missing.';
  return information('outcome-received', 'incomplete', slot.path, message);
}
