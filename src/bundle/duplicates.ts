// The same result received twice under different ids (F-M06, F-M07).
import { canonicalText, isObject, listOf, memberOf, textOf } from './json.ts';
import type { ResourceJson } from './json.ts';
import type { Ledger } from './ledger.ts';
import { effectiveKey, minuteKey } from './minute-key.ts';
import type { Slot } from './slot.ts';
import { isPreliminary } from './status.ts';

/** Members that word or label a value without changing it. */
const NOT_COMPARED: ReadonlySet<string> = new Set([
  'id',
  'display',
  'text',
  'userSelected',
  'version',
  'extension',
]);
const VALUE = /^value[A-Z]/;

type Bucket = Map<string, Map<number | string, Slot | Slot[]>>;

/**
 * Keep one of each set of copies.
 *
 * Given    ledger  open Observations are the woman's, with a usable status
 * Notes    1. Copies share a code, the minute, every value and component (in any order) and the body site.
 *             Wording, identifiers, category, performer and device are not compared.
 *          2. Of a set of copies the final one stays, then the one with the smallest reference.
 * Source   fhir.md F-M07; clinical-rules.md X34
 */
export function keepOneOfCopies(ledger: Ledger): void {
  const buckets: Bucket = new Map();
  const shared: { readonly code: string; readonly slots: Slot[] }[] = [];
  for (const slot of ledger.slots) {
    if (slot.type !== 'Observation' || slot.resource === undefined || !ledger.isOpen(slot)) continue;
    const time = effectiveKey(slot.resource);
    for (const code of codesOf(slot.resource)) {
      const slots = addTo(buckets, code, time, slot);
      if (slots !== undefined) shared.push({ code, slots });
    }
  }
  for (const { code, slots } of shared) setAsideCopies(ledger, code, slots);
}

/** The list, once, when this slot is the second of its code and time. */
function addTo(buckets: Bucket, code: string, time: number | string, slot: Slot): Slot[] | undefined {
  let times = buckets.get(code);
  if (times === undefined) buckets.set(code, (times = new Map<number | string, Slot | Slot[]>()));
  const before = times.get(time);
  if (before === undefined) times.set(time, slot);
  else if (Array.isArray(before)) before.push(slot);
  else if (before !== slot) {
    const slots = [before, slot];
    times.set(time, slots);
    return slots;
  }
  return undefined;
}

function setAsideCopies(ledger: Ledger, code: string, slots: readonly Slot[]): void {
  const kept = new Map<string, Slot>();
  for (const slot of [...new Set(slots)].sort(keptFirst)) {
    const content = contentOf(slot, code);
    const first = kept.get(content);
    if (first === undefined) kept.set(content, slot);
    else {
      ledger.replace(slot, first);
      ledger.setAside(slot, {
        code: 'duplicate',
        message: `The same result as ${first.reference}: counted once.`,
      });
    }
  }
}

function keptFirst(one: Slot, other: Slot): number {
  return Number(isNotFinal(one)) - Number(isNotFinal(other)) || byReference(one, other);
}

export function byReference(one: Slot, other: Slot): number {
  if (one.reference !== other.reference) return one.reference < other.reference ? -1 : 1;
  return one.index - other.index;
}

function isNotFinal(slot: Slot): boolean {
  return slot.resource !== undefined && isPreliminary(slot.resource);
}

/** Codes by which a resource may be found again; its text where it has none. */
export function codesOf(resource: ResourceJson): readonly string[] {
  const codes: string[] = [];
  for (const coding of listOf(memberOf(resource.code, 'coding'))) {
    const code = textOf(memberOf(coding, 'code'));
    if (code !== undefined) codes.push(code);
  }
  const text = codes.length === 0 ? textOf(memberOf(resource.code, 'text')) : undefined;
  return text === undefined ? codes : [text];
}

/** What makes two results the same, as text: values, components in any order, site, members. */
export function contentOf(slot: Slot, code: string): string {
  const resource = slot.resource;
  if (resource === undefined) return slot.path;
  const components = listOf(resource.component).map(componentText).sort();
  const site = conceptText(resource.bodySite);
  const members = listOf(resource.hasMember)
    .map((member) => canonicalText(member, NOT_COMPARED))
    .sort();
  return JSON.stringify([systemOf(resource, code), valuesText(resource), components, site, members]);
}

function systemOf(resource: ResourceJson, code: string): unknown {
  const coding = listOf(memberOf(resource.code, 'coding')).find((item) => memberOf(item, 'code') === code);
  return textOf(memberOf(coding, 'system')) ?? '';
}

function componentText(component: unknown): string {
  return `${conceptText(memberOf(component, 'code'))}:${valuesText(component)}`;
}

/** Every value, and why there is none, of an Observation or a component. */
function valuesText(element: unknown): string {
  if (!isObject(element)) return canonicalText(element);
  const values: string[] = [];
  for (const name of Object.keys(element)) {
    if (name.startsWith('value') && VALUE.test(name))
      values.push(`${name}=${valueText(name, element[name])}`);
    else if (name === 'dataAbsentReason') values.push(`${name}=${conceptText(element[name])}`);
  }
  return values.length > 1 ? values.sort().join() : (values[0] ?? '');
}

function valueText(name: string, value: unknown): string {
  if (name === 'valueCodeableConcept') return conceptText(value);
  if (name === 'valueDateTime' && typeof value === 'string') return String(minuteKey(value));
  if (name !== 'valueQuantity') return canonicalText(value, NOT_COMPARED);
  const unit = textOf(memberOf(value, 'code')) ?? memberOf(value, 'unit');
  return canonicalText([memberOf(value, 'value'), memberOf(value, 'comparator'), unit]);
}

/** A CodeableConcept by its codes in any order, or by its text where it has none. */
function conceptText(concept: unknown): string {
  const codes = listOf(memberOf(concept, 'coding'))
    .filter((coding) => memberOf(coding, 'code') !== undefined)
    .map((coding) => canonicalText([memberOf(coding, 'system'), memberOf(coding, 'code')]));
  return codes.length > 0 ? codes.sort().join() : canonicalText(memberOf(concept, 'text'));
}
