// The public answer as FHIR Parameters: the same names, the same order.
import type { Parameters, ParametersParameter } from 'fhir/r4.js';
import type { Answer, ComparisonAnswer } from './answer-types.ts';
import { toReference } from './reference.ts';

/** Members whose texts are codes. */
const codeMembers: readonly string[] = [
  'classification',
  'urgency',
  'ownUrgency',
  'outcome',
  'known',
  'comparator',
  'level',
  'period',
  'by',
  'kind',
  'severity',
  'grade',
  'purpose',
];

/** Members that are measured numbers, whole or not. */
const decimalMembers: readonly string[] = ['value', 'percent'];

/**
 * The answer as output Parameters.
 *
 * Returns  one parameter for each member, repeated for lists: `classification` as valueCode, leading first;
 *          objects become parts under the same names. Members without content are left out. With a comparison,
 *          one more parameter `comparison`: a part `guideline` for each, and a part `parting` for each question.
 * Throws   never
 */
export function toOutputParameters(answer: Answer, id: string, compared?: ComparisonAnswer): Parameters {
  const comparison =
    compared === undefined
      ? {}
      : { comparison: { guideline: compared.guidelines, parting: compared.partings } };
  const parameter = Object.entries({ ...answer, ...comparison }).flatMap(([name, value]) =>
    toParameters(name, value),
  );
  return { resourceType: 'Parameters', id, parameter };
}

function toParameters(name: string, value: unknown): readonly ParametersParameter[] {
  if (value === undefined || value === null || value === '') return [];
  if (Array.isArray(value)) return value.flatMap((item: unknown) => toParameters(name, item));
  if (typeof value === 'object') return partsOf(name, value);
  if (typeof value === 'boolean') return [{ name, valueBoolean: value }];
  if (typeof value === 'number') return [numberParameter(name, value)];
  return typeof value === 'string' ? [textParameter(name, value)] : [];
}

function partsOf(name: string, value: object): readonly ParametersParameter[] {
  const part = Object.entries(value).flatMap(([key, inner]) => toParameters(key, inner));
  return part.length === 0 ? [] : [{ name, part }];
}

function numberParameter(name: string, value: number): ParametersParameter {
  return Number.isInteger(value) && !decimalMembers.includes(name)
    ? { name, valueInteger: value }
    : { name, valueDecimal: value };
}

function textParameter(name: string, value: string): ParametersParameter {
  if (name === 'asOf') return { name, valueDateTime: value };
  if (name === 'subject') return { name, valueReference: toReference(value) };
  // A code has no blanks around it and none but single ones inside.
  return codeMembers.includes(name) && /^[^\s]+(?: [^\s]+)*$/.test(value)
    ? { name, valueCode: value }
    : { name, valueString: value };
}
