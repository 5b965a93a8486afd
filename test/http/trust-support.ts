// Clients with keys, and a service that knows them.
import { exportJWK, generateKeyPair, SignJWT, type CryptoKey, type JWK } from 'jose';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { AppOptions } from '../../src/http/app.ts';
import { openSettings, type Settings } from '../../src/http/settings.ts';
import { client, now, servicePath } from './client.ts';

export const issuer = 'https://ehr.example';
export const publicBase = 'https://cds.example/base';
export const serviceUrl = `${publicBase}${servicePath}`;
export const nowSeconds = Math.floor(now / 1000);

export interface KeyPair {
  readonly alg: string;
  readonly privateKey: CryptoKey;
  readonly publicJwk: JWK & { readonly kid: string };
}

export async function keyPair(alg: string, kid: string): Promise<KeyPair> {
  const { privateKey, publicKey } = await generateKeyPair(alg, { extractable: true });
  return { alg, privateKey, publicJwk: { ...(await exportJWK(publicKey)), kid } };
}

export const mainKey = await keyPair('ES384', 'main');

let count = 0;
/** A token id never used before. */
export const freshId = (): string => `id-${(count += 1)}`;

export interface TokenParts {
  readonly key?: KeyPair;
  readonly header?: Readonly<Record<string, unknown>>;
  /** undefined leaves a claim out. */
  readonly claims?: Readonly<Record<string, unknown>>;
}

/** A good token, but for the parts given. */
export function tokenWith({ key = mainKey, header, claims }: TokenParts = {}): Promise<string> {
  const times = { iat: nowSeconds, exp: nowSeconds + 300 };
  const payload = present({ iss: issuer, aud: serviceUrl, ...times, jti: freshId(), ...claims });
  const full = present({ typ: 'JWT', kid: key.publicJwk.kid, ...header });
  return new SignJWT(payload).setProtectedHeader({ alg: key.alg, ...full }).sign(key.privateKey);
}

function present(members: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(members).filter(([, value]) => value !== undefined));
}

export function jwtSettings(more: Partial<Settings> = {}, ...keys: readonly KeyPair[]): Settings {
  const keySet = { keys: [mainKey, ...keys].map(({ publicJwk }) => publicJwk) };
  return {
    ...openSettings,
    trust: 'jwt',
    publicBaseUrl: publicBase,
    clients: [{ issuer, jku: [], keys: keySet, fhirOrigins: [] }],
    corsOrigins: [],
    ...more,
  };
}

/** One service for several calls: what it remembers stays. */
export function guardedService(settings: Settings = jwtSettings(), options: Partial<AppOptions> = {}) {
  return client({ settings, ...options });
}

export const bearer = (token: string) => `Bearer ${token}`;

export interface KeyServer {
  readonly url: string;
  /** Requests received so far. */
  readonly fetches: () => number;
  readonly publish: (
    keys: readonly KeyPair[],
    headers?: Readonly<Record<string, string>>,
    status?: number,
  ) => void;
  readonly close: () => Promise<void>;
}

/** A key set on this machine, as a `jku` points to. */
export async function startKeyServer(...keys: readonly KeyPair[]): Promise<KeyServer> {
  let fetches = 0;
  let answer = { keys, headers: {}, status: 200 };
  const server = createServer((_request, response) => {
    fetches += 1;
    response.writeHead(answer.status, { 'content-type': 'application/json', ...answer.headers });
    response.end(JSON.stringify({ keys: answer.keys.map(({ publicJwk }) => publicJwk) }));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/jwks.json`;
  return {
    url,
    fetches: () => fetches,
    publish: (newKeys, headers = {}, status = 200) => {
      answer = { keys: newKeys, headers, status };
    },
    close: () => {
      server.closeAllConnections();
      return new Promise((resolve) =>
        server.close(() => {
          resolve();
        }),
      );
    },
  };
}
