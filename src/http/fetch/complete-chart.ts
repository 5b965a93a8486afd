// Fetches from the client's FHIR server what the client did not send.
import type { FetchFailure } from '../../presenters/card-types.ts';
import { isObject } from '../cds-request.ts';
import type { KeyState, PrefetchState } from '../prefetch.ts';
import { readOffer, type Connection } from './connection.ts';
import { expandTemplate } from './expand-template.ts';
import type { FetchSettings } from './fetch-settings.ts';
import { fetchQuery, type Fetching, type Start } from './fetch-query.ts';
import { inParallel } from './in-parallel.ts';
import { nextLink } from './links.ts';
import { reachOf, type Access } from './scopes.ts';
import type { Transport } from './transport.ts';

/** A call, as far as fetching is concerned. */
export interface ChartRequest {
  /** The request as sent. */
  readonly body: unknown;
  readonly prefetch: Readonly<Record<string, unknown>>;
  /** Bare id of the woman. */
  readonly patientId: string;
}

export interface ChartSettings extends FetchSettings {
  readonly transport: Transport;
  /** Deepest nesting of what a server may answer. */
  readonly maxDepth: number;
}

/** A token is not used in its last seconds: it would run out on the way. */
const tokenReserveMs = 5000;

/**
 * The states of all queries, after fetching what was not sent and the pages after a first one.
 *
 * Given    request    the call; its token is used here and kept nowhere
 *          states     what prefetch gave
 *          settings   of the site, with the origins this client may name
 * Returns  the same states in the same order; fetched ones are found, absent, or failed and why
 * Throws   RequestError 400: `fhirServer` or `fhirAuthorization` out of form
 * Notes    1. A query the client tried and failed is not tried again (row C-03).
 *          2. The deadline is one for all; what is not there by then is a gap with a name, never an error.
 * Source   CDS Hooks 2.0.1, FHIR resource access; checklist C-04, C-06, C-10, F-01 to F-07, F-A07, R-12
 */
export async function completeChart(
  request: ChartRequest,
  states: readonly KeyState[],
  settings: ChartSettings,
): Promise<readonly KeyState[]> {
  const offer = readOffer(isObject(request.body) ? request.body : {}, settings);
  if (offer.kind === 'none') return states;
  if (offer.kind === 'not-allowed') return states.map((each) => failedIfNotSent(each, 'not-allowed'));
  const { fetching, stop, why } = begin(offer.connection, settings);
  try {
    return await inParallel(states, settings.parallel, async ({ query, state }) => {
      const completed = await completeState(query, state, request, fetching);
      return { query, state: renamed(completed, why) };
    });
  } finally {
    stop();
  }
}

interface Begun {
  readonly fetching: Fetching;
  readonly stop: () => void;
  /** What it means when time runs out. */
  readonly why: 'too-slow' | 'token-expired';
}

function begin(connection: Connection, settings: ChartSettings): Begun {
  const tokenMs =
    connection.token === undefined ? Infinity : connection.token.expiresInSeconds * 1000 - tokenReserveMs;
  const limitMs = Math.max(0, Math.min(settings.deadlineMs, tokenMs));
  const end = performance.now() + limitMs;
  const controller = new AbortController();
  const abort = (): void => {
    controller.abort();
  };
  const timer = setTimeout(abort, limitMs);
  if (limitMs === 0) abort();
  return {
    fetching: {
      connection,
      transport: settings.transport,
      signal: controller.signal,
      timeLeft: () => end - performance.now(),
      budget: { left: settings.maxBytes },
      maxPages: settings.maxPages,
      maxDepth: settings.maxDepth,
    },
    stop: () => {
      clearTimeout(timer);
      abort();
    },
    why: tokenMs < settings.deadlineMs ? 'token-expired' : 'too-slow',
  };
}

async function completeState(
  { key, template }: KeyState['query'],
  state: PrefetchState,
  request: ChartRequest,
  fetching: Fetching,
): Promise<PrefetchState> {
  const query = expandTemplate(template, contextOf(request));
  const isOpen = state.kind === 'not-sent' || (state.kind === 'found' && state.firstPageOnly);
  if (!isOpen || query === undefined) return state;
  const reach = reachOfToken(fetching.connection, query.type, query.access);
  if (reach === 'none') return stopped(state, 'not-in-scope');
  const start = startOf(state, query, request.prefetch[key], fetching.connection);
  if (start === undefined) return stopped(state, 'other-origin');
  const fetched = await fetchQuery(start, key, fetching);
  return reach === 'part' ? inPart(fetched) : fetched;
}

function contextOf({ body, patientId }: ChartRequest): Readonly<Record<string, unknown>> {
  const context = isObject(body) ? body['context'] : undefined;
  return { ...(isObject(context) ? context : {}), patientId };
}

function reachOfToken({ token }: Connection, type: string, access: Access) {
  return token === undefined ? 'all' : reachOf(token.scope, type, access);
}

/** Where to go on: after the first page, or from the beginning; undefined when the next page lies elsewhere. */
function startOf(
  state: PrefetchState,
  query: { readonly path: string; readonly filters: readonly string[] },
  sent: unknown,
  { base, origin }: Connection,
): Start | undefined {
  const first = new URL(`${base}/${query.path}`);
  const { filters } = query;
  if (state.kind !== 'found') return { url: first, filters };
  const url = nextLink(sent, first);
  return url?.origin === origin ? { url, filters, entries: state.entries } : undefined;
}

/** The token shows only some resources of the type: what is there is not all, and nothing there is not known. */
function inPart(state: PrefetchState): PrefetchState {
  if (state.kind === 'absent') return { kind: 'failed', why: 'not-in-scope' };
  if (state.kind !== 'found' || state.firstPageOnly) return state;
  return { ...state, firstPageOnly: true, why: 'not-in-scope' };
}

function stopped(state: PrefetchState, why: FetchFailure): PrefetchState {
  return state.kind === 'found' ? { ...state, why } : { kind: 'failed', why };
}

function failedIfNotSent({ query, state }: KeyState, why: FetchFailure): KeyState {
  return { query, state: state.kind === 'not-sent' ? { kind: 'failed', why } : state };
}

function renamed(state: PrefetchState, why: Begun['why']): PrefetchState {
  const isLate = (state.kind === 'found' || state.kind === 'failed') && state.why === 'too-slow';
  return isLate ? { ...state, why } : state;
}
