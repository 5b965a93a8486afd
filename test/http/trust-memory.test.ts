// What trust remembers and says: replay, key sets, logs, origins, rates. Test names carry checklist row ids.
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { memoryReplayStore, type ReplayStore } from '../../src/http/trust/replay-store.ts';
import { openSettings } from '../../src/http/settings.ts';
import { cardsOf, client, firstIssue, hookRequest, now, servicePath } from './client.ts';
import {
  bearer,
  guardedService,
  issuer,
  jwtSettings,
  keyPair,
  mainKey,
  nowSeconds,
  startKeyServer,
  tokenWith,
  type KeyPair,
  type KeyServer,
} from './trust-support.ts';

const servers: KeyServer[] = [];
afterAll(() => Promise.all(servers.map((server) => server.close())));

async function keyServer(...keys: readonly KeyPair[]): Promise<KeyServer> {
  const server = await startKeyServer(...keys);
  servers.push(server);
  return server;
}

type Service = ReturnType<typeof guardedService>;
const post = (service: Service, token: string) =>
  service.post(servicePath).set('Authorization', bearer(token)).send(hookRequest());
const withJku = (url: string) => jwtSettings({ clients: [{ issuer, jku: [url], fhirOrigins: [] }] });

describe('replay', () => {
  it('J-10: a token opens once; the same id from another issuer is another id', async () => {
    const other = {
      issuer: 'https://other.example',
      jku: [],
      fhirOrigins: [],
      keys: { keys: [mainKey.publicJwk] },
    };
    const service = guardedService(jwtSettings({ clients: [...jwtSettings().clients, other] }));
    const token = await tokenWith({ claims: { jti: 'once' } });
    const statuses = [(await post(service, token)).status, (await post(service, token)).status];
    const elsewhere = await tokenWith({ claims: { jti: 'once', iss: other.issuer } });
    expect([...statuses, (await post(service, elsewhere)).status]).toEqual([200, 401, 200]);
  });

  it('J-10: an id is remembered as long as its token could be used, 60 seconds of grace included', async () => {
    let clock = now;
    const store = memoryReplayStore(2, () => clock);
    const until = now + 1000;
    expect(await store.use('a', 'x', until)).toBe('first');
    expect(await store.use('a', 'x', until)).toBe('again');
    clock = until + 1;
    expect(await store.use('a', 'x', until + 5000)).toBe('first');
    let asked = 0;
    const noting: ReplayStore = {
      use: (_issuer, _id, untilMs) => {
        asked = untilMs;
        return Promise.resolve('first');
      },
    };
    await post(guardedService(jwtSettings(), { replay: noting }), await tokenWith());
    expect(asked).toBe((nowSeconds + 300 + 60) * 1000);
  });

  it('J-10: memory is bounded for each issuer; what does not fit is refused, not let in unseen', async () => {
    const store = memoryReplayStore(2, () => now);
    const use = (from: string, id: string) => store.use(from, id, now + 1000);
    expect([await use('a', '1'), await use('a', '2'), await use('a', '3')]).toEqual([
      'first',
      'first',
      'full',
    ]);
    expect(await use('b', '1')).toBe('first');
    const service = guardedService(jwtSettings({ replayMaxIds: 1 }));
    await post(service, await tokenWith());
    const full = await post(service, await tokenWith());
    expect([full.status, firstIssue(full), full.headers['retry-after']]).toEqual([
      503,
      'error/transient',
      '10',
    ]);
  });

  it('J-10: when the shared store is lost nobody is let in unseen', async () => {
    const lost: ReplayStore = { use: () => Promise.reject(new Error('connection refused')) };
    const response = await post(guardedService(jwtSettings(), { replay: lost }), await tokenWith());
    expect([response.status, firstIssue(response)]).toEqual([503, 'error/transient']);
  });

  it('J-10: a forged token cannot use up the id of a good one', async () => {
    const service = guardedService();
    const forger = await keyPair('ES384', 'main');
    expect((await post(service, await tokenWith({ key: forger, claims: { jti: 'hers' } }))).status).toBe(401);
    expect((await post(service, await tokenWith({ claims: { jti: 'hers' } }))).status).toBe(200);
  });
});

describe('refusals', () => {
  it('J-11: 401 has no body and no reason; the log has reason, issuer, tenant and id, never the token', async () => {
    const lines: string[] = [];
    const service = guardedService(jwtSettings(), { log: (line) => lines.push(line) });
    const claims = { jti: 'the-id', tenant: 'north', exp: nowSeconds - 1000, iat: nowSeconds - 1300 };
    const token = await tokenWith({ claims });
    const response = await post(service, token);
    expect([response.status, response.text, response.headers['www-authenticate']]).toEqual([
      401,
      '',
      'Bearer',
    ]);
    expect(response.headers['content-type']).toBeUndefined();
    const line = lines
      .map((each) => JSON.parse(each) as Record<string, unknown>)
      .find(({ event }) => event !== undefined);
    expect(line).toMatchObject({
      event: 'client-refused',
      reason: 'expired',
      iss: issuer,
      tenant: 'north',
      jti: 'the-id',
    });
    const [head = '', , signature = ''] = token.split('.');
    expect(lines.join()).not.toContain(signature);
    expect(lines.join()).not.toContain(head);
  });

  it('J-11: nobody fills the log: what a token says of itself is cut short', async () => {
    const lines: string[] = [];
    const service = guardedService(jwtSettings(), { securityLog: (line) => lines.push(line) });
    await post(service, await tokenWith({ claims: { iss: `https://${'x'.repeat(5000)}` } }));
    await post(service, 'a.b.c');
    expect(lines.every((line) => line.length < 1000)).toBe(true);
    expect(lines).toHaveLength(2);
  });
});

describe('key sets', () => {
  it('J-08: a key set is fetched from an allowed address and from no other', async () => {
    const allowed = await keyServer(mainKey);
    const other = await keyServer(mainKey);
    const service = guardedService(withJku(allowed.url));
    const call = async (jku: string | undefined) =>
      (await post(service, await tokenWith({ header: { jku } }))).status;
    expect([await call(allowed.url), await call(other.url), await call(undefined)]).toEqual([200, 401, 200]);
    expect([allowed.fetches(), other.fetches()]).toEqual([1, 0]);
  });

  it('J-08: a redirect of a key set is not followed', async () => {
    const other = await keyServer(mainKey);
    const allowed = await keyServer(mainKey);
    allowed.publish([], { location: other.url }, 302);
    expect((await post(guardedService(withJku(allowed.url)), await tokenWith())).status).toBe(401);
    expect(other.fetches()).toBe(0);
  });

  afterEach(() => vi.useRealTimers());
  const runningClock = { now: () => Date.now() };
  const call = async (service: Service, key = mainKey): Promise<number> => {
    const iat = Math.floor(Date.now() / 1000);
    return (await post(service, await tokenWith({ key, claims: { iat, exp: iat + 300 } }))).status;
  };
  const pass = (seconds: number) => {
    const later = Date.now() + seconds * 1000;
    vi.useFakeTimers({ toFake: ['Date'] });
    vi.setSystemTime(later);
  };

  it('J-12: a set is kept; an unknown kid fetches it again, not more often than every 30 seconds', async () => {
    const server = await keyServer(mainKey);
    const service = guardedService(withJku(server.url), runningClock);
    const newer = await keyPair('ES384', 'newer');
    expect([await call(service), await call(service), server.fetches()]).toEqual([200, 200, 1]);
    server.publish([mainKey, newer]);
    expect([await call(service, newer), await call(service, newer), server.fetches()]).toEqual([401, 401, 1]);
    pass(31);
    expect([await call(service, newer), await call(service), server.fetches()]).toEqual([200, 200, 2]);
  });

  it('J-12: Cache-Control says how long a set is kept: a key taken out of it opens no more', async () => {
    const server = await keyServer(mainKey);
    const next = await keyPair('ES384', 'next');
    server.publish([mainKey], { 'cache-control': 'public, max-age=40' });
    const service = guardedService(withJku(server.url), runningClock);
    expect(await call(service)).toBe(200);
    server.publish([next]);
    pass(35);
    expect([await call(service), server.fetches()]).toEqual([200, 1]);
    pass(10);
    expect([await call(service), server.fetches()]).toEqual([401, 2]);
  });

  it('J-12: when its server fails, a set serves on, ten minutes from its fetching at most', async () => {
    const server = await keyServer(mainKey);
    server.publish([mainKey], { 'cache-control': 'max-age=60' });
    const service = guardedService(withJku(server.url), runningClock);
    expect(await call(service)).toBe(200);
    server.publish([], {}, 500);
    pass(120);
    expect(await call(service)).toBe(200);
    pass(500);
    expect(await call(service)).toBe(401);
  });

  it('J-12: a server that fails is left alone for a while', async () => {
    const server = await keyServer(mainKey);
    server.publish([], {}, 500);
    const service = guardedService(withJku(server.url));
    for (let call = 0; call < 5; call += 1) expect((await post(service, await tokenWith())).status).toBe(401);
    expect(server.fetches()).toBe(1);
  });
});

describe('browsers, rates and headers', () => {
  const asked = (service: Service, method: 'options' | 'get', path: string, origin: string) =>
    service[method](path).set('Origin', origin).set('Access-Control-Request-Method', 'POST');

  it('J-13: a preflight is answered without a token, for discovery, service and feedback', async () => {
    const service = guardedService(jwtSettings({ corsOrigins: ['https://ehr.example'] }));
    for (const path of ['/cds-services', servicePath, `${servicePath}/feedback`]) {
      const response = await asked(service, 'options', path, 'https://ehr.example');
      expect([response.status, response.text]).toEqual([204, '']);
      expect(response.headers).toMatchObject({
        'access-control-allow-origin': 'https://ehr.example',
        vary: 'Origin',
      });
      expect(response.headers['access-control-allow-methods']).toContain('POST');
      expect(response.headers['access-control-allow-headers']).toContain('Authorization, Content-Type');
      expect(response.headers['access-control-allow-credentials']).toBeUndefined();
    }
  });

  it('J-13: other origins get no permission; open mode allows any', async () => {
    const service = guardedService(jwtSettings({ corsOrigins: ['https://ehr.example'] }));
    const foreign = await asked(service, 'options', servicePath, 'https://evil.example');
    expect([foreign.headers['access-control-allow-origin'], foreign.headers['vary']]).toEqual([
      undefined,
      'Origin',
    ]);
    const open = await client().get('/cds-services').set('Origin', 'https://any.example');
    expect(open.headers['access-control-allow-origin']).toBe('*');
  });

  it('S-06: one call too many within a minute is 429 with Retry-After, before any token is checked', async () => {
    const service = guardedService(jwtSettings({ requestsPerMinute: 2 }));
    await service.get('/cds-services');
    await service.get('/cds-services');
    const response = await service.get('/cds-services');
    expect([response.status, firstIssue(response)]).toEqual([429, 'error/throttled']);
    expect(Number(response.headers['retry-after'])).toBeGreaterThan(0);
    expect((await service.get('/health')).status).toBe(200);
    expect((await service.options('/cds-services')).status).toBe(204);
  });

  it('J-01: in production browsers are told to come by https only', async () => {
    const production = client({ settings: { ...openSettings, isProduction: true } });
    expect((await production.get('/health')).headers['strict-transport-security']).toContain('max-age=');
    expect((await client().get('/health')).headers['strict-transport-security']).toBeUndefined();
  });

  it('J-14: the answer names time and value of the newest data it rests on', async () => {
    const response = await client().post(servicePath).send(hookRequest());
    // The newest pressure of the invented chart.
    expect(cardsOf(response)[0]?.detail).toContain('150/96');
    expect(cardsOf(response)[0]?.detail).toMatch(/14:20/);
  });
});
