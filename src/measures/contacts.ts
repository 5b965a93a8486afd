// Encounters that took place, from what was submitted.
import type { Encounter, Patient } from 'fhir/r4.js';
import type { ReadBundle, Received } from '../bundle/read-bundle-types.ts';
import type { EvaluateOptions } from '../evaluate.ts';
import { parseMoment } from '../timeline/moment.ts';
import type { Contact } from './pregnancy-record.ts';

/** Every Encounter of the woman that took place and says when, oldest first. */
export function contactsIn(
  bundle: ReadBundle,
  options: Pick<EvaluateOptions, 'facilityOffsetMinutes'>,
): readonly Contact[] {
  return bundle.usable
    .filter(isEncounter)
    .flatMap((received) => contactOf(received, options) ?? [])
    .sort((a, b) => a.at.earliest - b.at.earliest || (a.reference < b.reference ? -1 : 1));
}

function isEncounter(received: Received): received is Received<Encounter> {
  return received.resource.resourceType === 'Encounter';
}

const took: readonly unknown[] = ['arrived', 'triaged', 'in-progress', 'onleave', 'finished'];
/** Encounter classes of HL7 ActCode. From memory. */
const inpatient: readonly unknown[] = ['IMP', 'ACUTE', 'NONAC', 'EMER', 'OBSENC', 'SS'];

/** From untrusted JSON, so that each member is looked at. */
function contactOf(
  received: Received<Encounter>,
  options: Pick<EvaluateOptions, 'facilityOffsetMinutes'>,
): Contact | undefined {
  const { reference, resource } = received;
  const start: unknown = member(resource.period, 'start');
  const at = typeof start === 'string' ? parseMoment(start, options.facilityOffsetMinutes) : undefined;
  if (at === undefined || !took.includes(resource.status)) return undefined;
  const kind = member(resource.class, 'code');
  const site = member(resource.serviceProvider, 'reference');
  return {
    reference,
    at,
    isInpatient: inpatient.includes(kind),
    isVirtual: kind === 'VR',
    ...(typeof site === 'string' ? { site } : {}),
  };
}

/** Where the Patient says she is cared for. */
export function organizationOf(patient: Received<Patient> | undefined): string | undefined {
  const reference = member(patient?.resource.managingOrganization, 'reference');
  return typeof reference === 'string' ? reference : undefined;
}

function member(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null
    ? Object.entries(value).find(([key]) => key === name)?.[1]
    : undefined;
}
