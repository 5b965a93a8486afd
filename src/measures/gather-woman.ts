// One woman's record for a measurement period, from what was submitted.
import type { Encounter, Patient } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import { prepare, type EvaluateOptions, type Prepared } from '../evaluate.ts';
import type { Guideline } from '../guidelines/guideline.ts';
import { opinionOf, type ViewedOpinion } from '../opinions.ts';
import { prepareAgain } from '../prepare-again.ts';
import { parseMoment } from '../timeline/moment.ts';
import type { Moment, Timeline } from '../timeline/timeline.ts';
import type { Contact, MeasurePeriod, WomanRecord } from './woman-record.ts';

export interface GatherOptions extends Omit<EvaluateOptions, 'asOf' | 'guideline' | 'compare'> {
  readonly period: MeasurePeriod;
  readonly guideline: Guideline;
}

/**
 * What the measures look at.
 *
 * Given    input    a Bundle with the woman's resources
 *          options  the period, both ends inclusive; the guideline; the woman
 * Returns  her record, judged as at the end of the period
 * Throws   RequestError as `evaluate` does
 * Notes    1. Prevention is judged as at the moment before a birth in the period: afterwards it no longer applies.
 */
export function gatherWoman(input: unknown, options: GatherOptions): WomanRecord {
  const { period, guideline: _guideline, ...asked } = options;
  return gatherPrepared(prepare(input, { ...asked, asOf: period.to }), options);
}

/** The same for an input that was prepared as at the end of the period; `opinion` when that is known too. */
export function gatherPrepared(
  prepared: Prepared,
  { period, guideline, ...options }: GatherOptions,
  opinion?: ViewedOpinion,
): WomanRecord {
  const { timeline } = prepared.built;
  const { view, assessment } = opinion ?? opinionOf(timeline, guideline, options.site);
  const birth = timeline.pregnancy.birth?.at;
  const before =
    birth !== undefined && isWithin(birth, period)
      ? opinionOf(prepareAgain(prepared, birth.earliest - 1, options).built.timeline, guideline, options.site)
      : undefined;
  const contacts = prepared.bundle.usable
    .filter(isEncounter)
    .flatMap((received) => contactOf(received, options) ?? [])
    .filter(({ at }) => isWithin(at, period))
    .sort((a, b) => a.at.earliest - b.at.earliest || (a.reference < b.reference ? -1 : 1));
  return {
    subject: prepared.bundle.subject,
    period,
    guideline,
    view,
    classification: assessment.classification,
    referral: assessment.referral,
    prevention: (before?.assessment ?? assessment).prevention,
    contacts,
    site:
      contacts.findLast(({ site }) => site !== undefined)?.site ?? organizationOf(prepared.bundle.patient),
    hasData: contacts.length > 0 || momentsOf(timeline).some((at) => isWithin(at, period)),
  };
}

/** May the moment lie in the period? Both ends are inclusive. */
export function isWithin(at: Moment, { from, to }: MeasurePeriod): boolean {
  return at.latest >= from && at.earliest <= to;
}

function momentsOf(timeline: Timeline): readonly Moment[] {
  return [
    ...timeline.pressures,
    ...timeline.homePressures,
    ...timeline.urineProteins,
    ...timeline.laboratory,
    ...timeline.symptoms,
    ...timeline.requests,
    ...timeline.conditions.map(({ onset, recorded }) => ({ at: recorded ?? onset })),
    ...timeline.medicines.map(({ start }) => ({ at: start })),
  ].flatMap(({ at }) => at ?? []);
}

function isEncounter(received: Received): received is Received<Encounter> {
  return received.resource.resourceType === 'Encounter';
}

const took: readonly unknown[] = ['arrived', 'triaged', 'in-progress', 'onleave', 'finished'];
/** Encounter classes of HL7 ActCode. From memory. */
const inpatient: readonly unknown[] = ['IMP', 'ACUTE', 'NONAC', 'EMER', 'OBSENC', 'SS'];

/** An Encounter that took place and says when; from untrusted JSON, so that each member is looked at. */
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

function organizationOf(patient: Received<Patient> | undefined): string | undefined {
  const reference = member(patient?.resource.managingOrganization, 'reference');
  return typeof reference === 'string' ? reference : undefined;
}

function member(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null
    ? Object.entries(value).find(([key]) => key === name)?.[1]
    : undefined;
}
