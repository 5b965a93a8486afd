// A line of a case file in words: "blood pressure 146/92 mmHg at 09:00". Wording only.
import { spokenUnits } from '../findings/limit-words.ts';
import { idWords } from '../id-words.ts';

/** A line of a case: a kind, a time, and fields with the unit in their name or beside the value. */
export type CaseLine = Readonly<Record<string, unknown>>;

const text = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' ? String(value) : '';
const plain = (value: unknown): string => idWords(text(value));

const remark = (value: unknown): string => (value === undefined ? '' : `, ${plain(value)}`);

const halves = (a: unknown, b: unknown): string =>
  `${a === undefined ? '–' : text(a)}/${b === undefined ? '–' : text(b)}`;

const words: Readonly<Record<string, (line: CaseLine) => string>> = {
  pressure: (line) => {
    const arm = line['arm'] === undefined ? '' : `, ${text(line['arm'])} arm`;
    const rest = `${arm}${remark(line['setting'])}${remark(line['status'])}`;
    const inMmHg = halves(line['systolicMmHg'], line['diastolicMmHg']);
    if (line['withoutUnit'] === true) return `${inMmHg} without a unit${rest}`;
    return line['systolicKPa'] !== undefined || line['diastolicKPa'] !== undefined
      ? `${halves(line['systolicKPa'], line['diastolicKPa'])} kPa${rest}`
      : `${inMmHg} mmHg${rest}`;
  },
  'systolic-by-palpation': (line) => `systolic ${text(line['systolicMmHg'])} mmHg by palpation`,
  'home-mean': (line) =>
    `home mean ${halves(line['systolicMmHg'], line['diastolicMmHg'])} mmHg of ${text(line['readings'])} readings`,
  strip: (line) => `strip ${text(line['grade'])}`,
  'strip-sign': (line) => `strip ${text(line['sign'])} ${text(line['grade'])}`,
  'protein-creatinine-ratio': (line) => `protein/creatinine ${text(line['value'])} ${text(line['unit'])}`,
  'albumin-creatinine-ratio': (line) => `albumin/creatinine ${text(line['value'])} ${text(line['unit'])}`,
  'protein-24-hours': (line) =>
    line['grams'] === undefined
      ? `protein ${text(line['milligrams'])} mg in 24 hours`
      : `protein ${text(line['grams'])} g in 24 hours`,
  laboratory: (line) => {
    const limit = line['upperLimit'] === undefined ? '' : ` (upper limit ${text(line['upperLimit'])})`;
    return `${plain(line['analyte'])} ${text(line['value'])} ${text(line['unit'])}${limit}${remark(line['note'])}`;
  },
  symptom: (line) =>
    `${line['present'] === true ? '' : 'no '}${plain(line['symptom'])}${remark(line['note'])}`,
  'no-danger-symptoms': () => 'no danger symptoms',
  'gestational-age': (line) => `${text(line['weeks'])}+${text(line['days'])} weeks`,
  'due-date': (line) => `due ${text(line['date'])}`,
  'last-period': (line) => `last period ${text(line['date'])}`,
  birth: () => 'birth',
  condition: (line) => `recorded: ${plain(line['condition'])}`,
  takes: (line) => `takes ${plain(line['medicine'])}`,
  given: (line) => `${plain(line['medicine'])} given`,
  ordered: (line) => `${plain(line['medicine'])} ordered`,
  running: (line) => `${plain(line['medicine'])} running`,
  allergy: (line) => `allergic to ${plain(line['medicine'])}`,
};

/**
 * The lines of a case in one sentence, each followed by its time when the times differ.
 *
 * Given    lines   as the case file has them
 * Returns  parts joined by semicolons; a kind without wording here appears by its fields
 */
export function caseWords(lines: readonly CaseLine[]): string {
  const days = new Set(
    lines.flatMap((line) => (typeof line['at'] === 'string' ? [line['at'].slice(0, 10)] : [])),
  );
  return spokenUnits(lines.map((line) => `${lineWords(line)}${timeWords(line, days.size > 1)}`).join('; '));
}

function lineWords(line: CaseLine): string {
  const kind = text(line['kind']);
  const fields = Object.entries(line).filter(([name]) => name !== 'kind' && name !== 'at');
  return (
    words[kind]?.(line) ??
    `${plain(kind)} ${fields.map(([name, value]) => `${name} ${text(value)}`).join(', ')}`
  );
}

/** Only what is read by the clock: pressures, drugs given, births, fits. */
const timed = new Set([
  'pressure',
  'systolic-by-palpation',
  'given',
  'ordered',
  'running',
  'birth',
  'symptom',
]);

function timeWords(line: CaseLine, withDay: boolean): string {
  const at = line['at'];
  if (typeof at !== 'string') return '';
  if (withDay) return ` on ${at.slice(0, 10)}${at.length > 10 ? ` ${at.slice(11, 16)}` : ''}`;
  return timed.has(text(line['kind'])) ? ` at ${at.slice(11, 16)}` : '';
}
