// The one value of an observation or component, and the row of a table its codings agree on.
import { systemAliases, systems } from '../terminology/systems.ts';
import type { Received } from '../bundle/read-bundle-types.ts';
import { rowsFor, type CodeIndex } from './code-index.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { codingsOf, fieldsOf, isFields, listOf, textOf, type Fields } from './fields.ts';
import { unusable } from './unusable.ts';

const valueNames = [
  'valueQuantity',
  'valueCodeableConcept',
  'valueString',
  'valueBoolean',
  'valueInteger',
  'valueDateTime',
  'valuePeriod',
  'valueRange',
  'valueRatio',
  'valueSampledData',
  'valueTime',
] as const;
export type ValueName = (typeof valueNames)[number];

export interface SoleValue {
  readonly kind: 'usable';
  readonly name: ValueName;
  readonly value: unknown;
}

/**
 * Which value does this observation or component carry?
 *
 * Given    holder   an Observation, or one of its components
 *          element  path of the holder inside the resource (`component[0].`), empty for the resource itself
 * Returns  usable    the name of the element and its content, of which nothing is believed
 *          unusable  value-ambiguous (two values, or a value beside a reason for its absence),
 *                    value-absent-with-reason, value-missing
 * Throws   never
 * Source   FHIR R4 Observation.value[x], obs-6; fhir checklist F-V01 to F-V03.
 */
export function readValue(holder: unknown, element = ''): SoleValue | Unusable {
  const fields = fieldsOf(holder);
  const isAbsentForAReason = isFields(fields['dataAbsentReason']);
  let name: ValueName | undefined;
  for (const each of valueNames) {
    if (fields[each] === undefined || fields[each] === null) continue;
    if (name !== undefined) {
      return unusable('value-ambiguous', `${element}${each}`, 'Two values were sent. Send one value[x].');
    }
    name = each;
  }
  if (name === undefined) return withoutValue(fields, isAbsentForAReason, element);
  if (isAbsentForAReason) {
    return unusable(
      'value-ambiguous',
      `${element}dataAbsentReason`,
      'A value and a reason for its absence were both sent. Send one of them.',
    );
  }
  return { kind: 'usable', name, value: fields[name] };
}

function withoutValue(fields: Fields, isAbsentForAReason: boolean, element: string): Unusable {
  if (isAbsentForAReason) {
    return unusable(
      'value-absent-with-reason',
      `${element}dataAbsentReason`,
      'The sender states that the value is absent.',
    );
  }
  const extended = valueNames.find((name) => hasAbsentReason(fields, name));
  return extended === undefined
    ? unusable('value-missing', `${element}value`, 'No value was sent.')
    : unusable(
        'value-absent-with-reason',
        `${element}${extended}`,
        'The sender states that the value is absent.',
      );
}

const absentReasonUrl = 'http://hl7.org/fhir/StructureDefinition/data-absent-reason';

/** Does the element, or the primitive of this name in it, carry the data-absent-reason extension? (F-V03) */
export function hasAbsentReason(fields: Fields, primitive?: string): boolean {
  const holder = primitive === undefined ? fields : fieldsOf(fields[`_${primitive}`]);
  return listOf(holder['extension']).some((extension) => extension['url'] === absentReasonUrl);
}

const known: ReadonlySet<string> = new Set(Object.values(systems));

/** A code system URI in its canonical spelling; an unknown one as sent. */
export function canonicalSystem(value: unknown): string | undefined {
  const sent = textOf(value)?.trim();
  if (sent === undefined || known.has(sent)) return sent;
  const plain = sent.endsWith('/') ? sent.slice(0, -1) : sent;
  if (known.has(plain)) return plain;
  return systemAliases.get(plain.toLowerCase()) ?? sent;
}

/**
 * Which meaning do the codings of one concept agree on?
 *
 * Given    concept  a CodeableConcept as sent
 *          index    a prepared table
 *          meaning  what a row stands for; rows of the same meaning are synonyms
 * Returns  the row; undefined when no coding is in the table; `conflict` when the codings say different things
 * Throws   never
 * Source   fhir checklist F-V10.
 */
export function agreedRow<Row extends { readonly system: string; readonly code: string }>(
  concept: unknown,
  index: CodeIndex<Row>,
  meaning: (row: Row) => unknown,
): Row | 'conflict' | undefined {
  const rows = rowsFor(codingsOf(concept), index);
  const [first] = rows;
  if (first === undefined) return undefined;
  return rows.every((row) => meaning(row) === meaning(first)) ? first : 'conflict';
}

/** Codes as sent, `system|code` with the system in its canonical spelling; a coding without a code is left out. */
export function systemCodesOf(concept: unknown): readonly string[] {
  return codingsOf(concept).flatMap(({ system, code }) =>
    code === undefined ? [] : [`${canonicalSystem(system) ?? ''}|${code}`],
  );
}

/** Says that a coding without its system was matched by the code alone. */
export function reportMissingSystem(
  received: Received,
  concept: unknown,
  element: string,
  context: TimelineContext,
): void {
  if (!codingsOf(concept).some(({ system, code }) => system === undefined && code !== undefined)) return;
  context.issue(received, {
    severity: 'warning',
    code: 'code-without-system',
    type: 'code-invalid',
    element: `${element}.coding`,
    message: 'A coding has no system and was read by its code alone. Send the system.',
  });
}
