// So many calls a minute from one address.
import { rateLimit } from 'express-rate-limit';
import type { Request, RequestHandler } from 'express';
import { errorReply, type Reply } from '../reply.ts';
import { requestIssue } from '../request-issues.ts';

/**
 * A middleware that answers 429 with Retry-After to the call that is one too many.
 *
 * Given    perMinute   calls from one address in one minute; 0: not limited
 * Notes    1. Counted in this process. Preflights do not count.
 * Source   checklist S-06
 */
export function limitRate(perMinute: number, send: (reply: Reply, request: Request) => void): RequestHandler {
  return rateLimit({
    windowMs: 60_000,
    limit: perMinute,
    skip: ({ method }) => perMinute === 0 || method === 'OPTIONS',
    standardHeaders: 'draft-7',
    legacyHeaders: false,
    // The site says how many proxies to believe; the library need not guess from headers.
    validate: false,
    handler: (request) => {
      const message = 'Too many calls within a minute. Wait as long as Retry-After says.';
      send(errorReply(429, [requestIssue('too-many-calls', 'throttled', '', message)]), request);
    },
  });
}
