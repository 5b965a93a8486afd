// Where the public keys of a client come from: its configured set, or an allowed address, remembered for a while.
import {
  createLocalJWKSet,
  createRemoteJWKSet,
  customFetch,
  type CryptoKey,
  type JWSHeaderParameters,
} from 'jose';
import { Agent, fetch as undiciFetch } from 'undici';
import type { TrustedClient } from './clients.ts';

/** The key for a token header; throws when there is none. */
export type KeySource = (header: JWSHeaderParameters) => Promise<CryptoKey>;

/** The source for a client and the `jku` of a token; undefined when that address is not one of the client's. */
export type KeySources = (client: TrustedClient, jku: string | undefined) => KeySource | undefined;

const longestAgeMs = 600_000;
const cooldownMs = 30_000;
const failureCooldownMs = 10_000;
const largestSetBytes = 500_000;

/**
 * The key sets of all clients.
 *
 * Given    now   milliseconds since 1970-01-01T00:00Z
 * Returns  a function that finds a client's source
 * Notes    1. A set is kept as long as its Cache-Control says, ten minutes at most; an unknown kid fetches it again,
 *             not more often than every 30 seconds. After a failure it is left alone for 10 seconds, and the set
 *             known serves on, ten minutes from its fetching at most.
 *          2. Without `jku` in the token: the configured set, else the first configured address.
 *          3. A redirect is not followed: an address not on the list is never fetched.
 * Source   checklist J-08, J-12; RFC 7517
 */
export function keySources(now: () => number): KeySources {
  const dispatcher = new Agent({ maxResponseSize: largestSetBytes });
  const remote = new Map<string, KeySource>();
  const remoteSource = (jku: string): KeySource => {
    const source = remote.get(jku) ?? remoteKeys(new URL(jku), dispatcher, now);
    remote.set(jku, source);
    return source;
  };
  return (client, jku) => {
    if (jku !== undefined) return client.jku.includes(jku) ? remoteSource(jku) : undefined;
    if (client.keys !== undefined) return createLocalJWKSet({ keys: [...client.keys.keys] });
    const [first] = client.jku;
    return first === undefined ? undefined : remoteSource(first);
  };
}

function remoteKeys(url: URL, dispatcher: Agent, now: () => number): KeySource {
  let freshUntil = 0;
  let failedUntil = 0;
  const keys = createRemoteJWKSet(url, {
    timeoutDuration: 3000,
    cooldownDuration: cooldownMs,
    cacheMaxAge: longestAgeMs,
    [customFetch]: async (address, { signal }) => {
      if (now() < failedUntil) throw new Error('The key set could not be had a moment ago.');
      failedUntil = now() + failureCooldownMs;
      const headers = { accept: 'application/jwk-set+json, application/json' };
      const answer = await undiciFetch(address, { dispatcher, signal, headers, redirect: 'error' });
      const body = await answer.text();
      if (answer.status === 200) {
        failedUntil = 0;
        freshUntil = now() + ageOf(answer.headers.get('cache-control'));
      }
      return new Response(body, { status: answer.status, headers: { 'content-type': 'application/json' } });
    },
  });
  return async (header) => {
    // Not below the cooldown, or a set that forbids keeping would be fetched for every call.
    const isStale = keys.jwks() !== undefined && now() >= freshUntil && !keys.coolingDown;
    if (isStale) await keys.reload().catch(() => undefined);
    return keys(header);
  };
}

/** How long a key set may be kept, in milliseconds. */
function ageOf(cacheControl: string | null): number {
  if (cacheControl === null) return longestAgeMs;
  if (/\bno-(?:store|cache)\b/i.test(cacheControl)) return 0;
  const seconds = /\bmax-age=(\d{1,9})/i.exec(cacheControl)?.[1];
  return seconds === undefined ? longestAgeMs : Math.min(Number(seconds) * 1000, longestAgeMs);
}
