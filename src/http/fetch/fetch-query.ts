// One query, page by page, from a FHIR server.
import { setTimeout as wait } from 'node:timers/promises';
import type { FetchFailure } from '../../presenters/card-types.ts';
import { isObject } from '../cds-request.ts';
import { parseJson } from '../json-text.ts';
import { readState, type PrefetchState } from '../prefetch.ts';
import { AddressRefused } from './allowed-address.ts';
import type { Connection } from './connection.ts';
import { nextLink, selfLink } from './links.ts';
import { retryDelayMs } from './retry-after.ts';
import { TooManyBytes, type ByteBudget, type Received, type Transport } from './transport.ts';

/** What all queries of one call share. */
export interface Fetching {
  readonly connection: Connection;
  readonly transport: Transport;
  /** Aborted when the deadline has passed. */
  readonly signal: AbortSignal;
  /** Milliseconds until then. */
  readonly timeLeft: () => number;
  readonly budget: ByteBudget;
  readonly maxPages: number;
  readonly maxDepth: number;
}

type Page =
  | { readonly kind: 'page'; readonly body: unknown }
  | { readonly kind: 'gone' }
  | { readonly kind: 'failed'; readonly why: FetchFailure };

/** Where to begin, and what is known already: the first page a client sent. */
export interface Start {
  readonly url: URL;
  readonly filters: readonly string[];
  readonly entries?: readonly unknown[];
}

/**
 * Everything a query finds.
 *
 * Given    start      address of the first page that is not known
 *          key        prefetch key, for the reading of the pages
 *          fetching   connection, deadline, caps
 * Returns  found: complete, or with the first pages only and why; absent: nothing there (404 and 410 too);
 *          failed: and why
 * Throws   never
 * Notes    1. A `next` link is followed exactly as given, within the origin of the server; a link seen before, the
 *             page cap, the byte cap and the deadline end the reading.
 *          2. A server that left `patient` out of the search it says it ran is not believed: its answer is about others.
 * Source   FHIR R4 search paging; checklist C-06, F-05, F-07, F-N01 to F-N06
 */
export async function fetchQuery(start: Start, key: string, fetching: Fetching): Promise<PrefetchState> {
  const entries: unknown[] = [...(start.entries ?? [])];
  const seen = new Set<string>();
  let url: URL | undefined = start.url;
  const cut = (why: FetchFailure): PrefetchState => {
    if (entries.length === 0) return { kind: 'failed', why };
    return { kind: 'found', entries, firstPageOnly: true, why };
  };
  while (url !== undefined) {
    if (seen.has(url.href)) return cut('endless');
    if (seen.size >= fetching.maxPages) return cut('too-many-pages');
    seen.add(url.href);
    const page = await fetchPage(url, fetching);
    if (page.kind === 'gone') return entries.length === 0 ? { kind: 'absent' } : cut('server-failed');
    if (page.kind === 'failed') return cut(page.why);
    if (ignoresPatient(page.body, start.filters)) return cut('other-patients');
    const state = readPage(page.body, key);
    if (state.kind === 'failed' || state.kind === 'not-sent') return cut('server-failed');
    if (state.kind === 'found') entries.push(...state.entries);
    const next = nextLink(page.body, url);
    if (next !== undefined && next.origin !== fetching.connection.origin) return cut('other-origin');
    if (next === undefined && state.kind === 'found' && state.firstPageOnly) return cut('server-failed');
    url = next;
  }
  return entries.length === 0 ? { kind: 'absent' } : { kind: 'found', entries, firstPageOnly: false };
}

function readPage(body: unknown, key: string): PrefetchState {
  try {
    return isObject(body) ? readState(body, key) : { kind: 'failed' };
  } catch {
    return { kind: 'failed' };
  }
}

function ignoresPatient(body: unknown, filters: readonly string[]): boolean {
  if (!filters.includes('patient')) return false;
  const self = selfLink(body);
  if (self === undefined || !self.includes('?')) return false;
  // A paging address of the server's own making names no parameters.
  const names = new URLSearchParams(self.slice(self.indexOf('?') + 1));
  const isOpaque = !filters.some((filter) => names.has(filter));
  return !isOpaque && !['patient', 'subject', 'subject:Patient'].some((name) => names.has(name));
}

/** One page; waits and asks again when the server says when, within the deadline. */
async function fetchPage(url: URL, fetching: Fetching): Promise<Page> {
  for (;;) {
    const received = await receive(url, fetching);
    if ('failed' in received) return { kind: 'failed', why: received.failed };
    const { status, retryAfter } = received;
    if (status === 200) return parsePage(received.body, fetching.maxDepth);
    if (status === 404 || status === 410) return { kind: 'gone' };
    if (status === 401 || status === 403) return { kind: 'failed', why: 'not-permitted' };
    if (status >= 300 && status < 400) return { kind: 'failed', why: 'redirected' };
    if ((status !== 429 && status !== 503) || retryAfter === undefined) {
      return { kind: 'failed', why: 'server-failed' };
    }
    const delay = retryDelayMs(retryAfter, Date.now());
    if (delay === undefined || delay >= fetching.timeLeft()) return { kind: 'failed', why: 'server-busy' };
    // Never sooner than 50 ms: "now" from a busy server is no leave to press it.
    await wait(Math.max(delay, 50), undefined, { signal: fetching.signal }).catch(() => undefined);
  }
}

async function receive(
  url: URL,
  { connection, transport, signal, budget }: Fetching,
): Promise<Received | { readonly failed: FetchFailure }> {
  try {
    signal.throwIfAborted();
    return await transport({ url, token: connection.token?.text, signal, budget });
  } catch (error) {
    if (signal.aborted) return { failed: 'too-slow' };
    if (error instanceof TooManyBytes) return { failed: 'too-large' };
    return { failed: error instanceof AddressRefused ? 'not-allowed' : 'server-failed' };
  }
}

function parsePage(body: Uint8Array, maxDepth: number): Page {
  try {
    return { kind: 'page', body: parseJson(body, maxDepth) };
  } catch {
    return { kind: 'failed', why: 'server-failed' };
  }
}
