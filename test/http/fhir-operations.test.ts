// $assess-hypertension over the wire; test names carry the row ids of the conformance checklist.
import type { Bundle, FhirResource, GuidanceResponse, Parameters, Resource } from 'fhir/r4.js';
import { describe, expect, it } from 'vitest';
import { emptyValues } from '../presenters/walk.ts';
import { resourceFaults } from '../support/fhir-schema.ts';
import {
  cardsOf,
  client,
  exampleAsOf,
  exampleBundle,
  firstIssue,
  hookRequest,
  operationPath,
  servicePath,
} from './client.ts';

const post = (body: object) =>
  client().post(operationPath).set('Content-Type', 'application/fhir+json').send(JSON.stringify(body));

function resourcesOf(response: { readonly body: unknown }): readonly FhirResource[] {
  return ((response.body as Bundle<FhirResource>).entry ?? []).flatMap((entry) => entry.resource ?? []);
}

function guidances(response: { readonly body: unknown }): readonly GuidanceResponse[] {
  return resourcesOf(response).filter(
    (each): each is GuidanceResponse => each.resourceType === 'GuidanceResponse',
  );
}

function isParameters(resource: Resource): resource is Parameters {
  return resource.resourceType === 'Parameters';
}

function outputOf(response: { readonly body: unknown }, name: string): readonly unknown[] {
  const output = (guidances(response)[0]?.contained ?? []).find(isParameters);
  return (output?.parameter ?? []).filter((each) => each.name === name);
}

const parametersOf = (more: readonly object[] = []) => ({
  resourceType: 'Parameters',
  parameter: [{ name: 'bundle', resource: exampleBundle }, ...more],
});

describe('$assess-hypertension', () => {
  it('F-C03, F-O01, T-02: answers a Bundle with a valid collection that holds nothing empty', async () => {
    const response = await post(exampleBundle);
    expect(response.status).toBe(200);
    expect(response.headers['content-type']).toBe('application/fhir+json; charset=utf-8');
    expect(resourceFaults(response.body)).toEqual([]);
    expect(emptyValues(response.body)).toEqual([]);
    expect(guidances(response)).toHaveLength(1);
    expect(resourcesOf(response).filter((each) => each.resourceType === 'OperationOutcome')).toHaveLength(1);
  });

  it('F-E01: accounts for every entry received', async () => {
    const response = await post(exampleBundle);
    const [account] = outputOf(response, 'account') as [{ part: { name: string; valueInteger?: number }[] }];
    expect(account.part.find((each) => each.name === 'received')?.valueInteger).toBe(
      exampleBundle.entry.length,
    );
  });

  it('F-C03: Parameters and query parameters mean the same as a bare Bundle', async () => {
    const byQuery = await client()
      .post(operationPath)
      .query({ guideline: 'frontline', asOf: exampleAsOf })
      .send(exampleBundle);
    const byParameters = await post(
      parametersOf([
        { name: 'guideline', valueCode: 'frontline' },
        { name: 'asOf', valueDateTime: exampleAsOf },
      ]),
    );
    const plain = await post(exampleBundle);
    expect([byQuery.text, byParameters.text]).toEqual([plain.text, plain.text]);
  });

  it('takes an offset whose plus sign was not escaped', async () => {
    const response = await client().post(`${operationPath}?asOf=${exampleAsOf}`).send(exampleBundle);
    expect([response.status, response.text]).toEqual([200, (await post(exampleBundle)).text]);
  });

  it('refuses one parameter said twice and differently, an unknown guideline, a time that is none, and no bundle', async () => {
    const twice = await client()
      .post(operationPath)
      .query({ asOf: '2026-01-01T00:00:00Z' })
      .send(parametersOf([{ name: 'asOf', valueDateTime: exampleAsOf }]));
    expect([twice.status, firstIssue(twice)]).toEqual([400, 'error/invalid http.asOf']);
    const unknown = await client().post(operationPath).query({ guideline: 'no-such' }).send(exampleBundle);
    expect([unknown.status, firstIssue(unknown)]).toEqual([400, 'error/not-found http.guideline']);
    const time = await client().post(operationPath).query({ asOf: 'yesterday' }).send(exampleBundle);
    expect([time.status, firstIssue(time)]).toEqual([400, 'error/value http.asOf']);
    const none = await post({
      resourceType: 'Parameters',
      parameter: [{ name: 'asOf', valueDateTime: exampleAsOf }],
    });
    expect([none.status, firstIssue(none)]).toEqual([400, 'error/required Parameters.parameter']);
    expect((await post([1, 2])).status).toBe(400);
  });

  it('F-B14: judges each woman of a bundle when none is named, and only the one named', async () => {
    const other = JSON.parse(
      JSON.stringify(exampleBundle.entry).replaceAll('example', 'other').replaceAll('-reading', '-other'),
    ) as object[];
    const both = { ...exampleBundle, entry: [...exampleBundle.entry, ...other] };
    const subjects = (response: { readonly body: unknown }) =>
      guidances(response).map((each) => each.subject?.reference);
    expect(subjects(await post(both))).toEqual(['Patient/example', 'Patient/other']);
    const named = await client().post(operationPath).query({ subject: 'Patient/other' }).send(both);
    expect(subjects(named)).toEqual(['Patient/other']);
  });

  it('F-H02: refuses a client that accepts XML only', async () => {
    const response = await client()
      .post(operationPath)
      .set('Accept', 'application/fhir+xml')
      .send(exampleBundle);
    expect([response.status, firstIssue(response)]).toEqual([406, 'error/not-supported http.Accept']);
  });

  it('R-13: the same request gives the same bytes', async () => {
    expect((await post(exampleBundle)).text).toBe((await post(exampleBundle)).text);
  });

  it('H-05: gives the same class and urgency as the CDS Hooks door', async () => {
    const cards = cardsOf(await client().post(servicePath).send(hookRequest()));
    const extension = cards[0]?.extension['org.pregnancy-htn.assessment'];
    const response = await post(exampleBundle);
    const codes = (name: string) =>
      (outputOf(response, name) as { valueCode: string }[]).map((each) => each.valueCode);
    expect(codes('classification')).toEqual(extension?.['classification']);
    expect(codes('urgency')).toEqual([extension?.['urgency']]);
  });
});
