// A FHIR Quantity as a number in every unit its kind is compared in, or the reason why it cannot be one.
import { systems } from '../terminology/systems.ts';
import { quantityUnits, type QuantityKind, type QuantityUnits, type UnitRow } from '../terminology/units.ts';
import type { Unusable } from './context.ts';
import { canonicalSystem, hasAbsentReason } from './coded-value.ts';
import { isFields, textOf, type Fields } from './fields.ts';
import type { ByUnit, Measured } from './timeline.ts';
import { unusable } from './unusable.ts';

export type { QuantityKind } from '../terminology/units.ts';

export interface UsableQuantity {
  readonly kind: 'usable';
  /** In the first unit of the kind. */
  readonly measured: Measured;
  readonly byUnit: ByUnit;
  /** Comparator, number and unit as sent, for people. */
  readonly asSent: string;
}

const unitsOf: Readonly<Record<QuantityKind, QuantityUnits>> = quantityUnits;

/**
 * What number is this, in the units in which its kind is compared?
 *
 * Given    quantity  a Quantity, SimpleQuantity or component value as sent; nothing is believed about it
 *          kind      what is measured; decides which units are accepted
 *          element   name of the element, for the place of a fault
 * Returns  usable    `measured` in the first unit of the kind; `byUnit.values` under every accepted UCUM code
 *          unusable  value-missing, value-absent-with-reason, value-not-readable, value-out-of-range,
 *                    unit-missing, unit-unknown, modifier-not-understood
 * Throws   never
 * Notes    1. A comparator is kept beside the number; the number is then only a bound.
 *          2. Powers of ten are exact; other factors are rounded to 12 significant digits.
 *          3. kPa becomes a whole mm[Hg], rounded half up.
 *          4. A UCUM code goes before the unit text; when both are known and differ, the value is refused.
 *          5. A code without a system is read like unit text.
 *          6. A number below zero is out of range for every kind.
 * Source   FHIR R4 Quantity (qty-3, comparator); factors: terminology/units.ts
 */
export function readQuantity(
  quantity: unknown,
  kind: QuantityKind,
  element = 'valueQuantity',
): UsableQuantity | Unusable {
  const sent = isFields(quantity) ? quantity : undefined;
  if (sent === undefined)
    return unusable('value-missing', element, 'No value was sent. Send a quantity with its unit.');
  const value = readNumber(sent, element);
  if (typeof value !== 'number') return value;
  const comparator = readComparator(sent['comparator']);
  if (comparator === 'unknown') {
    return unusable(
      'modifier-not-understood',
      `${element}.comparator`,
      'The comparator is not one of <, <=, >=, >.',
    );
  }
  const row = readUnit(sent, kind, element);
  if ('kind' in row) return row;
  const byUnit = inEveryUnit(value, row, kind);
  const first = byUnit.values[firstUnit(kind).code] ?? value;
  const { most } = unitsOf[kind];
  if (most !== undefined && first > most) {
    return unusable(
      'value-out-of-range',
      `${element}.value`,
      'The value is larger than its unit allows. Check the number and the unit.',
    );
  }
  return {
    kind: 'usable',
    measured: comparator === undefined ? { value: first } : { value: first, comparator },
    byUnit,
    asSent: `${comparator ?? ''}${value} ${unitText(sent)}`.trim(),
  };
}

/** A plain number is sent with the unit 1. */
function unitText(sent: Fields): string {
  const text = textOf(sent['unit']) ?? textOf(sent['code']) ?? '';
  return text === '1' ? '' : text;
}

/** The unit in which `measured` of this kind is given. */
export function canonicalUnit(kind: QuantityKind): string {
  return firstUnit(kind).code;
}

/**
 * A number in the accepted units of its kind.
 *
 * Given    value  number in `unit`
 *          unit   one of the UCUM codes of the kind
 * Returns  the number by unit; undefined when the kind does not accept the unit
 * Throws   never
 */
export function byUnitOf(value: number, unit: string, kind: QuantityKind): ByUnit | undefined {
  const row = unitsOf[kind].units.find((each) => each.code === unit);
  return row === undefined ? undefined : inEveryUnit(value, row, kind);
}

function readNumber(sent: Fields, element: string): number | Unusable {
  const value = sent['value'];
  if (typeof value === 'string') {
    return unusable('value-not-readable', `${element}.value`, 'The value is text. Send it as a JSON number.');
  }
  if (value === undefined || value === null) {
    return hasAbsentReason(sent) || hasAbsentReason(sent, 'value')
      ? unusable(
          'value-absent-with-reason',
          `${element}.value`,
          'The sender states that the value is absent.',
        )
      : unusable('value-missing', `${element}.value`, 'The quantity has no value. Send the number.');
  }
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    return unusable(
      'value-not-readable',
      `${element}.value`,
      'The value is not a number. Send a JSON number.',
    );
  }
  if (value < 0)
    return unusable('value-out-of-range', `${element}.value`, 'The value is below zero. Check the number.');
  return value;
}

type SentComparator = Measured['comparator'] | 'unknown';

function readComparator(value: unknown): SentComparator {
  if (value === undefined || value === null) return undefined;
  if (value === '<' || value === '<=' || value === '>' || value === '>=') return value;
  return 'unknown';
}

interface UnitIndex {
  readonly byCode: ReadonlyMap<string, UnitRow>;
  readonly bySpelling: ReadonlyMap<string, UnitRow>;
}

const indexes = new Map<QuantityKind, UnitIndex>();

function indexOf(kind: QuantityKind): UnitIndex {
  const found = indexes.get(kind);
  if (found !== undefined) return found;
  const byCode = new Map<string, UnitRow>();
  const bySpelling = new Map<string, UnitRow>();
  for (const row of unitsOf[kind].units) {
    byCode.set(row.code, row);
    for (const spelling of row.exactly ?? []) byCode.set(spelling, row);
    for (const spelling of row.also ?? []) bySpelling.set(spelling, row);
  }
  const index = { byCode, bySpelling };
  indexes.set(kind, index);
  return index;
}

function readUnit(sent: Fields, kind: QuantityKind, element: string): UnitRow | Unusable {
  const unit = textOf(sent['unit']);
  const system = canonicalSystem(sent['system']);
  const code = system === undefined || system === systems.ucum ? textOf(sent['code']) : undefined;
  if (code === undefined && unit === undefined) {
    const foreign = textOf(sent['code']);
    return foreign === undefined
      ? withoutUnit(kind, element)
      : unknownUnit(foreign, kind, `${element}.system`);
  }
  const byCode = code === undefined ? undefined : lookUp(code, kind);
  const byText = unit === undefined ? undefined : lookUp(unit, kind);
  if (code !== undefined && byCode === undefined) return unknownUnit(code, kind, `${element}.code`);
  const row = byCode ?? byText;
  if (row === undefined) return unknownUnit(unit ?? '', kind, `${element}.unit`);
  if (byText !== undefined && !isSameSize(row, byText)) {
    return unusable(
      'unit-unknown',
      `${element}.unit`,
      'Unit text and unit code name different units. Correct one of them.',
    );
  }
  return row;
}

function lookUp(spelling: string, kind: QuantityKind): UnitRow | undefined {
  const index = indexOf(kind);
  const plain = withoutAnnotation(spelling);
  return index.byCode.get(plain) ?? index.bySpelling.get(normalised(plain));
}

const withoutAnnotation = (spelling: string): string =>
  spelling.includes('{') ? spelling.replace(/\{[^}]*\}/g, '').trim() || '1' : spelling;

// NFKC turns the micro sign into Greek mu and raised digits into plain ones.
const normalised = (spelling: string): string =>
  spelling.normalize('NFKC').replace(/\s+/g, '').replace(/μ/g, 'u').toLowerCase();

function withoutUnit(kind: QuantityKind, element: string): UnitRow | Unusable {
  const { unitless, whenMissing } = unitsOf[kind];
  if (unitless === true) return firstUnit(kind);
  return unusable(
    'unit-missing',
    element,
    whenMissing ?? `The number has no unit. Send one of ${acceptedUnits(kind)}.`,
  );
}

function unknownUnit(spelling: string, kind: QuantityKind, element: string): Unusable {
  const refused = unitsOf[kind].refused?.[normalised(withoutAnnotation(spelling))];
  return unusable(
    'unit-unknown',
    element,
    refused ?? `The unit is not one in which this quantity is read. Send one of ${acceptedUnits(kind)}.`,
  );
}

const acceptedUnits = (kind: QuantityKind): string => unitsOf[kind].units.map((row) => row.code).join(', ');

function firstUnit(kind: QuantityKind): UnitRow {
  const [first] = unitsOf[kind].units;
  if (first === undefined) throw new Error(`No unit for ${kind}`);
  return first;
}

function inEveryUnit(value: number, from: UnitRow, kind: QuantityKind): ByUnit {
  const values: Record<string, number> = {};
  for (const to of unitsOf[kind].units) values[to.code] = convert(value, from, to);
  return { sentUnit: from.code, values };
}

/** Significant digits kept where a factor is not a power of ten. */
const digits = 12;

function convert(value: number, from: UnitRow, to: UnitRow): number {
  if (from === to) return value;
  const tenTo = from.tenTo - to.tenTo;
  if (isSameMultiple(from, to)) return timesTenTo(value, tenTo);
  const product = (value * (from.times ?? 1) * (to.over ?? 1)) / ((from.over ?? 1) * (to.times ?? 1));
  const rounded = timesTenTo(Number(product.toPrecision(digits)), tenTo);
  return to.wholeWhenConverted === true ? Math.floor(rounded + 0.5) : rounded;
}

const isSameMultiple = (one: UnitRow, other: UnitRow): boolean =>
  one.times === other.times && one.over === other.over;

const isSameSize = (one: UnitRow, other: UnitRow): boolean =>
  one === other || (isSameMultiple(one, other) && one.tenTo === other.tenTo);

// Moves the decimal point in the decimal text, so that 100 x 10^-3 is the number written 0.1.
function timesTenTo(value: number, tenTo: number): number {
  if (tenTo === 0) return value;
  // A whole number divided by a power of ten up to 10^22 is rounded once, like the decimal text.
  if (tenTo < 0 && tenTo >= -22 && Number.isSafeInteger(value)) return value / 10 ** -tenTo;
  const [mantissa, exponent] = String(value).split('e');
  return Number(`${mantissa}e${Number(exponent ?? 0) + tenTo}`);
}
