// Plays the record system: calls the service for an invented woman, shows the cards, accepts the suggestion, writes it
// to the record, tells the service, and calls again. Plain Node; node examples/ehr-player.mjs [BASEURL]
// FHIR_URL=https://… (and FHIR_TOKEN) writes to that FHIR server (R4) in place of one in memory.
import { randomUUID } from 'node:crypto';
import { pathToFileURL } from 'node:url';
import { fhirServer, memoryServer } from './ehr/fhir-store.mjs';
import { prefetch } from './ehr/prefetch.mjs';
import { inventedWoman } from './ehr/woman.mjs';

const serviceId = 'pregnancy-hypertension';
const userId = 'Practitioner/example-midwife';

async function sent(url, body) {
  const response = await fetch(url, {
    method: body === undefined ? 'GET' : 'POST',
    headers: { 'Content-Type': 'application/json' },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const text = await response.text();
  if (!response.ok) throw new Error(`${url} answered ${response.status}: ${text}`);
  return text === '' ? undefined : JSON.parse(text);
}

/** The entry of the service for patient-view, from discovery. */
async function discovered(base) {
  const { services } = await sent(`${base}/cds-services`);
  const entry = services.find(({ id, hook }) => id === serviceId && hook === 'patient-view');
  if (entry === undefined) throw new Error(`${base} has no ${serviceId} for patient-view`);
  return entry;
}

/** Opens the chart: prefetch from the record, then the call. */
async function openChart({ base, store, patientId }, entry) {
  const context = { userId, patientId };
  const { cards } = await sent(`${base}/cds-services/${entry.id}`, {
    hook: entry.hook,
    hookInstance: randomUUID(),
    context,
    prefetch: await prefetch(entry.prefetch, context, store),
  });
  return cards;
}

function show(cards, say) {
  if (cards.length === 0) say('  (no card)');
  for (const { indicator, summary, suggestions = [] } of cards) {
    say(`  [${indicator}] ${summary}`);
    for (const { label, isRecommended } of suggestions) say(`     ${isRecommended ? '(*)' : '( )'} ${label}`);
  }
}

/** The first card with a recommended suggestion, and that suggestion. */
function recommended(cards) {
  for (const card of cards) {
    const suggestion = card.suggestions?.find(({ isRecommended }) => isRecommended);
    if (suggestion !== undefined) return { card, suggestion };
  }
  throw new Error('Nothing is recommended.');
}

/**
 * The whole play.
 *
 * Given    base   of the service
 *          store  of the record (`fhir-store.mjs`)
 *          say    receives each line
 * Returns  before, after: the cards; created: what the record now holds; suggestion: the one that was accepted
 */
export async function play({ base, store, say }) {
  const entry = await discovered(base);
  say(`1. Discovery: ${entry.id}, ${entry.hook}; it asks for ${Object.keys(entry.prefetch).join(', ')}.`);
  const patientId = await store.save(inventedWoman(new Date()));
  const chart = { base, store, patientId };
  say('2. The midwife opens the chart:');
  const before = await openChart(chart, entry);
  show(before, say);
  const { card, suggestion } = recommended(before);
  say(`3. She accepts: ${suggestion.label}`);
  // The draft becomes an order when she signs it.
  const resources = suggestion.actions.map(({ resource }) =>
    resource.resourceType === 'ServiceRequest'
      ? { ...resource, status: 'active', intent: 'order' }
      : resource,
  );
  const created = await store.transaction(resources);
  say(`   The record now holds ${created.join(', ')}.`);
  await sent(`${base}/cds-services/${entry.id}/feedback`, {
    feedback: [
      {
        card: card.uuid,
        outcome: 'accepted',
        acceptedSuggestions: [{ id: suggestion.uuid }],
        outcomeTimestamp: new Date().toISOString(),
      },
    ],
  });
  say('4. Feedback is sent: accepted.');
  say('5. She opens the chart again:');
  const after = await openChart(chart, entry);
  show(after, say);
  const isGone = !after
    .flatMap(({ suggestions = [] }) => suggestions)
    .some(({ label }) => label === suggestion.label);
  say(isGone ? '   The suggestion is gone.' : '   The suggestion is still there.');
  return { before, after, created, suggestion };
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  const base = (process.argv[2] ?? 'http://127.0.0.1:8080').replace(/\/+$/, '');
  const url = process.env.FHIR_URL ?? '';
  const store = url === '' ? memoryServer() : fhirServer(url, process.env.FHIR_TOKEN);
  try {
    await play({ base, store, say: (line) => console.log(line) });
  } catch (error) {
    console.error(error.cause === undefined ? error.message : `${error.message}: ${error.cause.message}`);
    process.exitCode = 1;
  }
}
