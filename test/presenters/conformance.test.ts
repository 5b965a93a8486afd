// The generated conformance resources: fresh, and saying what the guideline data say.
import fhirpath from 'fhirpath';
import r4 from 'fhirpath/fhir-context/r4';
import { describe, expect, it } from 'vitest';
import { readdirSync, readFileSync } from 'node:fs';
import { fingerprint } from '../../src/fingerprint.ts';
import type { Need } from '../../src/guidelines/guideline.ts';
import { measureDefinitions } from '../../src/guidelines/measures.ts';
import { guidelineIds, guidelineOf } from '../../src/guidelines/registry.ts';
import { generatedResources } from '../../src/presenters/conformance/every.ts';
import { needPath } from '../../src/presenters/conformance/need-expression.ts';
import { classWords } from '../../src/presenters/vocabulary.ts';

const guidelines = guidelineIds.flatMap((id) => guidelineOf(id) ?? []);
const resources = generatedResources({ guidelines, measures: measureDefinitions, fingerprint });
const folder = 'profiles/generated';
const fileOf = ({
  resourceType,
  id,
}: {
  readonly resourceType: string;
  readonly id?: string | undefined;
}): string => `${resourceType}-${id ?? ''}.json`;

describe('profiles/generated', () => {
  it('is fresh (else: npm run artefacts)', () => {
    expect(readdirSync(folder).sort()).toEqual(resources.map(fileOf).sort());
    const stale = resources.filter(
      (resource) =>
        readFileSync(`${folder}/${fileOf(resource)}`, 'utf8') !== `${JSON.stringify(resource, null, 1)}\n`,
    );
    expect(stale.map(fileOf)).toEqual([]);
  });

  it('F-D01: gives every artefact the metadata of a shareable one', () => {
    const lacking = resources.filter(
      (each) =>
        ![
          'url',
          'version',
          'name',
          'title',
          'status',
          'experimental',
          'publisher',
          'description',
          'date',
        ].every((member) => member in each),
    );
    expect(lacking).toEqual([]);
  });

  it('F-D01: names fit the pattern of computable names', () => {
    const names = resources.map((each) => ('name' in each && typeof each.name === 'string' ? each.name : ''));
    expect(names.filter((name) => !/^[A-Z][A-Za-z0-9_]{0,254}$/.test(name))).toEqual([]);
  });

  it('addresses each artefact once', () => {
    const urls = resources.map((each) => ('url' in each ? each.url : undefined));
    expect(new Set(urls).size).toBe(urls.length);
  });

  it.each(guidelines.map((guideline) => [guideline.id, guideline] as const))(
    'F-D08: the PlanDefinition of %s has one action for each rule',
    (id, guideline) => {
      const plan = resources.find((each) => each.resourceType === 'PlanDefinition' && each.id === id);
      const counts = fhirpath.evaluate(plan, 'PlanDefinition.action.select(action.count())', {}, r4);
      const { classRules, urgencyRules, referralRules, actionRules } = guideline;
      expect(counts).toEqual([
        classRules.length,
        urgencyRules.length,
        referralRules.length,
        actionRules.length,
      ]);
    },
  );

  it('F-D06: the Library asks for the same data as the prefetch templates', () => {
    const library = resources.find((each) => each.resourceType === 'Library');
    const types = fhirpath.evaluate(library, 'Library.dataRequirement.type.distinct()', {}, r4);
    expect(types).toEqual(expect.arrayContaining(['Patient', 'Observation', 'Condition', 'ServiceRequest']));
    // Blood pressure panel, LOINC 85354-9: without it nothing can be judged.
    const panel = "Library.dataRequirement.codeFilter.code.where(code = '85354-9').exists()";
    expect(fhirpath.evaluate(library, panel, {}, r4)).toEqual([true]);
  });

  it('maps every class to every code system, or says that it does not', () => {
    const path = 'ConceptMap.group.select(element.count())';
    const map = resources.find(
      (each) => each.resourceType === 'ConceptMap' && each.id === 'class-to-diagnosis',
    );
    const all = Object.keys(classWords).length;
    expect(fhirpath.evaluate(map, path, {}, r4)).toEqual([all, all, all, all]);
  });
});

describe('a condition as FHIRPath', () => {
  const holds = (need: Need, met: readonly string[]): unknown => {
    const found: unknown = fhirpath.evaluate({}, needPath(need), { met: [...met] }, r4);
    return Array.isArray(found) ? found.at(0) : undefined;
  };

  it.each<[Need, readonly string[], boolean]>([
    ['a', ['a'], true],
    ['a', [], false],
    [{ all: ['a', 'b'] }, ['a'], false],
    [{ all: ['a', 'b'] }, ['a', 'b'], true],
    [{ any: ['a', 'b'] }, ['b'], true],
    [{ none: ['a', 'b'] }, ['b'], false],
    [{ none: ['a', 'b'] }, [], true],
    [{ all: ['a', { any: ['b', { none: ['c'] }] }] }, ['a'], true],
    [{ all: ['a', { any: ['b', { none: ['c'] }] }] }, ['a', 'c'], false],
  ])('%j with %j met is %s', (need, met, expected) => {
    expect(holds(need, met)).toBe(expected);
  });

  it('can be read by a FHIRPath engine for every rule of every guideline', () => {
    for (const { classRules, urgencyRules, referralRules, actionRules } of guidelines)
      for (const { when } of [...classRules, ...urgencyRules, ...referralRules, ...actionRules])
        expect(typeof holds(when, [])).toBe('boolean');
  });
});
