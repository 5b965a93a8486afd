// The web service: routes, headers, one log line for each request, and the one place where an error becomes a status.
import express, { type Express, type Request, type Response } from 'express';
import { randomUUID } from 'node:crypto';
import { RequestError } from '../errors.ts';
import { pageHeaders, safetyHeaders } from './headers.ts';
import type { Call } from './call.ts';
import { defaultBodyLimits, readBody, type BodyLimits } from './read-body.ts';
import { errorReply, requestErrorReply, type Reply } from './reply.ts';
import { refused, requestIssue } from './request-issues.ts';
import { routes, type Route } from './routes.ts';

export interface AppOptions {
  /** Milliseconds since 1970-01-01T00:00Z; the only clock of the service. */
  readonly now: () => number;
  readonly limits?: Partial<BodyLimits>;
  /** Receives one line of JSON for each request: method, route, status, milliseconds, request id. */
  readonly log?: (line: string) => void;
}

/**
 * The service as an Express application.
 *
 * Given    options   clock, limits (default 10 MB, 64 levels), log (default: none)
 * Notes    1. Stateless: nothing of a request outlives it. Nothing clinical or personal is logged, nor the address.
 */
export function createApp(options: AppOptions): Express {
  const app = express();
  app.disable('x-powered-by');
  app.use((request, response, next) => {
    begin(options, request, response);
    next();
  });
  for (const route of routes) {
    app.all(route.path, (request, response) => answer(options, route, request, response));
  }
  app.use((request, response) => {
    const issue = requestIssue('unknown-path', 'not-found', 'http.path', 'There is nothing at this address.');
    send(response, request.method === 'OPTIONS' ? preflight() : errorReply(404, [issue]));
  });
  return app;
}

function begin(options: AppOptions, request: Request, response: Response): void {
  const id = randomUUID();
  const started = performance.now();
  response.set({ ...safetyHeaders, 'X-Request-Id': id });
  response.locals['id'] = id;
  response.on('finish', () => {
    const route: unknown = response.locals['route'] ?? '(none)';
    const ms = Math.round((performance.now() - started) * 10) / 10;
    options.log?.(JSON.stringify({ method: request.method, route, status: response.statusCode, ms, id }));
  });
}

async function answer(
  options: AppOptions,
  route: Route,
  request: Request,
  response: Response,
): Promise<void> {
  response.locals['route'] = route.path;
  if (route.path === '/') response.set(pageHeaders);
  send(response, await replyTo(options, route, request, response));
}

async function replyTo(
  options: AppOptions,
  route: Route,
  request: Request,
  response: Response,
): Promise<Reply> {
  const reply = methodOf(route, request.method);
  if (request.method === 'OPTIONS') return preflight(allowed(route));
  if (reply === undefined) {
    const issue = requestIssue('method', 'not-supported', 'http.method', `Use ${allowed(route)}.`);
    return errorReply(405, [issue], { Allow: allowed(route) });
  }
  try {
    return await reply(callOf(options, request));
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
    'Access-Control-Allow-Headers': 'Authorization, Content-Type',
    'Access-Control-Max-Age': '600',
  };
  return { status: 204, type: 'application/json', body: '', headers };
}

function callOf(options: AppOptions, request: Request): Call {
  return {
    now: options.now(),
    accept: request.headers.accept,
    body: () => readBody(request, { ...defaultBodyLimits, ...options.limits }),
    query: (name) => queryText(request.query[name], name),
    parameter: (name) => {
      const value: unknown = request.params[name];
      return typeof value === 'string' ? value : undefined;
    },
  };
}

function queryText(value: unknown, name: string): string | undefined {
  if (value === undefined || value === '') return undefined;
  if (typeof value === 'string') return value;
  throw refused(400, 'said-twice', 'invalid', `http.${name}`, `\`${name}\` must be given once.`);
}

function send(response: Response, reply: Reply): void {
  response.status(reply.status).set(reply.headers ?? {});
  if (reply.body === '') response.end();
  else response.type(reply.type).send(reply.body);
}
