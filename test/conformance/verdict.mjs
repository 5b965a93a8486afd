// What a row can answer: nothing (pass), a sentence (fail), or why it cannot be seen from outside.
export class NotTestable extends Error {}

/** Ends a row: what it asks cannot be seen here. */
export function notTestable(reason) {
  throw new NotTestable(reason);
}

/** The first complaint about any of the items; nothing when all are well. */
export function each(items, complaint) {
  for (const item of items) {
    const said = complaint(item);
    if (said !== undefined) return said;
  }
  return undefined;
}

/** A complaint when something is not so. */
export const unless = (isSo, said) => (isSo ? undefined : said);

export const isObject = (value) => typeof value === 'object' && value !== null && !Array.isArray(value);
export const isText = (value) => typeof value === 'string' && value !== '';

/** A complaint when a status is none of those expected. */
export const statusIs = (response, expected, what) =>
  unless(
    [expected].flat().includes(response.status),
    `${what}: answered ${response.status}, expected ${[expected].flat().join(' or ')}`,
  );
