// A small FHIR server on this machine that holds one invented chart and goes wrong on request.
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gzipSync } from 'node:zlib';

export type Fault =
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
  | 'gone-after-first'
  | { readonly status: number; readonly retryAfter?: string; readonly times?: number };

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
      respond(chart, key, seen.filter((each) => each.key === key).length, request, response);
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

function respond(
  chart: Chart,
  key: string,
  time: number,
  request: IncomingMessage,
  response: ServerResponse,
) {
  const fault = chart.faults?.[key];
  const found = (chart.content[key] ?? empty) as Searchset;
  const here = `http://${request.headers.host ?? ''}${request.url ?? ''}`;
  const page = (relation: string, url: string, entry = found.entry) =>
    sendJson(response, { ...found, entry, link: [{ relation, url }] });
  const next = (count: number) => `http://${request.headers.host ?? ''}/fhir?of=${key}&page=${count}`;
  const pageAt = Number(new URL(here).searchParams.get('page') ?? '0');
  if (typeof fault === 'object') {
    if (time > (fault.times ?? Infinity)) return sendJson(response, found);
    const headers = fault.retryAfter === undefined ? {} : { 'retry-after': fault.retryAfter };
    return void response.writeHead(fault.status, headers).end();
  }
  switch (fault) {
    case undefined:
      return sendJson(response, found);
    case 'slow':
      return void setTimeout(() => sendJson(response, found), 20_000).unref();
    case 'truncated': {
      const text = JSON.stringify(found);
      response.writeHead(200, { 'content-type': 'application/fhir+json', 'content-length': text.length });
      response.write(text.slice(0, text.length / 2));
      return void setTimeout(() => response.destroy(), 20);
    }
    case 'endless':
      return page('next', next(pageAt + 1));
    case 'circle':
      return page('next', next(1));
    case 'paged':
      // One entry a page; the address carries odd characters that must come back as they are.
      return pageAt + 1 >= (found.entry ?? []).length
        ? page('self', here, found.entry?.slice(pageAt, pageAt + 1))
        : page('next', `${next(pageAt + 1)}&state=a%2Fb|c`, found.entry?.slice(pageAt, pageAt + 1));
    case 'gone-after-first':
      return pageAt === 0 ? page('next', next(1)) : void response.writeHead(410).end();
    case 'next-elsewhere':
      return page('next', `${chart.elsewhere ?? ''}/fhir?of=${key}`);
    case 'wrong-patient':
      return sendJson(response, { resourceType: 'Patient', id: 'another' });
    case 'ignores-patient':
      return page('self', here.replace(/patient=[^&]*&/, ''));
    case 'redirect':
      return void response.writeHead(302, { location: `${chart.elsewhere ?? ''}${request.url ?? ''}` }).end();
    case 'huge':
      return sendJson(response, { ...found, text: 'x'.repeat(3_000_000) });
    case 'zipped':
      return sendZipped(response, JSON.stringify(found));
    case 'zip-bomb':
      return sendZipped(response, JSON.stringify({ ...found, text: ' '.repeat(3_000_000) }));
    case 'not-json':
      return void response.writeHead(200, { 'content-type': 'text/html' }).end('<html>Sign in</html>');
    case 'outcome':
      return sendJson(response, {
        resourceType: 'OperationOutcome',
        issue: [{ severity: 'error', code: 'exception' }],
      });
  }
}

function sendJson(response: ServerResponse, body: unknown): void {
  response.writeHead(200, { 'content-type': 'application/fhir+json' }).end(JSON.stringify(body));
}

function sendZipped(response: ServerResponse, text: string): void {
  response.writeHead(200, { 'content-type': 'application/fhir+json', 'content-encoding': 'gzip' });
  response.end(gzipSync(text));
}
