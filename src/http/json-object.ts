// The one question every reader of JSON asks first.

/** Is it a JSON object: not a list, not null? */
export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
