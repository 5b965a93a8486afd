// Token ids in a Redis server, for several processes that must not let one token in twice.
import { fingerprint, type ReplayStore } from './replay-store.ts';
import { z } from 'zod';

/** The part of the client library we use. */
interface RedisClient {
  readonly connect: () => Promise<unknown>;
  readonly set: (...parameters: readonly (string | number)[]) => Promise<unknown>;
  readonly disconnect: () => unknown;
  readonly on: (event: 'error', listener: () => void) => unknown;
}

type RedisConstructor = new (url: string, options: object) => RedisClient;

/** Named at run time, so that the program builds and runs without it. */
const library: string = 'ioredis';

const isConstructor = (value: unknown): value is RedisConstructor => typeof value === 'function';
const moduleShape = z.looseObject({ Redis: z.custom<RedisConstructor>(isConstructor) });

const clientOptions = {
  lazyConnect: true,
  connectTimeout: 2000,
  commandTimeout: 1000,
  // A call that must wait for a lost server is refused instead.
  enableOfflineQueue: false,
  maxRetriesPerRequest: 0,
};

/**
 * Token ids shared over the Redis protocol.
 *
 * Given    url   `redis://host:port` or `rediss://…`
 *          now   milliseconds since 1970-01-01T00:00Z
 * Returns  a store, once it is connected; each use is one `SET … PX … NX`, so two processes cannot both be first
 * Throws   Error when the package `ioredis` is not installed, or the server cannot be reached. The store's `use`:
 *          when the server is lost
 * Notes    1. What is stored is a hash of issuer and token id, with an expiry; no token.
 * Source   Redis command SET, options PX and NX; checklist J-10
 */
export async function redisReplayStore(url: string, now: () => number): Promise<ReplayStore> {
  const Redis = await loadLibrary();
  const client = new Redis(url, clientOptions);
  // Without a listener a lost connection would end the process; each refused call tells of it.
  client.on('error', () => undefined);
  await connect(client);
  return {
    use: async (issuer, tokenId, untilMs) => {
      const key = `pregnancy-htn:jti:${fingerprint(JSON.stringify([issuer, tokenId]))}`;
      const reply = await client.set(key, '1', 'PX', Math.max(1, Math.ceil(untilMs - now())), 'NX');
      return reply === 'OK' ? 'first' : 'again';
    },
    close: () => {
      client.disconnect();
      return Promise.resolve();
    },
  };
}

async function loadLibrary(): Promise<RedisConstructor> {
  try {
    const loaded: unknown = await import(library);
    return moduleShape.parse(loaded).Redis;
  } catch {
    throw new Error(`REPLAY_STORE: the package ${library} is not installed: npm install ${library}`);
  }
}

async function connect(client: RedisClient): Promise<void> {
  try {
    await client.connect();
  } catch {
    client.disconnect();
    throw new Error('REPLAY_STORE: the Redis server cannot be reached.');
  }
}
