// Is this token from a client we know, made out to this address, fresh, and used for the first time?
import { decodeJwt, decodeProtectedHeader, errors, jwtVerify, type JWTPayload } from 'jose';
import type { SignatureAlgorithm } from './algorithms.ts';
import type { TrustedClient } from './clients.ts';
import type { KeySources } from './key-sets.ts';
import type { ReplayStore } from './replay-store.ts';

/** What a token says of itself; believed only in a verdict of trust. For the security log. */
export interface Claimed {
  readonly iss?: string;
  readonly jti?: string;
  readonly tenant?: string;
  readonly kid?: string;
}

export type Verdict =
  | {
      readonly kind: 'trusted';
      readonly client: TrustedClient;
      readonly tenant?: string;
      readonly claimed: Claimed;
    }
  | { readonly kind: 'refused'; readonly reason: string; readonly claimed: Claimed }
  /** It cannot be told whether the token was used before. */
  | { readonly kind: 'unavailable'; readonly reason: string; readonly claimed: Claimed };

export interface Verification {
  readonly clients: readonly TrustedClient[];
  readonly algorithms: readonly SignatureAlgorithm[];
  readonly keySources: KeySources;
  readonly replay: ReplayStore;
  readonly now: () => number;
}

const skewSeconds = 60;
const longestLifeSeconds = 3600;
const longestClaim = 200;

/**
 * Who is calling?
 *
 * Given    authorization   the header; undefined when absent
 *          audience        addresses of this endpoint, any of which the token may be made out to
 *          verification    clients, algorithms, keys, replay store, clock
 * Returns  trusted with the client; refused with a reason for the security log only; unavailable
 * Throws   never
 * Notes    1. Times may be off by 60 seconds. A token lives one hour at most, by its own `iat` and `exp`.
 *          2. Its id is noted only after its signature was found right.
 *          3. The algorithm must be on the site's list and fit the type of the key, and the key's own `alg` if it has one.
 * Source   CDS Hooks 2.0.1, trusting CDS clients; RFC 7519; checklist J-03 to J-11
 */
export async function verifyToken(
  authorization: string | undefined,
  audience: readonly string[],
  verification: Verification,
): Promise<Verdict> {
  const token = /^Bearer +([\w-]+\.[\w-]+\.[\w-]+) *$/i.exec(authorization ?? '')?.[1];
  if (token === undefined) return { kind: 'refused', reason: 'no-token', claimed: {} };
  const claimed = claimedBy(token);
  try {
    return await verified(token, audience, verification, claimed);
  } catch (error) {
    return { kind: 'refused', reason: reasonOf(error), claimed };
  }
}

async function verified(
  token: string,
  audience: readonly string[],
  { clients, algorithms, keySources, replay, now }: Verification,
  claimed: Claimed,
): Promise<Verdict> {
  const refusal = (reason: string): Verdict => ({ kind: 'refused', reason, claimed });
  const client = clients.find(({ issuer }) => issuer === claimed.iss);
  if (client === undefined) return refusal('issuer-unknown');
  const { kid, jku } = decodeProtectedHeader(token);
  if (typeof kid !== 'string' || kid === '') return refusal('kid-missing');
  const keys = keySources(client, jku);
  if (keys === undefined) return refusal('jku-not-allowed');
  const { payload } = await jwtVerify(token, keys, {
    algorithms: [...algorithms],
    typ: 'JWT',
    issuer: client.issuer,
    audience: [...audience],
    requiredClaims: ['iss', 'aud', 'exp', 'iat', 'jti'],
    clockTolerance: skewSeconds,
    currentDate: new Date(now()),
  });
  const fault = faultOfTimes(payload, now() / 1000) ?? faultOfNames(payload);
  if (fault !== undefined) return refusal(fault);
  const use = await firstUse(replay, client.issuer, payload);
  if (use !== 'first')
    return use === 'again' ? refusal('replayed') : { kind: 'unavailable', reason: use, claimed };
  const { tenant } = payload;
  return { kind: 'trusted', client, claimed, ...(typeof tenant === 'string' ? { tenant } : {}) };
}

function faultOfTimes({ iat = NaN, exp = NaN }: JWTPayload, nowSeconds: number): string | undefined {
  if (iat > nowSeconds + skewSeconds) return 'iat-in-future';
  return exp - iat <= longestLifeSeconds ? undefined : 'lives-too-long';
}

function faultOfNames({ jti, tenant }: JWTPayload): string | undefined {
  if (typeof jti !== 'string' || jti === '') return 'jti-missing';
  return tenant === undefined || typeof tenant === 'string' ? undefined : 'tenant-not-text';
}

type Told = 'first' | 'again' | 'replay-store-full' | 'replay-store-unavailable';

async function firstUse(
  replay: ReplayStore,
  issuer: string,
  { jti = '', exp = 0 }: JWTPayload,
): Promise<Told> {
  try {
    const use = await replay.use(issuer, jti, (exp + skewSeconds) * 1000);
    return use === 'full' ? 'replay-store-full' : use;
  } catch {
    return 'replay-store-unavailable';
  }
}

/** Read without believing: cut short, so that nobody fills the log. */
function claimedBy(token: string): Claimed {
  try {
    const { iss, jti, tenant } = decodeJwt(token);
    const { kid } = decodeProtectedHeader(token);
    return { ...named('iss', iss), ...named('jti', jti), ...named('tenant', tenant), ...named('kid', kid) };
  } catch {
    return {};
  }
}

function named(name: keyof Claimed, value: unknown): Claimed {
  return typeof value === 'string' ? { [name]: value.slice(0, longestClaim) } : {};
}

function reasonOf(error: unknown): string {
  if (error instanceof errors.JWTExpired) return 'expired';
  if (error instanceof errors.JWTClaimValidationFailed) return `claim ${error.claim}`;
  return error instanceof errors.JOSEError ? error.code : 'key-set-not-available';
}
