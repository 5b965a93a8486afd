// A quantity written as text ("35 mg/mmol"), for results whose quantity element was not used.
import type { Unusable } from './context.ts';
import { textOf } from './fields.ts';
import { readQuantity, type QuantityKind, type UsableQuantity } from './quantity.ts';
import { unusable } from './unusable.ts';

// A unit stands after a space, or begins with a letter or sign that no number holds.
const shape = /^([<>]=?)?\s*(\d+(?:\.\d+)?)(\s+\S.*|[\p{L}%/[].*)$/u;

/**
 * Which quantity does this text state?
 *
 * Given    value    text as sent: optional comparator, a number with a decimal point, a unit
 *          kind     what is measured
 *          element  name of the element, for the place of a fault
 * Returns  as `readQuantity`; value-not-readable when the text has another shape
 * Throws   never
 * Notes    1. A decimal comma is not guessed at.
 */
export function readQuantityText(
  value: unknown,
  kind: QuantityKind,
  element: string,
): UsableQuantity | Unusable {
  const text = textOf(value)?.trim() ?? '';
  const [, comparator, number, unit] = shape.exec(text) ?? [];
  if (number === undefined || unit === undefined) {
    return unusable(
      'value-not-readable',
      element,
      'The text is not a number with its unit. Send valueQuantity with a UCUM unit.',
    );
  }
  const quantity = { value: Number(number), unit, ...(comparator === undefined ? {} : { comparator }) };
  const read = readQuantity(quantity, kind, element);
  return read.kind === 'unusable' ? { ...read, element } : { ...read, asSent: text };
}
