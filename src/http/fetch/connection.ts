// The FHIR server a client offers, with its token. Lives as long as the call and goes into no log.
import { RequestError, type Issue } from '../../errors.ts';
import { requestIssue } from '../request-issues.ts';
import type { FetchSettings } from './fetch-settings.ts';
import { z } from 'zod';

export interface Connection {
  /** Base address, without a slash at the end. */
  readonly base: string;
  readonly origin: string;
  /** Absent: a sandbox that asks for none. */
  readonly token?: { readonly text: string; readonly scope: string; readonly expiresInSeconds: number };
}

export type Offer =
  | { readonly kind: 'usable'; readonly connection: Connection }
  /** The client offers no server, or no token for it. */
  | { readonly kind: 'none' }
  /** A server the site does not allow. */
  | { readonly kind: 'not-allowed' };

const authorizationShape = z.object({
  // RFC 6750, section 2.1.
  access_token: z.string().regex(/^[A-Za-z0-9\-._~+/]+=*$/),
  token_type: z.string().regex(/^bearer$/i),
  expires_in: z.number().int().nonnegative(),
  scope: z.string(),
  subject: z.string(),
});

const wording: Readonly<Record<string, string>> = {
  access_token: 'It must be a bearer token.',
  token_type: 'It must be `Bearer`.',
  expires_in: 'It must be a whole number of seconds.',
};

/**
 * The FHIR server that may be asked for what was not sent.
 *
 * Given    body       the request as sent, its members not yet checked
 *          settings   allowed origins, and whether a server may be asked without a token
 * Returns  usable; none: nothing is offered; not-allowed: its origin is not among the allowed ones
 * Throws   RequestError 400: a member of `fhirAuthorization` that is not valid; an address that is none, or not https
 *          where it must be
 * Source   CDS Hooks 2.0.1, FHIR resource access; checklist, F-01, F-02, F-05
 */
export function readOffer(body: Readonly<Record<string, unknown>>, settings: FetchSettings): Offer {
  const server = body['fhirServer'];
  if (server === undefined) return { kind: 'none' };
  const address = addressOf(server);
  if (address === undefined) throw refusedServer('value', 'It must be an absolute https address.');
  if (settings.needsHttps && address.protocol !== 'https:') {
    throw refusedServer('security', 'It must begin with https.');
  }
  const authorization = body['fhirAuthorization'];
  if (authorization === undefined && !settings.mayFetchWithoutToken) return { kind: 'none' };
  const token = authorization === undefined ? undefined : readToken(authorization);
  if (!settings.origins.includes(address.origin)) return { kind: 'not-allowed' };
  const base = `${address.origin}${address.pathname}`.replace(/\/+$/, '');
  const connection = { base, origin: address.origin, ...(token === undefined ? {} : { token }) };
  return { kind: 'usable', connection };
}

function addressOf(server: unknown): URL | undefined {
  if (typeof server !== 'string' || !URL.canParse(server)) return undefined;
  const address = new URL(server);
  const isWeb = address.protocol === 'https:' || address.protocol === 'http:';
  return isWeb && address.username === '' && address.password === '' ? address : undefined;
}

function readToken(authorization: unknown): Connection['token'] {
  const read = authorizationShape.safeParse(authorization);
  if (!read.success) throw new RequestError(400, read.error.issues.map(toIssue));
  const { access_token: text, scope, expires_in: expiresInSeconds } = read.data;
  return { text, scope, expiresInSeconds };
}

function toIssue(fault: { readonly path: readonly PropertyKey[] }): Issue {
  const member = String(fault.path[0] ?? '');
  const expression = member === '' ? 'fhirAuthorization' : `fhirAuthorization.${member}`;
  return requestIssue('authorization', 'value', expression, wording[member] ?? 'It must be text.');
}

function refusedServer(type: string, message: string): RequestError {
  return new RequestError(400, [requestIssue('fhir-server', type, 'fhirServer', message)]);
}
