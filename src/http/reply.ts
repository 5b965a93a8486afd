// What a route answers with, before Express sends it.
import type { RequestError, Issue } from '../errors.ts';
import { toOperationOutcome } from '../presenters/operation-outcome.ts';

export interface Reply {
  readonly status: number;
  readonly type: string;
  readonly body: string;
  /** Sent in place of `body`: a file as it was built. */
  readonly bytes?: Buffer;
  readonly headers?: Readonly<Record<string, string>>;
}

export const fhirJson = 'application/fhir+json';

/** Clinical answers are for the one who asked: no cache keeps them. */
const notStored = { 'Cache-Control': 'no-store' };

export function jsonReply(body: unknown, headers: Readonly<Record<string, string>> = notStored): Reply {
  return { status: 200, type: 'application/json', body: JSON.stringify(body), headers };
}

export function fhirReply(body: unknown): Reply {
  return { status: 200, type: fhirJson, body: JSON.stringify(body), headers: notStored };
}

/** The one form of failure: an OperationOutcome. */
export function errorReply(
  status: number,
  issues: readonly Issue[],
  headers: Readonly<Record<string, string>> = {},
): Reply {
  const body = JSON.stringify(toOperationOutcome(issues));
  return { status, type: fhirJson, body, headers: { ...notStored, ...headers } };
}

export function requestErrorReply(error: RequestError): Reply {
  return errorReply(error.status, error.issues);
}
