// Urine protein as what it is: strip, ratio, 24-hour quantity or concentration, and other signs of the strip.
import type { Observation } from 'fhir/r4.js';
import type { Received } from '../bundle/read-bundle-types.ts';
import { stripInterpretations } from '../terminology/strip-grades.ts';
import {
  urineProteinCodes,
  urineSignCodes,
  type UrineProteinKind,
  type UrineSignName,
} from '../terminology/urine-codes.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import { agreedRow, readValue, reportMissingSystem, type SoleValue } from './coded-value.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { codingsOf, fieldsOf, isFields, listOf, textOf } from './fields.ts';
import { readPresence } from './presence.ts';
import { readQuantity, type QuantityKind } from './quantity.ts';
import { readQuantityText } from './quantity-text.ts';
import { sourceOf } from './source.ts';
import {
  gradeInCode,
  gradeOfBin,
  gradeOfConcept,
  gradeOfNumber,
  gradeOfText,
  gradeWritten,
  type Grade,
} from './strip-grade.ts';
import type { Moment, UrineProtein, UrineSign } from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';
import { urineSampleOf } from './urine-sample.ts';

const proteinIndex = indexCodes(urineProteinCodes);
const signIndex = indexCodes(urineSignCodes);

/** Which kind of urine protein result a code names; undefined when it names none. */
export function urineProteinKindOf(code: unknown): UrineProteinKind | undefined {
  const [row] = rowsFor(codingsOf(code), proteinIndex);
  return row?.kind ?? (gradeInCode(code) === undefined ? undefined : 'strip');
}

/** Which other sign of the urine strip a code names; undefined when it names none. */
export function urineSignOf(code: unknown): UrineSignName | undefined {
  return rowsFor(codingsOf(code), signIndex)[0]?.sign;
}

/**
 * What did this urine result show about protein?
 *
 * Given    received  an observation whose code `urineProteinKindOf` recognises
 *          context   takes notice of codings without a system
 *          at        its moment
 * Returns  the result in its own kind; no kind is converted into another
 *          unusable  value-ambiguous (two kinds of code, two values, coding against text),
 *                    value-missing, value-absent-with-reason, value-not-readable, value-type-not-usable,
 *                    value-out-of-range, unit-missing, unit-unknown, code-missing
 * Throws   never
 * Notes    1. A number in mg/dL under a strip code is the label of a bin, never a concentration.
 *          2. A strip read for the ratio gives no number and is not used.
 *          3. A strip without value is read from its interpretation, positive or negative only.
 * Source   terminology.md section 2; clinical-rules 1.6.
 */
export function readUrineProtein(
  received: Received<Observation>,
  context: TimelineContext,
  at: Moment,
): UrineProtein | Unusable {
  const { resource } = received;
  const agreed = agreedRow(resource.code, proteinIndex, (row) => row.kind);
  if (agreed === 'conflict') {
    return unusable(
      'value-ambiguous',
      'code',
      'The codings name different kinds of urine test. Send one kind.',
    );
  }
  const kind = agreed?.kind ?? urineProteinKindOf(resource.code);
  if (kind === undefined) return unusable('code-missing', 'code', 'The code names no urine protein test.');
  reportMissingSystem(received, resource.code, 'code', context);
  const result = readResult(received, kind, at);
  const sample = isUnusable(result) ? undefined : urineSampleOf(received, context);
  return isUnusable(result) || sample === undefined ? result : { ...result, sample };
}

function readResult(
  { resource, reference, preliminary }: Received<Observation>,
  kind: UrineProteinKind,
  at: Moment,
): UrineProtein | Unusable {
  const source = { reference, preliminary };
  if (kind === 'strip' || kind === 'strip-mass') {
    const grade = readGrade(resource);
    if (grade.kind === 'unusable') return grade;
    return { kind: 'strip', at, grade: grade.grade, asSent: grade.asSent, source, remarks: grade.remarks };
  }
  if (kind === 'strip-ratio') {
    return unusable(
      'method-not-usable',
      'code',
      'A ratio read from a strip is not used. Send a laboratory ratio, or the strip grade under 20454-5.',
    );
  }
  const read = readAmount(resource, quantityKinds[kind]);
  if (read.kind === 'unusable') return read;
  const { measured, byUnit, asSent } = read;
  return { kind, at, measured, byUnit, asSent, source, remarks: [] };
}

const quantityKinds = {
  'protein-creatinine-ratio': 'protein-creatinine-ratio',
  'albumin-creatinine-ratio': 'albumin-creatinine-ratio',
  'excretion-24h': 'protein-excretion',
  concentration: 'protein-concentration',
} as const satisfies Readonly<Record<string, QuantityKind>>;

function readAmount(resource: Observation, kind: QuantityKind): ReturnType<typeof readQuantity> {
  const sole = readValue(resource);
  if (sole.kind === 'unusable') return sole;
  if (sole.name === 'valueQuantity') return readQuantity(sole.value, kind);
  if (sole.name === 'valueString') return readQuantityText(sole.value, kind, sole.name);
  return unusable(
    'value-type-not-usable',
    sole.name,
    'A urine quantity is sent as valueQuantity with its unit.',
  );
}

function readGrade(resource: Observation): Grade | Unusable {
  const sole = readValue(resource);
  const stated = gradeInCode(resource.code);
  if (sole.kind === 'unusable') {
    if (sole.code !== 'value-missing') return sole;
    return stated ?? gradeOfInterpretation(resource) ?? sole;
  }
  if (stated !== undefined) return confirmed(stated, sole, resource);
  return gradeOfValue(sole);
}

// A code that states the grade, with a value: the value may only confirm or deny it.
function confirmed(stated: Grade, sole: SoleValue, resource: Observation): Grade | Unusable {
  const presence = readPresence(resource);
  if (presence.kind === 'usable' && presence.presence === 'present') return stated;
  const grade = gradeOfValue(sole);
  if (grade.kind === 'usable' && grade.grade === stated.grade) return stated;
  return unusable(
    'value-ambiguous',
    sole.name,
    'The code states a grade and the value does not confirm it. Send the grade once.',
  );
}

function gradeOfValue(sole: SoleValue): Grade | Unusable {
  const { name, value } = sole;
  switch (name) {
    case 'valueCodeableConcept':
      return gradeOfConcept(value, name);
    case 'valueString': {
      const text = textOf(value);
      return text === undefined
        ? unusable('value-not-readable', name, 'The text is empty.')
        : gradeOfText(text, name);
    }
    case 'valueInteger':
      return gradeOfNumber(value, name);
    case 'valueBoolean':
      return typeof value === 'boolean'
        ? { kind: 'usable', grade: value ? 'positive-ungraded' : 0, asSent: String(value), remarks: [] }
        : unusable('value-not-readable', name, 'The value is not true or false.');
    case 'valueQuantity':
      return isGradeQuantity(value)
        ? gradeOfNumber(value['value'], `${name}.value`)
        : gradeOfBin(value, name);
    default:
      return unusable(
        'value-type-not-usable',
        name,
        'A strip result is sent as code or text: negative, trace, 1+ to 4+.',
      );
  }
}

// A quantity that counts plus signs: its unit says so, or is the unit 1.
function isGradeQuantity(value: unknown): value is Readonly<Record<string, unknown>> {
  if (!isFields(value) || value['comparator'] !== undefined) return false;
  const unit = textOf(value['code']) ?? textOf(value['unit']);
  return unit !== undefined && gradeUnits.has(unit.toLowerCase());
}

const gradeUnits: ReadonlySet<string> = new Set(['1', '+', 'plus', '{plus}', 'grade', '{grade}']);

function gradeOfInterpretation(resource: Observation): Grade | undefined {
  for (const concept of listOf(resource.interpretation)) {
    for (const { code } of codingsOf(concept)) {
      const meaning = code === undefined ? undefined : interpretations.get(code);
      if (code !== undefined && (meaning === 0 || meaning === 'positive-ungraded')) {
        return { kind: 'usable', grade: meaning, asSent: code, remarks: ['Read from the interpretation.'] };
      }
    }
  }
  return undefined;
}

const interpretations = new Map(Object.entries(stripInterpretations));

/**
 * Was nitrite, leucocyte esterase or blood found on the strip?
 *
 * Given    received  an observation whose code `urineSignOf` recognises
 *          context   takes notice of codings without a system
 *          at        its moment
 * Returns  the sign; any grade from trace up counts as present
 *          unusable  as `readPresence`
 * Throws   never
 */
export function readUrineSign(
  received: Received<Observation>,
  context: TimelineContext,
  at: Moment,
): UrineSign | Unusable {
  const sign = urineSignOf(received.resource.code);
  if (sign === undefined) return unusable('code-missing', 'code', 'The code names no sign of a urine strip.');
  reportMissingSystem(received, received.resource.code, 'code', context);
  const presence = signPresence(received.resource);
  if (presence.kind === 'unusable') return presence;
  return { at, sign, present: presence.present, asSent: presence.asSent, source: sourceOf(received) };
}

function signPresence(
  resource: Observation,
): { kind: 'usable'; present: boolean; asSent: string } | Unusable {
  const grade = readGrade(resource);
  if (grade.kind === 'usable') return { kind: 'usable', present: grade.grade !== 0, asSent: grade.asSent };
  const presence = readPresence(resource);
  if (presence.kind === 'usable') {
    return { kind: 'usable', present: presence.presence === 'present', asSent: presence.asSent };
  }
  const written = textOf(fieldsOf(resource.valueCodeableConcept)['text']) ?? textOf(resource.valueString);
  // Sizes have no grade for protein, and are enough to say that a sign is there.
  if (written !== undefined && gradeWritten(written) === 'scale-unknown') {
    return { kind: 'usable', present: true, asSent: written };
  }
  return grade;
}
