// References inside what was received (F-R01 to F-R12). Nothing is ever fetched.
import { isResource, listOf, memberOf, textOf } from './json.ts';
import { findSlots, indexSlots } from './index-slots.ts';
import type { SlotIndex } from './index-slots.ts';
import type { Ledger } from './ledger.ts';
import { unknownModifier } from './modifiers.ts';
import type { Received, ReadBundle } from './read-bundle-types.ts';
import type { Slot } from './slot.ts';
import { isPreliminary, refusedByStatus } from './status.ts';

/** The one slot a reference means, after newer versions and kept copies took their places; whatever its fate. */
export function slotMeant(
  ledger: Ledger,
  index: SlotIndex,
  reference: unknown,
  from: Slot | undefined,
): Slot | undefined {
  const found = findSlots(index, reference, from);
  const [first] = found;
  if (first === undefined || found.length === 1) return first && ledger.standsFor(first);
  const meant = new Set(found.map((slot) => ledger.standsFor(slot)));
  const [only] = meant;
  return meant.size === 1 ? only : undefined;
}

/** What is handed on of a slot; undefined when it holds no resource. */
export function receivedOf(slot: Slot): Received | undefined {
  const { index, path, reference, resource } = slot;
  return resource === undefined
    ? undefined
    : { index, path, reference, resource, preliminary: isPreliminary(resource) };
}

/**
 * The function that follows references.
 *
 * Given    ledger  with every fate decided
 *          usable  the resources handed on, by slot index
 * Returns  from a Reference (or its text) and the resource that holds it: the resource meant, when exactly one
 *          received resource fits and it was not set aside; else undefined
 * Notes    1. A reference to an older version or a copy leads to the one that was kept.
 *          2. Contained resources are found in their own container only, and are refused by the same status and
 *             modifier rules. `#` alone is the container.
 */
export function makeResolve(ledger: Ledger, usable: ReadonlyMap<number, Received>): ReadBundle['resolve'] {
  let index: SlotIndex | undefined;
  return (reference, from) => {
    const text = typeof reference === 'string' ? reference : textOf(memberOf(reference, 'reference'));
    const holder = ledger.slots[from.index];
    if (text?.startsWith('#') === true) return holder && resolveContained(holder, text.slice(1), usable);
    index ??= indexSlots(ledger.slots);
    const slot = slotMeant(ledger, index, reference, holder);
    if (slot === undefined || ledger.fateOf(slot)?.kind === 'set-aside') return undefined;
    return usable.get(slot.index) ?? receivedOf(slot);
  };
}

function resolveContained(
  container: Slot,
  id: string,
  usable: ReadonlyMap<number, Received>,
): Received | undefined {
  if (id === '') return usable.get(container.index) ?? receivedOf(container);
  const all = listOf(container.resource?.contained);
  const fitting = all.filter((item) => memberOf(item, 'id') === id);
  const [resource] = fitting;
  if (fitting.length !== 1 || !isResource(resource)) return undefined;
  if (refusedByStatus(resource) !== undefined || unknownModifier(resource) !== undefined) return undefined;
  return {
    index: container.index,
    path: `${container.path}.contained[${all.indexOf(resource)}]`,
    reference: `${container.reference}#${id}`,
    resource,
    preliminary: isPreliminary(resource),
  };
}
