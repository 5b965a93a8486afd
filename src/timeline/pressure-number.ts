// The number of a pressure that was not sent as it should be: read for urgency only, never to classify.
import { otherPressureUnits } from '../terminology/other-pressure-units.ts';
import type { Unusable } from './context.ts';
import type { Fields } from './fields.ts';
import { isFields, textOf } from './fields.ts';
import type { PlaceOfHalf, PressureValue } from './pressure-value.ts';
import { readQuantity } from './quantity.ts';

/**
 * A pressure with a fault, as far as its number can be read.
 *
 * Given    element  an observation or component that names one half of a blood pressure
 *          place    which half, and where the element stands
 *          fault    why it may not classify
 * Returns  the value with its fault; of several numbers the highest; the fault alone when a value is absent,
 *          is only known to be below a number, or holds no number
 * Throws   never
 * Notes    1. A number without a unit, or in a unit that is none of pressure, is taken as if it were mm[Hg].
 * Source   decisions 5 and 14; fhir checklist F-V09.
 */
export function faultyValue(element: Fields, place: PlaceOfHalf, fault: Unusable): PressureValue | Unusable {
  if (isFields(element['valueQuantity']) && /^</.test(textOf(element['valueQuantity']['comparator']) ?? ''))
    return fault;
  const [highest] = numbersIn(element).sort((one, other) => other.mmHg - one.mmHg);
  return highest === undefined
    ? fault
    : { half: place.half, isMean: place.isMean, ...highest, remarks: [], fault };
}

type Found = Pick<PressureValue, 'mmHg' | 'sent' | 'unit'>;

function numbersIn(element: Fields): Found[] {
  const { valueQuantity, valueRange, valueInteger, valueString } = element;
  const range = isFields(valueRange) ? (valueRange['high'] ?? valueRange['low']) : undefined;
  return [valueQuantity, range, { value: valueInteger }, quantityInText(valueString)].flatMap((quantity) => {
    const found = isFields(quantity) ? numberOf(quantity) : undefined;
    return found === undefined ? [] : [found];
  });
}

/** "180", "180 mmHg", "about 24,0 kPa": the first number, with the unit behind it. */
function quantityInText(text: unknown): Fields | undefined {
  const found = /(\d+(?:[.,]\d+)?)\s*(mm\s?\[?hg\]?|kpa)?/i.exec(textOf(text) ?? '');
  if (found === null) return undefined;
  return { value: found[1], ...(found[2] === undefined ? {} : { unit: found[2] }) };
}

function numberOf(quantity: Fields): Found | undefined {
  const sent = quantity['value'];
  const value = typeof sent === 'string' && sent.trim() !== '' ? Number(sent.trim().replace(',', '.')) : sent;
  if (typeof value !== 'number' || !Number.isFinite(value) || value < 0) return undefined;
  const units = [textOf(quantity['code']), textOf(quantity['unit'])].filter((unit) => unit !== undefined);
  const [unit] = units;
  const understood = units.flatMap((each) => inMmHg(value, each) ?? []);
  return {
    mmHg: understood.length === 0 ? value : Math.max(...understood),
    sent: String(value),
    ...(unit === undefined ? {} : { unit }),
  };
}

function inMmHg(value: number, unit: string): number | undefined {
  const read = readQuantity({ value, unit }, 'pressure');
  if (read.kind === 'usable') return read.byUnit.values['mm[Hg]'];
  const factor = otherPressureUnits.get(unit.toLowerCase().replace(/[\s[\]]/g, ''));
  return factor === undefined ? undefined : Math.floor(value * factor + 0.5);
}
