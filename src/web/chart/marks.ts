// Every fact as one mark: the chart draws them, the table lists the same ones.
import { idSentence, idWords } from '../../id-words.ts';
import type { Evaluation } from '../../evaluation.ts';
import { clinicOffset } from '../../presenters/clock.ts';
import type { Trend } from '../../trend.ts';
import type { Medicine, Moment, Symptom } from '../../timeline/timeline.ts';
import { spoken } from '../words.ts';
import { drawnAtAsOf, mark, momentUnknown, type Mark, type Setting } from './mark.ts';
import { pressureMarks } from './pressure-marks.ts';

/** The facts of an evaluation in time order. */
export function marksOf(evaluation: Evaluation, trend: Trend): readonly Mark[] {
  const { timeline, account } = evaluation;
  const reasons = new Map(
    account.entries.flatMap((entry) =>
      entry.outcome === 'set-aside' ? [[entry.reference, entry.message]] : [],
    ),
  );
  const setting: Setting = { offset: clinicOffset(timeline), trend, reasons };
  return [
    ...pressureMarks(setting, evaluation),
    ...timeline.urineProteins.map((urine) =>
      mark(setting, urine.at, [urine.source], {
        kind: 'urine',
        lane: 'Urine protein',
        what: urine.kind === 'strip' ? 'urine protein, strip' : `urine, ${idWords(urine.kind)}`,
        value: spoken(urine.asSent),
        short: urine.kind === 'strip' ? stripShort(urine.grade) : shortened(spoken(urine.asSent)),
        note: urine.remarks.join(' '),
      }),
    ),
    ...timeline.symptoms.map((symptom) => symptomMark(setting, symptom, timeline.asOf)),
    ...laboratoryMarks(setting, timeline.laboratory),
    ...timeline.medicines.map((medicine) => medicineMark(setting, medicine, timeline.asOf)),
  ].sort((a, b) => a.at - b.at || a.key.localeCompare(b.key));
}

function symptomMark(setting: Setting, symptom: Symptom, asOf: number): Mark {
  const name = idWords(symptom.symptom);
  const isPresent = symptom.presence === 'present';
  return mark(setting, symptom.at ?? momentUnknown(asOf), [symptom.source], {
    kind: isPresent ? 'symptom' : 'symptom-absent',
    lane: 'Symptoms',
    what: name,
    value: isPresent ? (symptom.severity ?? 'present') : 'asked, not there',
    short: `${isPresent ? '' : 'no '}${name}`,
    note: [
      symptom.relieved ? 'gone, or relieved by treatment' : '',
      symptom.at === undefined ? drawnAtAsOf : '',
    ]
      .filter((part) => part !== '')
      .join('; '),
  });
}

function medicineMark(setting: Setting, medicine: Medicine, asOf: number): Mark {
  const name = idWords(medicine.medicine);
  const isRunning = medicine.status === 'active';
  return mark(setting, medicine.start ?? momentUnknown(asOf), [medicine.source], {
    kind: 'medicine',
    lane: `Medicine: ${name}`,
    what: `${name}, ${medicine.status}`,
    value: spoken(medicine.asSent),
    // The span of a running medicine says so by reaching the moment of the answer.
    short: medicine.start === undefined ? 'start unknown' : isRunning ? '' : medicine.status,
    note: [
      medicine.route ?? '',
      medicine.start === undefined ? `its start is not recorded; ${drawnAtAsOf}` : '',
    ]
      .filter((part) => part !== '')
      .join('; '),
    until: untilOf(setting, medicine.end, isRunning ? asOf : undefined),
  });
}

function laboratoryMarks(setting: Setting, results: Evaluation['timeline']['laboratory']): readonly Mark[] {
  return results.map((result) =>
    mark(setting, result.at, [result.source], {
      kind: 'laboratory',
      lane: `${idSentence(result.analyte)}${unitsOf(results, result.analyte)}`,
      what: idWords(result.analyte),
      value: spoken(result.asSent),
      short: `${result.measured.comparator ?? ''}${shortNumber(result)}`,
      note: result.haemolysed ? 'the sample was haemolysed' : '',
    }),
  );
}

/** ", × 10⁹/L": the units as sent. */
function unitsOf(results: Evaluation['timeline']['laboratory'], analyte: string): string {
  const units = results.filter((each) => each.analyte === analyte).map(({ byUnit }) => byUnit.sentUnit);
  return [...new Set(units)].map((unit) => (unit === '1' ? '' : `, ${spoken(unit)}`)).join('');
}

/** The number as sent, without its unit. */
function shortNumber({ asSent, measured }: { asSent: string; measured: { value: number } }): string {
  return /[\d.]+/.exec(asSent)?.[0] ?? String(measured.value);
}

const shortened = (text: string): string => (text.length > 9 ? `${text.slice(0, 8)}…` : text);

function stripShort(grade: number | 'positive-ungraded'): string {
  if (grade === 'positive-ungraded') return 'pos';
  if (grade === 0) return 'neg';
  return grade === 0.5 ? 'trace' : `${grade}+`;
}

function untilOf({ offset }: Setting, end: Moment | undefined, running: number | undefined) {
  const until = end?.latest ?? running;
  return until === undefined ? undefined : until + offset * 60_000;
}
