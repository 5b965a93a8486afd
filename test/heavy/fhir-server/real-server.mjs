// Loads invented women into a FHIR server, then lets the service read them there. Argument: base address; TOKEN in the environment.
import { check, startService } from '../service.mjs';
import { readWomen, womanWithLongHistory, womanWithoutData } from './women.mjs';

const base = process.argv[2];
const token = process.env.TOKEN;
const service = await startService(new URL('../../../dist/http/main.js', import.meta.url).pathname, {
  TRUST: 'open',
  FHIR_ORIGINS: new URL(base).origin,
  FHIR_PRIVATE_NETWORKS: '127.0.0.0/8',
  // The first searches of a cold server take their time.
  FETCH_DEADLINE_MS: '30000',
});

try {
  const women = [...readWomen(), womanWithLongHistory(), womanWithoutData()];
  check('there are at least five invented women', women.length >= 5, `${women.length}`);
  for (const { story, transaction } of women) await load(story, transaction);
  const templates = await publishedTemplates();
  const counts = [];
  for (const woman of women) counts.push(await compare(woman, templates));
  check('most of the answers hold cards', counts.filter((count) => count > 0).length >= 5, counts.join());
  await checkRefusals(women[0]);
  await checkPaging(womanWithLongHistory());
  check('no token was printed', !service.printed().includes(token));
} finally {
  await service.stop();
}

async function load(story, transaction) {
  const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/fhir+json' };
  const response = await fetch(base, { method: 'POST', headers, body: JSON.stringify(transaction) });
  check(
    `${story}: the transaction is accepted`,
    response.status === 200,
    response.status === 200 ? '' : await response.text(),
  );
}

async function publishedTemplates() {
  const discovery = await (await fetch(`${service.base}/cds-services`)).json();
  return discovery.services.find(({ id, hook }) => id === 'pregnancy-hypertension' && hook === 'patient-view')
    .prefetch;
}

/** C-10, C-08, C-09: from the server alone, from a whole prefetch and from half of one, the answer is the same. */
async function compare(woman, templates) {
  const prefetch = await prefetchAsAClientWould(woman.patientId, templates);
  const sent = await call(woman, { prefetch });
  const fetched = await call(woman, { fhirServer: base, fhirAuthorization: authorization() });
  check(
    `C-10 ${woman.story}: from the FHIR server alone the answer is that of full prefetch`,
    fetched.text === sent.text,
    difference(sent, fetched),
  );
  check(`C-10 ${woman.story}: and it is an answer`, fetched.status === 200, fetched.text.slice(0, 300));
  const half = Object.fromEntries(Object.entries(prefetch).filter((_, index) => index % 2 === 0));
  const mixed = await call(woman, { prefetch: half, fhirServer: base, fhirAuthorization: authorization() });
  check(
    `C-08 ${woman.story}: half prefetched, half fetched, the answer is the same`,
    mixed.text === sent.text,
    difference(sent, mixed),
  );
  return JSON.parse(fetched.text).cards.length;
}

function difference(one, other) {
  if (one.text === other.text) return '';
  const at = [...one.text].findIndex((character, index) => character !== other.text[index]);
  return `${one.status} ${one.text.slice(Math.max(0, at - 80), at + 80)} <> ${other.status} ${other.text.slice(Math.max(0, at - 80), at + 80)}`;
}

async function checkRefusals(woman) {
  const wrong = await call(woman, { fhirServer: base, fhirAuthorization: authorization('wrong-token') });
  check(
    'S-02: with a token the server refuses, the answer is 412 and names the key',
    wrong.status === 412 && wrong.text.includes('bloodPressures'),
    wrong.text.slice(0, 300),
  );
  const scope = 'patient/Observation.rs';
  const part = await call(woman, { fhirServer: base, fhirAuthorization: { ...authorization(), scope } });
  check(
    'F-06: with a scope for observations alone there is an answer, and gaps',
    part.status === 200,
    `${part.status}`,
  );
}

/** Pages of a real server: the oldest pressures, on the last page, are seen. */
async function checkPaging(woman) {
  const first = await search(
    `Observation?patient=${woman.patientId}&code=http://loinc.org%7C85354-9&_sort=-date&_count=100`,
  );
  check(
    'C-06: the server gives that history in pages',
    first.link.some(({ relation }) => relation === 'next'),
  );
  const { text } = await call(woman, { fhirServer: base, fhirAuthorization: authorization() });
  check(
    'C-06: the raised pressures on the last page are in the answer',
    text.includes('152/98'),
    text.slice(0, 600),
  );
}

function authorization(accessToken = token) {
  return {
    access_token: accessToken,
    token_type: 'Bearer',
    expires_in: 300,
    scope: 'user/*.rs',
    subject: 'pregnancy-htn',
  };
}

async function call({ patientId, asOf }, offer) {
  const body = {
    hook: 'patient-view',
    hookInstance: 'd1577c69-dfbe-44ad-ba6d-3e05e953b2ea',
    context: { userId: 'Practitioner/midwife', patientId },
    ...offer,
  };
  const address = `${service.base}/cds-services/pregnancy-hypertension?asOf=${encodeURIComponent(asOf)}`;
  const headers = { 'content-type': 'application/json' };
  const response = await fetch(address, { method: 'POST', headers, body: JSON.stringify(body) });
  return { status: response.status, text: await response.text() };
}

async function search(path) {
  const response = await fetch(`${base}/${path}`, { headers: { authorization: `Bearer ${token}` } });
  return response.json();
}

/** What a client sends: each template expanded and asked, every page, one Bundle a key. */
async function prefetchAsAClientWould(patientId, templates) {
  const values = await Promise.all(
    Object.entries(templates).map(async ([key, template]) => {
      const path = template
        .replaceAll('{{context.patientId}}', patientId)
        .replaceAll('{{context.userId}}', 'Practitioner/midwife')
        .replaceAll('|', '%7C');
      return [key, await allPages(path)];
    }),
  );
  return Object.fromEntries(values);
}

async function allPages(path) {
  const first = await search(path);
  if (first.resourceType === 'OperationOutcome') return null;
  if (first.resourceType !== 'Bundle') return first;
  const entry = [...(first.entry ?? [])];
  let next = nextOf(first);
  while (next !== undefined) {
    const page = await search(next.slice(base.length + 1));
    entry.push(...(page.entry ?? []));
    next = nextOf(page);
  }
  return {
    resourceType: 'Bundle',
    type: 'searchset',
    total: entry.length,
    ...(entry.length === 0 ? {} : { entry }),
  };
}

function nextOf({ link = [] }) {
  const url = link.find(({ relation }) => relation === 'next')?.url;
  return url === undefined ? undefined : url.replace(/^.*?\/fhir\?/, `${base}/?`);
}
