// A prefetch template with its tokens filled in, as the address of a search or a read.
import type { Access } from './scopes.ts';

export interface Query {
  readonly type: string;
  readonly access: Access;
  /** Relative to the base of the server: `Observation?patient=123&_count=100`. */
  readonly path: string;
  /** Names of the parameters that say which resources: without `_sort`, `_count`. */
  readonly filters: readonly string[];
}

/**
 * The query a template stands for.
 *
 * Given    template   in the portable grammar: `Type/{{context.x}}` or `Type?a={{context.x}}&b=c`
 *          context    fields of the hook's context
 * Returns  the query; undefined when a token has no text to stand for
 * Source   CDS Hooks 2.0.1, prefetch template; checklist C-04, P-01, P-02, F-07
 */
export function expandTemplate(
  template: string,
  context: Readonly<Record<string, unknown>>,
): Query | undefined {
  const expanded = fill(template, context);
  if (expanded === undefined) return undefined;
  const [path = '', search] = expanded.split('?');
  const type = path.split('/')[0] ?? '';
  if (search === undefined) return { type, access: 'read', path, filters: [] };
  const parameters = search.split('&').map((parameter) => parameter.split('='));
  const query = parameters.map(([name = '', ...value]) => `${name}=${encodeValue(value.join('='))}`);
  const names = parameters.flatMap(([name]) => name ?? []).filter((name) => !name.startsWith('_'));
  return { type, access: 'search', path: `${path}?${query.join('&')}`, filters: names };
}

const token = /\{\{context\.(\w+)\}\}/g;

function fill(template: string, context: Readonly<Record<string, unknown>>): string | undefined {
  const fields = [...template.matchAll(token)].map(([, field = '']) => field);
  if (!fields.every((field) => isPlain(context[field]))) return undefined;
  const text = template.replace(token, (_token, field: string) => String(context[field]));
  return text.includes('{{') ? undefined : text;
}

/** An id or `Type/id`, which cannot lead out of the place it is put in. */
function isPlain(value: unknown): boolean {
  return typeof value === 'string' && /^[A-Za-z0-9\-._/]+$/.test(value) && !value.includes('..');
}

/** Commas and colons keep their meaning in FHIR searches; bars must be escaped to be a valid address. */
function encodeValue(value: string): string {
  return encodeURIComponent(value).replace(/%(?:2C|3A|2F)/g, (code) => decodeURIComponent(code));
}
