// Token ids seen before, so that a token serves once.
import { createHash } from 'node:crypto';

/** `full` and an error both mean: cannot be told, so the call is not let in. */
export type Use = 'first' | 'again' | 'full';

export interface ReplayStore {
  /**
   * Notes the use of a token id.
   *
   * Given    issuer     the `iss` of a token whose signature is right
   *          tokenId    its `jti`
   *          untilMs    milliseconds since 1970-01-01T00:00Z until which it must be remembered
   */
  readonly use: (issuer: string, tokenId: string, untilMs: number) => Promise<Use>;
  readonly close?: () => Promise<void>;
}

/**
 * Token ids in the memory of this process.
 *
 * Given    maxIds   ids remembered for each issuer; a client that fills its own part shuts out no other
 *          now      milliseconds since 1970-01-01T00:00Z
 * Notes    1. Several processes each remember their own: a cluster needs the shared store.
 * Source   checklist J-10
 */
export function memoryReplayStore(maxIds: number, now: () => number): ReplayStore {
  const issuers = new Map<string, Map<string, number>>();
  const use = (issuer: string, tokenId: string, untilMs: number): Use => {
    const seen = issuers.get(issuer) ?? new Map<string, number>();
    issuers.set(issuer, seen);
    const key = fingerprint(tokenId);
    const until = seen.get(key);
    if (until !== undefined && until > now()) return 'again';
    if (seen.size >= maxIds) forget(seen, now());
    if (seen.size >= maxIds) return 'full';
    seen.set(key, untilMs);
    return 'first';
  };
  return { use: (issuer, tokenId, untilMs) => Promise.resolve(use(issuer, tokenId, untilMs)) };
}

function forget(seen: Map<string, number>, now: number): void {
  for (const [key, until] of seen) if (until <= now) seen.delete(key);
}

/** A name of fixed length for a text of any. */
export function fingerprint(text: string): string {
  return createHash('sha256').update(text).digest('base64url');
}
