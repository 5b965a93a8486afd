// Which web pages of other origins may call the service.
import type { Settings } from './settings.ts';

/**
 * Headers for a request from a page of `origin`; undefined when it comes from none.
 *
 * Notes    1. No credentials mode: a token travels in its own header or not at all.
 *          2. An origin that is not allowed gets no permission, and the browser keeps the answer from the page.
 * Source   Fetch standard, CORS protocol; checklist J-13
 */
export function corsHeaders(
  { corsOrigins }: Settings,
  origin: string | undefined,
): Readonly<Record<string, string>> {
  const exposed = { 'Access-Control-Expose-Headers': 'X-Request-Id, Retry-After, WWW-Authenticate' };
  if (corsOrigins === 'any') return { 'Access-Control-Allow-Origin': '*', ...exposed };
  const isAllowed = origin !== undefined && corsOrigins.includes(origin);
  return { Vary: 'Origin', ...(isAllowed ? { 'Access-Control-Allow-Origin': origin, ...exposed } : {}) };
}
