// Writes test/data/r4-rules.json: invariants and mandatory elements of the resource types this service returns.
// From the R4 4.0.1 StructureDefinitions (HL7, CC0) that npm hl7.fhir.r4.examples carries.
import { readFileSync, writeFileSync } from 'node:fs';

const resources = [
  'Bundle',
  'CommunicationRequest',
  'Condition',
  'DetectedIssue',
  'GuidanceResponse',
  'List',
  'MeasureReport',
  'OperationOutcome',
  'Parameters',
  'Provenance',
  'RequestGroup',
  'RiskAssessment',
  'ServiceRequest',
];
const types = [
  'Annotation',
  'CodeableConcept',
  'Coding',
  'DataRequirement',
  'Duration',
  'Identifier',
  'Meta',
  'Period',
  'Quantity',
  'Range',
  'Reference',
];
// dom-3 cannot be evaluated by the engine used; dom-6 is a recommendation; ele-1 is told by the JSON itself.
const leftOut = ['dom-3', 'dom-6', 'ele-1', 'ext-1'];

function definition(name) {
  const file = new URL(`node_modules/hl7.fhir.r4.examples/StructureDefinition-${name}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8'));
}

// `trace` only writes to the console; without it an expression means the same.
const ruleOf = ({ key, severity, expression }) => ({
  key,
  severity,
  expression: expression.replace(/\.trace\('[^']*'\)/g, ''),
});

function rulesOf(element) {
  return (element.constraint ?? [])
    .filter(({ key, expression }) => expression && !leftOut.includes(key))
    .map(ruleOf);
}

const typeRules = Object.fromEntries(
  types
    .map((name) => [name, rulesOf(definition(name).snapshot.element[0])])
    .filter(([, rules]) => rules.length > 0),
);

/** Rules as they apply to a path of a resource; `[x]` is dropped, as FHIRPath asks. */
function pathRules(element) {
  const path = element.path.replace('[x]', '');
  const own = rulesOf(element).map((rule) => ({ path, ...rule }));
  const ofTypes = (element.type ?? []).flatMap(({ code }) =>
    (typeRules[code] ?? []).map((rule) => ({
      path: element.path.endsWith('[x]') ? `${path}.ofType(${code})` : path,
      ...rule,
    })),
  );
  const parent = path.slice(0, path.lastIndexOf('.'));
  const child = path.slice(path.lastIndexOf('.') + 1);
  const mandatory =
    element.min > 0 && path.includes('.')
      ? [{ path: parent, key: `min ${child}`, severity: 'error', expression: `${child}.exists()` }]
      : [];
  return [...own, ...ofTypes, ...mandatory];
}

const rules = Object.fromEntries(
  resources.map((name) => [name, definition(name).snapshot.element.flatMap(pathRules)]),
);
const source =
  'HL7 FHIR R4 4.0.1 StructureDefinitions (hl7.org/fhir/R4), CC0 1.0; extracted, expressions unchanged but for trace()';
writeFileSync(
  new URL('../test/data/r4-rules.json', import.meta.url),
  `${JSON.stringify({ source, rules }, null, 1)}\n`,
);
