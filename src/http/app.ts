// The web service: routes, headers, one log line for each request, and the one place where an error becomes a status.
import express, { type Express, type Request, type Response } from 'express';
import { randomUUID } from 'node:crypto';
import { RequestError } from '../errors.ts';
import { corsHeaders } from './cors.ts';
import { isStrict } from './fhir-negotiation.ts';
import { createMetrics, type Metrics } from './metrics.ts';
import { createTransport } from './fetch/transport.ts';
import { pageHeaders, safetyHeaders, strictTransport } from './headers.ts';
import type { Call } from './call.ts';
import { readBody, type BodyLimits } from './read-body.ts';
import { errorReply, requestErrorReply, type Reply } from './reply.ts';
import { refused, requestIssue } from './request-issues.ts';
import { routes, type Route } from './routes.ts';
import type { ServedSite } from './site-folder.ts';
import { feedbackTaker, type FeedbackEvent } from './take-feedback.ts';
import { openSettings, type Settings } from './settings.ts';
import { limitRate } from './trust/limit-rate.ts';
import type { ReplayStore } from './trust/replay-store.ts';
import { requireClient } from './trust/require-client.ts';

export interface AppOptions {
  /** Milliseconds since 1970-01-01T00:00Z; the only clock of the service. */
  readonly now: () => number;
  /** Default: open, nothing fetched. */
  readonly settings?: Settings;
  /** In place of those of the settings. */
  readonly limits?: Partial<BodyLimits>;
  /** Where token ids are remembered; default: in memory. */
  readonly replay?: ReplayStore;
  /** The site this service is set up for; default: none. */
  readonly site?: ServedSite | undefined;
  /** Receives one line of JSON for each request: method, route, status, milliseconds, request id. */
  readonly log?: (line: string) => void;
  /** Receives one line for each call that was not let in, with the reason; default: `log`. */
  readonly securityLog?: (line: string) => void;
  /** Receives each feedback item once; default: nobody. */
  readonly forwardFeedback?: ((event: FeedbackEvent) => void) | undefined;
}

/** What is counted by one application, and how feedback reaches it. */
type Counting = Pick<Call, 'metrics' | 'takeFeedback'>;

/** What the routes of one application share. */
interface Shared extends AppOptions {
  readonly settings: Settings;
  readonly callFor: (request: Request) => Call;
}

/** Only clients the site knows reach these, unless it runs open. */
const guarded = ['/cds-services', '/fhir', '/check'];

/**
 * The service as an Express application.
 *
 * Given    options   clock, limits (default 10 MB, 64 levels), log (default: none)
 * Notes    1. Stateless: nothing of a request outlives it. Nothing clinical or personal is logged, nor the address.
 */
export function createApp(options: AppOptions): Express {
  const settings = options.settings ?? openSettings;
  const metrics = createMetrics();
  const takeFeedback = feedbackTaker({ metrics, log: options.log, forward: options.forwardFeedback });
  const app = express();
  app.disable('x-powered-by');
  app.set('trust proxy', settings.trustedProxies);
  app.use((request, response, next) => {
    begin({ ...options, settings, metrics }, request, response);
    next();
  });
  const shared = { ...options, settings, callFor: guard(app, options, settings, { metrics, takeFeedback }) };
  for (const route of routes) {
    app.all(route.path, (request, response) => answer(shared, route, request, response));
  }
  app.use((request, response) => {
    const issue = requestIssue('unknown-path', 'not-found', 'http.path', 'There is nothing at this address.');
    send(response, request.method === 'OPTIONS' ? preflight() : errorReply(404, [issue]));
  });
  return app;
}

/** Puts rate limit and client check before the guarded paths; hands back what a route sees of a request let in. */
function guard(app: Express, options: AppOptions, settings: Settings, counting: Counting): Shared['callFor'] {
  const limits = { ...settings.limits, ...options.limits };
  const transport = createTransport(settings.fetching.privateNetworks);
  const refuse = (reply: Reply, { res }: Request): void => {
    if (res !== undefined) send(res, reply);
  };
  const gate = requireClient(settings, {
    now: options.now,
    replay: options.replay,
    securityLog: options.securityLog ?? options.log ?? (() => undefined),
    send: refuse,
  });
  const limiter = limitRate(settings.requestsPerMinute, refuse);
  // FHIR wants the capability statement open to everyone.
  app.all(
    guarded.flatMap((path) => [path, `${path}/*rest`]),
    limiter,
    (request, response, next) => {
      if (request.path === '/fhir/metadata') next();
      else gate.handler(request, response, next);
    },
  );
  return (request) => {
    const origins = gate.clientOf(request)?.fhirOrigins ?? settings.fetching.origins;
    const fetching = { ...settings.fetching, origins, transport, maxDepth: limits.maxDepth };
    return { ...callOf(options, limits, request), ...counting, fetching };
  };
}

function begin(
  options: AppOptions & { readonly settings: Settings; readonly metrics: Metrics },
  request: Request,
  response: Response,
): void {
  const id = randomUUID();
  const started = performance.now();
  const { settings } = options;
  response.set({ ...safetyHeaders, ...(settings.isProduction ? strictTransport : {}), 'X-Request-Id': id });
  response.set(corsHeaders(settings, request.headers.origin));
  response.locals['id'] = id;
  response.on('finish', () => {
    const route: unknown = response.locals['route'] ?? '(none)';
    const ms = Math.round((performance.now() - started) * 10) / 10;
    options.metrics.count('pregnancy_htn_requests_total', {
      route: String(route),
      status: String(response.statusCode),
    });
    options.log?.(JSON.stringify({ method: request.method, route, status: response.statusCode, ms, id }));
  });
}

async function answer(options: Shared, route: Route, request: Request, response: Response): Promise<void> {
  response.locals['route'] = route.path;
  if (route.isPage !== undefined) allowPage(response, options.settings, route.isPage);
  send(response, await replyTo(options, route, request, response));
}

/** A page may run; where the site names origins it may also be framed, and the launch page may ask record systems. */
function allowPage(response: Response, { smart, frameAncestors }: Settings, kind: 'page' | 'launch'): void {
  if (frameAncestors.length > 0) response.removeHeader('X-Frame-Options');
  response.set(pageHeaders(kind === 'launch' ? (smart?.origins ?? []) : [], frameAncestors));
}

async function replyTo(options: Shared, route: Route, request: Request, response: Response): Promise<Reply> {
  const reply = methodOf(route, request.method);
  if (request.method === 'OPTIONS') return preflight(allowed(route));
  if (reply === undefined) {
    const issue = requestIssue('method', 'not-supported', 'http.method', `Use ${allowed(route)}.`);
    return errorReply(405, [issue], { Allow: allowed(route) });
  }
  try {
    return await reply(options.callFor(request));
  } catch (error) {
    if (error instanceof RequestError) return requestErrorReply(error);
    const id = String(response.locals['id']);
    const message = 'The service failed; the fault is ours. Report it with the request id.';
    return errorReply(500, [requestIssue('internal', 'exception', '', message, `request ${id}`)]);
  }
}

function methodOf(route: Route, method: string) {
  if (method === 'GET' || method === 'HEAD') return route.get;
  return method === 'POST' ? route.post : undefined;
}

function allowed(route: Route): string {
  return [
    ...(route.get === undefined ? [] : ['GET', 'HEAD']),
    ...(route.post === undefined ? [] : ['POST']),
    'OPTIONS',
  ].join(', ');
}

function preflight(allow = 'GET, HEAD, POST, OPTIONS'): Reply {
  const headers = {
    Allow: allow,
    'Access-Control-Allow-Methods': 'GET, POST, OPTIONS',
    'Access-Control-Allow-Headers': 'Authorization, Content-Type, Prefer',
    'Access-Control-Max-Age': '600',
  };
  return { status: 204, type: 'application/json', body: '', headers };
}

function callOf(
  options: AppOptions,
  limits: BodyLimits,
  request: Request,
): Omit<Call, 'fetching' | keyof Counting> {
  const warnings: string[] = [];
  const reading = { prefer: request.get('Prefer'), site: options.site };
  return {
    now: options.now(),
    accept: request.headers.accept,
    acceptLanguage: request.headers['accept-language'],
    acceptEncoding: request.get('Accept-Encoding'),
    smart: options.settings?.smart,
    ...reading,
    warnings,
    body: () =>
      readBody(request, limits, (byte) => {
        if (isStrict(reading)) throw duplicateFault(byte);
        warnings.push(`A name stands twice in one object, at byte ${byte}; the last one counts.`);
      }),
    query: (name) => queryText(request.query[name], name),
    parameter: (name) => {
      const value: unknown = request.params[name];
      return typeof value === 'string' ? value : undefined;
    },
  };
}

function duplicateFault(byte: number) {
  const message = 'A name stands twice in one JSON object.';
  return refused(400, 'duplicate-name', 'structure', '', message, `at byte ${byte}`);
}

function queryText(value: unknown, name: string): string | undefined {
  if (value === undefined || value === '') return undefined;
  if (typeof value === 'string') return value;
  throw refused(400, 'said-twice', 'invalid', `http.${name}`, `\`${name}\` must be given once.`);
}

function send(response: Response, reply: Reply): void {
  response.status(reply.status).set(reply.headers ?? {});
  if (reply.bytes !== undefined) response.type(reply.type).send(reply.bytes);
  else if (reply.body === '') response.end();
  else response.type(reply.type).send(reply.body);
}
