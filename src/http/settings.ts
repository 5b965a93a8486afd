// How a site runs the service, read once from the environment and checked by name. Hands on plain settings.
import { z } from 'zod';
import type { FetchSettings } from './fetch/fetch-settings.ts';
import { isMachineNetwork } from './fetch/allowed-address.ts';
import { networkShape } from './fetch/networks.ts';
import { defaultBodyLimits, type BodyLimits } from './read-body.ts';
import { signatureAlgorithms, type SignatureAlgorithm } from './trust/algorithms.ts';
import { readClients, type TrustedClient } from './trust/clients.ts';

/** The browser client at the record system, for SMART App Launch. */
export interface SmartSettings {
  readonly clientId: string;
  /** Where cards lead: `{PUBLIC_BASE_URL}/launch`. */
  readonly launchUrl: string;
  /** Of the FHIR servers that may launch the page, and of their authorisation servers. */
  readonly origins: readonly string[];
}

export interface Settings {
  /** `open`: whoever reaches the port may ask. `jwt`: only the clients of the clients file. */
  readonly trust: 'open' | 'jwt';
  readonly isProduction: boolean;
  /** Address by which clients know the service, without a slash at the end. */
  readonly publicBaseUrl?: string;
  readonly clients: readonly TrustedClient[];
  readonly algorithms: readonly SignatureAlgorithm[];
  /** `memory`, or the address of a Redis server shared by several processes. */
  readonly replayStore: string;
  /** Token ids remembered for each client; one more is refused. */
  readonly replayMaxIds: number;
  readonly corsOrigins: 'any' | readonly string[];
  /** For each address; 0: not limited. */
  readonly requestsPerMinute: number;
  /** Proxies in front whose forwarded address is believed. */
  readonly trustedProxies: number;
  /** Absent: the page cannot be launched from a record system. */
  readonly smart?: SmartSettings;
  /** Origins whose pages may show ours in a frame; default none. */
  readonly frameAncestors: readonly string[];
  readonly limits: BodyLimits;
  readonly fetching: FetchSettings;
  /** Where each feedback item is posted as JSON, without comments; absent: nowhere. */
  readonly feedbackForwardUrl?: string;
}

export type Environment = Readonly<Record<string, string | undefined>>;

/** Reads a file named by a setting. */
export type ReadText = (path: string) => string;

const count = (least: number, most: number) => z.coerce.number().int().min(least).max(most);
const flag = z.enum(['true', 'false']).transform((text) => text === 'true');
const isOrigin = (text: string): boolean => URL.canParse(text) && new URL(text).origin === text;
const origins = z
  .string()
  .transform(listOf)
  .pipe(z.array(z.string().refine(isOrigin, { message: 'write each origin as https://host[:port]' })));

const shape = z.object({
  TRUST: z.enum(['open', 'jwt']).optional(),
  PRODUCTION: flag.default(false),
  PUBLIC_BASE_URL: z.url({ protocol: /^https?$/ }).optional(),
  CLIENTS_FILE: z.string().optional(),
  JWT_ALGORITHMS: z
    .string()
    .default('ES384,RS384')
    .transform(listOf)
    .pipe(z.array(z.enum(signatureAlgorithms)).min(1)),
  REPLAY_STORE: z
    .union([z.literal('memory'), z.url({ protocol: /^rediss?$/ })], {
      error: 'write memory, or redis://host:port',
    })
    .default('memory'),
  REPLAY_MAX_IDS: count(1, 10_000_000).default(100_000),
  CORS_ORIGINS: z.union([z.literal('*').transform(() => 'any' as const), origins]).optional(),
  REQUESTS_PER_MINUTE: count(0, 1_000_000).default(600),
  TRUSTED_PROXIES: count(0, 10).default(0),
  MAX_BODY_BYTES: count(1000, 1_000_000_000).default(defaultBodyLimits.maxBodyBytes),
  MAX_DEPTH: count(8, 1000).default(defaultBodyLimits.maxDepth),
  SMART_CLIENT_ID: z.string().optional(),
  SMART_ORIGINS: origins.default([]),
  FRAME_ANCESTORS: origins.default([]),
  FHIR_ORIGINS: origins.default([]),
  FHIR_PRIVATE_NETWORKS: z.string().default('').transform(listOf).pipe(z.array(networkShape)),
  FHIR_WITHOUT_TOKEN: flag.default(false),
  FETCH_DEADLINE_MS: count(1, 60_000).default(2000),
  FETCH_PARALLEL: count(1, 16).default(4),
  FETCH_MAX_PAGES: count(1, 1000).default(10),
  FETCH_MAX_BYTES: count(1000, 1_000_000_000).default(10_000_000),
  FEEDBACK_FORWARD_URL: z.url({ protocol: /^https?$/ }).optional(),
});

type Values = z.infer<typeof shape>;

/**
 * The settings of this process.
 *
 * Given    environment   variables; an empty one counts as absent. HOST: where the service will listen
 *          readText      reads the clients file
 * Returns  settings that fit together
 * Throws   Error naming every variable that is wrong, and how to write it
 * Notes    1. Without TRUST the mode is open on this machine's own address, outside production; anywhere else it
 *             must be said.
 * Source   ours; checklist rows T-01, J-02, J-05, J-07, J-08, J-13, F-05
 */
export function readSettings(environment: Environment, readText: ReadText): Settings {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value !== ''));
  const read = shape.safeParse(given);
  if (!read.success) {
    throw new Error(
      read.error.issues.map((issue) => `${String(issue.path[0])}: ${issue.message}`).join('\n'),
    );
  }
  const values = read.data;
  const trust = values.TRUST ?? trustWhenUnsaid(values, environment['HOST']);
  const faults = faultsOf(values, trust);
  if (faults.length > 0) throw new Error(faults.join('\n'));
  const clients = values.CLIENTS_FILE === undefined ? [] : readClients(values.CLIENTS_FILE, readText);
  return settingsOf(values, trust, clients);
}

/** Open, on this machine only; for tests and for trying out. */
export const openSettings: Settings = settingsOf(shape.parse({}), 'open', []);

function settingsOf(values: Values, trust: Settings['trust'], clients: readonly TrustedClient[]): Settings {
  return {
    trust,
    isProduction: values.PRODUCTION,
    ...(values.PUBLIC_BASE_URL === undefined
      ? {}
      : { publicBaseUrl: values.PUBLIC_BASE_URL.replace(/\/+$/, '') }),
    clients,
    algorithms: values.JWT_ALGORITHMS,
    replayStore: values.REPLAY_STORE,
    replayMaxIds: values.REPLAY_MAX_IDS,
    corsOrigins: values.CORS_ORIGINS ?? (trust === 'open' && !values.PRODUCTION ? 'any' : []),
    requestsPerMinute: values.REQUESTS_PER_MINUTE,
    trustedProxies: values.TRUSTED_PROXIES,
    ...(values.FEEDBACK_FORWARD_URL === undefined ? {} : { feedbackForwardUrl: values.FEEDBACK_FORWARD_URL }),
    ...(values.SMART_CLIENT_ID === undefined
      ? {}
      : {
          smart: {
            clientId: values.SMART_CLIENT_ID,
            launchUrl: `${(values.PUBLIC_BASE_URL ?? '').replace(/\/+$/, '')}/launch`,
            origins: values.SMART_ORIGINS,
          },
        }),
    frameAncestors: values.FRAME_ANCESTORS,
    limits: { maxBodyBytes: values.MAX_BODY_BYTES, maxDepth: values.MAX_DEPTH },
    fetching: {
      origins: values.FHIR_ORIGINS,
      privateNetworks: values.FHIR_PRIVATE_NETWORKS,
      mayFetchWithoutToken: values.FHIR_WITHOUT_TOKEN,
      needsHttps: values.PRODUCTION,
      deadlineMs: values.FETCH_DEADLINE_MS,
      parallel: values.FETCH_PARALLEL,
      maxPages: values.FETCH_MAX_PAGES,
      maxBytes: values.FETCH_MAX_BYTES,
    },
  };
}

function listOf(text: string): readonly string[] {
  return text
    .split(',')
    .map((item) => item.trim())
    .filter((item) => item !== '');
}

function trustWhenUnsaid(values: Values, host = '127.0.0.1'): Settings['trust'] {
  if (!values.PRODUCTION && ['127.0.0.1', '::1', 'localhost'].includes(host)) return 'open';
  throw new Error(
    'TRUST: say TRUST=jwt, with CLIENTS_FILE and PUBLIC_BASE_URL; or TRUST=open when whoever reaches this port may ask.',
  );
}

function faultsOf(values: Values, trust: Settings['trust']): readonly string[] {
  const base = values.PUBLIC_BASE_URL;
  const isHttps = base?.startsWith('https:') === true;
  return [
    ...(trust === 'jwt' && base === undefined
      ? ['PUBLIC_BASE_URL: required with TRUST=jwt: tokens are made out to it.']
      : []),
    ...(trust === 'jwt' && values.CLIENTS_FILE === undefined
      ? ['CLIENTS_FILE: required with TRUST=jwt: it says who may ask.']
      : []),
    ...(values.PRODUCTION && !isHttps
      ? ['PUBLIC_BASE_URL: in production it must be said, and begin with https.']
      : []),
    ...(values.PRODUCTION && values.FEEDBACK_FORWARD_URL?.startsWith('https:') === false
      ? ['FEEDBACK_FORWARD_URL: in production it must begin with https.']
      : []),
    ...(values.SMART_CLIENT_ID !== undefined && (base === undefined || values.SMART_ORIGINS.length === 0)
      ? ['SMART_CLIENT_ID: needs PUBLIC_BASE_URL and SMART_ORIGINS, the record systems that may launch.']
      : []),
    ...(values.PRODUCTION && values.FHIR_WITHOUT_TOKEN
      ? ['FHIR_WITHOUT_TOKEN: for sandboxes only, not in production.']
      : []),
    ...(values.PRODUCTION && values.FHIR_PRIVATE_NETWORKS.some(isMachineNetwork)
      ? ["FHIR_PRIVATE_NETWORKS: in production not this machine's own or link-local addresses."]
      : []),
  ];
}
