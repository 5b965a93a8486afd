// The service over the wire, with a fixed clock; and the invented chart the tests send.
import request from 'supertest';
import { createApp, type AppOptions } from '../../src/http/app.ts';
import { exampleAsOf, exampleBundle } from '../../src/http/example-bundle.ts';

export const now = Date.parse(exampleAsOf);

export function client(options: Partial<AppOptions> = {}) {
  return request(createApp({ now: () => now, ...options }));
}

export { exampleAsOf, exampleBundle };

export const servicePath = '/cds-services/pregnancy-hypertension';
export const operationPath = '/fhir/$assess-hypertension';

interface Entry {
  readonly resource: { readonly resourceType: string; readonly id: string };
}

const entries: readonly Entry[] = exampleBundle.entry;

function searchset(ids: readonly string[]) {
  return {
    resourceType: 'Bundle',
    type: 'searchset',
    entry: entries.filter((entry) => ids.includes(entry.resource.id)),
  };
}

/** The same chart as the example, key by key. */
export const fullPrefetch: Readonly<Record<string, unknown>> = {
  patient: { resourceType: 'Patient', id: 'example', gender: 'female' },
  bloodPressures: searchset(['first-reading', 'second-reading']),
  results: searchset(['urine-strip']),
  pregnancy: searchset(['due-date']),
  symptoms: { resourceType: 'Bundle', type: 'searchset', total: 0 },
  conditions: null,
  medications: null,
  medicationStatements: null,
  referrals: null,
};

export function hookRequest(prefetch: Readonly<Record<string, unknown>> = fullPrefetch) {
  return {
    hook: 'patient-view',
    hookInstance: 'd1577c69-dfbe-44ad-ba6d-3e05e953b2ea',
    context: { userId: 'Practitioner/midwife', patientId: 'example' },
    prefetch,
  };
}

/** The body as the client parsed it, as plain data. */
export function bodyOf(response: { readonly body: unknown }): Readonly<Record<string, unknown>> {
  return response.body as Readonly<Record<string, unknown>>;
}

interface OutcomeIssue {
  readonly severity: string;
  readonly code: string;
  readonly expression?: readonly string[];
  readonly diagnostics?: string;
  readonly details: { readonly text: string };
}

export function issuesOf(response: { readonly body: unknown }): readonly OutcomeIssue[] {
  const body = bodyOf(response);
  return body['resourceType'] === 'OperationOutcome' ? (body['issue'] as readonly OutcomeIssue[]) : [];
}

export function firstIssue(response: { readonly body: unknown }): string {
  const [issue] = issuesOf(response);
  return issue === undefined
    ? ''
    : `${issue.severity}/${issue.code} ${issue.expression?.join() ?? ''}`.trim();
}

interface SentCard {
  readonly uuid: string;
  readonly summary: string;
  readonly detail: string;
  readonly indicator: string;
  readonly extension: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
}

export function cardsOf(response: { readonly body: unknown }): readonly SentCard[] {
  return bodyOf(response)['cards'] as readonly SentCard[];
}
