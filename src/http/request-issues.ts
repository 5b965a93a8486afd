// Wording of what can be wrong with a request, so that each is named the same everywhere.
import { RequestError, type Issue } from '../errors.ts';

/** One error issue. `expression` is a FHIRPath into the body, or `http.<name>` for the rest of the request. */
export function requestIssue(
  code: string,
  type: string,
  expression: string,
  message: string,
  diagnostics?: string,
): Issue {
  const issue = { severity: 'error', code, type, expression, message } as const;
  return diagnostics === undefined ? issue : { ...issue, diagnostics };
}

/** A request refused as a whole. */
export function refused(status: number, ...issue: Parameters<typeof requestIssue>): RequestError {
  return new RequestError(status, [requestIssue(...issue)]);
}
