// Whom a resource is about, as one key per person, however the reference is spelled.
import { conditionOf, isAbsolute, restTail, withoutVersion } from './addresses.ts';
import { containedPersons } from './contained-persons.ts';
import { findSlots, indexSlots } from './index-slots.ts';
import type { SlotIndex } from './index-slots.ts';
import { identifierKey, memberOf, textOf } from './json.ts';
import type { Ledger } from './ledger.ts';
import type { Slot } from './slot.ts';

export interface Persons {
  /** Patients received, one slot per person. */
  readonly patients: readonly Slot[];
  readonly keyOf: (patient: Slot) => string;
  /** Key of the person a text names: `Patient/1`. */
  readonly personNamed: (text: string) => string;
  /** Key of the person a Reference names; undefined when it names nobody (F-R11). */
  readonly personOf: (reference: unknown, from: Slot) => string | undefined;
}

interface Known {
  readonly ledger: Ledger;
  /** Patients only, so that the usual bundle needs no other index. */
  readonly index: SlotIndex;
  /** Keys of texts that mean the same from wherever they are seen. */
  readonly texts: Map<string, string>;
  /** References of everything received, by fullUrl; made when first needed. */
  others?: ReadonlyMap<string | undefined, string>;
}

/**
 * Who is who among the persons of the input.
 *
 * Given    ledger  after versions and deletes; open Patient slots are the patients
 * Returns  the patients, and the functions that tell whom a reference names
 * Throws   never
 * Notes    1. A reference to a Patient that was not received still names a person: `Patient/1`, however it is written.
 *          2. Two Patients of one Type/id on different servers are two persons and keep their full addresses.
 *          3. A contained Patient is the Patient received with the same identifier; else one person for all
 *             containers that hold the same content.
 */
export function knowPersons(ledger: Ledger): Persons {
  const all = ledger.slots.filter((slot) => slot.type === 'Patient');
  const known: Known = { ledger, index: indexSlots(all), texts: new Map() };
  const contained = containedPersons(ledger.slots);
  const personOf = (reference: unknown, from: Slot): string | undefined => {
    const text = textOf(memberOf(reference, 'reference'));
    if (text === undefined) return byIdentifier(known, reference, from);
    if (!text.startsWith('#')) return byText(known, text, reference, from);
    const inside = contained(text.slice(1), from);
    const received = inside?.identifiers.map((key) => meantKey(known, `Patient?identifier=${key}`, from));
    return received?.find((key) => key !== undefined) ?? inside?.key;
  };
  return {
    patients: all.filter((slot) => ledger.isOpen(slot)),
    keyOf: (patient) => keyOf(known, patient),
    personNamed: (text) => byText(known, text, text, undefined),
    personOf,
  };
}

function keyOf({ ledger, index }: Known, patient: Slot): string {
  const sameName = index.byTypeId().get(patient.reference) ?? [];
  if (sameName.length < 2) return patient.reference;
  const persons = new Set(sameName.map((other) => ledger.standsFor(other)));
  return persons.size > 1 ? (patient.fullUrl ?? patient.path) : patient.reference;
}

function meantKey(known: Known, reference: unknown, from: Slot | undefined): string | undefined {
  const slots = findSlots(known.index, reference, from);
  const meant = slots.length < 2 ? slots : [...new Set(slots.map((slot) => known.ledger.standsFor(slot)))];
  const [only] = meant;
  return only !== undefined && meant.length === 1 ? keyOf(known, known.ledger.standsFor(only)) : undefined;
}

function byIdentifier(known: Known, reference: unknown, from: Slot): string | undefined {
  const key = identifierKey(memberOf(reference, 'identifier'));
  return key === undefined ? undefined : (meantKey(known, reference, from) ?? `Patient?identifier=${key}`);
}

function byText(known: Known, text: string, reference: unknown, from: Slot | undefined): string {
  const before = known.texts.get(text);
  if (before !== undefined && memberOf(reference, 'identifier') === undefined) return before;
  const key = meantKey(known, reference, from) ?? notReceived(known, text);
  const dependsOnHolder = (known.index.byTypeId().get(withoutVersion(text))?.length ?? 0) > 1;
  if (!dependsOnHolder && memberOf(reference, 'identifier') === undefined) known.texts.set(text, key);
  return key;
}

/** The name of somebody, or something, that is no Patient of the input. */
function notReceived(known: Known, text: string): string {
  const plain = withoutVersion(text);
  const condition = conditionOf(plain);
  if (condition !== undefined) return `${condition.type}?identifier=${condition.identifier}`;
  if (!isAbsolute(plain)) return plain;
  const tail = restTail(plain);
  if (tail !== undefined) return known.index.byTypeId().has(tail) ? plain : tail;
  known.others ??= new Map(known.ledger.slots.map((slot) => [slot.fullUrl, slot.reference]));
  return known.others.get(plain) ?? plain;
}
