// The official R4 JSON Schema, one compiled validator for each type. Hands on the faults it sees in one resource.
import { Ajv, type ErrorObject, type ValidateFunction } from 'ajv';
import { isObject } from '../json.ts';
import type { JsonObject } from '../json.ts';
import { doubt, fault, within } from './fault.ts';
import type { Fault } from './fault.ts';
import r4 from './schema/r4.json' with { type: 'json' };

/** The schema names one fault at a time; a resource with more than this many is not worth reading on. */
const mostFaults = 20;

const ajv = new Ajv({ strict: false, allErrors: false, logger: false });
ajv.addSchema(r4);
const validators = new Map<string, ValidateFunction>();
const known: ReadonlySet<string> = new Set(Object.keys(r4.definitions));

function validatorOf(type: string): ValidateFunction | undefined {
  if (!known.has(type)) return undefined;
  const compiled = validators.get(type);
  if (compiled !== undefined) return compiled;
  const validator = ajv.compile({ $ref: `${r4.$id}#/definitions/${type}` });
  validators.set(type, validator);
  return validator;
}

/**
 * What the schema of its type finds wrong with a resource.
 *
 * Given    resource  of any type; `contained` and the resources of a Bundle are not looked into
 * Returns  faults in the order found, at most twenty; empty for a type whose schema is not carried
 * Throws   never
 * Notes    1. The schema stops at the first fault (all at once is a denial-of-service risk): the faulty member is
 *             left out of a copy and the copy is tried again.
 *          2. `null` in a list of primitives paired with `_name` is legal, though the schema refuses it.
 *          3. A time without zone or seconds and an id with an underscore are doubts, not errors: both are common,
 *             and both are understood.
 * Source   FHIR R4 4.0.1 JSON Schema; fhir.md section 13
 */
export function schemaFaults(resource: JsonObject): readonly Fault[] {
  const type = resource.resourceType;
  const validate = typeof type === 'string' ? validatorOf(type) : undefined;
  if (validate === undefined) return [];
  const faults: Fault[] = [];
  const filled = new Set<string>();
  let tried = resource;
  // Each step leaves out or fills one member: the second bound is for the steps that name no fault.
  for (let step = 0; step < 2 * mostFaults && faults.length < mostFaults && !validate(tried); step += 1) {
    const error = validate.errors?.[0];
    if (error === undefined) break;
    const next = afterFault(tried, error, { faults, filled });
    if (next === undefined) break;
    tried = next;
  }
  return faults;
}

interface Named {
  readonly faults: Fault[];
  /** Mandatory members that were filled in the copy, so that what follows them is seen too. */
  readonly filled: Set<string>;
}

/** Names the fault, unless it is none or of our making, and hands on a copy without it. */
function afterFault(
  tried: JsonObject,
  error: ErrorObject,
  { faults, filled }: Named,
): JsonObject | undefined {
  const place = placeOf(error);
  if (isPairedNull(tried, place)) return withoutNulls(tried, place.slice(0, -1));
  const missing: unknown = error.params['missingProperty'];
  if (error.keyword === 'required' && typeof missing === 'string') {
    const at = [...place, missing].join('/');
    if (filled.has(at)) return undefined;
    filled.add(at);
    faults.push(faultOf(tried, error, place));
    return changed(tried, place, (holder) => ({ ...holder, [missing]: {} }));
  }
  if (filled.has(place.join('/')))
    return changed(tried, place.slice(0, -1), (holder) => ({ ...holder, [String(place.at(-1))]: [{}] }));
  faults.push(faultOf(tried, error, place));
  return without(tried, place);
}

type Place = readonly (string | number)[];

/** Where the error is, as member names and list positions; of an unknown member, that member. */
function placeOf({ instancePath, keyword, params }: ErrorObject): Place {
  const steps = instancePath
    .split('/')
    .slice(1)
    .map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'))
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step));
  const extra: unknown = params['additionalProperty'];
  return keyword === 'additionalProperties' && typeof extra === 'string' ? [...steps, extra] : steps;
}

function valueAt(root: unknown, place: Place): unknown {
  let value = root;
  for (const step of place) {
    if (Array.isArray(value)) value = value[Number(step)];
    else value = isObject(value) ? value[String(step)] : undefined;
  }
  return value;
}

function isPairedNull(root: unknown, place: Place): boolean {
  const name = place.at(-2);
  const index = place.at(-1);
  if (typeof index !== 'number' || typeof name !== 'string' || valueAt(root, place) !== null) return false;
  const twin = name.startsWith('_') ? name.slice(1) : `_${name}`;
  const paired = valueAt(root, [...place.slice(0, -2), twin, index]);
  return paired !== undefined && paired !== null;
}

/** A copy without the member at the place; of a list, without the whole list, so that positions stay true. */
function without(root: JsonObject, place: Place): JsonObject | undefined {
  const names = typeof place.at(-1) === 'number' ? place.slice(0, -1) : place;
  const name = names.at(-1);
  if (typeof name !== 'string') return undefined;
  return changed(root, names.slice(0, -1), (holder) =>
    Object.fromEntries(Object.entries(holder).filter(([key]) => key !== name)),
  );
}

/** A copy without the list at the place and without its twin: both are legal where their nulls are paired. */
function withoutNulls(root: JsonObject, place: Place): JsonObject | undefined {
  const name = String(place.at(-1)).replace(/^_/, '');
  return changed(root, place.slice(0, -1), (holder) =>
    Object.fromEntries(Object.entries(holder).filter(([key]) => key !== name && key !== `_${name}`)),
  );
}

function changed(
  root: JsonObject,
  place: Place,
  change: (holder: JsonObject) => JsonObject,
): JsonObject | undefined {
  const copy = copied(root, place, change);
  return isObject(copy) ? copy : undefined;
}

function copied(value: unknown, place: Place, change: (holder: JsonObject) => JsonObject): unknown {
  const [step, ...rest] = place;
  if (step === undefined) return isObject(value) ? change(value) : value;
  if (Array.isArray(value)) {
    const list: readonly unknown[] = value;
    return list.map((item, at) => (at === step ? copied(item, rest, change) : item));
  }
  return isObject(value) ? { ...value, [step]: copied(value[String(step)], rest, change) } : value;
}

function elementOf(place: Place): string {
  return place.reduce<string>((element, step) => within(element, step), '');
}

const zoneless = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?(?:Z|[+-]\d{2}:\d{2})?$/;

function faultOf(root: JsonObject, error: ErrorObject, place: Place): Fault {
  const element = elementOf(place);
  const value = valueAt(root, place);
  const name = String(place.at(-1) ?? 'The resource');
  switch (error.keyword) {
    case 'required': {
      const missing = within(element, String(error.params['missingProperty']));
      return fault('required', 'required', missing, `${missing} is missing: it is mandatory, fill it.`);
    }
    case 'additionalProperties':
      return fault(
        'unknown-element',
        'structure',
        element,
        `R4 knows no such element here: leave it out, or use its R4 name.`,
      );
    case 'enum':
      return fault(
        'code-invalid',
        'code-invalid',
        element,
        `${name} is not one of the codes R4 allows here: use one of them.`,
      );
    case 'pattern':
      return patternFault(element, name, value);
    case 'type':
      return fault(
        'wrong-type',
        'structure',
        element,
        `${name} is of the wrong JSON type: send ${expected(error)}.`,
      );
    default:
      return fault(
        'malformed',
        'structure',
        element,
        `${name} has not the form R4 gives it: see its definition.`,
      );
  }
}

function expected({ params }: ErrorObject): string {
  const type: unknown = params['type'];
  return type === 'array' ? 'a list' : type === 'object' ? 'an object' : `a ${String(type)}`;
}

function patternFault(element: string, name: string, value: unknown): Fault {
  if (value === null) return fault('null', 'structure', element, `${name} is null: leave it out.`);
  if (typeof value !== 'string' && typeof value !== 'number' && typeof value !== 'boolean')
    return fault(
      'wrong-type',
      'structure',
      element,
      `${name} must be a plain value, not a list or an object.`,
    );
  if (typeof value === 'string' && zoneless.test(value))
    return doubt(
      'time-incomplete',
      'value',
      element,
      'A time needs seconds and a zone: send hh:mm:ss+zz:zz.',
    );
  if (name === 'id' && typeof value === 'string' && /^[\w.-]{1,64}$/.test(value))
    return doubt('id-odd', 'value', element, 'An id may hold letters, digits, - and . only: change it.');
  return fault('value', 'value', element, `${name} has not the form R4 asks for: see its data type.`);
}
