// Invariants and mandatory elements of R4, evaluated by a FHIRPath engine: what the JSON Schema cannot see.
import fhirpath from 'fhirpath';
import r4 from 'fhirpath/fhir-context/r4';
import { readFileSync } from 'node:fs';

interface Rule {
  readonly path: string;
  readonly key: string;
  readonly severity: string;
  readonly expression: string;
}

interface Rules {
  readonly rules: Readonly<Record<string, readonly Rule[]>>;
}

const { rules } = JSON.parse(
  readFileSync(new URL('../data/r4-rules.json', import.meta.url), 'utf8'),
) as unknown as Rules;

type Check = (resource: object, variables: Record<string, unknown>) => unknown;

/** One compiled expression for each rule: no node at the path breaks it. A rule that says nothing (ref-1 of a display) is kept. */
const checks = new Map(
  Object.entries(rules).map(([type, list]) => [
    type,
    list.map((rule) => {
      const compiled: unknown = fhirpath.compile(
        `${rule.path}.where((${rule.expression}) = false).empty()`,
        r4,
      );
      return { rule, check: compiled as Check };
    }),
  ]),
);

interface Resource {
  readonly resourceType: string;
  readonly contained?: readonly Resource[];
}

const typeOf = (resource: object): string => (resource as Resource).resourceType;

/**
 * The rules a resource breaks: `Condition con-4`, `GuidanceResponse min status`; contained resources too.
 * A type without rules on file is a fault: add it in profiles/extract-invariants.mjs.
 */
export function brokenRules(resource: object): readonly string[] {
  const mine = checks.get(typeOf(resource));
  if (mine === undefined) return [`${typeOf(resource)}: no rules on file`];
  const broken = mine.filter(({ check }) => {
    const answer = check(resource, { resource, rootResource: resource });
    return JSON.stringify(answer) !== '[true]';
  });
  const contained = (resource as Resource).contained ?? [];
  return [
    ...broken.map(({ rule }) => `${rule.path} ${rule.key}`),
    ...contained.flatMap((each) => brokenRules(each)),
  ];
}
