// One result sent again under another id but with the same business identifier (F-M06, F-M08).
import { codesOf, contentOf, byReference } from './duplicates.ts';
import { warning } from './issues.ts';
import { identifierKey, listOf, memberOf, textOf } from './json.ts';
import type { Ledger } from './ledger.ts';
import { effectiveKey } from './minute-key.ts';
import type { Persons } from './persons.ts';
import type { Slot } from './slot.ts';

/** What tells that a sending came later, when no time does. */
const LATER_STATUS: readonly unknown[] = [
  'preliminary',
  'final',
  'amended',
  'corrected',
  'cancelled',
  'entered-in-error',
];

/**
 * Keep the newest sending of each result.
 *
 * Given    ledger  after the status gate: sendings that are in error or cancelled still count as sendings
 * Notes    1. One result: the same identifier (system and value), person, code and time. An identifier that is shared
 *             by different results (an accession number, a visit) joins nothing.
 *          2. Newest: by lastUpdated, else by issued, else by status (corrected is later than final). Where none of
 *             these tells, both stay, with a warning.
 *          3. When the newest sending is in error or cancelled, the earlier ones fall with it.
 * Source   fhir.md F-M06, F-M08
 */
export function keepNewestSending(ledger: Ledger, persons: Persons): void {
  const results = new Map<string, Set<Slot>>();
  for (const slot of sharingIdentifier(ledger)) {
    for (const key of resultKeys(slot, persons)) {
      const same = results.get(key);
      if (same === undefined) results.set(key, new Set([slot]));
      else same.add(slot);
    }
  }
  for (const same of results.values()) if (same.size > 1) keepNewest(ledger, [...same]);
}

/** Sendings whose identifier value another one carries too: nearly always none. */
function sharingIdentifier(ledger: Ledger): ReadonlySet<Slot> {
  const first = new Map<string, Slot>();
  const sharing = new Set<Slot>();
  for (const slot of ledger.slots) {
    if (slot.type !== 'Observation' || slot.resource?.identifier === undefined || !isSending(ledger, slot))
      continue;
    for (const identifier of listOf(slot.resource.identifier)) {
      const value = textOf(memberOf(identifier, 'value'));
      if (value === undefined) continue;
      const other = first.get(value);
      if (other === undefined) first.set(value, slot);
      else if (other !== slot) sharing.add(other).add(slot);
    }
  }
  return sharing;
}

/** Does it count as a sending of its result: used, in error, or cancelled? */
export function isSending(ledger: Ledger, slot: Slot): boolean {
  const fate = ledger.fateOf(slot);
  if (fate === undefined) return true;
  return (
    fate.kind === 'set-aside' && (fate.reason.code === 'entered-in-error' || fate.reason.code === 'cancelled')
  );
}

/** What is equal for two sendings of one result; empty for one without an identifier. */
export function resultKeys(slot: Slot, persons: Persons): readonly string[] {
  const { resource } = slot;
  if (resource === undefined) return [];
  const identifiers = listOf(resource.identifier)
    .map(identifierKey)
    .filter((key) => key !== undefined);
  if (identifiers.length === 0) return [];
  const rest = `${persons.personOf(resource.subject, slot) ?? ''} ${effectiveKey(resource)}`;
  return codesOf(resource).flatMap((code) =>
    identifiers.map((identifier) => `${code} ${rest} ${identifier}`),
  );
}

function keepNewest(ledger: Ledger, same: readonly Slot[]): void {
  const sorted = newestFirst(same);
  const [newest, ...earlier] = sorted.slots;
  if (newest === undefined) return;
  const fate = ledger.fateOf(newest);
  for (const slot of earlier.filter((other) => ledger.isOpen(other))) {
    if (!sorted.isLater(newest, slot)) sayBothKept(ledger, slot, newest);
    else if (fate?.kind === 'set-aside')
      ledger.setAside(slot, { ...fate.reason, element: 'identifier', message: WITHDRAWN });
    else {
      ledger.replace(slot, newest);
      const message = `The same result was sent again, and later, as ${newest.reference}: that one is used.`;
      ledger.setAside(slot, { code: 'duplicate', element: 'identifier', message });
    }
  }
}

const WITHDRAWN =
  'A later sending of the same result withdrew it. If it is right, send it with its right status.';

function sayBothKept(ledger: Ledger, slot: Slot, newest: Slot): void {
  const [code = ''] = slot.resource === undefined ? [] : codesOf(slot.resource);
  if (contentOf(slot, code) === contentOf(newest, code)) return;
  const message = `Different content under one identifier, also at ${newest.path}, and nothing tells which is newer: send issued or meta.lastUpdated.`;
  ledger.issues.push(warning('newest-unknown', 'duplicate', `${slot.path}.identifier`, message));
}

interface Sorted {
  readonly slots: readonly Slot[];
  readonly isLater: (one: Slot, other: Slot) => boolean;
}

/** One measure for all sendings of a result, so that the order is a single one. */
function newestFirst(same: readonly Slot[]): Sorted {
  const measures = [updatedAt, issuedAt].filter((measure) =>
    same.every((slot) => !Number.isNaN(measure(slot))),
  );
  const later = (one: Slot, other: Slot): number => {
    for (const measure of [...measures, statusRank]) {
      const difference = measure(one) - measure(other);
      if (difference !== 0) return difference;
    }
    return 0;
  };
  return {
    slots: [...same].sort((one, other) => later(other, one) || byReference(one, other)),
    isLater: (one, other) => later(one, other) > 0,
  };
}

function updatedAt(slot: Slot): number {
  return Date.parse(textOf(slot.resource?.meta?.lastUpdated) ?? '');
}

function issuedAt(slot: Slot): number {
  return Date.parse(textOf(slot.resource?.issued) ?? '');
}

function statusRank(slot: Slot): number {
  return LATER_STATUS.indexOf(slot.resource?.status);
}
