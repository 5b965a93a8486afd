// Results that rest only on results entered in error (fhir.md 4.1).
import { indexSlots } from './index-slots.ts';
import { warning } from './issues.ts';
import { listOf } from './json.ts';
import type { Ledger } from './ledger.ts';
import { slotMeant } from './references.ts';
import type { Slot } from './slot.ts';

/**
 * Set aside every Observation whose whole `derivedFrom` was entered in error, and what in turn rests on it.
 *
 * Given    ledger  after the status gate
 * Notes    1. Where only a part of what it was derived from is in error it stays, with a warning.
 *          2. The members of a panel that is in error stay: a panel gathers them, they do not rest on it.
 */
export function dropDerivedFromErrors(ledger: Ledger): void {
  const fallen = ledger.slots.filter((slot) => slot.type === 'Observation' && isInError(ledger, slot));
  const derived = fallen.length === 0 ? [] : ledger.slots.filter((slot) => isDerived(ledger, slot));
  if (derived.length === 0) return;
  const grounds = groundsOf(ledger, derived);
  for (let at = 0; at < fallen.length; at++) {
    const ground = fallen[at];
    for (const slot of (ground && grounds.restingOn.get(ground)) ?? []) {
      const left = (grounds.count.get(slot) ?? 0) - 1;
      grounds.count.set(slot, left);
      if (left > 0) continue;
      ledger.setAside(slot, { code: 'entered-in-error', element: 'derivedFrom', message: ALL_IN_ERROR });
      fallen.push(slot);
    }
  }
  for (const slot of derived)
    if (ledger.isOpen(slot) && hasLostGround(grounds, slot)) sayPartInError(ledger, slot);
}

const ALL_IN_ERROR =
  'Everything it was derived from was entered in error: derive it again from sound results.';

interface Grounds {
  readonly restingOn: ReadonlyMap<Slot, readonly Slot[]>;
  /** How many grounds, still sound, each derived slot has; one not received counts as sound. */
  readonly count: Map<Slot, number>;
}

function isInError(ledger: Ledger, slot: Slot): boolean {
  const fate = ledger.fateOf(slot);
  return fate?.kind === 'set-aside' && fate.reason.code === 'entered-in-error';
}

function isDerived(ledger: Ledger, slot: Slot): boolean {
  return slot.type === 'Observation' && ledger.isOpen(slot) && listOf(slot.resource?.derivedFrom).length > 0;
}

function groundsOf(ledger: Ledger, derived: readonly Slot[]): Grounds {
  const index = indexSlots(ledger.slots);
  const restingOn = new Map<Slot, Slot[]>();
  const count = new Map<Slot, number>();
  for (const slot of derived) {
    const references = listOf(slot.resource?.derivedFrom);
    count.set(slot, references.length);
    for (const reference of references) {
      const ground = slotMeant(ledger, index, reference, slot);
      if (ground !== undefined) restingOn.set(ground, [...(restingOn.get(ground) ?? []), slot]);
    }
  }
  return { restingOn, count };
}

function hasLostGround(grounds: Grounds, slot: Slot): boolean {
  return (grounds.count.get(slot) ?? 0) < listOf(slot.resource?.derivedFrom).length;
}

function sayPartInError(ledger: Ledger, slot: Slot): void {
  const message =
    'A part of what it was derived from was entered in error: derive it again from sound results.';
  ledger.issues.push(warning('derived-from-error', 'processing', `${slot.path}.derivedFrom`, message));
}
