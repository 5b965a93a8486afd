// Strict reading: everything that is wrong with what was submitted, each fault an issue at its place.
import type { Issue } from '../../errors.ts';
import { isObject, isResource, listOf, memberOf, textOf } from '../json.ts';
import type { JsonObject } from '../json.ts';
import { unknownModifier } from '../modifiers.ts';
import { READ_TYPES } from '../read-types.ts';
import { bundleFaults } from './bundle-checks.ts';
import type { Fault } from './fault.ts';
import { fault, within } from './fault.ts';
import { invariantFaults } from './invariants.ts';
import { danglingFaults } from './dangling.ts';
import { bindingFaults, choiceFaults, mandatoryFaults, subjectFaults } from './resource-checks.ts';
import { schemaFaults } from './schema-validators.ts';
import { treeFaults } from './tree-checks.ts';

/** Bundles inside bundles are followed this far. */
const deepest = 5;
const envelopes: ReadonlySet<string> = new Set(['Bundle', 'Parameters']);

/**
 * Every fault of what was submitted.
 *
 * Given    input  a Bundle, a Parameters, a resource, or an array of these, as parsed JSON
 * Returns  issues in the order of the input, with FHIRPath expression and a sentence that names the mend; severity
 *          error where R4 is broken, warning where it is bent and understood; empty when nothing was found
 * Throws   never
 * Notes    1. Resources of a type that is not read are not judged: they cannot change an answer.
 *          2. `contained` is looked at for nesting and references, not validated by type.
 * Source   FHIR R4 4.0.1 JSON Schema, StructureDefinitions; fhir.md section 13
 */
export function validateStrict(input: unknown): readonly Issue[] {
  if (Array.isArray(input)) {
    const lines: readonly unknown[] = input;
    return lines.flatMap((line, at) => judged(line, { path: `[${at}]`, depth: 0 }));
  }
  const type = textOf(memberOf(input, 'resourceType')) ?? '';
  return judged(input, { path: type, depth: 0 });
}

/** The invariants the submitted Bundle itself breaks, as warnings: for lenient reading, at the cost of one pass. */
export function envelopeWarnings(input: unknown): readonly Issue[] {
  if (!isResource(input)) return [];
  return bundleFaults(input).map((each) => toIssue({ ...each, severity: 'warning' }, input.resourceType));
}

interface Spot {
  readonly path: string;
  readonly depth: number;
}

/**
 * The faults of one resource, without what a Bundle holds.
 *
 * Given    resource  of any type
 * Returns  faults relative to the resource, one for each element
 */
export function faultsOfResource(resource: JsonObject): readonly Fault[] {
  const type = textOf(resource.resourceType) ?? '';
  if (envelopes.has(type))
    return onePerElement([
      ...schemaFaults(resource),
      ...mandatoryFaults(resource),
      ...bundleFaults(resource),
    ]);
  if (!READ_TYPES.has(type)) return [];
  const modifier = unknownModifier({ ...resource, resourceType: type });
  return onePerElement([
    ...(modifier === undefined
      ? []
      : [fault('modifier-not-understood', 'extension', modifier.element ?? '', modifier.message)]),
    ...treeFaults(resource),
    ...schemaFaults(resource),
    ...mandatoryFaults(resource),
    ...choiceFaults(resource),
    ...bindingFaults(resource),
    ...subjectFaults(resource),
    ...invariantFaults(resource),
  ]);
}

/** The first fault named at an element is the nearest to its cause; the key of an invariant is never dropped. */
function onePerElement(faults: readonly Fault[]): readonly Fault[] {
  const seen = new Set<string>();
  return faults.filter(({ element, type, code }) => {
    const key = type === 'invariant' ? `${element} ${code}` : element;
    return !seen.has(key) && seen.add(key).has(key);
  });
}

function toIssue({ element, ...rest }: Fault, path: string): Issue {
  return { ...rest, expression: element === '' ? path : within(path, element) };
}

function judged(value: unknown, { path, depth }: Spot): readonly Issue[] {
  if (!isResource(value)) {
    const message = 'This is no resource: send a JSON object with a resourceType.';
    return [toIssue(fault('not-a-resource', 'structure', '', message), path)];
  }
  const own = faultsOfResource(value).map((each) => toIssue(each, path));
  if (value.resourceType === 'Bundle') {
    const dangling = danglingFaults(value).map((each) => toIssue(each, path));
    return [...own, ...dangling, ...inner(value, { path, depth })];
  }
  return value.resourceType === 'Parameters'
    ? [...own, ...innerParameters(value.parameter, { path: `${path}.parameter`, depth })]
    : own;
}

function tooDeep(path: string): Issue {
  return toIssue(fault('too-deep', 'too-costly', '', 'Nested too deep to be read: send fewer levels.'), path);
}

function inner(bundle: JsonObject, { path, depth }: Spot): readonly Issue[] {
  if (depth >= deepest) return [tooDeep(path)];
  return listOf(bundle.entry).flatMap((entry, at) => {
    const resource = memberOf(entry, 'resource');
    return resource === undefined
      ? []
      : judged(resource, { path: `${path}.entry[${at}].resource`, depth: depth + 1 });
  });
}

function innerParameters(list: unknown, { path, depth }: Spot): readonly Issue[] {
  if (depth >= deepest) return [tooDeep(path)];
  return listOf(list).flatMap((parameter, at) => {
    if (!isObject(parameter)) return [];
    const here = `${path}[${at}]`;
    const held =
      parameter.resource === undefined
        ? []
        : judged(parameter.resource, { path: `${here}.resource`, depth: depth + 1 });
    return [...held, ...innerParameters(parameter.part, { path: `${here}.part`, depth: depth + 1 })];
  });
}
