// What a client sent beforehand, key by key: found, known to be absent, failed, or not sent. The four are never mixed.
import type { KeyStateName } from '../presenters/card-context.ts';
import type { ChartGap, FetchFailure } from '../presenters/card-types.ts';
import { chartQueries, type ChartQuery } from '../presenters/data-requirements.ts';
import { isObject } from './cds-request.ts';
import { refused } from './request-issues.ts';

export type PrefetchState =
  | {
      readonly kind: 'found';
      readonly entries: readonly unknown[];
      readonly firstPageOnly: boolean;
      /** Why the pages after it could not be fetched. */
      readonly why?: FetchFailure;
    }
  | { readonly kind: 'absent' }
  /** `why`: it was fetched, and in vain. */
  | { readonly kind: 'failed'; readonly why?: FetchFailure }
  | { readonly kind: 'not-sent' };

/** A published query and what is known of its result. */
export interface KeyState {
  readonly query: ChartQuery;
  readonly state: PrefetchState;
}

export interface Gathered {
  /** One collection of everything found, keys in their published order. */
  readonly bundle: {
    readonly resourceType: 'Bundle';
    readonly type: 'collection';
    readonly entry: readonly unknown[];
  };
  /** Index of the first entry the hook brought. */
  readonly broughtAt: number;
  /** State of every key, by name. */
  readonly states: Readonly<Record<string, KeyStateName>>;
  readonly gaps: readonly ChartGap[];
  /** Required queries whose result is unknown. */
  readonly unknownRequired: readonly ChartQuery[];
}

/**
 * What is known of each published query.
 *
 * Given    prefetch    as sent; keys we did not publish are ignored
 *          queries     of the service; absent: those of the main one
 * Throws   RequestError 400: a value that is no FHIR resource.
 * Notes    1. Rows C-01 to C-08. null and an empty Bundle say "asked, nothing there"; a missing key, a text or an
 *             OperationOutcome say "not known".
 */
export function readPrefetch(
  prefetch: Readonly<Record<string, unknown>>,
  queries: readonly ChartQuery[] = chartQueries,
): readonly KeyState[] {
  return queries.map((query) => ({ query, state: readState(prefetch[query.key], query.key) }));
}

/**
 * All resources found as one Bundle, and what is not known.
 *
 * Given    states      of the published queries, in their order, after what could be fetched was
 *          patientId   bare id of the woman
 *          brought     entries the hook itself brings; they come last
 * Throws   RequestError 400: another woman's Patient (row R-11).
 */
export function gather(
  states: readonly KeyState[],
  patientId: string,
  brought: readonly unknown[] = [],
): Gathered {
  const chart = states.filter(({ query }) => query.isAboutUser !== true);
  const found = chart.flatMap(({ state }) => (state.kind === 'found' ? state.entries : []));
  checkPatient(states.find(({ query }) => query.key === 'patient')?.state, patientId);
  return {
    bundle: { resourceType: 'Bundle', type: 'collection', entry: [...found, ...brought] },
    broughtAt: found.length,
    states: Object.fromEntries(states.map(({ query, state }) => [query.key, stateName(state)])),
    gaps: chart.flatMap(({ query, state }) => gapOf(query, state)),
    unknownRequired: chart
      .filter(({ query, state }) => query.need === 'required' && isUnknown(state))
      .map(({ query }) => query),
  };
}

function stateName(state: PrefetchState): KeyStateName {
  switch (state.kind) {
    case 'found':
      return state.firstPageOnly ? 'found-in-part' : 'found';
    case 'absent':
      return 'known-absent';
    case 'failed':
      return 'failed';
    case 'not-sent':
      return 'never-asked';
  }
}

function isUnknown(state: PrefetchState): boolean {
  return state.kind === 'failed' || state.kind === 'not-sent';
}

function gapOf({ key, what }: ChartQuery, state: PrefetchState): readonly ChartGap[] {
  switch (state.kind) {
    case 'absent':
      return [];
    case 'failed':
      return [{ key, what, why: state.why ?? 'failed' }];
    case 'not-sent':
      return [{ key, what, why: 'not-sent' }];
    case 'found':
      if (!state.firstPageOnly) return [];
      return [
        state.why === undefined
          ? { key, what, why: 'first-page-only' }
          : { key, what, why: state.why, isPartial: true },
      ];
  }
}

/** The state of one key. */
export function readState(value: unknown, key: string): PrefetchState {
  if (value === null) return { kind: 'absent' };
  if (value === undefined || typeof value === 'string') return { kind: 'not-sent' };
  if (!isObject(value)) throw notAResource(key);
  if (value['resourceType'] === undefined && 'resource' in value) return readState(value['resource'], key);
  if (typeof value['resourceType'] !== 'string') throw notAResource(key);
  if (value['resourceType'] === 'OperationOutcome') return { kind: 'failed' };
  if (value['resourceType'] !== 'Bundle') {
    return { kind: 'found', entries: [{ resource: value }], firstPageOnly: false };
  }
  return bundleState(value);
}

function bundleState(bundle: Readonly<Record<string, unknown>>): PrefetchState {
  const entries: readonly unknown[] = Array.isArray(bundle['entry']) ? bundle['entry'] : [];
  if (entries.some(isFailure)) return { kind: 'failed' };
  const matches = entries.filter((entry) => !isOutcome(entry));
  const firstPageOnly = hasNextPage(bundle['link']);
  return matches.length === 0 && !firstPageOnly
    ? { kind: 'absent' }
    : { kind: 'found', entries: matches, firstPageOnly };
}

function isOutcome(entry: unknown): boolean {
  const resource = isObject(entry) ? entry['resource'] : undefined;
  return isObject(resource) && resource['resourceType'] === 'OperationOutcome';
}

/** An outcome that says the search itself went wrong; a warning beside matches does not. */
function isFailure(entry: unknown): boolean {
  if (!isOutcome(entry) || !isObject(entry) || !isObject(entry['resource'])) return false;
  const issues: unknown = entry['resource']['issue'];
  const severities = Array.isArray(issues)
    ? issues.map((issue: unknown) => (isObject(issue) ? issue['severity'] : undefined))
    : [];
  return (
    severities.length === 0 || severities.some((severity) => severity === 'error' || severity === 'fatal')
  );
}

function hasNextPage(links: unknown): boolean {
  return Array.isArray(links) && links.some((link: unknown) => isObject(link) && link['relation'] === 'next');
}

function checkPatient(state: PrefetchState | undefined, patientId: string): void {
  if (state?.kind !== 'found') return;
  for (const entry of state.entries) {
    const resource = isObject(entry) ? entry['resource'] : undefined;
    if (!isObject(resource) || resource['resourceType'] !== 'Patient' || resource['id'] === patientId)
      continue;
    const message =
      'The Patient sent is not the patient of the context; no advice is given on another woman.';
    throw refused(400, 'other-patient', 'business-rule', 'prefetch.patient', message);
  }
}

function notAResource(key: string) {
  return refused(
    400,
    'not-a-resource',
    'structure',
    `prefetch.${key}`,
    'The value must be a FHIR resource or null.',
    key,
  );
}
