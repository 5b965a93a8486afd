// Was a blood pressure taken at home or in a clinic? Hands on the setting.
import type { Received } from '../bundle/read-bundle-types.ts';
import { millisecondsPerDay } from './calendar.ts';
import type { TimelineContext } from './context.ts';
import type { Fields } from './fields.ts';
import { fieldsOf, listOf, textOf } from './fields.ts';
import type { Circumstances } from './pressure-technique.ts';
import type { Moment, Setting } from './timeline.ts';

/** Encounter classes of HL7 ActCode: at home and virtual; inside a hospital. From memory. */
const homeClasses: readonly unknown[] = ['HH', 'VR'];
const hospitalClasses: readonly unknown[] = ['IMP', 'ACUTE', 'NONAC', 'EMER', 'OBSENC', 'SS'];

/**
 * Where was a single reading taken?
 *
 * Given    received  the observation
 *          place     where a code in it says it was taken
 *          context   the bundle, for its encounter
 * Returns  `home` by a code or by an encounter at home or virtual; `clinic` by a code or any other
 *          encounter; else `unknown`
 * Throws   never
 */
export function settingOfReading(
  received: Received,
  place: Circumstances['place'],
  context: TimelineContext,
): Setting {
  if (place !== undefined) return place;
  if (!hasEncounter(fieldsOf(received.resource))) return 'unknown';
  return homeClasses.includes(encounterClassOf(received, context)) ? 'home' : 'clinic';
}

/**
 * Where was an average taken?
 *
 * Given    as `settingOfReading`, and the span of the readings averaged
 *          isOver24h  whether it is an average over 24 hours by its code
 * Returns  as `settingOfReading`; without a code also `home` when the woman or a relative took it, or the
 *          readings span more than a day outside a hospital
 * Throws   never
 * Source   ours: a series over days, or an ambulatory day, is not one contact with a clinic.
 */
export function settingOfMean(
  received: Received,
  place: Circumstances['place'],
  span: { readonly from: Moment; readonly to: Moment; readonly isOver24h: boolean },
  context: TimelineContext,
): Setting {
  if (place !== undefined) return place;
  const fields = fieldsOf(received.resource);
  const kind = encounterClassOf(received, context);
  if (homeClasses.includes(kind) || isSelfMeasured(received, fields, context)) return 'home';
  if (isHospitalClass(kind)) return 'clinic';
  if (span.isOver24h || span.to.latest - span.from.earliest > millisecondsPerDay) return 'home';
  return hasEncounter(fields) ? 'clinic' : 'unknown';
}

/** Code of the class of the encounter an observation belongs to; undefined when none is known. */
export function encounterClassOf(received: Received, context: TimelineContext): unknown {
  const fields = fieldsOf(received.resource);
  if (!hasEncounter(fields)) return undefined;
  const encounter = fieldsOf(context.bundle.resolve(fields['encounter'], received)?.resource);
  return fieldsOf(encounter['class'])['code'];
}

export function isHospitalClass(kind: unknown): boolean {
  return hospitalClasses.includes(kind);
}

function hasEncounter(fields: Fields): boolean {
  return encounterOf(fields) !== undefined;
}

/** What identifies the encounter of an observation, to compare it with another's. */
export function encounterOf(fields: Fields): string | undefined {
  const encounter = fieldsOf(fields['encounter']);
  return (
    textOf(encounter['reference']) ??
    textOf(fieldsOf(encounter['identifier'])['value']) ??
    textOf(encounter['display'])
  );
}

const lay: readonly unknown[] = ['Patient', 'RelatedPerson'];

function isSelfMeasured(received: Received, fields: Fields, context: TimelineContext): boolean {
  return listOf(fields['performer']).some(
    (performer) =>
      /(^|\/)(Patient|RelatedPerson)\//.test(textOf(performer['reference']) ?? '') ||
      lay.includes(performer['type']) ||
      lay.includes(context.bundle.resolve(performer, received)?.resource.resourceType),
  );
}
