// Writes the first call to standard output: patient-view with prefetch for an invented woman, dated back from now.
// node examples/ehr/first-call.mjs [BASEURL] > call.json
import { randomUUID } from 'node:crypto';
import { memoryServer } from './fhir-store.mjs';
import { prefetch } from './prefetch.mjs';
import { inventedWoman } from './woman.mjs';

const base = process.argv[2] ?? 'http://127.0.0.1:8080';
const { services } = await (await fetch(`${base}/cds-services`)).json();
const entry = services.find(({ id, hook }) => id === 'pregnancy-hypertension' && hook === 'patient-view');
const store = memoryServer();
const context = {
  userId: 'Practitioner/example-midwife',
  patientId: await store.save(inventedWoman(new Date())),
};
const call = {
  hook: entry.hook,
  hookInstance: randomUUID(),
  context,
  prefetch: await prefetch(entry.prefetch, context, store),
};
console.log(JSON.stringify(call, null, 2));
