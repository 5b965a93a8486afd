// Cuts the official R4 JSON Schema to the resource types that are read: `node .ci/cut-schema.mjs [--check]`.
// Descriptions are dropped; `contained` and `Bundle.entry.resource` are left open, because each resource inside
// is validated by its own type (the published root `oneOf` hides errors and is a denial-of-service risk).
import { readFileSync, writeFileSync } from 'node:fs';

const source = new URL('../test/data/fhir.schema.json', import.meta.url);
const target = new URL('../src/bundle/strict/schema/r4.json', import.meta.url);

/** Bundle, Parameters, and the types of src/bundle/read-types.ts. */
const types = [
  'AllergyIntolerance',
  'Bundle',
  'Condition',
  'Device',
  'Encounter',
  'FamilyMemberHistory',
  'Medication',
  'MedicationAdministration',
  'MedicationRequest',
  'MedicationStatement',
  'Observation',
  'Parameters',
  'Patient',
  'Procedure',
  'ServiceRequest',
  'Specimen',
];

const { definitions } = JSON.parse(readFileSync(source, 'utf8'));
const open = { type: 'object', required: ['resourceType'] };
const kept = new Map();

function plain(value) {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  const members = Object.entries(value).filter(
    ([key, each]) => key !== 'description' || typeof each !== 'string',
  );
  return Object.fromEntries(members.map(([key, each]) => [key, plain(each)]));
}

/** The published schema lets a text or null pass where an object belongs: it never says that these are objects. */
function asObject(definition) {
  return definition.properties === undefined ? definition : { type: 'object', ...definition };
}

function keep(name) {
  if (kept.has(name)) return;
  const definition = name === 'ResourceList' ? open : asObject(plain(definitions[name]));
  kept.set(name, definition);
  for (const [, next] of JSON.stringify(definition).matchAll(/"\$ref":"#\/definitions\/([^"]+)"/g))
    keep(next);
}

for (const type of types) keep(type);
const schema = {
  $comment: 'Cut from the R4 4.0.1 JSON Schema of HL7 (CC0) by .ci/cut-schema.mjs. Never edited by hand.',
  $id: 'http://hl7.org/fhir/json-schema/4.0',
  definitions: Object.fromEntries([...kept].sort(([a], [b]) => (a < b ? -1 : 1))),
};
const text = `${JSON.stringify(schema)}\n`;
if (process.argv.includes('--check')) {
  const isFresh = readFileSync(target, 'utf8') === text;
  console.log(isFresh ? 'The cut schema is fresh.' : 'The cut schema is stale: run node .ci/cut-schema.mjs');
  process.exitCode = isFresh ? 0 : 1;
} else writeFileSync(target, text);
