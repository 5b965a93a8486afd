// Text of references and fullUrls: taking apart, and bringing two spellings of one address together.

const REST_TAIL = /(?:^|\/)([A-Z][A-Za-z]+\/[A-Za-z0-9\-._]{1,64})$/;
const WEB = /^https?:\/\//i;

export function isAbsolute(text: string): boolean {
  return WEB.test(text) || text.startsWith('urn:');
}

/** `Patient/1/_history/3` without its version (F-R05). */
export function withoutVersion(text: string): string {
  const at = text.indexOf('/_history/');
  return at < 0 ? text : text.slice(0, at);
}

/** One spelling per address: scheme and host in small letters, http and https alike (F-R04, F-R09); ports matter. */
export function normalAddress(text: string): string {
  const scheme = WEB.exec(text);
  if (scheme === null) return text;
  const rest = text.slice(scheme[0].length);
  const slash = rest.indexOf('/');
  return slash < 0
    ? `//${rest.toLowerCase()}`
    : `//${rest.slice(0, slash).toLowerCase()}${rest.slice(slash)}`;
}

/** `Type/id` at the end of a RESTful address, relative or absolute; undefined when there is none. */
export function restTail(text: string): string | undefined {
  return text.startsWith('urn:') ? undefined : REST_TAIL.exec(text)?.[1];
}

/** Server root of a RESTful fullUrl that ends with the resource's own `Type/id`, normalised; undefined otherwise. */
export function rootOf(
  fullUrl: string | undefined,
  type: string,
  id: string | undefined,
): string | undefined {
  if (fullUrl === undefined || id === undefined || !WEB.test(fullUrl)) return undefined;
  const tail = `/${type}/${id}`;
  return fullUrl.endsWith(tail) ? normalAddress(fullUrl.slice(0, -tail.length)) : undefined;
}

/** Is this fullUrl at odds with the resource it stands for (F-B10)? Versioned, or of another id. */
export function isOddFullUrl(fullUrl: string, id: string): boolean {
  if (fullUrl.endsWith(id) || !WEB.test(fullUrl)) return false;
  return restTail(withoutVersion(fullUrl)) !== undefined;
}

/** A conditional reference or delete, `Patient?identifier=system|value`, taken apart. */
export function conditionOf(
  text: string,
): { readonly type: string; readonly identifier: string } | undefined {
  const found = /^([A-Z][A-Za-z]+)\?identifier=([^&]+)$/.exec(text);
  if (found === null) return undefined;
  const [, type = '', coded = ''] = found;
  const identifier = decoded(coded);
  return /^.+\|.+$/.test(identifier) ? { type, identifier } : undefined;
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
