// A CDS Hooks request, checked before anything is looked at. Row ids are those of the conformance checklist.
import { RequestError, type Issue } from '../errors.ts';
import { refused, requestIssue } from './request-issues.ts';

export const serviceId = 'pregnancy-hypertension';
export const servedHook = 'patient-view';

/** What the service needs from a call. */
export interface CdsCall {
  /** Bare id of the woman. */
  readonly patientId: string;
  readonly prefetch: Readonly<Record<string, unknown>>;
  /** From `extension`, absent in plain CDS Hooks. */
  readonly asOf?: string;
  readonly guideline?: string;
}

/**
 * The call, or why it cannot be answered.
 *
 * Given    body   parsed JSON of the request
 * Throws   RequestError 400 with one issue for each fault (rows ).
 * Notes    1. Unknown members and extensions of any type are ignored.
 *          2. A hookInstance that is no UUID is accepted: it is only a call id to us.
 */
export function readCdsRequest(body: unknown): CdsCall {
  if (!isObject(body))
    throw refused(400, 'not-an-object', 'structure', '', 'The body must be a JSON object.');
  const issues = [...hookIssues(body), ...authorizationIssues(body), ...contextIssues(body)];
  if (issues.length > 0) throw new RequestError(400, issues);
  const context = isObject(body['context']) ? body['context'] : {};
  const extension = isObject(body['extension']) ? body['extension'] : {};
  return {
    patientId: bareId(context['patientId']) ?? '',
    prefetch: isObject(body['prefetch']) ? body['prefetch'] : {},
    ...optionalText('asOf', extension['org.pregnancy-htn.asOf']),
    ...optionalText('guideline', extension['org.pregnancy-htn.guideline']),
  };
}

export function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function optionalText<K extends 'asOf' | 'guideline'>(
  key: K,
  value: unknown,
): { readonly [P in K]?: string } {
  const none: { readonly [P in K]?: string } = {};
  return typeof value === 'string' ? { ...none, [key]: value } : none;
}

function required(expression: string): Issue {
  return requestIssue('required', 'required', expression, `\`${expression}\` is required.`);
}

function isText(value: unknown): value is string {
  return typeof value === 'string' && value !== '';
}

function hookIssues(body: Readonly<Record<string, unknown>>): readonly Issue[] {
  const instance = isText(body['hookInstance']) ? [] : [required('hookInstance')];
  if (!isText(body['hook'])) return [required('hook'), ...instance];
  if (body['hook'] === servedHook) return instance;
  const message = `This service answers the hook ${servedHook} only.`;
  return [requestIssue('hook-not-served', 'not-supported', 'hook', message), ...instance];
}

const authorizationMembers = ['access_token', 'token_type', 'expires_in', 'scope', 'subject'] as const;

function authorizationIssues(body: Readonly<Record<string, unknown>>): readonly Issue[] {
  const authorization = body['fhirAuthorization'];
  if (authorization === undefined) return [];
  if (!isObject(authorization)) {
    return [requestIssue('not-an-object', 'structure', 'fhirAuthorization', 'It must be a JSON object.')];
  }
  const server = isText(body['fhirServer']) ? [] : [required('fhirServer')];
  const absent = authorizationMembers.filter((member) => authorization[member] === undefined);
  return [...server, ...absent.map((member) => required(`fhirAuthorization.${member}`))];
}

function contextIssues(body: Readonly<Record<string, unknown>>): readonly Issue[] {
  const context = body['context'];
  if (context === undefined) return [required('context')];
  if (!isObject(context))
    return [requestIssue('not-an-object', 'structure', 'context', 'It must be a JSON object.')];
  const absent = ['userId', 'patientId'].filter((member) => !isText(context[member]));
  if (absent.length > 0) return absent.map((member) => required(`context.${member}`));
  if (bareId(context['patientId']) !== undefined) return [];
  const message = 'It must be the bare id of a Patient, such as 123.';
  return [requestIssue('patient-id', 'value', 'context.patientId', message)];
}

/** `123` from `123`, `Patient/123` or an absolute address of a Patient; undefined for anything else. */
function bareId(value: unknown): string | undefined {
  if (typeof value !== 'string') return undefined;
  const found = /^(?:(?:https?:\/\/\S+\/)?Patient\/)?([A-Za-z0-9\-._]{1,64})(?:\/_history\/\S+)?$/.exec(
    value,
  );
  return found?.[1];
}
