// Lets in only clients we know, where the site asks for that; says why not to the security log alone.
import type { Request, RequestHandler } from 'express';
import { errorReply, type Reply } from '../reply.ts';
import { requestIssue } from '../request-issues.ts';
import type { Settings } from '../settings.ts';
import type { TrustedClient } from './clients.ts';
import { keySources } from './key-sets.ts';
import { memoryReplayStore, type ReplayStore } from './replay-store.ts';
import { verifyToken, type Verdict } from './verify-token.ts';

export interface TrustOptions {
  readonly now: () => number;
  /** Default: in memory. */
  readonly replay?: ReplayStore | undefined;
  /** One line of JSON for each call not let in: reason, issuer, token id, tenant; never the token. */
  readonly securityLog: (line: string) => void;
  readonly send: (reply: Reply, request: Request) => void;
}

export interface Gate {
  readonly handler: RequestHandler;
  /** The client of a request that was let in; undefined in open mode. */
  readonly clientOf: (request: Request) => TrustedClient | undefined;
}

const refusal: Reply = {
  status: 401,
  type: 'application/json',
  body: '',
  headers: { 'WWW-Authenticate': 'Bearer', 'Cache-Control': 'no-store' },
};

/** What any FHIR server tells anybody: what it can do. */
const capabilities = '/fhir/metadata';

/**
 * The gate before what only clients may reach.
 *
 * Given    settings   trust mode, clients, algorithms, public address
 *          options    clock, replay store, security log, how to send
 * Returns  a middleware, and whom it let in
 * Notes    1. 401 has no body and no reason. 403 tells a known client that it may not. 503: the replay store cannot answer.
 *          2. The public address of the settings counts, not the Host header. Feedback may be made out to its service.
 *          3. A preflight carries no token and passes.
 * Source   CDS Hooks 2.0.1, security; checklist J-01 to J-13, B-10, S-04, S-05
 */
export function requireClient(settings: Settings, options: TrustOptions): Gate {
  const clients = new WeakMap<Request, TrustedClient>();
  const verification = {
    ...settings,
    keySources: keySources(options.now),
    replay: options.replay ?? memoryReplayStore(settings.replayMaxIds, options.now),
    now: options.now,
  };
  const admit = async (request: Request): Promise<Reply | undefined> => {
    const audience = audienceOf(settings.publicBaseUrl ?? '', request.path);
    const verdict = await verifyToken(request.headers.authorization, audience, verification);
    const reply = replyTo(verdict, request.path);
    if (verdict.kind === 'trusted' && reply === undefined) clients.set(request, verdict.client);
    else options.securityLog(logLine(verdict, request));
    return reply;
  };
  const handler: RequestHandler = async (request, _response, next) => {
    const isFree = settings.trust === 'open' || request.method === 'OPTIONS' || request.path === capabilities;
    const reply = isFree ? undefined : await admit(request);
    if (reply === undefined) next();
    else options.send(reply, request);
  };
  return { handler, clientOf: (request) => clients.get(request) };
}

/** Addresses a token for this path may be made out to. */
function audienceOf(base: string, path: string): readonly string[] {
  const url = `${base}${decoded(path).replace(/\/+$/, '')}`;
  const urls = url.endsWith('/feedback') ? [url, url.slice(0, -'/feedback'.length)] : [url];
  return urls.flatMap((each) => [each, `${each}/`]);
}

function decoded(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

function replyTo(verdict: Verdict, path: string): Reply | undefined {
  if (verdict.kind === 'refused') return refusal;
  if (verdict.kind === 'unavailable') return unavailable;
  const { client, tenant } = verdict;
  // Paths match in any letter case, so the check must too.
  const service = /^\/cds-services\/([^/]+)/i.exec(decoded(path))?.[1];
  const mayCall = service === undefined || client.services?.includes(service) !== false;
  const mayFor = client.tenants === undefined || (tenant !== undefined && client.tenants.includes(tenant));
  return mayCall && mayFor ? undefined : forbidden;
}

const forbidden = errorReply(403, [
  requestIssue('not-allowed', 'forbidden', 'http.Authorization', 'This client may not call this service.'),
]);

const unavailable = errorReply(
  503,
  [requestIssue('trust-unavailable', 'transient', '', 'The client cannot be checked at the moment.')],
  { 'Retry-After': '10' },
);

function logLine(verdict: Verdict, request: Request): string {
  const reason = verdict.kind === 'trusted' ? 'not-allowed' : verdict.reason;
  return JSON.stringify({
    event: 'client-refused',
    reason,
    ...verdict.claimed,
    path: request.path.slice(0, 200),
  });
}
