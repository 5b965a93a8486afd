// How far the service may go to fetch what a client did not send. Types only.
import type { Network } from './networks.ts';

export interface FetchSettings {
  /** Origins of FHIR servers that may be asked: `https://fhir.example`. Empty: nothing is fetched. */
  readonly origins: readonly string[];
  /** Private networks in which those servers may lie; all other private addresses are refused. */
  readonly privateNetworks: readonly Network[];
  /** Sandboxes: ask a server for which the client gave no token. */
  readonly mayFetchWithoutToken: boolean;
  readonly needsHttps: boolean;
  /** For everything that is fetched for one call. */
  readonly deadlineMs: number;
  /** Requests at a time. */
  readonly parallel: number;
  /** For each key. */
  readonly maxPages: number;
  /** For everything that is fetched for one call, after decompression. */
  readonly maxBytes: number;
}
