// Who may call: tokens, one by one; test names carry the row ids of the conformance checklist.
import { SignJWT, UnsecuredJWT } from 'jose';
import { describe, expect, it } from 'vitest';
import { client, firstIssue, hookRequest, servicePath } from './client.ts';
import {
  bearer,
  freshId,
  guardedService,
  issuer,
  jwtSettings,
  keyPair,
  nowSeconds,
  publicBase,
  serviceUrl,
  tokenWith,
  type TokenParts,
} from './trust-support.ts';

/** Status and the reason in the security log of a call with this token. */
async function tried(token: string | undefined, settings = jwtSettings()): Promise<readonly unknown[]> {
  const lines: string[] = [];
  const service = guardedService(settings, { securityLog: (line) => lines.push(line) });
  const call = service.post(servicePath).send(hookRequest());
  const response = await (token === undefined ? call : call.set('Authorization', bearer(token)));
  const reasons = lines.map((line) => (JSON.parse(line) as { readonly reason: string }).reason);
  return [response.status, ...reasons];
}

const triedWith = async (parts: TokenParts) => tried(await tokenWith(parts));

describe('trusting a client', () => {
  it('J-02, J-03: with a good token a call is answered; without one no door opens', async () => {
    expect(await triedWith({})).toEqual([200]);
    expect(await tried(undefined)).toEqual([401, 'no-token']);
    const service = guardedService();
    for (const path of ['/cds-services', '/cds-services/', servicePath, '/fhir/$assess-hypertension']) {
      expect((await service.get(path)).status).toBe(401);
    }
    expect((await service.post(`${servicePath}/feedback`).send({ feedback: [] })).status).toBe(401);
    expect((await service.post('/CDS-Services/pregnancy-hypertension').send(hookRequest())).status).toBe(401);
    expect((await service.get('/health')).status).toBe(200);
    expect((await service.get('/fhir/metadata')).status).not.toBe(401);
  });

  it('J-02: open mode asks nobody, and is open only because the settings say so', async () => {
    expect((await client().post(servicePath).send(hookRequest())).status).toBe(200);
  });

  it.each([
    ['kid', undefined, 'kid-missing'],
    ['kid', '', 'kid-missing'],
    ['typ', undefined, 'claim typ'],
    ['typ', 'at+jwt', 'claim typ'],
    ['kid', 'another', 'ERR_JWKS_NO_MATCHING_KEY'],
  ])('J-04: header %s = %j is refused', async (name, value, reason) => {
    expect(await triedWith({ header: { [name]: value } })).toEqual([401, reason]);
  });

  it('J-05: neither unsigned tokens nor those signed with a shared secret are accepted', async () => {
    const claims = { jti: freshId(), iss: issuer, aud: serviceUrl, iat: nowSeconds, exp: nowSeconds + 60 };
    expect((await tried(new UnsecuredJWT(claims).encode()))[0]).toBe(401);
    for (const alg of ['HS256', 'HS384', 'HS512']) {
      const header = { alg, typ: 'JWT', kid: 'main' };
      const token = await new SignJWT(claims).setProtectedHeader(header).sign(new Uint8Array(64));
      expect(await tried(token)).toEqual([401, 'ERR_JOSE_ALG_NOT_ALLOWED']);
    }
  });

  it.each(['RS384', 'ES384'])('J-05: %s is accepted from the start', async (alg) => {
    const key = await keyPair(alg, 'other');
    expect(await tried(await tokenWith({ key }), jwtSettings({}, key))).toEqual([200]);
  });

  it.each(['ES256', 'RS256', 'PS384', 'EdDSA'] as const)('J-05: %s only where configured', async (alg) => {
    const key = await keyPair(alg, 'other');
    expect(await tried(await tokenWith({ key }), jwtSettings({}, key))).toEqual([
      401,
      'ERR_JOSE_ALG_NOT_ALLOWED',
    ]);
    expect(await tried(await tokenWith({ key }), jwtSettings({ algorithms: [alg] }, key))).toEqual([200]);
  });

  it('J-05: the algorithm belongs to the key: another one of the list with the same key is refused', async () => {
    const rsa = await keyPair('RS384', 'other');
    const bound = { ...rsa, publicJwk: { ...rsa.publicJwk, alg: 'PS384' } };
    const settings = jwtSettings({ algorithms: ['RS384', 'PS384', 'ES384'] }, bound);
    expect(await tried(await tokenWith({ key: bound }), settings)).toEqual([401, 'ERR_JWKS_NO_MATCHING_KEY']);
    expect(await triedWith({ key: { ...rsa, publicJwk: { ...rsa.publicJwk, kid: 'main' } } })).toEqual([
      401,
      'ERR_JWKS_NO_MATCHING_KEY',
    ]);
  });

  it('J-05: a signature by another key under a known kid is refused', async () => {
    const forger = await keyPair('ES384', 'main');
    expect(await triedWith({ key: forger })).toEqual([401, 'ERR_JWS_SIGNATURE_VERIFICATION_FAILED']);
  });

  it.each([
    ['iss', undefined, 'issuer-unknown'],
    ['aud', undefined, 'claim aud'],
    ['exp', undefined, 'claim exp'],
    ['iat', undefined, 'claim iat'],
    ['jti', undefined, 'claim jti'],
    ['jti', '', 'jti-missing'],
    ['jti', 7, 'jti-missing'],
    ['exp', 'tomorrow', 'claim exp'],
    ['iat', 'now', 'claim iat'],
    ['tenant', { id: 1 }, 'tenant-not-text'],
  ])('J-06: payload %s = %j is refused', async (name, value, reason) => {
    expect(await triedWith({ claims: { [name]: value } })).toEqual([401, reason]);
  });

  it('J-06: a token may be made out to several, and name a tenant', async () => {
    expect(await triedWith({ claims: { aud: ['https://other.example', serviceUrl], tenant: 'a' } })).toEqual([
      200,
    ]);
  });

  it.each([
    ['another service', `${publicBase}/cds-services/another`],
    ['discovery', `${publicBase}/cds-services`],
    ['the base', publicBase],
    ['another host', 'https://evil.example/base/cds-services/pregnancy-hypertension'],
    ['nobody', []],
  ])('J-07: a token made out to %s does not open the service', async (_what, aud) => {
    expect(await triedWith({ claims: { aud } })).toEqual([401, 'claim aud']);
  });

  it('J-07: the public address counts, whatever Host the caller names; a slash at the end is forgiven', async () => {
    const own = await tokenWith({ claims: { aud: `http://cds.evil${servicePath}` } });
    const service = guardedService();
    const call = (token: string, path = servicePath) =>
      service.post(path).set('Host', 'cds.evil').set('Authorization', bearer(token)).send(hookRequest());
    expect((await call(own)).status).toBe(401);
    expect((await call(await tokenWith({ claims: { aud: `${serviceUrl}/` } }))).status).toBe(200);
    expect((await call(await tokenWith(), `${servicePath}/`)).status).toBe(200);
  });

  it('J-07, D-14, B-10: discovery has its own address; feedback may use its own or that of its service', async () => {
    const service = guardedService();
    const discovery = await tokenWith({ claims: { aud: `${publicBase}/cds-services` } });
    expect((await service.get('/cds-services').set('Authorization', bearer(discovery))).status).toBe(200);
    const operation = await tokenWith({ claims: { aud: `${publicBase}/fhir/$assess-hypertension` } });
    const posted = service.post('/fhir/$assess-hypertension').set('Authorization', bearer(operation));
    expect((await posted.send({ resourceType: 'Bundle', type: 'collection' })).status).toBe(200);
    for (const aud of [serviceUrl, `${serviceUrl}/feedback`]) {
      const token = await tokenWith({ claims: { aud } });
      const sent = service.post(`${servicePath}/feedback`).set('Authorization', bearer(token));
      expect((await sent.send({ feedback: [] })).status).toBe(200);
    }
  });

  it('J-08: an issuer that is not on the list is refused', async () => {
    expect(await triedWith({ claims: { iss: 'https://other.example' } })).toEqual([401, 'issuer-unknown']);
  });

  it.each([
    [{ iat: nowSeconds - 300, exp: nowSeconds - 61 }, [401, 'expired']],
    [{ iat: nowSeconds - 300, exp: nowSeconds - 59 }, [200]],
    [{ iat: nowSeconds + 61, exp: nowSeconds + 120 }, [401, 'iat-in-future']],
    [{ iat: nowSeconds + 60, exp: nowSeconds + 120 }, [200]],
    [{ iat: nowSeconds, exp: nowSeconds + 3600 }, [200]],
    [{ iat: nowSeconds, exp: nowSeconds + 3601 }, [401, 'lives-too-long']],
  ])('J-09: times %j are judged with 60 seconds of grace and one hour of life', async (claims, expected) => {
    expect(await triedWith({ claims })).toEqual(expected);
  });

  it('S-05: a client that may not call this service, or not for this tenant, is told so', async () => {
    const [known] = jwtSettings().clients;
    if (known === undefined) throw new Error('The settings name one client.');
    const other = jwtSettings({ clients: [{ ...known, services: ['another'] }] });
    const lines: string[] = [];
    const response = await guardedService(other, { securityLog: (line) => lines.push(line) })
      .post(servicePath)
      .set('Authorization', bearer(await tokenWith()))
      .send(hookRequest());
    expect([response.status, firstIssue(response)]).toEqual([403, 'error/forbidden http.Authorization']);
    expect(lines[0]).toContain('not-allowed');
    const shouted = servicePath.replace('cds-services', 'CDS-Services');
    const token = await tokenWith({ claims: { aud: `${publicBase}${shouted}` } });
    const again = guardedService(other).post(shouted).set('Authorization', bearer(token));
    expect((await again.send(hookRequest())).status).toBe(403);
    const tenants = jwtSettings({ clients: [{ ...known, tenants: ['north'] }] });
    expect(await tried(await tokenWith({ claims: { tenant: 'north' } }), tenants)).toEqual([200]);
    expect(await tried(await tokenWith({ claims: { tenant: 'south' } }), tenants)).toEqual([
      403,
      'not-allowed',
    ]);
    expect(await tried(await tokenWith(), tenants)).toEqual([403, 'not-allowed']);
  });
});
