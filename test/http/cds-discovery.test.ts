// Discovery; test names carry the row ids of the conformance checklist.
import express from 'express';
import request from 'supertest';
import { describe, expect, it } from 'vitest';
import { createApp } from '../../src/http/app.ts';
import { emptyValues } from '../presenters/walk.ts';
import { bodyOf, client, firstIssue, now } from './client.ts';

interface Service {
  readonly hook: string;
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly usageRequirements: string;
  readonly version: string;
  readonly prefetch: Readonly<Record<string, string>>;
  readonly extension: Readonly<Record<string, unknown>>;
}

async function services(): Promise<readonly Service[]> {
  return bodyOf(await client().get('/cds-services'))['services'] as readonly Service[];
}

describe('discovery', () => {
  it('D-01: answers at its address, with a trailing slash, and below a base path', async () => {
    for (const path of ['/cds-services', '/cds-services/'])
      expect((await client().get(path)).status).toBe(200);
    const below = express().use('/clinic', createApp({ now: () => now }));
    expect((await request(below).get('/clinic/cds-services')).status).toBe(200);
  });

  it('D-02, D-04 to D-09: lists the service with hook, id, title, description, prefetch and requirements', async () => {
    const [service] = await services();
    expect(service).toMatchObject({ hook: 'patient-view', id: 'pregnancy-hypertension' });
    for (const text of [service?.title, service?.description, service?.usageRequirements])
      expect(text).toMatch(/\w/);
    expect(service?.id).toMatch(/^[A-Za-z0-9._~-]+$/);
  });

  it('D-06: every listed id is an address that answers', async () => {
    for (const { id } of await services()) {
      const response = await client().post(`/cds-services/${id}`).send({});
      expect(response.status).toBe(400);
    }
  });

  it('D-10, D-16, E-02: states version, FHIR release and guidelines under a reverse-domain key', async () => {
    const [service] = await services();
    expect(service?.version).toMatch(/^\d+\.\d+\.\d+$/);
    expect(service?.extension).toMatchObject({ 'org.pregnancy-htn.service': { fhirVersion: '4.0.1' } });
  });

  it('D-13: lists no pair of id and hook twice', async () => {
    const pairs = (await services()).map(({ id, hook }) => `${id} ${hook}`);
    expect(new Set(pairs).size).toBe(pairs.length);
  });

  it('D-15: answers HEAD, sends ETag and Cache-Control, refuses other methods with Allow', async () => {
    const head = await client().head('/cds-services');
    expect([head.status, head.headers['content-type']]).toEqual([200, 'application/json; charset=utf-8']);
    const get = await client().get('/cds-services');
    expect(get.headers['etag']).toBeDefined();
    expect(get.headers['cache-control']).toContain('max-age');
    const put = await client().put('/cds-services');
    expect([put.status, put.headers['allow'], firstIssue(put)]).toEqual([
      405,
      'GET, HEAD, OPTIONS',
      'error/not-supported http.method',
    ]);
  });

  it('T-02: holds no null and nothing empty', async () => {
    expect(emptyValues((await client().get('/cds-services')).body)).toEqual([]);
  });

  it('P-01 to P-03, P-08: prefetch templates stay inside the portable grammar, nine keys at most', async () => {
    const token = '\\{\\{context\\.patientId\\}\\}';
    const grammar = new RegExp(
      `^(?:[A-Z][A-Za-z]+/${token}|\\{\\{context\\.userId\\}\\}|[A-Z][A-Za-z]+\\?patient=${token}(?:&(?:code|_sort|_count)=[^&]+)*)$`,
    );
    for (const { prefetch } of await services()) {
      expect(Object.keys(prefetch).length).toBeLessThanOrEqual(9);
      for (const [key, template] of Object.entries(prefetch)) {
        expect(key).toMatch(/^[A-Za-z][A-Za-z0-9]*$/);
        expect(template).toMatch(grammar);
      }
    }
  });

  it('D-12: services share their id over several hooks, with the same prefetch', async () => {
    const all = await services();
    const main = all.filter(({ id }) => id === 'pregnancy-hypertension');
    expect(main.map(({ hook }) => hook)).toEqual([
      'patient-view',
      'encounter-start',
      'problem-list-item-create',
      'org.pregnancy-htn.vital-signs-saved',
    ]);
    expect(new Set(main.map(({ prefetch }) => JSON.stringify(prefetch))).size).toBe(1);
    expect(new Set(all.map(({ id }) => id)).size).toBe(3);
  });

  it('E-03: the hook of ours has a reverse-domain name', async () => {
    const names = (await services()).map(({ hook }) => hook);
    const ours = names.filter((name) => name.includes('.'));
    expect(ours).toEqual(['org.pregnancy-htn.vital-signs-saved']);
  });

  it('D-11, P-03: the newer dialect is sent only to those who ask, bounded by date, with hook versions', async () => {
    const plain = JSON.stringify(await services());
    expect(plain).not.toMatch(/today\(\)|hookVersion/);
    const newer = bodyOf(await client().get('/cds-services?dialect=3.0'))['services'] as readonly Service[];
    const [first] = newer;
    expect(first).toMatchObject({ version: '3.0.0', hookVersion: '1.0' });
    expect(first?.prefetch['bloodPressures']).toMatch(
      /&date=ge\{\{today\(\) - \d+ days\}\}&_sort=-date&_count=\d+$/,
    );
    expect(newer.map(({ id, hook }) => [id, hook])).toEqual(
      (await services()).map(({ id, hook }) => [id, hook]),
    );
    const other = await client().get('/cds-services?dialect=9');
    expect([other.status, firstIssue(other)]).toEqual([400, 'error/not-supported http.dialect']);
  });

  it('R-09: GET on a service says which methods it has; an unknown service is not found', async () => {
    const get = await client().get('/cds-services/pregnancy-hypertension');
    expect([get.status, get.headers['allow']]).toEqual([405, 'POST, OPTIONS']);
    const unknown = await client().post('/cds-services/other').send({});
    expect([unknown.status, firstIssue(unknown)]).toEqual([404, 'error/not-found http.id']);
  });
});
