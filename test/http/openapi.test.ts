// openapi.yaml tells the truth: every route is described, and recorded answers fit their description.
import { describe, expect, it } from 'vitest';
import { routes } from '../../src/http/routes.ts';
import { describedResponse, openApi, schemaFaults } from '../support/openapi.ts';
import { client, exampleBundle, fullPrefetch, hookRequest, operationPath, servicePath } from './client.ts';

const templateOf = (path: string) => path.replace(/:(\w+)/g, '{$1}');

interface Recorded {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: unknown;
  readonly text: string;
}

function faultsOf(path: string, method: string, response: Recorded): readonly string[] {
  const described = describedResponse(path, method, response.status);
  if (described === undefined) return [`${method} ${path} ${response.status} is not described`];
  const type = (response.headers['content-type'] ?? '').split(';')[0] ?? '';
  if (type === '') return Object.keys(described).length === 0 ? [] : ['a body was promised'];
  const schema = described[type]?.schema;
  if (schema === undefined) return [`${method} ${path} ${response.status} ${type} is not described`];
  return schemaFaults(schema, type.includes('json') ? response.body : response.text);
}

describe('openapi.yaml', () => {
  it('is version 3.1 and describes exactly the routes there are', () => {
    expect(openApi.openapi).toMatch(/^3\.1\./);
    const there = routes.flatMap(({ path, get, post }) => [
      ...(get === undefined ? [] : [`get ${templateOf(path)}`]),
      ...(post === undefined ? [] : [`post ${templateOf(path)}`]),
    ]);
    const described = Object.entries(openApi.paths).flatMap(([path, item]) =>
      Object.keys(item)
        .filter((key) => key !== 'parameters')
        .map((method) => `${method} ${path}`),
    );
    expect(described.sort()).toEqual(there.sort());
  });

  it('has examples that fit their schemas', () => {
    const media = Object.values(openApi.paths).flatMap((item) =>
      Object.entries(item)
        .filter(([key]) => key !== 'parameters')
        .flatMap(([, operation]) => [
          ...Object.values(operation.requestBody?.content ?? {}),
          ...Object.values(operation.responses).flatMap((response) => Object.values(response.content ?? {})),
        ]),
    );
    const withExample = media.filter((each) => each.example !== undefined);
    expect(withExample.length).toBeGreaterThan(3);
    expect(withExample.flatMap((each) => schemaFaults(each.schema ?? {}, each.example))).toEqual([]);
  });

  it('describes the answers of every GET', async () => {
    for (const { path, get } of routes) {
      if (get !== undefined)
        expect(faultsOf(path.replaceAll(/:(\w+)/g, '{$1}'), 'get', await client().get(path))).toEqual([]);
    }
  });

  it.each([
    ['cards', hookRequest()],
    ['a gap', hookRequest({ ...fullPrefetch, symptoms: undefined })],
    ['412', hookRequest({})],
    ['400', {}],
  ])('describes the answers of the service: %s', async (_what, body) => {
    const response = await client().post(servicePath).send(body);
    expect(faultsOf('/cds-services/{id}', 'post', response)).toEqual([]);
  });

  it('describes unknown services, other media types, long bodies and feedback', async () => {
    const service = '/cds-services/{id}';
    expect(faultsOf(service, 'post', await client().post('/cds-services/x').send({}))).toEqual([]);
    expect(faultsOf(service, 'post', await client().post(servicePath).type('text').send('x'))).toEqual([]);
    const small = client({ limits: { maxBodyBytes: 10 } });
    expect(faultsOf(service, 'post', await small.post(servicePath).send(hookRequest()))).toEqual([]);
    const feedback = await client().post(`${servicePath}/feedback`).send({ feedback: [] });
    expect(faultsOf(`${service}/feedback`, 'post', feedback)).toEqual([]);
  });

  it.each([
    ['a Bundle', exampleBundle],
    ['Parameters', { resourceType: 'Parameters', parameter: [{ name: 'bundle', resource: exampleBundle }] }],
    ['an empty Bundle', { resourceType: 'Bundle', type: 'collection' }],
    ['no resource', { a: 1 }],
  ])('describes the answers of the operation: %s', async (_what, body) => {
    const response = await client().post(operationPath).send(body);
    expect(faultsOf(operationPath, 'post', response)).toEqual([]);
  });
});
