// The record: a FHIR server in memory, or a real one. Both can save a chart, answer a query, and run a transaction.
import { randomUUID } from 'node:crypto';

const nameOf = ({ resourceType, id }) => `${resourceType}/${id}`;

/** References to resources that are created in the same transaction go by their `urn:uuid:`. */
function transactionOf(resources) {
  const names = new Map(resources.map((resource) => [nameOf(resource), `urn:uuid:${randomUUID()}`]));
  const linked = JSON.parse(JSON.stringify(resources), (key, value) =>
    key === 'reference' && names.has(value) ? names.get(value) : value,
  );
  return {
    resourceType: 'Bundle',
    type: 'transaction',
    entry: linked.map(({ id: _given, ...resource }, at) => ({
      fullUrl: names.get(nameOf(resources[at])),
      resource,
      request: { method: 'POST', url: resource.resourceType },
    })),
  };
}

/** A FHIR server as far as this play needs one: read, search by patient and code, transaction of creates. */
export function memoryServer() {
  const held = new Map();

  function transaction(bundle) {
    const ids = new Map(
      bundle.entry.map(({ fullUrl, resource }) => [fullUrl, `${resource.resourceType}/${randomUUID()}`]),
    );
    for (const { fullUrl, resource } of bundle.entry) {
      const name = ids.get(fullUrl);
      const linked = JSON.parse(JSON.stringify(resource), (key, value) =>
        key === 'reference' ? (ids.get(value) ?? value) : value,
      );
      held.set(name, { ...linked, id: name.split('/')[1] });
    }
    return [...ids.values()];
  }

  function search(type, parameters) {
    const codes = parameters.get('code')?.split(',');
    const patient = `Patient/${parameters.get('patient')}`;
    const matches = [...held.values()].filter(
      ({ resourceType, subject, code }) =>
        resourceType === type &&
        subject?.reference === patient &&
        (codes === undefined ||
          code.coding.some((coding) => codes.includes(`${coding.system}|${coding.code}`))),
    );
    const entry = matches.slice(0, Number(parameters.get('_count') ?? 100)).map((resource) => ({ resource }));
    return {
      resourceType: 'Bundle',
      type: 'searchset',
      total: matches.length,
      ...(entry.length === 0 ? {} : { entry }),
    };
  }

  return {
    save: async (resources) => transaction(transactionOf(resources))[0].split('/')[1],
    transaction: async (resources) => transaction(transactionOf(resources)),
    get: async (query) => {
      const [path, parameters] = query.split('?');
      return parameters === undefined ? held.get(path) : search(path, new URLSearchParams(parameters));
    },
  };
}

/** A real FHIR R4 server at an address, with an access token if it asks for one. */
export function fhirServer(address, token = '') {
  const base = address.replace(/\/+$/, '');
  const headers = {
    'Content-Type': 'application/fhir+json',
    Accept: 'application/fhir+json',
    ...(token === '' ? {} : { Authorization: `Bearer ${token}` }),
  };

  async function transaction(resources) {
    const body = JSON.stringify(transactionOf(resources));
    const response = await fetch(base, { method: 'POST', headers, body });
    const text = await response.text();
    if (!response.ok) throw new Error(`The FHIR server answered ${response.status}: ${text}`);
    return JSON.parse(text).entry.map(
      ({ response: { location } }) => /([A-Z]\w+\/[^/]+)(?:\/_history.*)?$/.exec(location)[1],
    );
  }

  return {
    save: async (resources) => (await transaction(resources))[0].split('/')[1],
    transaction,
    get: async (query) => {
      const response = await fetch(`${base}/${query}`, {
        headers: { ...headers, 'Cache-Control': 'no-cache' },
      });
      return response.ok ? response.json() : undefined;
    },
  };
}
