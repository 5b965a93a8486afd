// Reading and searching the published conformance resources (checklist F-C01, F-C02, F-C05, F-H02, F-H03).
import { describe, expect, it } from 'vitest';
import { readdirSync } from 'node:fs';
import { guidelineOf } from '../../src/guidelines/registry.ts';
import { bodyOf, client, firstIssue } from './client.ts';

const base = 'https://pregnancy-htn.example/fhir';
const published = ['built', 'generated'].flatMap((folder) => readdirSync(`profiles/${folder}`));

interface Searchset {
  readonly resourceType: string;
  readonly type: string;
  readonly total: number;
  readonly link: readonly { readonly url: string }[];
  readonly entry?: readonly {
    readonly resource: { readonly id: string; readonly url: string; readonly version: string };
  }[];
}

async function search(query: string): Promise<Searchset> {
  const response = await client().get(`/fhir/${query}`).expect(200);
  return bodyOf(response) as unknown as Searchset;
}

describe('metadata', () => {
  it('F-C01: is a CapabilityStatement with all that R4 makes mandatory', async () => {
    const body = bodyOf(await client().get('/fhir/metadata').expect(200));
    expect(body).toMatchObject({
      resourceType: 'CapabilityStatement',
      status: 'active',
      kind: 'instance',
      fhirVersion: '4.0.1',
      implementation: { description: expect.any(String) as string },
      date: expect.any(String) as string,
    });
    expect(body['format']).toContain('application/fhir+json');
  });

  it('F-C01: names the operations with the address of their definition', async () => {
    const text = JSON.stringify(bodyOf(await client().get('/fhir/metadata').expect(200)));
    expect(text).toContain(`${base}/OperationDefinition/assess-hypertension`);
    expect(text).toContain('http://hl7.org/fhir/OperationDefinition/PlanDefinition-apply');
    expect(text).toContain('http://hl7.org/fhir/OperationDefinition/Measure-evaluate-measure');
  });
});

describe('reading', () => {
  it('gives every published resource at its address', async () => {
    for (const file of published) {
      const [, type = '', id = ''] = /^([A-Za-z]+)-(.+)\.json$/.exec(file) ?? [];
      const body = bodyOf(await client().get(`/fhir/${type}/${id}`).expect(200));
      expect(body).toMatchObject({ resourceType: type, id, url: `${base}/${type}/${id}` });
    }
  });

  it.each([
    ['/fhir/PlanDefinition/unheard-of', 'error/not-found http.id'],
    ['/fhir/Patient/1', 'error/not-supported http.type'],
    ['/fhir/Observation', 'error/not-supported http.type'],
    ['/fhir/$unheard-of', 'error/not-supported http.type'],
  ])('F-H03, F-C05: answers 404 with an OperationOutcome for %s', async (path, issue) => {
    expect(firstIssue(await client().get(path).expect(404))).toBe(issue);
  });

  it('F-C05: does not create, update or delete', async () => {
    expect(firstIssue(await client().post('/fhir/Observation').send({}).expect(405))).toContain(
      'not-supported',
    );
    expect(firstIssue(await client().put('/fhir/Measure/aspirin-offered').send({}).expect(405))).toContain(
      'not-supported',
    );
    expect(firstIssue(await client().delete('/fhir/Measure/aspirin-offered').expect(405))).toContain(
      'not-supported',
    );
  });

  it('F-H02: refuses a client that takes XML only, and lets _format override', async () => {
    const path = '/fhir/PlanDefinition/frontline';
    expect(firstIssue(await client().get(path).set('Accept', 'application/fhir+xml').expect(406))).toBe(
      'error/not-supported http.Accept',
    );
    await client().get(`${path}?_format=json`).set('Accept', 'application/fhir+xml').expect(200);
    await client().get('/fhir/Measure?_format=xml').expect(406);
  });
});

/** The service names the terms of a search in the order of the alphabet. */
const inOrder = (query: string): string => query.split('&').sort().join('&');

describe('searching', () => {
  it('gives all of a type', async () => {
    const set = await search('Measure');
    expect(set).toMatchObject({ resourceType: 'Bundle', type: 'searchset', total: 9 });
    expect(set.entry).toHaveLength(9);
  });

  it('finds by canonical address, id, start of the name, and version', async () => {
    const url = `${base}/PlanDefinition/nice-2023`;
    for (const query of [
      `url=${encodeURIComponent(url)}`,
      '_id=nice-2023',
      'name=nice',
      `version=${guidelineOf('nice-2023')?.version ?? ''}&_id=nice-2023`,
    ]) {
      const set = await search(`PlanDefinition?${query}`);
      expect(
        set.entry?.map(({ resource }) => resource.url),
        query,
      ).toEqual([url]);
      expect(set.link[0]?.url).toBe(`PlanDefinition?${inOrder(query)}`);
    }
  });

  it('gives an empty set, without entries, when nothing matches', async () => {
    const set = await search('ValueSet?url=https://elsewhere.example/ValueSet/1');
    expect(set.total).toBe(0);
    expect(set).not.toHaveProperty('entry');
  });
});
