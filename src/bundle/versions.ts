// One version of each resource: newest kept, deleted ones removed (F-B03, F-B05, F-M05).
import { normalAddress, rootOf } from './addresses.ts';
import { warning } from './issues.ts';
import { canonicalText, identifierKey, listOf, textOf } from './json.ts';
import type { Ledger } from './ledger.ts';
import type { Removal, Slot } from './slot.ts';

interface Version {
  readonly number: number | undefined;
  readonly updated: number | undefined;
  readonly rank: number;
}

/**
 * Leave one version of each identity open: the newest, unless it was deleted.
 *
 * Given    ledger    slots of types that are read and still open are looked at
 *          removals  the DELETE entries
 * Notes    1. Identity is Type/id. Where the fullUrls of one Type/id name several servers, each server's is its own.
 *          2. Newest: highest numeric versionId; else newest lastUpdated; else the last in order (in a history the
 *             first), with a warning.
 *          3. In a history a DELETE removes what is older than it; elsewhere whatever it names.
 *          4. A copy of the same content is a `duplicate`, anything else an `older-version`.
 * Source   fhir.md F-B03, F-B05, F-M05
 */
export function keepNewestVersions(ledger: Ledger, removals: readonly Removal[]): void {
  const groups = repeated(ledger);
  for (const group of groups) for (const versions of byServer(group)) keepNewest(ledger, versions);
  if (removals.length > 0) applyRemovals(ledger, removals);
}

function repeated(ledger: Ledger): readonly Slot[][] {
  const first = new Map<string, Map<string, Slot | Slot[]>>();
  const groups: Slot[][] = [];
  for (const slot of ledger.slots) {
    if (slot.id === undefined || !ledger.isOpen(slot)) continue;
    let ofType = first.get(slot.type);
    if (ofType === undefined) first.set(slot.type, (ofType = new Map<string, Slot | Slot[]>()));
    const seen = ofType.get(slot.id);
    if (seen === undefined) ofType.set(slot.id, slot);
    else if (Array.isArray(seen)) seen.push(slot);
    else {
      const group = [seen, slot];
      ofType.set(slot.id, group);
      groups.push(group);
    }
  }
  return groups;
}

/** Slots of one Type/id, split when their addresses name more than one server (or more than one new resource). */
function byServer(group: readonly Slot[]): readonly (readonly Slot[])[] {
  const servers = new Map<string | undefined, Slot[]>();
  for (const slot of group) {
    const server = slot.method === 'POST' ? newResource(slot) : rootOf(slot.fullUrl, slot.type, slot.id);
    const same = servers.get(server);
    if (same === undefined) servers.set(server, [slot]);
    else same.push(slot);
  }
  const named = [...servers.keys()].filter((server) => server !== undefined);
  return named.length > 1 ? [...servers.values()] : [group];
}

/** A POST has its identity from the server to be; until then its fullUrl tells it apart, its id does not. */
function newResource(slot: Slot): string | undefined {
  return slot.fullUrl === undefined ? undefined : normalAddress(slot.fullUrl);
}

function keepNewest(ledger: Ledger, group: readonly Slot[]): void {
  const [newest, ...older] = newestFirst(group, (slot) => versionOf(slot));
  if (newest === undefined || older.length === 0) return;
  const copies = older.filter((slot) => isCopy(slot, newest));
  if (copies.length < older.length && !isDated(group.map(versionOf))) sayOrderDecided(ledger, newest);
  for (const slot of older) {
    ledger.replace(slot, newest);
    const code = copies.includes(slot) ? 'duplicate' : 'older-version';
    const what =
      code === 'duplicate' ? 'The same resource was received again' : 'A newer version was received';
    ledger.setAside(slot, { code, message: `${what} at ${newest.path}: that one is used.` });
  }
}

function isCopy(slot: Slot, other: Slot): boolean {
  return canonicalText(slot.resource) === canonicalText(other.resource);
}

function sayOrderDecided(ledger: Ledger, newest: Slot): void {
  const message =
    'Several versions came without versionId and lastUpdated; the order decided: send meta.lastUpdated.';
  ledger.issues.push(warning('version-order-assumed', 'duplicate', newest.path, message));
}

function applyRemovals(ledger: Ledger, removals: readonly Removal[]): void {
  const named = new Map<string, Removal[]>();
  for (const removal of removals) {
    const key = `${removal.type}/${removal.id ?? removal.identifier ?? ''}`;
    const same = named.get(key);
    if (same === undefined) named.set(key, [removal]);
    else same.push(removal);
  }
  for (const slot of ledger.slots) {
    if (!ledger.isOpen(slot)) continue;
    if (keysOf(slot).some((key) => named.get(key)?.some((removal) => removes(removal, slot)))) {
      ledger.setAside(slot, {
        code: 'deleted',
        message: 'A DELETE entry removes it: leave that out if it is still valid.',
      });
    }
  }
}

function keysOf(slot: Slot): readonly string[] {
  const identifiers = listOf(slot.resource?.identifier).map(identifierKey);
  return [slot.id, ...identifiers].filter((key) => key !== undefined).map((key) => `${slot.type}/${key}`);
}

function removes(removal: Removal, slot: Slot): boolean {
  if (slot.method === 'DELETE' || !removal.inHistory) return true;
  const deletion = versionFrom(removal.versionId, removal.lastUpdated, removal.rank);
  const [newest] = newestFirst([deletion, versionOf(slot)], (version) => version);
  return newest === deletion;
}

function versionOf(slot: Slot): Version {
  const meta = slot.resource?.meta;
  return versionFrom(textOf(meta?.versionId), textOf(meta?.lastUpdated), slot.rank);
}

function versionFrom(versionId: string | undefined, lastUpdated: string | undefined, rank: number): Version {
  const updated = lastUpdated === undefined ? NaN : Date.parse(lastUpdated);
  return {
    number: versionId !== undefined && /^\d+$/.test(versionId) ? Number(versionId) : undefined,
    updated: Number.isNaN(updated) ? undefined : updated,
    rank,
  };
}

function isDated(versions: readonly Version[]): boolean {
  return (
    versions.every((version) => version.number !== undefined) ||
    versions.every((version) => version.updated !== undefined)
  );
}

/** Newest first. One measure serves for all of them, so that the order is a single one. */
function newestFirst<T>(items: readonly T[], versionOfItem: (item: T) => Version): readonly T[] {
  const versions = items.map(versionOfItem);
  const byNumber = versions.every((version) => version.number !== undefined);
  const byTime = versions.every((version) => version.updated !== undefined);
  return [...items].sort((one, other) => {
    const [a, b] = [versionOfItem(one), versionOfItem(other)];
    const numbers = byNumber ? (b.number ?? 0) - (a.number ?? 0) : 0;
    const times = byTime ? (b.updated ?? 0) - (a.updated ?? 0) : 0;
    return numbers || times || b.rank - a.rank;
  });
}
