// A timeline from plain resources, as the tests of this folder use it.
import type { FhirResource } from 'fhir/r4.js';
import { readBundle } from '../../src/bundle/read-bundle.ts';
import type { BuiltTimeline, BuildOptions } from '../../src/timeline/build-timeline.ts';
import { buildTimeline } from '../../src/timeline/build-timeline.ts';
import { bundleOf } from '../support/resources.ts';
import { values } from './values.ts';

export const defaultAsOf = '2026-02-01T18:00:00Z';

type Options = Partial<Omit<BuildOptions, 'asOf' | 'values'>> & { readonly asOf?: string };

/** The timeline of one woman with these resources, evaluated in the evening of 1 February 2026 unless told otherwise. */
export function built(resources: readonly FhirResource[], options: Options = {}): BuiltTimeline {
  const { asOf = defaultAsOf, ...rest } = options;
  return buildTimeline(readBundle(bundleOf(resources)), { ...rest, asOf: Date.parse(asOf), values });
}

/** Codes under which resources were set aside. */
export const codesOf = (result: BuiltTimeline): readonly string[] => result.setAside.map(({ code }) => code);
