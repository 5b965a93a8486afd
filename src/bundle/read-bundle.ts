// From untrusted JSON to the woman's resources, with a reason for each one that is not used.
import type { Patient } from 'fhir/r4.js';
import type { Issue } from '../errors.ts';
import { dropDerivedFromErrors } from './derived.ts';
import { faultyObservations } from './faulty.ts';
import { keepOneOfCopies } from './duplicates.ts';
import { walkEntries } from './entries.ts';
import { sayOperationOutcome } from './entry-issues.ts';
import { information, warning } from './issues.ts';
import { listOf, memberOf } from './json.ts';
import { notNeededOf, openLedger, setAsideOf } from './ledger.ts';
import type { Ledger } from './ledger.ts';
import { unknownModifier } from './modifiers.ts';
import { knowPersons } from './persons.ts';
import type { Persons } from './persons.ts';
import type { Faulty, NotNeeded, ReadBundle, Received, SetAside } from './read-bundle-types.ts';
import { READ_TYPES } from './read-types.ts';
import { makeResolve, receivedOf } from './references.ts';
import { keepNewestSending } from './resent.ts';
import type { Removal, Slot } from './slot.ts';
import { refusedByStatus } from './status.ts';
import { candidates, chooseSubject, keepOwnResources } from './subject.ts';
import { saidTwice } from './twice-said.ts';
import { keepNewestVersions } from './versions.ts';

/**
 * What can be used of what was submitted, about one woman.
 *
 * Given    input    a Bundle of any R4 type, a Parameters holding resources, a single resource, or an array of these
 *          options  subject: the woman's reference (`Patient/1`, `1`, an address); absent: found in the input
 * Returns  her usable resources, one version each; every other resource received with the reason why it is not used;
 *          issues of the bundle itself; and the function that follows references inside the input
 * Throws   RequestError 400 when the input is no resource at all; 422 when several persons may be meant
 * Notes    1. usable + setAside + notNeeded are everything received, each once.
 *          2. The order of entries decides nothing, except between versions that carry neither version nor time.
 * Source   FHIR R4 4.0.1 Bundle, Observation; fhir.md sections 2, 3, 4.1, 4.5
 */
export function readBundle(
  input: unknown,
  options: { readonly subject?: string | undefined } = {},
): ReadBundle {
  const { slots, removals, issues } = walkEntries(input);
  const ledger = openLedger(slots, issues);
  const persons = gate(ledger, removals);
  const subject = chooseSubject(ledger, persons, options.subject);
  keepNewestSending(ledger, persons);
  dropDerivedFromErrors(ledger);
  keepOwnResources(ledger, persons, subject);
  keepOneOfCopies(ledger);
  return handedOn(ledger, subject, faultyObservations(ledger, persons, subject));
}

/**
 * The persons an input may be about, for a shell that assesses each.
 *
 * Given    input  as for readBundle
 * Returns  keys such as `Patient/1`, sorted; one where readBundle would choose by itself; none where nobody is named
 * Throws   RequestError 400 when the input is no resource at all
 */
export function subjectsOf(input: unknown): readonly string[] {
  const { slots, removals, issues } = walkEntries(input);
  const ledger = openLedger(slots, issues);
  return candidates(ledger, gate(ledger, removals));
}

/** Everything that is decided before it matters who the woman is. */
function gate(ledger: Ledger, removals: readonly Removal[]): Persons {
  for (const slot of ledger.slots) refuseShape(ledger, slot);
  keepNewestVersions(ledger, removals);
  for (const slot of ledger.slots) if (ledger.isOpen(slot)) refuseMeaning(ledger, slot);
  return knowPersons(ledger);
}

function refuseShape(ledger: Ledger, slot: Slot): void {
  if (slot.fault === 'too-deep') {
    const message = 'Bundles are nested too deep to be read: send fewer levels.';
    ledger.setAside(slot, { code: 'malformed', message });
    return;
  }
  if (slot.resource === undefined) {
    const message = 'This is no resource: send a JSON object with a resourceType.';
    ledger.setAside(slot, { code: 'not-a-resource', message });
    return;
  }
  if (slot.method === 'PATCH') {
    const message = 'The body of a PATCH is a change, not a resource: send the resource as it is now.';
    ledger.setAside(slot, { code: 'malformed', message });
    return;
  }
  if (READ_TYPES.has(slot.type)) return;
  if (slot.type === 'OperationOutcome') ledger.issues.push(sayOperationOutcome(slot));
  ledger.notNeeded(slot, 'resource type not read');
}

function refuseMeaning(ledger: Ledger, slot: Slot): void {
  const { resource } = slot;
  if (resource === undefined) return;
  const reason = refusedByStatus(resource) ?? unknownModifier(resource) ?? saidTwice(resource);
  if (reason !== undefined) {
    ledger.setAside(slot, reason);
    return;
  }
  if (resource.meta?.tag !== undefined && isSubsetted(resource.meta)) ledger.issues.push(sayPartial(slot));
  if (slot.type === 'Patient' && isReplaced(resource.link)) ledger.issues.push(sayReplaced(slot));
}

function isSubsetted(meta: unknown): boolean {
  return listOf(memberOf(meta, 'tag')).some((tag) => memberOf(tag, 'code') === 'SUBSETTED');
}

function sayPartial(slot: Slot): Issue {
  const message =
    'Marked as a part of a resource (SUBSETTED); what is missing may exist: send the whole resource.';
  return information('partial-resource', 'incomplete', `${slot.path}.meta.tag`, message);
}

function isReplaced(link: unknown): boolean {
  return listOf(link).some((item) => memberOf(item, 'type') === 'replaced-by');
}

function sayReplaced(slot: Slot): Issue {
  const message = 'This Patient was replaced by another record: use that one.';
  return warning('patient-replaced', 'business-rule', `${slot.path}.link`, message);
}

function isPatient(received: Received): received is Received<Patient> {
  return received.resource.resourceType === 'Patient';
}

function handedOn(ledger: Ledger, subject: string | undefined, faulty: readonly Faulty[]): ReadBundle {
  const usable: Received[] = [];
  const setAside: SetAside[] = [];
  const notNeeded: NotNeeded[] = [];
  const byIndex = new Map<number, Received>();
  for (const slot of ledger.slots) {
    const fate = ledger.fateOf(slot);
    const received = fate === undefined ? receivedOf(slot) : undefined;
    if (fate?.kind === 'set-aside') setAside.push(setAsideOf(slot, fate.reason));
    else if (fate?.kind === 'not-needed') notNeeded.push(notNeededOf(slot, fate.why));
    if (received === undefined) continue;
    usable.push(received);
    byIndex.set(slot.index, received);
  }
  const resolve = makeResolve(ledger, byIndex);
  const patient = usable.find(isPatient);
  return {
    received: ledger.slots.length,
    subject,
    patient,
    usable,
    setAside,
    faulty,
    notNeeded,
    issues: ledger.issues,
    resolve,
  };
}
