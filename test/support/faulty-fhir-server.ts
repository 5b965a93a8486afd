// A small FHIR server on this machine that holds one invented chart and goes wrong on request.
import { createServer, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gzipSync } from 'node:zlib';

export type FaultName =
  | 'slow'
  | 'truncated'
  | 'endless'
  | 'circle'
  | 'paged'
  | 'next-elsewhere'
  | 'wrong-patient'
  | 'ignores-patient'
  | 'redirect'
  | 'huge'
  | 'zipped'
  | 'zip-bomb'
  | 'not-json'
  | 'outcome'
  | 'gone-after-first';

export type Fault =
  FaultName | { readonly status: number; readonly retryAfter?: string; readonly times?: number };

export interface FaultyServer {
  readonly origin: string;
  readonly base: string;
  /** Every request received: key of the query, address, authorization header. */
  readonly seen: readonly SeenRequest[];
  /** Most requests that were open at one time. */
  readonly mostAtOnce: () => number;
  readonly close: () => Promise<void>;
}

export interface SeenRequest {
  readonly key: string;
  readonly url: string;
  readonly authorization: string | undefined;
}

export interface Chart {
  /** By prefetch key: a Patient, a searchset Bundle, or null for none. */
  readonly content: Readonly<Record<string, unknown>>;
  readonly faults?: Readonly<Record<string, Fault>>;
  /** Where redirects and foreign links lead. */
  readonly elsewhere?: string;
  readonly delayMs?: number;
}

export async function startFaultyFhirServer(chart: Chart): Promise<FaultyServer> {
  const seen: SeenRequest[] = [];
  const open = { now: 0, most: 0 };
  const server = createServer((request, response) => {
    const key = keyOf(request.url ?? '');
    seen.push({ key, url: request.url ?? '', authorization: request.headers.authorization });
    open.now += 1;
    open.most = Math.max(open.most, open.now);
    response.on('close', () => (open.now -= 1));
    setTimeout(() => {
      const time = seen.filter((each) => each.key === key).length;
      const host = `http://${request.headers.host ?? ''}`;
      send(response, planOf({ chart, key, host, url: request.url ?? '', time }));
    }, chart.delayMs ?? 0);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return { origin, base: `${origin}/fhir`, seen, mostAtOnce: () => open.most, close: () => closed(server) };
}

function closed(server: Server): Promise<void> {
  server.closeAllConnections();
  return new Promise((resolve) =>
    server.close(() => {
      resolve();
    }),
  );
}

/** The prefetch key whose query this address is. A later page names its key itself. */
function keyOf(url: string): string {
  const { pathname, searchParams } = new URL(url, 'http://local');
  const named = searchParams.get('of');
  if (named !== null) return named;
  const type = pathname.split('/')[2] ?? '';
  const codes = searchParams.get('code') ?? '';
  if (type === 'Observation') {
    // One code each query is sure to ask for: panel, strip, due date.
    if (codes.includes('85354-9')) return 'bloodPressures';
    if (codes.includes('20454-5')) return 'results';
    return codes.includes('11778-8') ? 'pregnancy' : 'symptoms';
  }
  const keys: Readonly<Record<string, string>> = {
    Patient: 'patient',
    Condition: 'conditions',
    MedicationRequest: 'medications',
    ServiceRequest: 'referrals',
  };
  return keys[type] ?? type;
}

interface Searchset {
  readonly resourceType: 'Bundle';
  readonly type: 'searchset';
  readonly entry?: readonly unknown[];
  readonly link?: readonly { readonly relation: string; readonly url: string }[];
}

const empty: Searchset = { resourceType: 'Bundle', type: 'searchset' };

/** What to send; `isCut`: half of it, then the line goes dead. */
interface Planned {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | Uint8Array;
  readonly isCut?: true;
}

interface Place {
  readonly chart: Chart;
  readonly key: string;
  readonly host: string;
  readonly url: string;
  /** How often this key was asked for, this time included. */
  readonly time: number;
}

/** What to answer; undefined: nothing, for a long time. */
function planOf(place: Place): Planned | undefined {
  const { chart, key, time } = place;
  const fault = chart.faults?.[key];
  const found = (chart.content[key] ?? empty) as Searchset;
  if (fault === undefined) return json(found);
  if (typeof fault === 'string') return faultyPlan(fault, found, place);
  if (time > (fault.times ?? Infinity)) return json(found);
  const headers: Record<string, string> =
    fault.retryAfter === undefined ? {} : { 'retry-after': fault.retryAfter };
  return { status: fault.status, headers, body: '' };
}

function faultyPlan(
  fault: FaultName,
  found: Searchset,
  { chart, key, host, url }: Place,
): Planned | undefined {
  const pageAt = Number(new URL(url, host).searchParams.get('page') ?? '0');
  const next = (count: number) => `${host}/fhir?of=${key}&page=${count}`;
  const page = (relation: string, to: string, entry = found.entry) =>
    json({ ...found, entry, link: [{ relation, url: to }] });
  const here = found.entry?.slice(pageAt, pageAt + 1);
  const isLast = pageAt + 1 >= (found.entry ?? []).length;
  const elsewhere = chart.elsewhere ?? '';
  switch (fault) {
    case 'slow':
      return undefined;
    case 'truncated':
      return { ...json(found), isCut: true };
    case 'endless':
      return page('next', next(pageAt + 1));
    case 'circle':
      return page('next', next(1));
    case 'paged':
      // One entry a page; the address carries odd characters that must come back as they are.
      return isLast
        ? page('self', host + url, here)
        : page('next', `${next(pageAt + 1)}&state=a%2Fb|c`, here);
    case 'gone-after-first':
      return pageAt === 0 ? page('next', next(1)) : { status: 410, headers: {}, body: '' };
    case 'next-elsewhere':
      return page('next', `${elsewhere}/fhir?of=${key}`);
    case 'wrong-patient':
      return json({ resourceType: 'Patient', id: 'another' });
    case 'ignores-patient':
      return page('self', host + url.replace(/patient=[^&]*&/, ''));
    case 'redirect':
      return { status: 302, headers: { location: elsewhere + url }, body: '' };
    case 'huge':
      return json({ ...found, text: 'x'.repeat(3_000_000) });
    case 'zipped':
      return zipped(json(found));
    case 'zip-bomb':
      return zipped(json({ ...found, text: ' '.repeat(3_000_000) }));
    case 'not-json':
      return { status: 200, headers: { 'content-type': 'text/html' }, body: '<html>Sign in</html>' };
    case 'outcome':
      return json({ resourceType: 'OperationOutcome', issue: [{ severity: 'error', code: 'exception' }] });
  }
}

function json(body: unknown): Planned {
  return { status: 200, headers: { 'content-type': 'application/fhir+json' }, body: JSON.stringify(body) };
}

function zipped({ headers, body }: Planned): Planned {
  return { status: 200, headers: { ...headers, 'content-encoding': 'gzip' }, body: gzipSync(body) };
}

function send(response: ServerResponse, plan: Planned | undefined): void {
  if (plan === undefined) return;
  const { status, headers, body } = plan;
  response.writeHead(status, { ...headers, 'content-length': Buffer.byteLength(body) });
  if (plan.isCut !== true) {
    response.end(body);
    return;
  }
  response.write(body.slice(0, body.length / 2));
  setTimeout(() => response.destroy(), 20);
}
