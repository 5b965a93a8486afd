// One received resource on its way through the reading. Internal to this folder.
import type { Issue } from '../errors.ts';
import type { ResourceJson } from './json.ts';

export interface Slot {
  readonly index: number;
  readonly path: string;
  readonly reference: string;
  readonly type: string;
  readonly id: string | undefined;
  readonly fullUrl: string | undefined;
  /** Absent when what was received is no resource. */
  readonly resource: ResourceJson | undefined;
  /** Of the entry's request, in a transaction, batch or history. */
  readonly method: string | undefined;
  /** Higher is newer, where nothing but the order tells (F-M05). */
  readonly rank: number;
  /** Why the walk could not take it as a resource. */
  readonly fault?: 'not-a-resource' | 'too-deep';
}

/** A DELETE entry: what it removes, and when, as far as it says. */
export interface Removal {
  readonly type: string;
  readonly id: string | undefined;
  /** `system|value` of a conditional delete. */
  readonly identifier: string | undefined;
  readonly versionId: string | undefined;
  readonly lastUpdated: string | undefined;
  readonly rank: number;
  /** Only a history tells what was before and after; elsewhere a DELETE removes whatever it names. */
  readonly inHistory: boolean;
}

export interface Walked {
  readonly slots: readonly Slot[];
  readonly removals: readonly Removal[];
  readonly issues: readonly Issue[];
}
