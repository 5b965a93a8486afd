// The input of an operation: a bare resource, or Parameters; each parameter in the body or in the query, not both.
import { isObject } from './cds-request.ts';
import type { Call } from './call.ts';
import { refused } from './request-issues.ts';

type Json = Readonly<Record<string, unknown>>;

export interface OperationInput {
  /** The resource of the parameter that carries the data, or the bare body. */
  readonly data: unknown;
  /** A simple parameter of the body, as text. */
  readonly text: (name: string) => string | undefined;
  readonly texts: (name: string) => readonly string[];
}

/**
 * Reads the body of an operation.
 *
 * Given    body   parsed JSON
 *          names  names the parameter with the data may have, such as `bundle`
 * Throws   RequestError 400: no resource; Parameters without the data
 */
export function readOperation(body: unknown, names: readonly string[]): OperationInput {
  if (!isObject(body) || typeof body['resourceType'] !== 'string')
    throw refused(
      400,
      'not-a-resource',
      'structure',
      '',
      'The body must be a FHIR Bundle, or Parameters with one.',
    );
  if (body['resourceType'] !== 'Parameters') return { data: body, text: () => undefined, texts: () => [] };
  const list: readonly unknown[] = Array.isArray(body['parameter']) ? body['parameter'] : [];
  const named = (name: string): readonly Json[] =>
    list.filter((each): each is Json => isObject(each) && each['name'] === name);
  const data = names.flatMap(named).find((each) => each['resource'] !== undefined)?.['resource'];
  if (data === undefined) {
    const message = `A parameter \`${String(names[0])}\` with a resource is required.`;
    throw refused(400, 'required', 'required', 'Parameters.parameter', message);
  }
  const texts = (name: string): readonly string[] => named(name).flatMap((each) => valueOf(each) ?? []);
  return { data, texts, text: (name) => texts(name)[0] };
}

function valueOf(parameter: Json): string | undefined {
  const reference = parameter['valueReference'];
  if (isObject(reference) && typeof reference['reference'] === 'string') return reference['reference'];
  for (const [key, value] of Object.entries(parameter))
    if (key.startsWith('value') && (typeof value === 'string' || typeof value === 'boolean'))
      return String(value);
  return undefined;
}

/**
 * A parameter that may stand in the body or in the query.
 *
 * Throws   RequestError 400 when both say it, and differently
 */
export function parameterOf(
  call: Call,
  input: OperationInput,
  name: string,
  query = call.query(name),
): string | undefined {
  const said = input.text(name);
  if (said !== undefined && query !== undefined && said !== query)
    throw refused(
      400,
      'said-twice',
      'invalid',
      `http.${name}`,
      `\`${name}\` is given twice, with different values.`,
    );
  return said ?? query;
}

/**
 * A switch that may stand in the body or in the query; absent is off.
 *
 * Throws   RequestError 400 when it is neither `true` nor `false`
 */
export function switchOf(call: Call, input: OperationInput, name: string): boolean {
  const said = parameterOf(call, input, name) ?? 'false';
  if (said === 'true' || said === 'false') return said === 'true';
  throw refused(400, 'switch-invalid', 'value', `http.${name}`, `\`${name}\` is true or false.`);
}
