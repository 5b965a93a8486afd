// A urine strip's answer as a grade: codes, signs and words, bin labels.
import {
  stripBins,
  stripCodes,
  stripFindingCodes,
  stripWords,
  type StripCode,
  type StripMeaning,
} from '../terminology/strip-grades.ts';
import { indexCodes } from './code-index.ts';
import { agreedRow } from './coded-value.ts';
import type { Unusable } from './context.ts';
import { fieldsOf, textOf, wordingOf } from './fields.ts';
import { readQuantity } from './quantity.ts';
import type { StripGrade } from './timeline.ts';
import { unusable } from './unusable.ts';

export interface Grade {
  readonly kind: 'usable';
  readonly grade: StripGrade;
  readonly asSent: string;
  readonly remarks: readonly string[];
}

const gradeIndex = indexCodes([...stripCodes, ...stripFindingCodes]);
const findingIndex = indexCodes(stripFindingCodes);

/** The grade that an observation code itself states (`Urine protein test = ++`). */
export function gradeInCode(code: unknown): Grade | undefined {
  const row = agreedRow(code, findingIndex, meaningOf);
  if (row === undefined || row === 'conflict' || !isGrade(row.grade)) return undefined;
  return { kind: 'usable', grade: row.grade, asSent: wordingOf(code) ?? row.code, remarks: [] };
}

const meaningOf = (row: StripCode): string => `${row.grade}/${row.outOf ?? ''}`;

/**
 * Which grade do the codings and the text of a value state?
 *
 * Given    concept  a CodeableConcept as sent
 *          place    path of the value in the resource
 * Returns  usable    the grade; a grade of a three-plus scale is kept as it stands, with a remark
 *          unusable  value-ambiguous (codings, or coding and text, differ), value-not-readable
 * Throws   never
 * Notes    1. "Positive" beside a grade is no contradiction: the grade says more.
 * Source   terminology.md section 2, consequences for a parser.
 */
export function gradeOfConcept(concept: unknown, place: string): Grade | Unusable {
  const row = agreedRow(concept, gradeIndex, meaningOf);
  if (row === 'conflict') return contradiction(place);
  const text = textOf(fieldsOf(concept)['text']);
  const written = text === undefined ? undefined : gradeWritten(text);
  const coded = row?.grade;
  if (coded !== undefined && written !== undefined && !isCompatible(coded, written))
    return contradiction(place);
  const meaning = isNumbered(written) ? written : (coded ?? written);
  const remarks = row?.outOf === undefined ? [] : ['Graded on a scale of three plus signs, not four.'];
  return toGrade(meaning, wordingOf(concept) ?? row?.code ?? '', place, remarks);
}

/** The grade written in a text, or the label of a strip in mg/dL; or why it cannot be read. */
export function gradeOfText(text: string, place: string): Grade | Unusable {
  const meaning = gradeWritten(text);
  const [, label] = /^\s*(\d+(?:\.\d+)?)\s*mg\/dl\.?\s*$/i.exec(text) ?? [];
  return meaning === undefined && label !== undefined
    ? gradeOfBin({ value: Number(label), unit: 'mg/dL' }, place)
    : toGrade(meaning, text, place, []);
}

/**
 * The grade of a number in mg/dL from a strip.
 *
 * Given    quantity  a Quantity as sent
 *          place     path of the value in the resource
 * Returns  usable    the grade whose bin label the number is
 *          unusable  value-not-readable for a number that is no label, or a bound below one; and as `readQuantity`
 * Throws   never
 * Notes    1. "At least" a label keeps its grade, with a remark; "at most 0" is negative. Nothing else is computed
 *             from the number.
 * Source   clinical-rules 1.6; terminology.md section 2.
 */
export function gradeOfBin(quantity: unknown, place: string): Grade | Unusable {
  const read = readQuantity(quantity, 'protein-concentration', place);
  if (read.kind === 'unusable') return read;
  const { value, comparator } = read.measured;
  const bin = stripBins.find(({ from, to }) => from <= value && value <= to);
  const isUpperBound = comparator === '<' || comparator === '<=';
  if (bin === undefined || (isUpperBound && bin.grade !== 0)) {
    return unusable(
      'value-not-readable',
      place,
      'A strip reports the label of a colour bin; this number is none. Send the grade, or the laboratory code 2888-6.',
    );
  }
  const isLabel = comparator === undefined || isUpperBound;
  const remarks = isLabel ? ['Grade taken from the label of the strip in mg/dL.'] : ['At least this grade.'];
  return { kind: 'usable', grade: bin.grade, asSent: read.asSent, remarks };
}

/** A whole number from 0 to 4 counts as that many plus signs. */
export function gradeOfNumber(value: unknown, place: string): Grade | Unusable {
  const text = String(value);
  const grade = typeof value === 'number' && /^[0-4]$/.test(text) ? numbered(text) : undefined;
  return grade === undefined
    ? unusable(
        'value-not-readable',
        place,
        'The number is not a grade from 0 to 4. Send the grade as code or text.',
      )
    : { kind: 'usable', grade, asSent: text, remarks: ['A bare number is read as that many plus signs.'] };
}

function toGrade(
  meaning: StripMeaning | undefined,
  asSent: string,
  place: string,
  remarks: readonly string[],
): Grade | Unusable {
  if (isGrade(meaning)) return { kind: 'usable', grade: meaning, asSent, remarks };
  if (meaning === 'scale-unknown') {
    return unusable(
      'value-not-readable',
      place,
      'Small, moderate and large have no fixed grade. State the scale: send trace or 1+ to 4+.',
    );
  }
  if (meaning === 'no-result')
    return unusable('value-not-readable', place, 'The strip gave no result. Repeat it.');
  return unusable(
    'value-not-readable',
    place,
    'The strip result is not understood. Send negative, trace or 1+ to 4+.',
  );
}

const contradiction = (place: string): Unusable =>
  unusable('value-ambiguous', place, 'The codings and the text state different grades. Correct one of them.');

const isGrade = (meaning: StripMeaning | undefined): meaning is StripGrade =>
  meaning !== undefined && meaning !== 'scale-unknown' && meaning !== 'no-result';

const isNumbered = (meaning: StripMeaning | undefined): meaning is 0 | 0.5 | 1 | 2 | 3 | 4 =>
  typeof meaning === 'number';

function isCompatible(one: StripMeaning, other: StripMeaning): boolean {
  if (one === other) return true;
  const isVague = (meaning: StripMeaning): boolean =>
    meaning === 'positive-ungraded' || meaning === 'scale-unknown';
  const isPositive = (meaning: StripMeaning): boolean => typeof meaning === 'number' && meaning > 0;
  return (isVague(one) && (isPositive(other) || isVague(other))) || (isVague(other) && isPositive(one));
}

const words: ReadonlyMap<string, StripMeaning> = new Map(
  stripWords.flatMap(([meaning, list]) => list.map((word): [string, StripMeaning] => [word, meaning])),
);

/**
 * The grade a text states: `negative`, `trace`, `2+`, `+2`, `(++)`, `2 plus`, `Urine protein test = ++`.
 *
 * Returns  undefined when the text states none
 */
export function gradeWritten(text: string): StripMeaning | undefined {
  const known = words.get(text.toLowerCase());
  if (known !== undefined) return known;
  const plain = text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/^.*=/, '')
    .replace(/^(?:urine )?protein(?:uria)?\s*:?/, '')
    .replace(/[()[\]]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/\.$/, '')
    .replace(/ \d+(?:\.\d+)? ?mg\/dl$/, '')
    .replace(/ ?(?:of |urine )?protein(?:uria)?(?: in (?:the )?urine)?$/, '');
  return words.get(plain) ?? signs(plain.replace(/ /g, ''));
}

function signs(plain: string): StripMeaning | undefined {
  if (/^\+{1,4}$/.test(plain)) return numbered(String(plain.length));
  const digit = /^(?:([1-4])(?:\+|plus)|(?:\+|plus)([1-4]))$/.exec(plain);
  const found = digit?.[1] ?? digit?.[2];
  return found === undefined ? undefined : numbered(found);
}

function numbered(digit: string): 0 | 1 | 2 | 3 | 4 {
  switch (digit) {
    case '1':
      return 1;
    case '2':
      return 2;
    case '3':
      return 3;
    case '4':
      return 4;
    default:
      return 0;
  }
}
