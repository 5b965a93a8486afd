// Invented women, from the stories of examples/, as transaction Bundles for a FHIR server that holds them all.
import { existsSync, readdirSync, readFileSync } from 'node:fs';

const examples = new URL('../../../examples/', import.meta.url);

/** One woman for each story that names her data: `{ story, patientId, asOf, transaction }`. */
export function readWomen() {
  return readdirSync(examples, { withFileTypes: true })
    .filter((each) => each.isDirectory() && existsSync(new URL(`${each.name}/request.json`, examples)))
    .flatMap(({ name }) => womanOf(name));
}

function womanOf(story) {
  const request = JSON.parse(readFileSync(new URL(`${story}/request.json`, examples), 'utf8'));
  const asOf = /asOf=([^\s`&]+)/.exec(readFileSync(new URL(`${story}/story.md`, examples), 'utf8'))?.[1];
  const resources = resourcesOf(request);
  const patient = resources.find(({ resourceType }) => resourceType === 'Patient');
  if (patient === undefined || asOf === undefined) return [];
  return [{ story, patientId: patient.id, asOf, transaction: transactionOf(resources, patient.id) }];
}

function resourcesOf(request) {
  if (request.resourceType === 'Bundle') return (request.entry ?? []).map(({ resource }) => resource);
  return Object.values(request.prefetch ?? {}).flatMap((value) =>
    value === null ? [] : value.resourceType === 'Bundle' ? resourcesOf(value) : [value],
  );
}

/** Ids are unique in each story only, so the woman's is put before them; references outside the story are left out. */
export function transactionOf(resources, patientId) {
  const known = new Map(
    resources.map(({ resourceType: type, id }) => [
      `${type}/${id}`,
      type === 'Patient' ? `Patient/${id}` : `${type}/${patientId}-${id}`,
    ]),
  );
  const entry = [...new Map(resources.map((each) => [`${each.resourceType}/${each.id}`, each]))].map(
    ([reference, resource]) => {
      const url = known.get(reference);
      const renamed = { ...mapped(resource, known), id: url.split('/')[1] };
      return { resource: renamed, request: { method: 'PUT', url } };
    },
  );
  return { resourceType: 'Bundle', type: 'transaction', entry };
}

function mapped(value, known) {
  if (Array.isArray(value))
    return value.map((each) => mapped(each, known)).filter((each) => each !== undefined);
  if (typeof value !== 'object' || value === null) return value;
  if (typeof value.reference === 'string') {
    const reference = known.get(value.reference.split('/').slice(-2).join('/'));
    return reference === undefined ? undefined : { ...value, reference };
  }
  return Object.fromEntries(
    Object.entries(value)
      .map(([name, each]) => [name, mapped(each, known)])
      .filter(([, each]) => each !== undefined),
  );
}

/** A woman with more pressures than fit on one page: 250, one an hour, all normal but the oldest two. */
export function womanWithLongHistory() {
  const patientId = 'long-history';
  const end = Date.parse('2026-07-13T12:00:00Z');
  const pressures = Array.from({ length: 250 }, (_, index) => {
    const isOldest = index >= 248;
    return pressure(
      `p${index}`,
      patientId,
      end - index * 3_600_000,
      isOldest ? 152 : 118,
      isOldest ? 98 : 74,
    );
  });
  const dueDate = {
    resourceType: 'Observation',
    id: 'due',
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: '11778-8' }] },
    subject: { reference: `Patient/${patientId}` },
    effectiveDateTime: '2026-03-02',
    valueDateTime: '2026-09-14',
  };
  const patient = { resourceType: 'Patient', id: patientId, gender: 'female' };
  const transaction = transactionOf([patient, dueDate, ...pressures], patientId);
  return { story: 'long history', patientId, asOf: '2026-07-13T12:30:00Z', transaction };
}

function pressure(id, patientId, time, systolic, diastolic) {
  const part = (code, value) => ({
    code: { coding: [{ system: 'http://loinc.org', code }] },
    valueQuantity: { value, unit: 'mmHg', system: 'http://unitsofmeasure.org', code: 'mm[Hg]' },
  });
  return {
    resourceType: 'Observation',
    id,
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: '85354-9' }] },
    subject: { reference: `Patient/${patientId}` },
    effectiveDateTime: new Date(time).toISOString(),
    component: [part('8480-6', systolic), part('8462-4', diastolic)],
  };
}

/** A woman of whom nothing is recorded. */
export function womanWithoutData() {
  const patientId = 'nothing-recorded';
  const patient = { resourceType: 'Patient', id: patientId, gender: 'female' };
  return {
    story: 'nothing',
    patientId,
    asOf: '2026-07-13T12:30:00Z',
    transaction: transactionOf([patient], patientId),
  };
}
