// JSON, headers, methods, logs; test names carry the row ids of the conformance checklist.
import { describe, expect, it } from 'vitest';
import {
  client,
  exampleBundle,
  firstIssue,
  hookRequest,
  issuesOf,
  operationPath,
  servicePath,
} from './client.ts';

const postText = (text: string, type = 'application/json') =>
  client().post(operationPath).set('Content-Type', type).send(text);

describe('bodies', () => {
  it('T-06: JSON and FHIR JSON are accepted, with and without charset; other types are refused', async () => {
    const text = JSON.stringify(hookRequest());
    for (const type of [
      'application/json',
      'application/fhir+json; charset=utf-8',
      'application/json; charset=UTF-8',
    ]) {
      expect((await client().post(servicePath).set('Content-Type', type).send(text)).status).toBe(200);
    }
    for (const type of ['text/plain', 'application/xml', 'application/json; charset=latin1']) {
      const response = await client().post(servicePath).set('Content-Type', type).send(text);
      expect([response.status, firstIssue(response)]).toEqual([415, 'error/not-supported http.Content-Type']);
    }
  });

  it('T-07: a body that is not JSON is answered with the byte of the fault, and is not quoted', async () => {
    const response = await postText('{"name": "Müller", broken}');
    expect([response.status, firstIssue(response)]).toEqual([400, 'fatal/structure']);
    // {"name": "Müller", is 20 bytes with a two-byte ü.
    expect(issuesOf(response)[0]?.diagnostics).toBe('fault at byte 20');
    expect(response.text).not.toContain('ller');
  });

  it.each([
    ['', 0],
    ['[1, 2', 5],
    ['{"a": tru}', 6],
    ['{"a": 1} x', 9],
    ['{"a" 1}', 5],
  ])('T-07: finds the fault of %j at byte %i', async (text, byte) => {
    const response = await client().post(operationPath).set('Content-Type', 'application/json').send(text);
    expect(issuesOf(response)[0]?.diagnostics).toBe(`fault at byte ${byte}`);
  });

  it('T-07: a body over the limit is 413, one nested too deep is 400', async () => {
    const small = client({ limits: { maxBodyBytes: 100 } });
    const long = await small.post(operationPath).type('json').send(JSON.stringify(exampleBundle));
    expect([long.status, firstIssue(long)]).toEqual([413, 'error/too-long']);
    const deep = await postText(`${'['.repeat(5000)}${']'.repeat(5000)}`);
    expect([deep.status, firstIssue(deep)]).toEqual([400, 'error/too-costly']);
  });

  it('S-07: what is not there is an OperationOutcome, never a page', async () => {
    const response = await client().get('/nowhere');
    expect([response.status, firstIssue(response)]).toEqual([404, 'error/not-found http.path']);
    expect(response.headers['content-type']).toContain('application/fhir+json');
  });

  it('S-06: a fault of ours is 500 with a request id and without its words', async () => {
    const failing = client({
      now: () => {
        throw new Error('secret words');
      },
    });
    const response = await failing.post(operationPath).type('json').send('{}');
    expect([response.status, firstIssue(response)]).toEqual([500, 'fatal/exception']);
    expect(issuesOf(response)[0]?.diagnostics).toBe(`request ${response.headers['x-request-id'] ?? ''}`);
    expect(response.text).not.toContain('secret');
  });
});

describe('headers', () => {
  it('T-01: JSON is said to be JSON, in UTF-8', async () => {
    const response = await client().get('/cds-services');
    expect(response.headers['content-type']).toBe('application/json; charset=utf-8');
  });

  it('J-13: a preflight is answered on discovery, service, feedback and operation', async () => {
    for (const path of ['/cds-services', servicePath, `${servicePath}/feedback`, operationPath]) {
      const response = await client().options(path).set('Origin', 'https://ehr.example');
      expect(response.status).toBe(204);
      expect(response.headers['access-control-allow-origin']).toBe('*');
      expect(response.headers['access-control-allow-methods']).toBe('GET, POST, OPTIONS');
      expect(response.headers['access-control-allow-credentials']).toBeUndefined();
    }
  });

  it('every answer forbids sniffing and framing; clinical answers are not stored', async () => {
    const response = await client().post(servicePath).send(hookRequest());
    expect(response.headers['x-content-type-options']).toBe('nosniff');
    expect(response.headers['content-security-policy']).toContain("default-src 'none'");
    expect(response.headers['cache-control']).toBe('no-store');
    expect(response.headers['x-powered-by']).toBeUndefined();
  });
});

describe('the log', () => {
  it('F-03: holds one line for each request: method, route, status, time, id, and nothing of the content', async () => {
    const lines: string[] = [];
    const logged = client({ log: (line) => lines.push(line) });
    await logged.post(servicePath).query({ asOf: '2026-07-14T08:00:00Z' }).send(hookRequest());
    await logged.get('/Patient/asha?name=Asha');
    expect(lines.map((line) => Object.keys(JSON.parse(line) as object))).toEqual([
      ['method', 'route', 'status', 'ms', 'id'],
      ['method', 'route', 'status', 'ms', 'id'],
    ]);
    expect(lines[0]).toContain('"route":"/cds-services/:id"');
    const withoutIds = lines.join().replaceAll(/"(?:id|ms)":[^,}]+/g, '');
    expect(withoutIds).not.toMatch(/asha|example|146|2026-07/i);
  });
});

describe('the page', () => {
  it('is plain HTML with the caution, under a policy that runs our script only', async () => {
    const response = await client().get('/');
    expect(response.headers['content-type']).toContain('text/html');
    expect(response.headers['content-security-policy']).toContain("script-src 'self'");
    expect(response.text).toContain('No alert is not proof of health');
    expect(response.text).not.toMatch(/<script>|style="|onclick/);
  });

  it('finds its script, style and example', async () => {
    for (const [path, type] of [
      ['/page.js', 'javascript'],
      ['/page.css', 'css'],
      ['/example.json', 'json'],
    ] as const) {
      const response = await client().get(path);
      expect([response.status, response.headers['content-type']?.includes(type)]).toEqual([200, true]);
    }
  });

  it('says in /health that it lives', async () => {
    expect((await client().get('/health')).body).toMatchObject({ status: 'ok' });
  });
});
