// What every conformance resource says of itself.
import type { Citation } from '../../guidelines/guideline.ts';
import { canonicalBase } from '../vocabulary.ts';
import { citationWords } from '../rule-sources.ts';

/** Version of the vocabulary and profiles; guidelines carry their own. */
export const artefactVersion = '1.0.0';

/** Changed with every change of content; a clock would make the same data give other files. */
export const artefactDate = '2026-11-25';

/** `alert-texts` becomes `AlertTexts`, the computable name FHIR asks for. */
export function computableName(id: string): string {
  const name = id
    .split(/[-.]/)
    .map((part) => `${part.slice(0, 1).toUpperCase()}${part.slice(1)}`)
    .join('');
  return /^[A-Z]/.test(name) ? name : `N${name}`;
}

/** Canonical address of one of ours. */
export const canonical = (type: string, id: string): string => `${canonicalBase}/${type}/${id}`;

export interface Told {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly version?: string;
  readonly status?: 'active' | 'retired';
  readonly copyright?: string;
}

/** The metadata that the shareable profiles of FHIR ask for (checklist F-D01). */
export function header<T extends string>(resourceType: T, told: Told) {
  return {
    resourceType,
    id: told.id,
    url: canonical(resourceType, told.id),
    version: told.version ?? artefactVersion,
    name: computableName(told.id),
    title: told.title,
    status: told.status ?? ('active' as const),
    experimental: false,
    date: artefactDate,
    publisher: 'pregnancy-htn',
    description: told.description,
    ...(told.copyright === undefined ? {} : { copyright: told.copyright }),
  };
}

/** Sources as FHIR related artefacts, each once. */
export function citedArtifacts(citations: readonly Citation[]) {
  const words = [...new Set(citations.map(citationWords))];
  return words.map((citation) => ({ type: 'citation' as const, citation }));
}
