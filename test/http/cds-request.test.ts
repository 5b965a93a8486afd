// What a CDS Hooks request must hold; test names carry the row ids of the conformance checklist.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  cardsOf,
  client,
  exampleBundle,
  firstIssue,
  fullPrefetch,
  hookRequest,
  issuesOf,
  servicePath,
} from './client.ts';

const post = (body: object) => client().post(servicePath).send(body);
const without = (member: string) =>
  Object.fromEntries(Object.entries(hookRequest()).filter(([name]) => name !== member));

describe('the request', () => {
  it.each([
    ['R-01', without('hook'), 'error/required hook'],
    ['R-01', { ...hookRequest(), hook: 'order-sign' }, 'error/not-supported hook'],
    ['R-02', without('hookInstance'), 'error/required hookInstance'],
    [
      'R-03',
      {
        ...hookRequest(),
        fhirAuthorization: {
          access_token: 'a',
          token_type: 'Bearer',
          expires_in: 1,
          scope: 's',
          subject: 'c',
        },
      },
      'error/required fhirServer',
    ],
    [
      'R-04',
      {
        ...hookRequest(),
        fhirServer: 'https://ehr.example/fhir',
        fhirAuthorization: { access_token: 'a', token_type: 'Bearer', expires_in: 1, scope: 's' },
      },
      'error/required fhirAuthorization.subject',
    ],
    ['R-05', without('context'), 'error/required context'],
    ['R-05', { ...hookRequest(), context: [] }, 'error/structure context'],
    ['R-05', { ...hookRequest(), context: { userId: 'Practitioner/1' } }, 'error/required context.patientId'],
    [
      'R-10',
      { ...hookRequest(), context: { userId: 'Practitioner/1', patientId: 'Practitioner/1' } },
      'error/value context.patientId',
    ],
  ])('%s: a request out of form is refused, naming the place', async (_row, body, issue) => {
    const response = await post(body);
    expect([response.status, firstIssue(response)]).toEqual([400, issue]);
  });

  it('names every fault at once', async () => {
    expect(issuesOf(await post({})).length).toBe(3);
  });

  it('R-02: accepts a hookInstance that is no UUID with a warning, and refuses it when strict', async () => {
    const odd = { ...hookRequest(), hookInstance: '123' };
    const lenient = await post(odd);
    expect([lenient.status, lenient.text]).toEqual([
      200,
      expect.stringContaining('`hookInstance` should be a UUID'),
    ]);
    const strict = await client().post(servicePath).set('Prefer', 'handling=strict').send(odd);
    expect([strict.status, firstIssue(strict)]).toEqual([400, 'error/value hookInstance']);
    const prefixed = {
      ...hookRequest(),
      hookInstance: `urn:uuid:${hookRequest().hookInstance.toUpperCase()}`,
    };
    expect((await post(prefixed)).text).toBe((await post(hookRequest())).text);
  });

  it('T-08: a name that stands twice counts once with a warning, and is refused when strict', async () => {
    const twice = JSON.stringify(hookRequest()).replace('{', '{"hook":"x",');
    const lenient = await client().post(servicePath).type('json').send(twice);
    expect([lenient.status, lenient.text]).toEqual([200, expect.stringContaining('A name stands twice')]);
    const strict = await client().post(servicePath).type('json').set('Prefer', 'handling=strict').send(twice);
    expect([strict.status, firstIssue(strict)]).toEqual([400, 'error/structure']);
  });

  it('R-06, R-07, R-08: ignores keys, extensions of any type and members it does not know', async () => {
    const plain = await post(hookRequest());
    const extra = {
      ...hookRequest({ ...fullPrefetch, other: 42 }),
      extension: 'text',
      user: 'Practitioner/1',
      patient: 'x',
    };
    const response = await post(extra);
    expect([response.status, response.text]).toEqual([200, plain.text]);
  });

  it('R-10: takes Patient/123 and absolute addresses for the bare id', async () => {
    const plain = await post(hookRequest());
    for (const patientId of ['Patient/example', 'https://ehr.example/fhir/Patient/example']) {
      const response = await post({ ...hookRequest(), context: { userId: 'Practitioner/1', patientId } });
      const heard = cardsOf(response).map(({ uuid, summary, detail }) => [uuid, summary, detail]);
      expect(heard).toEqual(cardsOf(plain).map(({ uuid, summary, detail }) => [uuid, summary, detail]));
      expect(response.text).toContain('context.patientId should be a bare id');
    }
  });

  it('R-11: gives no advice when the Patient sent is another woman', async () => {
    const response = await post(
      hookRequest({ ...fullPrefetch, patient: { resourceType: 'Patient', id: 'other' } }),
    );
    expect([response.status, firstIssue(response)]).toEqual([400, 'error/business-rule prefetch.patient']);
  });

  it('R-11: does not use another woman’s reading, and says so', async () => {
    const stray = {
      resource: {
        ...exampleBundle.entry[2]?.resource,
        id: 'stray',
        subject: { reference: 'Patient/other' },
      },
    };
    const bloodPressures = { ...(fullPrefetch['bloodPressures'] as object) } as { entry: unknown[] };
    const response = await post(
      hookRequest({
        ...fullPrefetch,
        bloodPressures: { ...bloodPressures, entry: [...bloodPressures.entry, stray] },
      }),
    );
    const cards = cardsOf(response);
    const evidence = cards.map((card) => card.extension['org.pregnancy-htn.assessment']?.['evidence']);
    expect(JSON.stringify(evidence)).not.toContain('Observation/stray');
    expect(cards.length).toBeGreaterThan(0);
    for (const card of cards) {
      const { setAside } = card.extension['org.pregnancy-htn.assessment'] ?? {};
      expect(setAside).toContainEqual({ reference: 'Observation/stray', code: 'other-subject' });
    }
  });

  it('R-13: the same request gives the same bytes', async () => {
    expect((await post(hookRequest())).text).toBe((await post(hookRequest())).text);
  });

  it('asOf and guideline may come from the query or the extension, and mean the same', async () => {
    const asOf = '2026-07-14T08:00:00Z';
    const query = await client()
      .post(servicePath)
      .query({ asOf, guideline: 'frontline' })
      .send(hookRequest());
    const extension = { 'org.pregnancy-htn.asOf': asOf, 'org.pregnancy-htn.guideline': 'frontline' };
    const inBody = await post({ ...hookRequest(), extension });
    expect([query.status, query.text]).toEqual([200, inBody.text]);
  });

  it('an unknown guideline or time is refused', async () => {
    for (const query of [{ guideline: 'no-such' }, { asOf: 'yesterday' }]) {
      const response = await client().post(servicePath).query(query).send(hookRequest());
      expect(response.status).toBe(400);
    }
  });

  it('requests written by others are answered or refused, never a fault of ours', async () => {
    const folder = new URL('../data/cds-hooks-cases/', import.meta.url);
    for (const name of [
      'cdshooks-request-patient-view-bad.json',
      'cdshooks-request-patient-view-good.json',
      'cdshooks-request-pv-good.json',
    ]) {
      const body = readFileSync(new URL(name, folder), 'utf8');
      const response = await client().post(servicePath).type('json').send(body);
      expect([200, 400, 412]).toContain(response.status);
    }
  });
});
