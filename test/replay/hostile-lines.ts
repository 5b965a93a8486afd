// Observations written in every way a sender may write them.
import fc from 'fast-check';

const hex = (unit: number): string => unit.toString(16).padStart(4, '0');

/** JSON text of a value with white space, member order and escapes as the numbers say. */
export function writeJson(value: unknown, dice: () => number): string {
  const blank = (): string => ['', '', ' ', '\t', '  '][dice() % 5] ?? '';
  if (typeof value === 'string') return writeString(value, dice);
  if (Array.isArray(value))
    return `[${blank()}${value.map((item) => writeJson(item, dice)).join(`${blank()},${blank()}`)}${blank()}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.entries(value)
    .map(([name, part]) => ({
      order: dice(),
      text: `${writeString(name, dice)}${blank()}:${blank()}${writeJson(part, dice)}`,
    }))
    .sort((a, b) => a.order - b.order);
  return `{${blank()}${members.map(({ text }) => text).join(`${blank()},${blank()}`)}${blank()}}`;
}

function writeString(text: string, dice: () => number): string {
  const escapes = dice() % 4 === 0;
  const units = Array.from(text).map((sign) =>
    escapes && dice() % 3 === 0 && sign.length === 1
      ? `\\u${hex(sign.charCodeAt(0))}`
      : JSON.stringify(sign).slice(1, -1),
  );
  return `"${units.join('')}"`;
}

/** Numbers that decide how a text is written; each run reads them in turn. */
export const diceArbitrary = fc.array(fc.nat({ max: 1000 }), { minLength: 40, maxLength: 40 });

export function throwing(numbers: readonly number[]): () => number {
  let at = 0;
  return () => numbers[at++ % numbers.length] ?? 0;
}

const noise = {
  id: '12345678',
  meta: { versionId: '1', lastUpdated: '2024-03-01T10:00:00Z' },
  text: {
    status: 'generated',
    div: '<div xmlns="http://www.w3.org/1999/xhtml">Température: 37,2\n"ok"</div>',
  },
  status: 'final',
  subject: { reference: 'Patient/1', display: 'Ada Example' },
  effectiveDateTime: '2024-03-01T10:00:00Z',
};

/** One concept as the only thing that makes the Observation worth reading, in its code or in a component. */
export function observationAbout(concept: unknown, place: 'code' | 'component'): unknown {
  const other = { coding: [{ system: 'http://example.org/local', code: 'X1' }], text: 'Some measurement' };
  return place === 'code'
    ? { resourceType: 'Observation', ...noise, code: concept }
    : { resourceType: 'Observation', ...noise, code: other, component: [{ code: other }, { code: concept }] };
}
