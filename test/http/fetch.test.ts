// Fetching what was not sent, against a server that goes wrong; test names carry the row ids of the checklists.
import { afterEach, describe, expect, it } from 'vitest';
import { client, firstIssue, fullPrefetch, hookRequest, servicePath } from './client.ts';
import {
  authorization,
  callWith,
  closeServers,
  fetchedFrom,
  fhirServer,
  secretToken,
  settingsFor,
  wholeChart,
  withoutKeys,
} from './fetch-support.ts';

afterEach(closeServers);

const within = async <T>(milliseconds: number, deed: () => Promise<T>): Promise<T> => {
  const begun = performance.now();
  const result = await deed();
  expect(performance.now() - begun).toBeLessThan(milliseconds);
  return result;
};

describe('what is fetched', () => {
  it('C-10: the FHIR server alone gives the same answer as full prefetch, byte for byte', async () => {
    const server = await fhirServer();
    const fetched = await callWith(server);
    const sent = await client().post(servicePath).send(hookRequest());
    expect([fetched.status, fetched.text]).toEqual([200, sent.text]);
    expect(await fetchedFrom(server)).toEqual(wholeChart);
  });

  it('C-04, C-08, F-07: only keys that were not sent are asked for', async () => {
    const server = await fhirServer();
    const response = await callWith(server, { prefetch: withoutKeys('results', 'symptoms') });
    const sent = await client().post(servicePath).send(hookRequest());
    expect(response.text).toBe(sent.text);
    expect(server.seen.map(({ key }) => key).sort()).toEqual(['results', 'symptoms']);
  });

  it('C-03: what the client tried and failed is not tried again', async () => {
    const server = await fhirServer();
    const outcome = { resourceType: 'OperationOutcome', issue: [{ severity: 'error', code: 'exception' }] };
    const states = await fetchedFrom(server, { prefetch: { ...fullPrefetch, symptoms: outcome } });
    expect([states['symptoms'], server.seen]).toEqual(['failed: as sent', []]);
  });

  it('F-02: nothing is fetched without both server and token, unless a sandbox is configured', async () => {
    const server = await fhirServer();
    const body = { ...hookRequest({}), fhirServer: server.base };
    const strict = client({ settings: settingsFor([server.origin]) });
    expect((await strict.post(servicePath).send(body)).status).toBe(412);
    expect(server.seen).toEqual([]);
    const sandbox = client({ settings: settingsFor([server.origin], { mayFetchWithoutToken: true }) });
    expect((await sandbox.post(servicePath).send(body)).status).toBe(200);
    expect(server.seen.map(({ authorization: sent }) => sent)).toEqual(Array(9).fill(undefined));
  });

  it('F-07: not more than four requests at a time, or as many as configured', async () => {
    const server = await fhirServer({}, { delayMs: 20 });
    await fetchedFrom(server);
    expect(server.mostAtOnce()).toBe(4);
    const other = await fhirServer({}, { delayMs: 20 });
    await fetchedFrom(other, { settings: { parallel: 2 } });
    expect(other.mostAtOnce()).toBe(2);
  });

  it('F-N07: compressed answers are read', async () => {
    expect(await fetchedFrom(await fhirServer({ results: 'zipped' }))).toEqual(wholeChart);
  });
});

describe('fhirAuthorization', () => {
  it.each([
    ['token_type', 'mac'],
    ['expires_in', '300'],
    ['expires_in', 1.5],
    ['scope', 7],
    ['access_token', 'two words'],
    ['subject', 1],
  ])('F-01: %s = %j is refused, naming the member', async (member, value) => {
    const server = await fhirServer();
    const response = await callWith(server, { authorization: { ...authorization, [member]: value } });
    expect([response.status, firstIssue(response)]).toEqual([400, `error/value fhirAuthorization.${member}`]);
    expect([response.text.includes('two words'), server.seen]).toEqual([false, []]);
  });

  it('F-01: bearer may be written in any case', async () => {
    const server = await fhirServer();
    expect(await fetchedFrom(server, { authorization: { ...authorization, token_type: 'bearer' } })).toEqual(
      wholeChart,
    );
  });

  it('F-03: the token goes to that server only, and into no log, answer or error', async () => {
    const server = await fhirServer({
      symptoms: { status: 500 },
      results: 'truncated',
      referrals: 'not-json',
    });
    const lines: string[] = [];
    const response = await callWith(server, { log: (line) => lines.push(line) });
    expect(new Set(server.seen.map(({ authorization: sent }) => sent))).toEqual(
      new Set([`Bearer ${secretToken}`]),
    );
    expect(lines.length).toBeGreaterThan(0);
    expect([...lines, response.text, JSON.stringify(response.headers)].join()).not.toContain(secretToken);
  });

  it('F-04: a token in its last five seconds is not used', async () => {
    const server = await fhirServer();
    const states = await fetchedFrom(server, { authorization: { ...authorization, expires_in: 5 } });
    expect([states['bloodPressures'], server.seen]).toEqual(['failed: token-expired', []]);
  });

  it('F-04: fetching ends five seconds before the token does', async () => {
    const server = await fhirServer({ symptoms: 'slow' });
    const states = await within(1900, () =>
      fetchedFrom(server, { authorization: { ...authorization, expires_in: 6 } }),
    );
    expect([states['symptoms'], states['bloodPressures']]).toEqual(['failed: token-expired', 'found 2']);
  });

  it.each([
    [
      'user/Observation.read patient/Patient.read',
      ['bloodPressures', 'patient', 'pregnancy', 'results', 'symptoms'],
    ],
    ['patient/Observation.rs', ['bloodPressures', 'pregnancy', 'results', 'symptoms']],
    ['patient/Observation.r user/Condition.s', ['conditions']],
    ['system/*.r', ['patient']],
    ['launch openid fhirUser', []],
    ['user/Observation.write user/Observation.cud', []],
    ['', []],
  ])('F-06: with the scope "%s" only what it covers is tried', async (scope, keys) => {
    const server = await fhirServer();
    const states = await fetchedFrom(server, { authorization: { ...authorization, scope } });
    expect([...new Set(server.seen.map(({ key }) => key))].sort()).toEqual(keys);
    const untried = Object.entries(states).filter(([key]) => !keys.some((tried) => tried === key));
    expect(untried.every(([, state]) => state === 'failed: not-in-scope')).toBe(true);
  });

  it('F-06: a scope that covers part of a type never makes a gap look like "nothing there"', async () => {
    const scope = 'patient/Observation.rs?category=vital-signs';
    const states = await fetchedFrom(await fhirServer(), { authorization: { ...authorization, scope } });
    expect(states['bloodPressures']).toBe('part 2: not-in-scope');
    expect(states['symptoms']).toBe('failed: not-in-scope');
  });
});

describe('what goes wrong', () => {
  it.each([
    [{ status: 404 }, 'absent'],
    [{ status: 410 }, 'absent'],
    [{ status: 401 }, 'failed: not-permitted'],
    [{ status: 403 }, 'failed: not-permitted'],
    [{ status: 500 }, 'failed: server-failed'],
    [{ status: 503 }, 'failed: server-failed'],
    [{ status: 429, retryAfter: '60' }, 'failed: server-busy'],
    [{ status: 503, retryAfter: 'Wed, 01 Jan 2099 00:00:00 GMT' }, 'failed: server-busy'],
    [{ status: 503, retryAfter: 'soon' }, 'failed: server-busy'],
    ['truncated', 'failed: server-failed'],
    ['not-json', 'failed: server-failed'],
    ['outcome', 'failed: server-failed'],
    ['redirect', 'failed: redirected'],
  ] as const)('F-N06, F-04: %j is %s, asked once, and the rest is read', async (fault, expected) => {
    const server = await fhirServer({ results: fault });
    expect(await fetchedFrom(server)).toEqual({ ...wholeChart, results: expected });
    expect(server.seen.filter(({ key }) => key === 'results')).toHaveLength(1);
  });

  it('F-N06: a busy server is asked again when it says, within the deadline', async () => {
    const soon = await fhirServer({ results: { status: 429, retryAfter: '0', times: 2 } });
    expect(await fetchedFrom(soon)).toEqual(wholeChart);
    const later = await fhirServer({ results: { status: 503, retryAfter: '1', times: 1 } });
    expect(await fetchedFrom(later)).toEqual(wholeChart);
    const always = await fhirServer({ results: { status: 429, retryAfter: '0' } });
    const states = await within(1500, () => fetchedFrom(always, { settings: { deadlineMs: 400 } }));
    expect(states['results']).toMatch(/^failed: (?:too-slow|server-busy)$/);
    expect(always.seen.length).toBeLessThan(20);
  });

  it('R-12, C-05: one deadline for all; the answer is given without what came too late', async () => {
    const server = await fhirServer({ symptoms: 'slow', referrals: 'slow' });
    const settings = { deadlineMs: 300 };
    const response = await within(1500, () => callWith(server, { settings }));
    expect(response.status).toBe(200);
    const states = await fetchedFrom(server, { settings });
    expect(states).toEqual({ ...wholeChart, symptoms: 'failed: too-slow', referrals: 'failed: too-slow' });
  });

  it('C-05: 412 when the pressures could not be fetched either', async () => {
    const response = await callWith(await fhirServer({ bloodPressures: { status: 500 } }));
    expect([response.status, firstIssue(response)]).toEqual([412, 'error/required prefetch.bloodPressures']);
  });

  it('R-11: another woman is never advised on, whoever mixed her up', async () => {
    const response = await callWith(await fhirServer({ patient: 'wrong-patient' }));
    expect([response.status, firstIssue(response)]).toEqual([400, 'error/business-rule prefetch.patient']);
  });

  it('F-N03: a server that left the patient out of its search is not believed', async () => {
    const states = await fetchedFrom(await fhirServer({ results: 'ignores-patient' }));
    expect(states['results']).toBe('failed: other-patients');
  });

  it('F-N01: more bytes than agreed are not read, compressed or not', async () => {
    for (const fault of ['huge', 'zip-bomb'] as const) {
      const settings = { maxBytes: 1_000_000 };
      const states = await fetchedFrom(await fhirServer({ referrals: fault }), { settings });
      expect(states['referrals']).toBe('failed: too-large');
    }
  });
});
