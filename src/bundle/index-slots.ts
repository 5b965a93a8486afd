// Finding received resources by what a reference says: address, Type/id, identifier.
import { conditionOf, isAbsolute, normalAddress, restTail, rootOf, withoutVersion } from './addresses.ts';
import { identifierKey, listOf, memberOf, textOf } from './json.ts';
import type { Slot } from './slot.ts';

/** Each part is made when it is first asked for: the usual bundle needs one of them. */
export interface SlotIndex {
  readonly byAddress: () => SlotsByKey;
  readonly byTypeId: () => SlotsByKey;
  /** Key `Type?system|value`. */
  readonly byIdentifier: () => SlotsByKey;
}

type SlotsByKey = ReadonlyMap<string, readonly Slot[]>;

const NONE: readonly Slot[] = [];

export function indexSlots(slots: readonly Slot[]): SlotIndex {
  return {
    byAddress: once(() => slotsBy(slots, addressesOf)),
    byTypeId: once(() => slotsBy(slots, typeIdsOf)),
    byIdentifier: once(() => slotsBy(slots, identifiersOf)),
  };
}

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => (made ??= make());
}

function slotsBy(slots: readonly Slot[], keysOf: (slot: Slot) => readonly string[]): SlotsByKey {
  const index = new Map<string, Slot[]>();
  for (const slot of slots)
    if (slot.resource !== undefined) for (const key of keysOf(slot)) add(index, key, slot);
  return index;
}

const addressesOf = ({ fullUrl }: Slot): readonly string[] =>
  fullUrl === undefined ? [] : [normalAddress(withoutVersion(fullUrl))];

const typeIdsOf = ({ type, id }: Slot): readonly string[] => (id === undefined ? [] : [`${type}/${id}`]);

const identifiersOf = ({ type, resource }: Slot): readonly string[] =>
  listOf(resource?.identifier).flatMap((identifier) => {
    const key = identifierKey(identifier);
    return key === undefined ? [] : [`${type}?${key}`];
  });

function add(map: Map<string, Slot[]>, key: string, slot: Slot): void {
  const same = map.get(key);
  if (same === undefined) map.set(key, [slot]);
  else same.push(slot);
}

/**
 * The slots a Reference may mean, seen from the resource that holds it; contained ones (`#id`) are not looked for here.
 *
 * Given    reference  a Reference, or its text
 *          from       the slot that holds it, for the server a relative reference belongs to
 * Returns  every slot that fits; empty when none does or only a display was given (F-R11)
 * Throws   never
 * Notes    1. A literal reference wins over an identifier, which is tried where the literal leads nowhere (F-R08).
 *          2. A relative reference is tried on the holder's own server first, then by Type/id anywhere (F-R02, F-R03).
 *          3. An absolute one needs the same address, or an entry of that Type/id that names no address of its own (F-R04).
 * Source   FHIR R4 4.0.1, Bundle "Resolving references in bundles"; fhir.md F-R01 to F-R12
 */
export function findSlots(index: SlotIndex, reference: unknown, from: Slot | undefined): readonly Slot[] {
  const text = typeof reference === 'string' ? reference : textOf(memberOf(reference, 'reference'));
  const literal = text === undefined ? NONE : byText(index, text, from);
  if (literal.length > 0) return literal;
  const key = identifierKey(memberOf(reference, 'identifier'));
  return key === undefined ? NONE : byLogical(index, key, textOf(memberOf(reference, 'type')) ?? 'Patient');
}

function byLogical(index: SlotIndex, key: string, type: string): readonly Slot[] {
  return index.byIdentifier().get(`${type}?${key}`) ?? NONE;
}

function byText(index: SlotIndex, text: string, from: Slot | undefined): readonly Slot[] {
  const condition = text.includes('?') ? conditionOf(text) : undefined;
  if (condition !== undefined) return byLogical(index, condition.identifier, condition.type);
  const plain = withoutVersion(text);
  return isAbsolute(plain) ? byAbsolute(index, plain) : byRelative(index, plain, from);
}

function byRelative(index: SlotIndex, text: string, from: Slot | undefined): readonly Slot[] {
  const all = index.byTypeId().get(text) ?? NONE;
  if (all.length < 2) return all;
  const root = from === undefined ? undefined : rootOf(from.fullUrl, from.type, from.id);
  if (root === undefined) return all;
  const sameServer = index.byAddress().get(`${root}/${text}`);
  return sameServer ?? all;
}

function byAbsolute(index: SlotIndex, text: string): readonly Slot[] {
  const exact = index.byAddress().get(normalAddress(text));
  if (exact !== undefined) return exact;
  const tail = restTail(text);
  const named = tail === undefined ? NONE : (index.byTypeId().get(tail) ?? NONE);
  return named.filter((slot) => rootOf(slot.fullUrl, slot.type, slot.id) === undefined);
}
