// One number of a blood pressure, from an observation or a component. Hands on its value in mm[Hg], or why not.
import { systems } from '../terminology/systems.ts';
import { readValue } from './coded-value.ts';
import type { TimelineContext, Unusable } from './context.ts';
import type { Fields } from './fields.ts';
import { isFields, textOf } from './fields.ts';
import { readQuantity, type UsableQuantity } from './quantity.ts';
import { unusable } from './unusable.ts';

export type PressureHalf = 'systolic' | 'diastolic';

export interface PressureValue {
  readonly half: PressureHalf;
  /** An average of several readings. */
  readonly isMean: boolean;
  /** mm[Hg]; the bare number when no unit was sent. */
  readonly mmHg: number;
  /** Unit as understood; absent when none was sent and the site declares none. */
  readonly unit?: string;
  /** Number as sent, with its comparator. */
  readonly sent: string;
  readonly remarks: readonly string[];
}

interface Place {
  readonly half: PressureHalf;
  readonly isMean: boolean;
  /** `component[1].`, or empty for the observation itself. */
  readonly prefix: string;
}

/**
 * Which pressure does this element hold?
 *
 * Given    element  an observation or component whose code names one half of a blood pressure
 *          place    which half, and where the element stands
 *          context  the unit a site declares for numbers without one
 * Returns  the value in mm[Hg], kPa converted; a bare number when there is no unit at all; unusable when it
 *          is missing, absent with a reason, of another type, in a unit that is none of pressure, or only
 *          known to be below a number
 * Throws   never
 * Notes    1. "At least 160" is kept as 160 with a remark: the pressure was that or higher.
 * Source   fhir checklist F-V01 to F-V06, F-V09; decision 14.
 */
export function readPressureValue(
  element: Fields,
  place: Place,
  context: TimelineContext,
): PressureValue | Unusable {
  const sole = readValue(element, place.prefix);
  if (sole.kind === 'unusable') return sole;
  const path = `${place.prefix}${sole.name}`;
  if (sole.name !== 'valueQuantity' || !isFields(sole.value))
    return unusable('value-type-not-usable', path, 'A pressure is a quantity: send valueQuantity.');
  const read = readQuantity(sole.value, 'pressure', path);
  if (read.kind === 'usable') return valueFrom(sole.value, read, place, []);
  return read.code === 'unit-missing' ? withoutUnit(sole.value, place, context) : read;
}

/**
 * Which pressure is this text? For `152/98`, with or without mmHg, in one string.
 *
 * Given    text     `valueString` of a panel
 *          isMean   whether the panel holds averages
 *          context  as above
 * Returns  both halves; undefined when the text has another shape
 * Throws   never
 * Source   fhir checklist F-P06.
 */
export function readPressureText(
  text: string,
  isMean: boolean,
  context: TimelineContext,
): readonly (PressureValue | Unusable)[] | undefined {
  const found = /^\s*(\d{2,3})\s*\/\s*(\d{2,3})\s*(mm\s?\[?hg\]?)?\s*$/i.exec(text);
  if (found === null) return undefined;
  const unit = found[3] === undefined ? {} : { unit: 'mmHg' };
  return (['systolic', 'diastolic'] as const).map((half, index) =>
    readPressureValue(
      { valueQuantity: { value: Number(found[index + 1]), ...unit } },
      { half, isMean, prefix: '' },
      context,
    ),
  );
}

function withoutUnit(quantity: Fields, place: Place, context: TimelineContext): PressureValue | Unusable {
  const unit = context.defaultPressureUnit;
  if (unit !== undefined) {
    const completed = { ...quantity, unit, code: unit, system: systems.ucum };
    const read = readQuantity(completed, 'pressure');
    const remark = `no unit was sent; ${unit} is the unit this site declares`;
    return read.kind === 'usable' ? valueFrom(quantity, read, place, [remark]) : read;
  }
  const value = quantity['value'];
  if (typeof value !== 'number' || !Number.isFinite(value))
    return unusable('value-not-readable', `${place.prefix}valueQuantity.value`, 'The value is not a number.');
  return { half: place.half, isMean: place.isMean, mmHg: value, sent: sentNumber(quantity), remarks: [] };
}

function valueFrom(
  quantity: Fields,
  { measured, byUnit }: UsableQuantity,
  place: Place,
  remarks: readonly string[],
): PressureValue | Unusable {
  const mmHg = byUnit.values['mm[Hg]'] ?? measured.value;
  if (measured.comparator === '<' || measured.comparator === '<=')
    return unusable(
      'value-not-readable',
      `${place.prefix}valueQuantity.comparator`,
      'A pressure known only to be below a number cannot be used.',
    );
  const atLeast = measured.comparator === undefined ? [] : [`the ${place.half} pressure was at least this`];
  return {
    half: place.half,
    isMean: place.isMean,
    mmHg,
    unit: byUnit.sentUnit,
    sent: sentNumber(quantity),
    remarks: [...remarks, ...atLeast],
  };
}

function sentNumber(quantity: Fields): string {
  return `${textOf(quantity['comparator']) ?? ''}${String(quantity['value'])}`;
}
