// One case through either door of the service: as a CDS Hooks request, or as a FHIR operation.
import { observationKindOf } from '../timeline/observation-kind.ts';
import { fieldsOf } from '../timeline/fields.ts';
import { isHook, isJson, resourcesIn, type Case } from './case.ts';

export type Door = 'cds' | 'fhir';

export interface Asked {
  readonly path: string;
  readonly body: unknown;
  /** Of the cards; absent: what the browser asks for. */
  readonly language?: string;
}

/** Languages the service has cards in; the whole of their texts need not come with the page. */
export const cardLanguages = { en: 'English', es: 'Español' } as const;

/** The request for a case through a door, at a moment, under a guideline. */
export function requestFor(shown: Case, door: Door, asOf: number, guideline: string): Asked {
  const query = new URLSearchParams({ asOf: new Date(asOf).toISOString(), guideline }).toString();
  if (door === 'fhir')
    return {
      path: `fhir/$assess-hypertension?${query}`,
      body: isHook(shown.request) ? shown.input : shown.request,
    };
  return {
    path: `cds-services/pregnancy-hypertension?${query}`,
    body: isHook(shown.request) ? shown.request : hookRequest(shown),
  };
}

function hookRequest({ input, subject }: Case): unknown {
  const resources = resourcesIn(input);
  const patient = resources.find((each) => typeOf(each) === 'Patient');
  const id = isJson(patient) && typeof patient['id'] === 'string' ? patient['id'] : undefined;
  const patientId = subject?.replace(/^Patient\//, '') ?? id ?? 'unknown';
  return {
    hook: 'patient-view',
    hookInstance: '00000000-0000-4000-8000-000000000001',
    context: { userId: 'Practitioner/example', patientId },
    prefetch: {
      patient: patient ?? null,
      ...Object.fromEntries(
        keys.map((key) => [key, searchset(resources.filter((each) => keyOf(each) === key))]),
      ),
    },
  };
}

const keys = [
  'bloodPressures',
  'results',
  'pregnancy',
  'symptoms',
  'conditions',
  'medications',
  'referrals',
] as const;

const searchset = (resources: readonly unknown[]) => ({
  resourceType: 'Bundle',
  type: 'searchset',
  total: resources.length,
  entry: resources.map((resource) => ({ resource, search: { mode: 'match' } })),
});

const typeOf = (resource: unknown): unknown => (isJson(resource) ? resource['resourceType'] : undefined);

/** The prefetch key under which a client would have found it. */
function keyOf(resource: unknown): (typeof keys)[number] | undefined {
  switch (typeOf(resource)) {
    case 'Observation':
      return keyOfObservation(resource);
    case 'Condition':
      return 'conditions';
    case 'MedicationRequest':
    case 'MedicationStatement':
    case 'MedicationAdministration':
      return 'medications';
    case 'ServiceRequest':
      return 'referrals';
    default:
      return undefined;
  }
}

function keyOfObservation(resource: unknown): (typeof keys)[number] {
  switch (observationKindOf(fieldsOf(resource))) {
    case 'pressure':
    case 'pressure-circumstance':
      return 'bloodPressures';
    case 'symptom':
    case 'finding':
      return 'symptoms';
    case 'dating':
    case 'birth':
    case 'count':
    case 'pregnancy-status':
      return 'pregnancy';
    case 'urine-protein':
    case 'urine-sign':
    case 'laboratory':
    case undefined:
      return 'results';
  }
}

export function headersOf({ path, language }: Asked): Readonly<Record<string, string>> {
  return {
    'Content-Type': path.startsWith('fhir/') ? 'application/fhir+json' : 'application/json',
    ...(language === undefined ? {} : { 'Accept-Language': language }),
  };
}

/** The request as a line to paste into a terminal. */
export function curlOf(asked: Asked, base: string): string {
  const { path, body } = asked;
  const headers = Object.entries(headersOf(asked)).map(([name, value]) => ` -H '${name}: ${value}'`);
  const data = JSON.stringify(body).replaceAll("'", String.raw`'\''`);
  return `curl -s -X POST '${base}${path}'${headers.join('')} --data '${data}'`;
}
