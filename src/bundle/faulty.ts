// Observations of the woman that were set aside for their form: a severe pressure among them must not be lost.
import type { SetAsideCode } from '../errors.ts';
import type { Reason, Ledger } from './ledger.ts';
import type { Persons } from './persons.ts';
import type { Faulty } from './read-bundle-types.ts';
import { receivedOf } from './references.ts';
import { isSending, resultKeys } from './resent.ts';
import type { Slot } from './slot.ts';
import { isAboutHer } from './subject.ts';

/** What the gate finds in the form of an observation; one in error or cancelled was withdrawn, not badly sent. */
const OF_FORM: ReadonlySet<SetAsideCode> = new Set<SetAsideCode>([
  'status-missing',
  'status-not-usable',
  'modifier-not-understood',
  'value-ambiguous',
  'time-invalid',
]);

/**
 * Which observations of the woman were set aside for their form?
 *
 * Given    ledger   with every fate decided
 *          subject  her key; undefined when nobody is named
 * Returns  each with the reason; without those whose result was sent again in a form that counts
 * Throws   never
 * Source   decision 5
 */
export function faultyObservations(
  ledger: Ledger,
  persons: Persons,
  subject: string | undefined,
): readonly Faulty[] {
  const found = ledger.slots.flatMap((slot) => {
    const reason = reasonOf(ledger, slot);
    return reason === undefined ? [] : [{ slot, reason }];
  });
  if (found.length === 0) return [];
  const sent = keysSent(ledger, persons);
  const woman =
    subject ?? onlyPerson(found.map(({ slot }) => persons.personOf(slot.resource?.subject, slot)));
  return found.flatMap(({ slot, reason }) => {
    const received = receivedOf(slot);
    if (received === undefined || !isAboutHer(ledger, persons, slot, woman)) return [];
    if (resultKeys(slot, persons).some((key) => sent.has(key))) return [];
    return [{ received, element: reason.element ?? '', message: reason.message }];
  });
}

function reasonOf(ledger: Ledger, slot: Slot): Reason | undefined {
  if (slot.type !== 'Observation') return undefined;
  const fate = ledger.fateOf(slot);
  return fate?.kind === 'set-aside' && OF_FORM.has(fate.reason.code) ? fate.reason : undefined;
}

function keysSent(ledger: Ledger, persons: Persons): ReadonlySet<string> {
  const sendings = ledger.slots.filter((slot) => slot.type === 'Observation' && isSending(ledger, slot));
  return new Set(sendings.flatMap((slot) => resultKeys(slot, persons)));
}

function onlyPerson(named: readonly (string | undefined)[]): string | undefined {
  const [only, ...others] = new Set(named.filter((person) => person !== undefined));
  return others.length === 0 ? only : undefined;
}
