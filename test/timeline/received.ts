// One received resource and a context that remembers what was said about it.
import type { Resource } from 'fhir/r4.js';
import type { ReadBundle, Received } from '../../src/bundle/read-bundle-types.ts';
import type { TimelineContext } from '../../src/timeline/context.ts';
import { parseMoment } from '../../src/timeline/moment.ts';
import type { Moment } from '../../src/timeline/timeline.ts';
import { values } from './values.ts';

export function received<R extends Resource>(resource: R, preliminary = false): Received<R> {
  return {
    index: 0,
    path: 'Bundle.entry[0].resource',
    reference: `${resource.resourceType}/1`,
    resource,
    preliminary,
  };
}

export function moment(text: string): Moment {
  const parsed = parseMoment(text, undefined);
  if (parsed === undefined) throw new Error(`Not a moment: ${text}`);
  return parsed;
}

export interface RecordingContext extends TimelineContext {
  /** Codes of the issues raised, in order. */
  readonly raised: readonly string[];
}

/** Evaluated at noon of 10 March 2025; `others` can be found by `Type/id`. */
export function contextWith(others: Readonly<Record<string, Resource>> = {}): RecordingContext {
  const raised: string[] = [];
  const bundle: ReadBundle = {
    received: 1,
    subject: 'Patient/1',
    patient: undefined,
    usable: [],
    setAside: [],
    faulty: [],
    notNeeded: [],
    issues: [],
    resolve: (reference) => {
      const text =
        typeof reference === 'object' && reference !== null && 'reference' in reference
          ? reference.reference
          : undefined;
      const found = typeof text === 'string' ? others[text] : undefined;
      return found === undefined ? undefined : received(found);
    },
  };
  return {
    bundle,
    asOf: Date.UTC(2025, 2, 10, 12),
    values,
    raised,
    setAside: () => undefined,
    notNeeded: () => undefined,
    issue: (_, issue) => void raised.push(issue.code),
  };
}

export const at = moment('2025-03-10T09:00:00Z');
