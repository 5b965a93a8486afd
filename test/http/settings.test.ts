// The settings of a site: what they mean, and what is said when they are wrong. Test names carry checklist row ids.
import { describe, expect, it } from 'vitest';
import { readSettings, type Environment } from '../../src/http/settings.ts';
import { redisReplayStore } from '../../src/http/trust/redis-replay-store.ts';
import { startUpLines } from '../../src/http/trust/start-up-lines.ts';
import { mainKey } from './trust-support.ts';

const files: Readonly<Record<string, unknown>> = {
  '/site/clients.json': {
    clients: [
      { issuer: 'https://ehr.example', keysFile: 'keys.json', fhirOrigins: ['https://fhir.example'] },
    ],
  },
  '/site/keys.json': { keys: [mainKey.publicJwk] },
  '/site/none.json': { clients: [] },
  '/site/keyless.json': { clients: [{ issuer: 'https://ehr.example' }] },
  '/site/odd.json': {
    clients: [{ issuer: 'a', jku: ['https://a.example/k'], fhirOrigin: ['https://a.example'] }],
  },
  '/site/secret.json': {
    clients: [{ issuer: 'a', keys: { keys: [{ ...mainKey.publicJwk, d: 'private' }] } }],
  },
  '/site/twice.json': {
    clients: [
      { issuer: 'a', jku: ['https://a.example/k'] },
      { issuer: 'a', jku: ['https://b.example/k'] },
    ],
  },
};

const settings = (environment: Environment) =>
  readSettings(environment, (path) => JSON.stringify(files[path] ?? fail(path)));

function fail(path: string): never {
  throw new Error(`no such file: ${path}`);
}

const guarded = { TRUST: 'jwt', PUBLIC_BASE_URL: 'https://cds.example/', CLIENTS_FILE: '/site/clients.json' };

describe('settings', () => {
  it('J-02: on this machine alone the service starts open, and says so loudly', () => {
    const open = settings({});
    expect([open.trust, open.corsOrigins]).toEqual(['open', 'any']);
    expect(startUpLines(open)[0]).toMatch(/^\*\*\* OPEN MODE/);
  });

  it('J-02: where others can reach it, open mode must be said', () => {
    expect(() => settings({ HOST: '0.0.0.0' })).toThrow(/^TRUST: /);
    expect(() => settings({ PRODUCTION: 'true', PUBLIC_BASE_URL: 'https://cds.example' })).toThrow(
      /^TRUST: /,
    );
    expect(settings({ HOST: '0.0.0.0', TRUST: 'open' }).trust).toBe('open');
  });

  it('J-08, F-05: clients, their keys and their FHIR servers come from one file', () => {
    const read = settings(guarded);
    expect(read.publicBaseUrl).toBe('https://cds.example');
    expect(read.clients).toMatchObject([
      {
        issuer: 'https://ehr.example',
        fhirOrigins: ['https://fhir.example'],
        keys: { keys: [{ kid: 'main' }] },
      },
    ]);
    expect(startUpLines(read).join()).not.toContain('OPEN');
  });

  it('J-01, T-01: production needs a public https address', () => {
    const production = { ...guarded, PRODUCTION: 'true' };
    expect(settings(production).fetching.needsHttps).toBe(true);
    expect(() => settings({ ...production, PUBLIC_BASE_URL: 'http://cds.example' })).toThrow(
      /^PUBLIC_BASE_URL: /,
    );
    expect(() => settings({ PRODUCTION: 'true', TRUST: 'open' })).toThrow(/^PUBLIC_BASE_URL: /);
  });

  it.each([
    ['JWT_ALGORITHMS', 'none'],
    ['JWT_ALGORITHMS', 'HS256'],
    ['TRUST', 'maybe'],
    ['PRODUCTION', 'yes'],
    ['PUBLIC_BASE_URL', 'cds.example'],
    ['FHIR_ORIGINS', 'https://fhir.example/r4'],
    ['FHIR_PRIVATE_NETWORKS', '10.0.0.0'],
    ['FHIR_PRIVATE_NETWORKS', '10.0.0.0/33'],
    ['CORS_ORIGINS', 'ehr.example'],
    ['REPLAY_STORE', 'mysql://localhost'],
    ['FETCH_DEADLINE_MS', 'soon'],
    ['REQUESTS_PER_MINUTE', '-1'],
    ['MAX_DEPTH', '0'],
    ['CLIENTS_FILE', '/site/absent.json'],
    ['CLIENTS_FILE', '/site/none.json'],
    ['CLIENTS_FILE', '/site/keyless.json'],
    ['CLIENTS_FILE', '/site/odd.json'],
    ['CLIENTS_FILE', '/site/secret.json'],
    ['CLIENTS_FILE', '/site/twice.json'],
  ])('J-05, F-05: %s = %s stops the start, and is named', (name, value) => {
    expect(() => settings({ ...guarded, [name]: value })).toThrow(new RegExp(`^${name}: `));
  });

  it('F-05: in production no address of the machine itself may be named', () => {
    for (const network of ['127.0.0.0/8', '169.254.0.0/16', '::1/128']) {
      const environment = { ...guarded, PRODUCTION: 'true', FHIR_PRIVATE_NETWORKS: network };
      expect(() => settings(environment)).toThrow(/^FHIR_PRIVATE_NETWORKS: /);
    }
    expect(
      settings({ ...guarded, PRODUCTION: 'true', FHIR_PRIVATE_NETWORKS: '10.0.0.0/8' }).isProduction,
    ).toBe(true);
  });

  it('several faults are all named at once', () => {
    expect(() => settings({ TRUST: 'jwt' })).toThrow(/PUBLIC_BASE_URL: .*\nCLIENTS_FILE: /);
    expect(() => settings({ TRUST: 'x', MAX_DEPTH: 'x' })).toThrow(/TRUST: .*\nMAX_DEPTH: /);
  });

  it('J-10: a shared store that cannot be had stops the start, with what to do', async () => {
    // Nothing listens on port 1; without the optional package that is said instead.
    await expect(redisReplayStore('redis://127.0.0.1:1', () => 0)).rejects.toThrow(/^REPLAY_STORE: /);
  });
});
