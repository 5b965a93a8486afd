// Reading and searching what this service publishes about itself: profiles, vocabulary, guidelines, measures.
import type { Bundle, FhirResource } from 'fhir/r4.js';
import type { Call } from './call.ts';
import { publishedResources, type Published } from './conformance-files.ts';
import { checkFormat } from './fhir-negotiation.ts';
import { fhirJson, type Reply } from './reply.ts';
import { refused } from './request-issues.ts';

/** Public and the same until the next release. */
const headers = { 'Cache-Control': 'public, max-age=300' };

function reply(resource: FhirResource): Reply {
  return { status: 200, type: fhirJson, body: JSON.stringify(resource), headers };
}

/**
 * `GET /fhir/metadata`
 *
 * Source   FHIR R4 capabilities interaction; F-C01
 */
export function metadataReply(call: Call): Reply {
  checkFormat(call);
  return reply(found('CapabilityStatement', 'pregnancy-htn'));
}

/**
 * `GET /fhir/{type}/{id}`
 *
 * Throws   RequestError 404: nothing of that type, or of that id, is published; 406: no JSON wanted
 * Notes    1. Nothing clinical is stored: a Patient or Observation is not found here (F-C05).
 */
export function readReply(call: Call): Reply {
  checkFormat(call);
  const type = call.parameter('type') ?? '';
  checkType(type);
  return reply(found(type, call.parameter('id') ?? ''));
}

function found(type: string, id: string): FhirResource {
  const match = publishedResources().find((each) => each.resourceType === type && each.id === id);
  if (match !== undefined) return match.resource;
  throw refused(404, 'unknown-id', 'not-found', 'http.id', `No ${type} of this id is published here.`);
}

/** Types that may be searched, named when another one is asked for. */
function publishedTypes(): readonly string[] {
  return [...new Set(publishedResources().map(({ resourceType }) => resourceType))];
}

function checkType(type: string): void {
  const types = publishedTypes();
  if (types.includes(type)) return;
  const message = `Nothing of this type can be read here; there are: ${types.join(', ')}.`;
  throw refused(404, 'unknown-type', 'not-supported', 'http.type', message);
}

/** Search parameters, with the test each makes. `name` matches from the start, whatever its case (FHIR string). */
const tests: Readonly<Record<string, (each: Published, value: string) => boolean>> = {
  _id: ({ id }, value) => value.split(',').includes(id),
  url: ({ url }, value) => value.split(',').includes(url),
  name: ({ name }, value) =>
    value.split(',').some((start) => name.toLowerCase().startsWith(start.toLowerCase())),
  version: ({ version }, value) => value.split(',').includes(version),
};

/**
 * `GET /fhir/{type}?url=…&_id=…&name=…&version=…`
 *
 * Returns  a searchset of every match, without pages; `link self` names the parameters that were honoured
 * Throws   RequestError 404: an unknown type; 406: no JSON wanted
 * Source   FHIR R4 search; parameters that are not known are ignored, as the default handling allows
 */
export function searchReply(call: Call): Reply {
  checkFormat(call);
  const type = call.parameter('type') ?? '';
  checkType(type);
  const asked = Object.entries(tests).flatMap(([name, test]) => {
    const value = call.query(name);
    return value === undefined ? [] : [{ name, value, test }];
  });
  const matches = publishedResources().filter(
    (each) => each.resourceType === type && asked.every(({ value, test }) => test(each, value)),
  );
  const query = asked.map(({ name, value }) => `${name}=${encodeURIComponent(value)}`).join('&');
  return reply(searchset(matches, query === '' ? type : `${type}?${query}`));
}

function searchset(matches: readonly Published[], self: string): Bundle {
  return {
    resourceType: 'Bundle',
    type: 'searchset',
    total: matches.length,
    link: [{ relation: 'self', url: self }],
    ...(matches.length === 0
      ? {}
      : {
          entry: matches.map(({ url, resource }) => ({
            fullUrl: url,
            resource,
            search: { mode: 'match' as const },
          })),
        }),
  };
}
