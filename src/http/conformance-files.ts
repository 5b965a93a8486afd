// The conformance resources as published: read from the package once, when first asked for.
import type { FhirResource } from 'fhir/r4.js';
import { readdirSync, readFileSync } from 'node:fs';

/** A conformance resource with what a search looks at. */
export interface Published {
  readonly resourceType: string;
  readonly id: string;
  readonly url: string;
  readonly version: string;
  readonly name: string;
  readonly resource: FhirResource;
}

/** Compiled from FSH, and generated from the data of the program. The same place from src and from dist. */
const folders = ['../../profiles/built/', '../../profiles/generated/'].map(
  (folder) => new URL(folder, import.meta.url),
);

let published: readonly Published[] | undefined;

/** Every conformance resource, by type and id. */
export function publishedResources(): readonly Published[] {
  published ??= folders
    .flatMap((folder) => readdirSync(folder).map((name) => new URL(name, folder)))
    .filter((file) => file.pathname.endsWith('.json'))
    .map(readPublished)
    .sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1));
  return published;
}

const keyOf = ({ resourceType, id }: Published): string => `${resourceType}/${id}`;

const isResource = (value: unknown): value is FhirResource =>
  typeof value === 'object' && value !== null && 'resourceType' in value;

function readPublished(file: URL): Published {
  const resource: unknown = JSON.parse(readFileSync(file, 'utf8'));
  if (!isResource(resource)) throw new Error('A file of the conformance resources holds no resource.');
  const text = (member: string): string => {
    const value: unknown = Object.entries(resource).find(([key]) => key === member)?.[1];
    return typeof value === 'string' ? value : '';
  };
  return {
    resourceType: text('resourceType'),
    id: text('id'),
    url: text('url'),
    version: text('version'),
    name: text('name'),
    resource,
  };
}
