// A file as the command line meets it: a Bundle, one resource, or one resource on each line.

/** The input could not be read; `message` says where, without quoting it. */
export class UnreadableInput extends Error {}

/**
 * The bundle a text stands for.
 *
 * Given    text   JSON (a Bundle, one resource, or a list of them) or NDJSON; byte order mark, CRLF and blank lines are accepted
 * Returns  the Bundle as it is; resources gathered into a collection in the order of their lines.
 * Throws   UnreadableInput: empty, or the number of the first line that is not a JSON object.
 */
export function readInput(text: string): unknown {
  const clean = text.replace(/^\uFEFF/, '');
  if (clean.trim() === '') throw new UnreadableInput('The input is empty.');
  const whole = parsed(clean);
  if (Array.isArray(whole)) return collection(whole);
  if (isObject(whole)) return isContainer(whole) ? whole : collection([whole]);
  return readLines(clean);
}

function readLines(text: string): unknown {
  const lines = text.split(/\r\n|\n|\r/).map((line, index) => ({ line, number: index + 1 }));
  const resources = lines
    .filter(({ line }) => line.trim() !== '')
    .map(({ line, number }) => {
      const value = parsed(line);
      if (!isObject(value)) {
        const hint =
          number === 1 ? 'The input is neither JSON nor NDJSON' : `Line ${number} is not a JSON object`;
        throw new UnreadableInput(`${hint}.`);
      }
      return value;
    });
  return collection(resources);
}

function collection(resources: readonly unknown[]): unknown {
  return { resourceType: 'Bundle', type: 'collection', entry: resources.map((resource) => ({ resource })) };
}

function isContainer(value: object): boolean {
  return 'resourceType' in value && (value.resourceType === 'Bundle' || value.resourceType === 'Parameters');
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
