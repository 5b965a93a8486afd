// The four states of a prefetch key; test names carry the row ids of the conformance checklist.
import { describe, expect, it } from 'vitest';
import { cardsOf, client, firstIssue, fullPrefetch, hookRequest, servicePath } from './client.ts';

const post = (prefetch: Readonly<Record<string, unknown>>) =>
  client().post(servicePath).send(hookRequest(prefetch));
const withKey = (key: string, value: unknown) => ({ ...fullPrefetch, [key]: value });
const withoutKey = (key: string) =>
  Object.fromEntries(Object.entries(fullPrefetch).filter(([name]) => name !== key));
const emptyBundle = { resourceType: 'Bundle', type: 'searchset', total: 0, entry: [] };
const outcome = { resourceType: 'OperationOutcome', issue: [{ severity: 'error', code: 'exception' }] };
const failedBundle = { ...emptyBundle, entry: [{ search: { mode: 'outcome' }, resource: outcome }] };

async function gapNamed(prefetch: Readonly<Record<string, unknown>>): Promise<boolean> {
  const response = await post(prefetch);
  return cardsOf(response).some((card) => card.detail.includes('symptoms and danger signs:'));
}

describe('prefetch', () => {
  it('C-01, C-02: an empty Bundle and null say "asked, nothing there": no gap', async () => {
    const plain = await post(fullPrefetch);
    for (const value of [emptyBundle, null]) {
      const response = await post(withKey('symptoms', value));
      expect([response.status, response.text]).toEqual([200, plain.text]);
    }
  });

  it('C-03: an OperationOutcome, bare or as outcome entry, says "not known": the gap is named', async () => {
    expect(await gapNamed(withKey('symptoms', outcome))).toBe(true);
    expect(await gapNamed(withKey('symptoms', failedBundle))).toBe(true);
    expect(await gapNamed(fullPrefetch)).toBe(false);
  });

  it('C-04, C-08: a missing key is not known; the others are used all the same', async () => {
    expect(await gapNamed(withoutKey('symptoms'))).toBe(true);
    const full = cardsOf(await post(fullPrefetch));
    const partial = cardsOf(await post(withoutKey('symptoms')));
    expect(partial[0]?.summary).toBe(full[0]?.summary);
  });

  it('C-05, S-02: 412 when blood pressures can be had by no route, with the key named', async () => {
    for (const prefetch of [
      {},
      withoutKey('bloodPressures'),
      withKey('bloodPressures', outcome),
      withKey('bloodPressures', 'text'),
    ]) {
      const response = await post(prefetch);
      expect([response.status, firstIssue(response)]).toEqual([
        412,
        'error/required prefetch.bloodPressures',
      ]);
      expect(response.headers['content-type']).toContain('application/fhir+json');
    }
    const { prefetch: _none, ...bare } = hookRequest();
    expect((await client().post(servicePath).send(bare)).status).toBe(412);
  });

  it('C-05: not 412 when the answer is that there are no pressures', async () => {
    const response = await post(withKey('bloodPressures', emptyBundle));
    expect(response.status).toBe(200);
    expect(cardsOf(response).length).toBeGreaterThan(0);
  });

  it('C-05: a seizure without any pressure is answered, not refused', async () => {
    const seizure = {
      resourceType: 'Observation',
      id: 'fit',
      status: 'final',
      // 91175000 seizure, terminology.csv.
      code: { coding: [{ system: 'http://snomed.info/sct', code: '91175000' }] },
      subject: { reference: 'Patient/example' },
      effectiveDateTime: '2026-07-13T14:30:00+05:30',
      valueBoolean: true,
    };
    const response = await post({ ...withoutKey('bloodPressures'), symptoms: seizure });
    expect([response.status, cardsOf(response)[0]?.indicator]).toEqual([200, 'critical']);
  });

  it('C-06: a Bundle with a next page is an incomplete history, and said to be', async () => {
    const firstPage = {
      ...(fullPrefetch['bloodPressures'] as object),
      link: [{ relation: 'next', url: 'https://ehr.example/p2' }],
    };
    const response = await post(withKey('bloodPressures', firstPage));
    expect(cardsOf(response).some((card) => card.detail.includes('only the first page was sent'))).toBe(true);
  });

  it('C-07: a bare resource, a one-entry Bundle and a wrapped resource mean the same', async () => {
    const reading = (fullPrefetch['results'] as { entry: { resource: unknown }[] }).entry[0]?.resource;
    const plain = await post(fullPrefetch);
    for (const value of [
      reading,
      { resource: reading },
      { response: { status: '200 OK' }, resource: reading },
    ]) {
      expect((await post(withKey('results', value))).text).toBe(plain.text);
    }
  });

  it('C-07: a number, a list or an object that is no resource is refused, naming the key', async () => {
    for (const value of [42, [], { a: 1 }]) {
      const response = await post(withKey('results', value));
      expect([response.status, firstIssue(response)]).toEqual([400, 'error/structure prefetch.results']);
    }
  });
});
