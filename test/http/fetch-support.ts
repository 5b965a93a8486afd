// Calls that offer a FHIR server, over the wire and to the fetching alone.
import { completeChart } from '../../src/http/fetch/complete-chart.ts';
import type { FetchSettings } from '../../src/http/fetch/fetch-settings.ts';
import { toNetwork } from '../../src/http/fetch/networks.ts';
import { createTransport } from '../../src/http/fetch/transport.ts';
import { readPrefetch, type PrefetchState } from '../../src/http/prefetch.ts';
import { openSettings, type Settings } from '../../src/http/settings.ts';
import {
  startFaultyFhirServer,
  type Chart,
  type Fault,
  type FaultyServer,
} from '../support/faulty-fhir-server.ts';
import { client, fullPrefetch, hookRequest, servicePath } from './client.ts';

export const secretToken = 'not-for-logs-3kT9xQ';

export const authorization = {
  access_token: secretToken,
  token_type: 'Bearer',
  expires_in: 300,
  scope: 'user/*.read',
  subject: 'pregnancy-htn',
};

const loopback = [toNetwork('127.0.0.0/8')].flatMap((network) => network ?? []);

/** Loopback is allowed to tests; sites name their own networks. */
export function settingsFor(origins: readonly string[], more: Partial<FetchSettings> = {}): Settings {
  const fetching = { ...openSettings.fetching, origins, privateNetworks: loopback, ...more };
  return { ...openSettings, fetching };
}

export function withoutKeys(...keys: readonly string[]) {
  return Object.fromEntries(Object.entries(fullPrefetch).filter(([key]) => !keys.includes(key)));
}

export interface Offered {
  readonly prefetch?: Readonly<Record<string, unknown>>;
  readonly authorization?: Readonly<Record<string, unknown>>;
  readonly settings?: Partial<FetchSettings>;
  readonly fhirServer?: string;
  readonly log?: (line: string) => void;
}

function bodyFor(server: FaultyServer, { prefetch = {}, fhirServer, ...offered }: Offered) {
  return {
    ...hookRequest(prefetch),
    fhirServer: fhirServer ?? server.base,
    fhirAuthorization: offered.authorization ?? authorization,
  };
}

/** A call over the wire; no prefetch unless given. */
export async function callWith(server: FaultyServer, offered: Offered = {}) {
  const settings = settingsFor([server.origin], offered.settings);
  const log = offered.log === undefined ? {} : { log: offered.log };
  return client({ settings, ...log })
    .post(servicePath)
    .send(bodyFor(server, offered));
}

/** What is known of each key afterwards: `found 2`, `absent`, `failed: why`, `part 1: why`, `not-sent`. */
export async function fetchedFrom(
  server: FaultyServer,
  offered: Offered = {},
): Promise<Readonly<Record<string, string>>> {
  const { fetching } = settingsFor([server.origin], offered.settings);
  const { privateNetworks } = fetching;
  const prefetch = offered.prefetch ?? {};
  const states = await completeChart(
    { body: bodyFor(server, offered), prefetch, patientId: 'example' },
    readPrefetch(prefetch),
    { ...fetching, transport: createTransport(privateNetworks), maxDepth: 64 },
  );
  return Object.fromEntries(states.map(({ query, state }) => [query.key, inWords(state)]));
}

function inWords(state: PrefetchState): string {
  if (state.kind === 'failed') return `failed: ${state.why ?? 'as sent'}`;
  if (state.kind !== 'found') return state.kind;
  const count = state.entries.length;
  return state.firstPageOnly ? `part ${count}: ${state.why ?? 'as sent'}` : `found ${count}`;
}

/** What the whole chart comes to when nothing goes wrong: entries of the invented chart, counted by hand. */
export const wholeChart = {
  patient: 'found 1',
  bloodPressures: 'found 2',
  results: 'found 1',
  pregnancy: 'found 1',
  symptoms: 'absent',
  conditions: 'absent',
  medications: 'absent',
  medicationStatements: 'absent',
  referrals: 'absent',
};

const started: FaultyServer[] = [];

export async function fhirServer(
  faults: Readonly<Record<string, Fault>> = {},
  more: Partial<Chart> = {},
): Promise<FaultyServer> {
  const server = await startFaultyFhirServer({ content: fullPrefetch, faults, ...more });
  started.push(server);
  return server;
}

export async function closeServers(): Promise<void> {
  await Promise.all(started.splice(0).map((server) => server.close()));
}
