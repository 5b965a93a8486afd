// Every conformance resource that is made from data of the program. The profiles are written in FSH beside them.
import type { FhirResource } from 'fhir/r4.js';
import type { Guideline } from '../../guidelines/guideline.ts';
import type { MeasureDefinition } from '../../guidelines/measures.ts';
import { activityDefinitions } from './activity-definitions.ts';
import { ourCodeSystems } from './code-systems.ts';
import { conceptMaps } from './concept-maps.ts';
import { library } from './library.ts';
import { measureResource } from './measure.ts';
import { planDefinition } from './plan-definition.ts';
import { codeSets } from './value-sets.ts';

export interface ConformanceSources {
  readonly guidelines: readonly Guideline[];
  readonly measures: readonly MeasureDefinition[];
  /** Fingerprint of a guideline's data. */
  readonly fingerprint: (guideline: Guideline) => string;
}

/**
 * Vocabulary, maps, guidelines and measures as FHIR resources: one table, many outputs.
 *
 * Returns  in a fixed order; the same data give the same bytes.
 */
export function generatedResources(sources: ConformanceSources): readonly FhirResource[] {
  const { guidelines, measures, fingerprint } = sources;
  return [
    ...ourCodeSystems(guidelines),
    ...codeSets,
    ...conceptMaps,
    ...guidelines.flatMap((guideline) => [
      planDefinition(guideline, fingerprint(guideline)),
      library(guideline, fingerprint(guideline)),
      ...activityDefinitions(guideline),
    ]),
    ...measures.map(measureResource),
  ];
}
