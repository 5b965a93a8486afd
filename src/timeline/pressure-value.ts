// One number of a blood pressure, from an observation or a component. Hands on its value in mm[Hg], or why not.
import { systems } from '../terminology/systems.ts';
import { readValue } from './coded-value.ts';
import type { TimelineContext, Unusable } from './context.ts';
import type { Fields } from './fields.ts';
import { isFields, textOf } from './fields.ts';
import { faultyValue } from './pressure-number.ts';
import { readQuantity, type UsableQuantity } from './quantity.ts';
import { isUnusable, unusable } from './unusable.ts';

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
  /** Sent with `>` or `>=`: the pressure was that or higher. */
  readonly lowerBound?: { readonly sign: '>' | '>='; readonly why: Unusable };
  /** Why it may not classify although its number could be read: the number is for urgency only. */
  readonly fault?: Unusable;
}

export interface PlaceOfHalf {
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
 * Returns  the value in mm[Hg], kPa converted; a bare number when there is no unit at all; a value with its fault
 *          when it is of another type, said twice, or in a unit that is none of pressure, and a number can be
 *          read; unusable when it is missing, absent with a reason, holds no number, or is only known to be
 *          below one
 * Throws   never
 * Notes    1. "At least 160" is kept as 160 with its sign: the pressure was that or higher.
 * Source   fhir checklist F-V01 to F-V06, F-V09; decision 14.
 */
export function readPressureValue(
  element: Fields,
  place: PlaceOfHalf,
  context: TimelineContext,
): PressureValue | Unusable {
  const read = readSound(element, place, context);
  return isUnusable(read) ? faultyValue(element, place, read) : read;
}

function readSound(element: Fields, place: PlaceOfHalf, context: TimelineContext): PressureValue | Unusable {
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
 * Returns  both halves; with their fault when other words stand beside the numbers; undefined when no such
 *          pair of numbers is in the text
 * Throws   never
 * Source   fhir checklist F-P06.
 */
export function readPressureText(
  text: string,
  isMean: boolean,
  context: TimelineContext,
): readonly (PressureValue | Unusable)[] | undefined {
  const found = /^\s*(\d{2,3})\s*\/\s*(\d{2,3})\s*(mm\s?\[?hg\]?)?\s*$/i.exec(text);
  const among = found ?? pairAmongWords.exec(text);
  if (among === null) return undefined;
  const unit = among[3] === undefined ? {} : { unit: among[3] };
  return (['systolic', 'diastolic'] as const).map((half, index) => {
    const element = { valueQuantity: { value: Number(among[index + 1]?.replace(',', '.')), ...unit } };
    const place = { half, isMean, prefix: '' };
    return found === null
      ? faultyValue(element, place, pressureInWords)
      : readPressureValue(element, place, context);
  });
}

/** "BP: 180/115 mmHg, left arm"; no part of a date. */
const pairAmongWords =
  /(?<![\d/.,])(\d{2,3}(?:[.,]\d+)?)\s*\/\s*(\d{2,3}(?:[.,]\d+)?)(?![\d/])\s*(mm\s?\[?hg\]?|kpa)?/i;

const pressureInWords = unusable(
  'value-type-not-usable',
  'valueString',
  'The pressures stand in a text among words: send two components with quantities.',
);

function withoutUnit(
  quantity: Fields,
  place: PlaceOfHalf,
  context: TimelineContext,
): PressureValue | Unusable {
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
  place: PlaceOfHalf,
  remarks: readonly string[],
): PressureValue | Unusable {
  const value = {
    half: place.half,
    isMean: place.isMean,
    mmHg: byUnit.values['mm[Hg]'] ?? measured.value,
    unit: byUnit.sentUnit,
    sent: sentNumber(quantity),
  };
  const { comparator } = measured;
  if (comparator === undefined) return { ...value, remarks };
  const element = `${place.prefix}valueQuantity.comparator`;
  if (comparator === '<' || comparator === '<=')
    return unusable(
      'value-not-readable',
      element,
      'A pressure known only to be below a number cannot be used: measure again and send the number.',
    );
  const why = unusable(
    'value-not-readable',
    element,
    `Sent with ${comparator}: the pressure was that or higher. Measure again and send the number.`,
  );
  return {
    ...value,
    remarks: [...remarks, `the ${place.half} pressure was at least this`],
    lowerBound: { sign: comparator, why },
  };
}

function sentNumber(quantity: Fields): string {
  return `${textOf(quantity['comparator']) ?? ''}${String(quantity['value'])}`;
}
