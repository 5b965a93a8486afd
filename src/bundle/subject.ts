// Which person is the woman, and which resources are about her (F-B14, F-R12, F-P11).
import { RequestError } from '../errors.ts';
import { SUBJECT_HINT_LOINC } from '../terminology/subject-hints.ts';
import { warning } from './issues.ts';
import { isObject, listOf, memberOf, textOf } from './json.ts';
import type { Ledger } from './ledger.ts';
import type { Persons } from './persons.ts';
import { READ_TYPES } from './read-types.ts';
import type { Slot } from './slot.ts';

/**
 * The woman the request is about.
 *
 * Given    asked  her reference or bare id, when the request names her
 * Returns  her key (`Patient/1`); undefined when nothing in the input names anybody
 * Throws   RequestError 422 `business-rule` when several persons remain
 * Notes    1. Named by the request; else the only Patient; else the only person with blood pressure or pregnancy
 *             data; else the only person with clinical data; else, with no Patient received, the only person named.
 */
export function chooseSubject(
  ledger: Ledger,
  persons: Persons,
  asked: string | undefined,
): string | undefined {
  if (asked !== undefined && asked !== '') return personAsked(persons, asked);
  const women = candidates(ledger, persons);
  if (women.length > 1) throw severalPersons();
  return women[0];
}

/** Every person who may be meant, sorted; one when it is clear who. */
export function candidates(ledger: Ledger, persons: Persons): readonly string[] {
  const patients = [...new Set(persons.patients.map(persons.keyOf))];
  if (patients.length === 1) return patients;
  const anyhow = new Set<string>();
  const clinical = new Set<string>();
  const hinted = new Set<string>();
  for (const slot of ledger.slots) {
    const type = READ_TYPES.get(slot.type);
    if (type?.subjectElement === undefined || !ledger.isOpen(slot)) continue;
    const person = persons.personOf(slot.resource?.[type.subjectElement], slot);
    if (person === undefined || isNoPerson(person)) continue;
    anyhow.add(person);
    if (!type.clinical) continue;
    clinical.add(person);
    if (slot.type === 'Observation' && hasHint(slot)) hinted.add(person);
  }
  if (hinted.size === 1) return [...hinted];
  if (clinical.size > 0) return [...clinical].sort();
  return (patients.length > 0 ? patients : [...anyhow]).sort();
}

function personAsked(persons: Persons, asked: string): string {
  if (persons.patients.some((patient) => persons.keyOf(patient) === asked)) return asked;
  const isBareId = /^[A-Za-z0-9\-._]+$/.test(asked);
  return persons.personNamed(isBareId ? `Patient/${asked}` : asked);
}

/** `Group/1`, `Location/1`, a bare "1": nobody who could be the woman. */
function isNoPerson(key: string): boolean {
  return !/^Patient[/?]|^https?:|^urn:|#/i.test(key);
}

function hasHint(slot: Slot): boolean {
  return listOf(memberOf(slot.resource?.code, 'coding')).some((coding) => {
    const code = memberOf(coding, 'code');
    return typeof code === 'string' && SUBJECT_HINT_LOINC.has(code);
  });
}

function severalPersons(): RequestError {
  const message = 'The input is about several persons: name the one meant by the parameter subject.';
  return new RequestError(422, [
    { severity: 'error', code: 'subject-ambiguous', type: 'business-rule', expression: '', message },
  ]);
}

/**
 * Set aside what is not about the woman.
 *
 * Given    subject  her key; undefined when nobody is named
 * Notes    1. A resource without a subject is hers, with a warning, when she is the only Patient received, or when no
 *             Patient was received and no resource names a subject; else it is set aside.
 *          2. An Observation with a focus is used only when the focus is the woman herself.
 * Source   fhir.md F-R12, F-P11
 */
export function keepOwnResources(ledger: Ledger, persons: Persons, subject: string | undefined): void {
  const open = ledger.slots.filter((slot) => ledger.isOpen(slot));
  let adopts: boolean | undefined;
  for (const slot of open) {
    if (slot.type === 'Patient') {
      if (persons.keyOf(slot) !== subject) ledger.notNeeded(slot, 'another person');
      continue;
    }
    const rule = READ_TYPES.get(slot.type);
    const element = rule?.subjectElement;
    if (rule === undefined || element === undefined) continue;
    const reference = slot.resource?.[element];
    const person = persons.personOf(reference, slot);
    if (isMalformed(reference)) setAsideMalformed(ledger, slot, element);
    else if (person !== undefined) keepIfHers(ledger, slot, element, person === subject);
    else if (rule.required)
      keepIfAdopted(ledger, slot, element, (adopts ??= adoptsNameless(open, persons, subject)));
    if (slot.resource?.focus !== undefined) keepIfFocusIsHer(ledger, persons, slot, subject);
  }
}

function isMalformed(reference: unknown): boolean {
  if (reference === undefined) return false;
  if (!isObject(reference)) return true;
  return reference.reference !== undefined && textOf(reference.reference) === undefined;
}

function setAsideMalformed(ledger: Ledger, slot: Slot, element: string): void {
  const message = `${element} is no Reference: send {"reference": "Patient/id"}.`;
  ledger.setAside(slot, { code: 'malformed', element, message });
}

function keepIfHers(ledger: Ledger, slot: Slot, element: string, isHers: boolean): void {
  if (isHers) return;
  const message =
    'It is about another person than the one assessed: assess that person, or mend the reference.';
  ledger.setAside(slot, { code: 'other-subject', element, message });
}

function keepIfAdopted(ledger: Ledger, slot: Slot, element: string, isAdopted: boolean): void {
  if (isAdopted) {
    const message = `It names no person and was taken to be about the one assessed: fill ${element}.`;
    ledger.issues.push(warning('subject-adopted', 'business-rule', `${slot.path}.${element}`, message));
    return;
  }
  const message = `It names no person, and the input does not tell whose it is: fill ${element}.`;
  ledger.setAside(slot, { code: 'subject-missing', element, message });
}

function adoptsNameless(open: readonly Slot[], persons: Persons, subject: string | undefined): boolean {
  const [only, ...others] = persons.patients;
  if (only !== undefined) return others.length === 0 && persons.keyOf(only) === subject;
  return open.every((slot) => {
    const element = READ_TYPES.get(slot.type)?.subjectElement;
    return element === undefined || persons.personOf(slot.resource?.[element], slot) === undefined;
  });
}

/**
 * Is this resource, set aside for another reason, about the woman?
 *
 * Given    subject  her key; undefined when nobody is named
 * Returns  true when it names her, or names nobody and she is the only one it can be about, and its focus is hers
 * Throws   never
 */
export function isAboutHer(
  ledger: Ledger,
  persons: Persons,
  slot: Slot,
  subject: string | undefined,
): boolean {
  const reference = slot.resource?.subject;
  if (isMalformed(reference)) return false;
  const person = persons.personOf(reference, slot);
  const isHers = person === undefined ? adoptsNameless(ledger.slots, persons, subject) : person === subject;
  return isHers && isFocusHers(persons, slot, subject);
}

function keepIfFocusIsHer(ledger: Ledger, persons: Persons, slot: Slot, subject: string | undefined): void {
  if (slot.type !== 'Observation' || isFocusHers(persons, slot, subject)) return;
  const message =
    'Its focus is not the woman herself (a fetus, a newborn, a device): it says nothing about her.';
  ledger.setAside(slot, { code: 'not-the-mother', element: 'focus', message });
}

function isFocusHers(persons: Persons, slot: Slot, subject: string | undefined): boolean {
  const focus = slot.resource?.focus;
  if (focus === undefined || (Array.isArray(focus) && focus.length === 0)) return true;
  if (!Array.isArray(focus) || subject === undefined) return false;
  return focus.every((item) => persons.personOf(item, slot) === subject);
}
