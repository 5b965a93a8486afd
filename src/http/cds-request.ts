// A CDS Hooks request, checked before anything is looked at. Row ids are those of the conformance checklist.
import { RequestError, type Issue } from '../errors.ts';
import type { CardContext } from '../presenters/card-context.ts';
import { roleNamed } from '../presenters/user-role.ts';
import { bareId, contextIssues } from './cds-context.ts';
import type { CdsService, ServedHook } from './cds-service-table.ts';
import { isObject } from './json-object.ts';
import { refused, requestIssue } from './request-issues.ts';

export { isObject } from './json-object.ts';

type Json = Readonly<Record<string, unknown>>;

/** What the service needs from a call. */
export interface CdsCall {
  /** The request as sent. */
  readonly body: Json;
  readonly hook: ServedHook;
  /** Fields of the hook; `patientId` is the bare id. */
  readonly context: Json;
  /** Bare id of the woman. */
  readonly patientId: string;
  readonly prefetch: Json;
  /** The woman herself or her family asks: no clinical card. */
  readonly isForLayUser: boolean;
  /** From `extension`, absent in plain CDS Hooks. */
  readonly asOf?: string;
  readonly guideline?: string;
  readonly role?: CardContext['role'];
  /** What is odd and was let pass, in words. */
  readonly warnings: readonly string[];
}

/**
 * The call, or why it cannot be answered.
 *
 * Given    body       parsed JSON of the request
 *          service    that was called; the body's hook says which of its tables holds (row D-12)
 *          isStrict   refuse what is otherwise let pass with a warning
 * Throws   RequestError 400 with one issue for each fault (rows, H-03).
 * Notes    1. Unknown members and extensions of any type are ignored.
 *          2. A hookInstance that is no UUID is only a call id to us: a warning, unless strict.
 */
export function readCdsRequest(body: unknown, service: CdsService, isStrict: boolean): CdsCall {
  if (!isObject(body))
    throw refused(400, 'not-an-object', 'structure', '', 'The body must be a JSON object.');
  const hook = service.hooks.find(({ name }) => name === body['hook']);
  const instance = instanceFault(body['hookInstance']);
  const isRefused = instance !== undefined && (isStrict || instance.type === 'required');
  const issues = [
    ...hookIssues(body['hook'], hook, service),
    ...(isRefused ? [instance] : []),
    ...authorizationIssues(body),
    ...contextFaults(body['context'], hook),
  ];
  if (hook === undefined || issues.length > 0) throw new RequestError(400, issues);
  const context = isObject(body['context']) ? body['context'] : {};
  const patientId = bareId(context['patientId']) ?? '';
  return {
    body,
    hook,
    context: { ...context, patientId },
    patientId,
    prefetch: isObject(body['prefetch']) ? body['prefetch'] : {},
    isForLayUser: isLayUser(context['userId']),
    ...fromExtension(body['extension']),
    warnings: [
      ...(instance === undefined ? [] : [instance.message]),
      ...(context['patientId'] === patientId
        ? []
        : ['context.patientId should be a bare id; it was read as one.']),
    ],
  };
}

function fromExtension(extension: unknown): Pick<CdsCall, 'asOf' | 'guideline' | 'role'> {
  if (!isObject(extension)) return {};
  const asOf = extension['org.pregnancy-htn.asOf'];
  const guideline = extension['org.pregnancy-htn.guideline'];
  const role = roleNamed(extension['org.pregnancy-htn.role']);
  return {
    ...(typeof asOf === 'string' ? { asOf } : {}),
    ...(typeof guideline === 'string' ? { guideline } : {}),
    ...(role === undefined ? {} : { role }),
  };
}

function isLayUser(userId: unknown): boolean {
  return typeof userId === 'string' && /(?:^|\/)(?:Patient|RelatedPerson)\/[^/]+$/.test(userId);
}

function required(expression: string): Issue {
  return requestIssue('required', 'required', expression, `\`${expression}\` is required.`);
}

function isText(value: unknown): value is string {
  return typeof value === 'string' && value !== '';
}

const uuid = /^(?:urn:uuid:)?[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

function instanceFault(value: unknown): Issue | undefined {
  if (!isText(value)) return required('hookInstance');
  const message = '`hookInstance` should be a UUID, different for each call.';
  return uuid.test(value) ? undefined : requestIssue('hook-instance', 'value', 'hookInstance', message);
}

function hookIssues(name: unknown, hook: ServedHook | undefined, { hooks }: CdsService): readonly Issue[] {
  if (!isText(name)) return [required('hook')];
  if (hook !== undefined) return [];
  const message = `This service answers the hooks ${hooks.map((each) => each.name).join(', ')}.`;
  return [requestIssue('hook-not-served', 'not-supported', 'hook', message)];
}

/** Without a known hook only the presence of a context can be asked for. */
function contextFaults(context: unknown, hook: ServedHook | undefined): readonly Issue[] {
  if (hook !== undefined) return contextIssues(context, hook);
  return context === undefined ? [required('context')] : [];
}

const authorizationMembers = ['access_token', 'token_type', 'expires_in', 'scope', 'subject'] as const;

function authorizationIssues(body: Json): readonly Issue[] {
  const authorization = body['fhirAuthorization'];
  if (authorization === undefined) return [];
  if (!isObject(authorization)) {
    return [requestIssue('not-an-object', 'structure', 'fhirAuthorization', 'It must be a JSON object.')];
  }
  const server = isText(body['fhirServer']) ? [] : [required('fhirServer')];
  const absent = authorizationMembers.filter((member) => authorization[member] === undefined);
  return [...server, ...absent.map((member) => required(`fhirAuthorization.${member}`))];
}
