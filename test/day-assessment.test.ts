// 198 attendances of a real clinic: a plausibility check beside the recorded diagnosis, not an oracle.
import { beforeAll, describe, expect, it } from 'vitest';
import type { Evaluation } from '../src/evaluation.ts';
import { readAttendances } from './support/day-assessment.ts';
import type { Attendance } from './support/day-assessment.ts';
import { evaluateSoundly } from './support/engine.ts';
import { crossTable, table } from './support/table.ts';

interface Assessed {
  readonly attendance: Attendance;
  readonly evaluation: Evaluation;
}

/** "PET" is the older name of pre-eclampsia, "PIH" of gestational hypertension (dictionary of the data set). */
const diagnoses: Readonly<Record<string, string>> = {
  None: 'nil',
  PIH: 'pregnancy induced hypertension',
  Preeclampsia: 'pre-eclampsia',
  PET: 'pre-eclampsia',
  Eclampsia: 'eclampsia',
};

/**
 * Entries that cannot be right, found by reading the file, and what must become of each:
 * `mended` set aside or named in an issue; `unused` supports no finding; `acted-on` half of a pair, taken as it
 * stands because one severe value alone is enough to act.
 */
interface EntryError {
  readonly line: number;
  readonly id: string;
  readonly what: string;
  readonly must: 'mended' | 'unused' | 'acted-on';
}

const entryErrors: readonly EntryError[] = [
  { line: 184, id: 'bp-240', what: 'systolic of 12 (diastolic 80 above it)', must: 'mended' },
  { line: 103, id: 'bmi', what: 'body mass index #DIV/0!', must: 'mended' },
  { line: 146, id: 'bp-180', what: 'diastolic 120 without a systolic', must: 'acted-on' },
  { line: 146, id: 'bp-210', what: 'systolic 80 without a diastolic', must: 'acted-on' },
  { line: 8, id: 'bmi', what: 'body mass index of 147.8 (height 105 cm)', must: 'unused' },
  { line: 84, id: 'gravidity', what: 'gravidity of 130 (a pressure in the wrong column)', must: 'unused' },
  { line: 84, id: 'parity', what: 'parity of 90 (a pressure in the wrong column)', must: 'unused' },
];

const urgent = ['emergency', 'same-day'];

let assessed: readonly Assessed[] = [];
beforeAll(() => {
  assessed = readAttendances().map((attendance) => ({
    attendance,
    evaluation: evaluateSoundly(attendance.bundle, { asOf: attendance.asOf }),
  }));
});

const leading = ({ evaluation }: Assessed): string => evaluation.assessment.classification[0] ?? 'none';

function readingsOf({ attendance }: Assessed): number[][] {
  return [0, 30, 60, 90, 120, 150, 180, 210, 240].flatMap((minutes) => {
    const pair = [attendance.row[`SBP_${minutes}`] ?? '', attendance.row[`DBP_${minutes}`] ?? ''];
    return pair.every((value) => value.trim() !== '') ? [pair.map(Number)] : [];
  });
}

const reaches =
  (limits: readonly number[]) =>
  (one: Assessed): boolean =>
    readingsOf(one).some((pair) => pair.some((value, index) => value >= (limits[index] ?? Infinity)));

describe('the day assessment clinic', () => {
  it('gives an answer for each of the 198 attendances, with an account that adds up', () => {
    expect(assessed).toHaveLength(198);
  });

  it('compares our class with the recorded diagnosis', () => {
    const pairs = assessed.map((one): [string, string] => [
      leading(one),
      diagnoses[one.attendance.diagnosis] ?? one.attendance.diagnosis,
    ]);
    const urgencies = assessed.map((one): [string, string] => [
      one.evaluation.assessment.urgency,
      leading(one),
    ]);
    console.log(
      `\nOur leading class against the recorded final diagnosis (198 attendances):\n${crossTable(pairs)}\n`,
    );
    console.log(
      `\nUrgency against our leading class:\n${crossTable(urgencies.map(([row, column]) => [column, row]))}\n`,
    );
    expect(pairs).toHaveLength(198);
  });

  it('never calls a woman with a raised reading normotensive', () => {
    const missed = assessed.filter(reaches([140, 90])).filter((one) => leading(one) === 'normotensive');
    expect(missed.map((one) => one.attendance.line)).toEqual([]);
  });

  it('treats every woman with a severe reading at least as same-day', () => {
    const severe = assessed.filter(reaches([160, 110]));
    expect(severe.length).toBeGreaterThan(5);
    const slow = severe.filter((one) => !urgent.includes(one.evaluation.assessment.urgency));
    expect(slow.map((one) => one.attendance.line)).toEqual([]);
  });

  it('shows the women recorded with pre-eclampsia whom the readings of that day do not make urgent', () => {
    const slow = assessed
      .filter((one) => diagnoses[one.attendance.diagnosis] === 'pre-eclampsia')
      .filter((one) => !urgent.includes(one.evaluation.assessment.urgency));
    const lines = slow.map((one) => [
      String(one.attendance.line),
      one.evaluation.assessment.urgency,
      one.evaluation.assessment.classification.join(', '),
    ]);
    console.log(
      `\nRecorded as pre-eclampsia, not urgent here:\n${table([['line', 'urgency', 'class'], ...lines])}\n`,
    );
    expect(slow.filter(reaches([160, 110]))).toEqual([]);
  });

  it('finds protein where the ratio reaches 30 mg/mmol (0.03 g/mmol as typed)', () => {
    const positive = assessed.filter((one) => Number(one.attendance.row['UrinePCR']) >= 0.03);
    expect(positive.length).toBeGreaterThan(10);
    const blind = positive.filter((one) =>
      ['normotensive', 'gestational-hypertension'].includes(leading(one)),
    );
    expect(blind.map((one) => one.attendance.line)).toEqual([]);
  });
});

describe('data-entry errors of the clinic', () => {
  it('are set aside, named in an issue, supporting nothing, or acted on to be safe', () => {
    const found = entryErrors.map((error) => ({ error, ...fateOf(error) }));
    console.log(
      `\nHow each data-entry error was caught:\n${table([
        ['line', 'entry', 'what is wrong', 'what became of it'],
        ...found.map(({ error, how }) => [String(error.line), error.id, error.what, how]),
      ])}\n`,
    );
    const missed = found.filter(({ isCaught }) => !isCaught);
    expect(missed.map(({ error, how }) => `line ${error.line}, ${error.what}: ${how}`)).toEqual([]);
  });
});

interface Fate {
  readonly how: string;
  readonly isCaught: boolean;
}

function fateOf({ line, id, must }: EntryError): Fate {
  const one = assessed.find(({ attendance }) => attendance.line === line);
  const entry = one?.evaluation.account.entries.find(({ reference }) => reference === `Observation/${id}`);
  if (one === undefined || entry === undefined) return { how: 'lost', isCaught: false };
  const { assessment, account } = one.evaluation;
  if (entry.outcome === 'set-aside') return { how: `set aside: ${entry.code}`, isCaught: true };
  const issue = account.issues.find(({ expression }) => expression.startsWith(entry.path));
  if (issue !== undefined) return { how: `${entry.outcome}, issue: ${issue.code}`, isCaught: true };
  switch (must) {
    case 'mended':
      return { how: entry.outcome, isCaught: false };
    case 'unused':
      return { how: entry.outcome, isCaught: entry.outcome === 'not-needed' };
    case 'acted-on':
      return {
        how: `${entry.outcome} alone: ${assessment.classification.join(', ')}, ${assessment.urgency}`,
        isCaught: entry.outcome === 'used' && assessment.urgency === 'emergency',
      };
  }
}
