// Where each received resource ended: the one place that decides a fate, once per resource.
import type { Issue, SetAsideCode } from '../errors.ts';
import { aboutOf } from './about.ts';
import type { NotNeeded, SetAside } from './read-bundle-types.ts';
import type { Slot } from './slot.ts';

export interface Reason {
  readonly code: SetAsideCode;
  /** Element that is the cause, relative to the resource; absent: the resource itself. */
  readonly element?: string;
  readonly message: string;
}

export type Fate =
  | { readonly kind: 'set-aside'; readonly reason: Reason }
  | { readonly kind: 'not-needed'; readonly why: string };

export interface Ledger {
  readonly slots: readonly Slot[];
  readonly issues: Issue[];
  /** The first fate stands; a later one is ignored. */
  readonly setAside: (slot: Slot, reason: Reason) => void;
  readonly notNeeded: (slot: Slot, why: string) => void;
  readonly fateOf: (slot: Slot) => Fate | undefined;
  readonly isOpen: (slot: Slot) => boolean;
  /** References to `slot` are meant for `by` from now on. */
  readonly replace: (slot: Slot, by: Slot) => void;
  /** The slot that stands for this one: itself, or the newer version or the copy that was kept. */
  readonly standsFor: (slot: Slot) => Slot;
}

export function openLedger(slots: readonly Slot[], issues: readonly Issue[]): Ledger {
  const fates: (Fate | undefined)[] = new Array<Fate | undefined>(slots.length).fill(undefined);
  const replaced = new Map<Slot, Slot>();
  return {
    slots,
    issues: [...issues],
    setAside: (slot, reason) => void (fates[slot.index] ??= { kind: 'set-aside', reason }),
    notNeeded: (slot, why) => void (fates[slot.index] ??= { kind: 'not-needed', why }),
    fateOf: (slot) => fates[slot.index],
    isOpen: (slot) => fates[slot.index] === undefined,
    replace: (slot, by) => void replaced.set(slot, by),
    standsFor: (slot) => followed(replaced, slot),
  };
}

function followed(replaced: ReadonlyMap<Slot, Slot>, slot: Slot): Slot {
  let at = slot;
  for (
    let next = replaced.get(at), steps = 0;
    next && steps < replaced.size;
    next = replaced.get(at), steps++
  )
    at = next;
  return at;
}

export function setAsideOf(slot: Slot, reason: Reason): SetAside {
  const { index, path, reference, type } = slot;
  const expression = reason.element === undefined ? path : `${path}.${reason.element}`;
  const about = aboutOf(slot.resource);
  return {
    index,
    path,
    reference,
    resourceType: type,
    code: reason.code,
    expression,
    message: reason.message,
    ...(about === undefined ? {} : { about }),
  };
}

export function notNeededOf(slot: Slot, why: string): NotNeeded {
  return { index: slot.index, path: slot.path, reference: slot.reference, resourceType: slot.type, why };
}
