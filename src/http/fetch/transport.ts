// One GET to a FHIR server: no redirects, no private addresses, no more bytes than agreed.
import { Agent, request, type Dispatcher } from 'undici';
import { createGunzip } from 'node:zlib';
import { pipeline } from 'node:stream';
import { isIP } from 'node:net';
import { addressCheck, AddressRefused, guardedLookup, type AddressCheck } from './allowed-address.ts';
import type { Network } from './networks.ts';

/** Bytes that may still be received for a call; shared by everything fetched for it. */
export interface ByteBudget {
  left: number;
}

export interface Received {
  readonly status: number;
  readonly retryAfter?: string;
  /** Empty for everything but a success. */
  readonly body: Uint8Array;
}

export interface Asked {
  readonly url: URL;
  readonly token: string | undefined;
  readonly signal: AbortSignal;
  readonly budget: ByteBudget;
}

export type Transport = (asked: Asked) => Promise<Received>;

/** More was sent than the budget allows. */
export class TooManyBytes extends Error {
  constructor() {
    super('More bytes were sent than may be read for one call.');
    this.name = 'TooManyBytes';
  }
}

/**
 * A way to ask FHIR servers, with connections kept open between calls.
 *
 * Given    allowed   private networks that may be connected to
 * Returns  a function that answers with status and body
 * Throws   the returned function: AddressRefused, TooManyBytes, or any error of the network
 * Notes    1. A redirect is handed back as a status and never followed.
 */
export function createTransport(allowed: readonly Network[]): Transport {
  const isAllowed = addressCheck(allowed);
  const dispatcher = new Agent({ connect: { lookup: guardedLookup(isAllowed) }, connections: 16 });
  return async (asked) => {
    checkLiteral(asked.url, isAllowed);
    const response = await request(asked.url, {
      dispatcher,
      method: 'GET',
      headers: headersOf(asked.token),
      signal: asked.signal,
    });
    return receivedFrom(response, asked.budget);
  };
}

/** An address written as numbers is never looked up, so it is checked here. */
function checkLiteral({ hostname }: URL, isAllowed: AddressCheck): void {
  const address = hostname.replace(/^\[|\]$/g, '');
  if (isIP(address) !== 0 && !isAllowed(address)) throw new AddressRefused();
}

function headersOf(token: string | undefined): Record<string, string> {
  return {
    accept: 'application/fhir+json',
    'accept-encoding': 'gzip',
    ...(token === undefined ? {} : { authorization: `Bearer ${token}` }),
  };
}

async function receivedFrom(response: Dispatcher.ResponseData, budget: ByteBudget): Promise<Received> {
  const { statusCode: status, headers } = response;
  const retryAfter = headers['retry-after'];
  const rest = typeof retryAfter === 'string' ? { retryAfter } : {};
  if (status === 200) return { status, ...rest, body: await readAll(response, budget) };
  await response.body.dump({ limit: 65_536 });
  return { status, ...rest, body: new Uint8Array() };
}

async function readAll({ body, headers }: Dispatcher.ResponseData, budget: ByteBudget): Promise<Uint8Array> {
  const isZipped = headers['content-encoding'] === 'gzip';
  const source = isZipped ? pipeline(body, createGunzip(), () => undefined) : body;
  const chunks: Uint8Array[] = [];
  for await (const chunk of source) {
    if (!(chunk instanceof Uint8Array)) continue;
    budget.left -= chunk.length;
    if (budget.left < 0) throw new TooManyBytes();
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}
