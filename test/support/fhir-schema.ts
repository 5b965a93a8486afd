// The official R4 JSON Schema, one validator for each resource type, and the mandatory primitives it cannot see.
import { Ajv, type ValidateFunction } from 'ajv';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const file = new URL('../data/fhir.schema.json', import.meta.url);

interface FhirSchema {
  id?: string;
  $id?: string;
  discriminator?: unknown;
  oneOf?: unknown;
  definitions: Record<string, Record<string, unknown>>;
}

/**
 * Prepared as fhir.md section 13 and QUIRKS.md describe: `id` renamed, `discriminator` dropped, contained resources
 * left open (each is validated by its own type below).
 */
function prepared(): FhirSchema {
  const schema = JSON.parse(readFileSync(file, 'utf8')) as FhirSchema;
  delete schema.discriminator;
  delete schema.oneOf;
  delete schema.id;
  schema.$id = 'http://hl7.org/fhir/json-schema/4.0';
  schema.definitions['ResourceList'] = { type: 'object', required: ['resourceType'] };
  return schema;
}

const ajv = new Ajv({ strict: false, allErrors: false });
const draft06: unknown = createRequire(import.meta.url)('ajv/dist/refs/json-schema-draft-06.json');
ajv.addMetaSchema(draft06 as object);
ajv.addSchema(prepared());

const validators = new Map<string, ValidateFunction>();

function validatorOf(type: string): ValidateFunction {
  const known = validators.get(type);
  if (known !== undefined) return known;
  const validator = ajv.compile({ $ref: `http://hl7.org/fhir/json-schema/4.0#/definitions/${type}` });
  validators.set(type, validator);
  return validator;
}

/** Mandatory elements that the schema lets pass when they are missing (fhir.md section 5, "JS-blind"). */
const mandatory: Readonly<Record<string, readonly (string | readonly string[])[]>> = {
  Bundle: ['type'],
  Condition: ['subject'],
  GuidanceResponse: ['status', ['moduleCanonical', 'moduleUri', 'moduleCodeableConcept']],
  OperationOutcome: ['issue'],
  Parameters: [],
  ServiceRequest: ['status', 'intent', 'subject'],
};

/** What is wrong with a resource; empty when it is valid R4 as far as schema and mandatory elements tell. */
export function resourceFaults(resource: unknown, path = ''): readonly string[] {
  const members = resource as Readonly<Record<string, unknown>>;
  const type = String(members['resourceType']);
  const here = `${path}${type}`;
  const validate = validatorOf(type);
  const own = validate(resource)
    ? []
    : (validate.errors ?? []).map((error) => `${here}${error.instancePath} ${error.message ?? ''}`);
  const absent = (mandatory[type] ?? [])
    .filter((names) => ![names].flat().some((name) => members[name] !== undefined))
    .map((names) => `${here} lacks ${String(names)}`);
  return [
    ...own,
    ...absent,
    ...issueFaults(members, here),
    ...innerResources(members).flatMap((inner) => resourceFaults(inner, `${here}/`)),
  ];
}

function issueFaults(members: Readonly<Record<string, unknown>>, here: string): readonly string[] {
  if (members['resourceType'] !== 'OperationOutcome') return [];
  const issues = members['issue'] as readonly Readonly<Record<string, unknown>>[];
  return issues.flatMap((issue, index) =>
    ['severity', 'code']
      .filter((name) => issue[name] === undefined)
      .map((name) => `${here}.issue[${index}] lacks ${name}`),
  );
}

function innerResources(members: Readonly<Record<string, unknown>>): readonly unknown[] {
  const entries = (members['entry'] ?? []) as readonly Readonly<Record<string, unknown>>[];
  const contained = (members['contained'] ?? []) as readonly unknown[];
  return [...entries.map((entry) => entry['resource']).filter((each) => each !== undefined), ...contained];
}
