// Walks over JSON answers, for checks that hold everywhere in them.

/** Paths of values that are null, "", [] or {}; row T-02 allows none but those named. */
export function emptyValues(value: unknown, path = '$'): readonly string[] {
  if (value === null || value === '') return [path];
  if (Array.isArray(value)) {
    const inner = value.flatMap((item: unknown, index) => emptyValues(item, `${path}[${index}]`));
    return value.length === 0 ? [path] : inner;
  }
  if (typeof value !== 'object') return [];
  const members = Object.entries(value).map(([key, item]): [string, unknown] => [key, item]);
  if (members.length === 0) return [path];
  return members.flatMap(([key, item]) => emptyValues(item, `${path}.${key}`));
}

/** The value as a client receives it. */
export function throughJson(value: unknown): unknown {
  const parsed: unknown = JSON.parse(JSON.stringify(value));
  return parsed;
}

/** Every text under a member of this name, wherever it stands. */
export function textsOf(value: unknown, member: string): readonly string[] {
  if (Array.isArray(value)) return value.flatMap((item: unknown) => textsOf(item, member));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]: [string, unknown]) =>
    key === member && typeof item === 'string' ? [item] : textsOf(item, member),
  );
}
