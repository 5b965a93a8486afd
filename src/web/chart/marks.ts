// Every fact as one mark: the chart draws them, the table lists the same ones.
import type { Evaluation } from '../../evaluation.ts';
import { clinicOffset, spokenTime } from '../../presenters/clock.ts';
import type { Trend } from '../../trend.ts';
import type { Moment, PressureReading, Source, UnusablePressure } from '../../timeline/timeline.ts';
import { placeWords, spoken } from '../words.ts';

export type MarkKind =
  | 'reading'
  | 'home-reading'
  | 'visit-average'
  | 'sent-average'
  | 'unusable'
  | 'urine'
  | 'laboratory'
  | 'symptom'
  | 'symptom-absent'
  | 'medicine';

export interface Mark {
  /** Same fact, same key, at every moment of the replay. */
  readonly key: string;
  readonly kind: MarkKind;
  /** Row below the pressures; absent for pressures. */
  readonly lane?: string;
  /** Local time of the clinic as if it were UTC, in milliseconds. */
  readonly at: number;
  readonly until?: number;
  readonly when: string;
  readonly place: string;
  readonly what: string;
  readonly value: string;
  /** In few characters, for a lane. */
  readonly short: string;
  readonly note: string;
  readonly systolic?: number;
  readonly diastolic?: number;
  readonly references: readonly string[];
}

interface Setting {
  readonly offset: number;
  readonly trend: Trend;
  readonly reasons: ReadonlyMap<string, string>;
}

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
    ...timeline.pressures.map((reading) => readingMark(setting, reading, 'reading')),
    ...timeline.homePressures.map((reading) => readingMark(setting, reading, 'home-reading')),
    ...averageMarks(setting),
    ...timeline.meanPressures.map((mean) =>
      mark(setting, mean.from, mean.sources, {
        kind: 'sent-average',
        what: `average of several readings, ${mean.setting}`,
        value: spoken(mean.asSent),
        ...halves(mean),
      }),
    ),
    ...timeline.unusablePressures.map((pressure) => unusableMark(setting, pressure, timeline.asOf)),
    ...timeline.urineProteins.map((urine) =>
      mark(setting, urine.at, [urine.source], {
        kind: 'urine',
        lane: 'Urine protein',
        what: urine.kind === 'strip' ? 'urine protein, strip' : `urine, ${urine.kind.replaceAll('-', ' ')}`,
        value: spoken(urine.asSent),
        short: urine.kind === 'strip' ? stripShort(urine.grade) : shortened(spoken(urine.asSent)),
        note: urine.remarks.join(' '),
      }),
    ),
    ...timeline.symptoms.flatMap((symptom) =>
      symptom.at === undefined
        ? []
        : [
            mark(setting, symptom.at, [symptom.source], {
              kind: symptom.presence === 'present' ? 'symptom' : 'symptom-absent',
              lane: 'Symptoms',
              what: symptom.symptom.replaceAll('-', ' '),
              value: symptom.presence === 'present' ? (symptom.severity ?? 'present') : 'asked, not there',
              short: `${symptom.presence === 'present' ? '' : 'no '}${symptom.symptom.replaceAll('-', ' ')}`,
              note: symptom.relieved ? 'gone, or relieved by treatment' : '',
            }),
          ],
    ),
    ...laboratoryMarks(setting, timeline.laboratory),
    ...timeline.medicines.flatMap((medicine) =>
      medicine.start === undefined
        ? []
        : [
            mark(setting, medicine.start, [medicine.source], {
              kind: 'medicine',
              lane: `Medicine: ${medicine.medicine.replaceAll('-', ' ')}`,
              what: `${medicine.medicine.replaceAll('-', ' ')}, ${medicine.status}`,
              value: spoken(medicine.asSent),
              short: medicine.status,
              note: medicine.route ?? '',
              until: untilOf(setting, medicine.end, medicine.status === 'active' ? timeline.asOf : undefined),
            }),
          ],
    ),
  ].sort((a, b) => a.at - b.at || a.key.localeCompare(b.key));
}

type Content = Pick<Mark, 'kind' | 'what' | 'value'> & {
  readonly lane?: string;
  readonly short?: string;
  readonly note?: string;
  readonly until?: number | undefined;
  readonly systolic?: number;
  readonly diastolic?: number;
};

function mark({ offset, trend }: Setting, at: Moment, sources: readonly Source[], content: Content): Mark {
  const references = sources.map(({ reference }) => reference);
  const preliminary = sources.some((source) => source.preliminary) ? ['preliminary'] : [];
  const unsure = at.precision === 'minute' ? [] : [`only the ${at.precision} is known`];
  const { until, ...rest } = content;
  return {
    short: content.value,
    ...rest,
    key: `${content.kind} ${references.join(' ')} ${at.text}`,
    at: middleOf(at) + offset * 60_000,
    when: spokenTime(at.text),
    place: placeWords(trend.placeOf(at)),
    note: [content.note ?? '', ...preliminary, ...unsure].filter((part) => part !== '').join('; '),
    references,
    ...(until === undefined ? {} : { until }),
  };
}

const middleOf = ({ earliest, latest }: Moment): number => (earliest + latest) / 2;

function halves({ systolicMmHg, diastolicMmHg }: { systolicMmHg?: number; diastolicMmHg?: number }) {
  return {
    ...(systolicMmHg === undefined ? {} : { systolic: systolicMmHg }),
    ...(diastolicMmHg === undefined ? {} : { diastolic: diastolicMmHg }),
  };
}

function readingMark(setting: Setting, reading: PressureReading, kind: 'reading' | 'home-reading'): Mark {
  return mark(setting, reading.at, reading.sources, {
    kind,
    what: kind === 'reading' ? 'blood pressure' : 'blood pressure at home',
    value: spoken(reading.asSent),
    note: [reading.arm === undefined ? '' : `${reading.arm} arm`, ...reading.remarks]
      .filter((part) => part !== '')
      .join('; '),
    ...halves(reading),
  });
}

function averageMarks(setting: Setting): readonly Mark[] {
  return setting.trend.visits
    .filter(({ numberOfReadings }) => numberOfReadings > 1)
    .map((visit) => {
      const value = `${wholeOf(visit.systolicMmHg)}/${wholeOf(visit.diastolicMmHg)} mmHg`;
      const made = mark(setting, visit.at, [], {
        kind: 'visit-average',
        what: `average of this visit, ${visit.numberOfReadings} readings`,
        value,
        note: 'as the rules judge it',
        ...halves(visit),
      });
      return { ...made, references: visit.references };
    });
}

const wholeOf = (value: number | undefined): string =>
  value === undefined ? '-' : String(Math.round(value * 10) / 10);

const whyWords: Readonly<Record<UnusablePressure['why'], string>> = {
  'diastolic-not-below-systolic': 'the diastolic is not below the systolic',
  'above-plausible-range': 'higher than can be believed: repeat it now',
  'below-plausible-range': 'lower than can be believed: repeat it',
  'unit-missing': 'no unit was sent',
  'unit-unknown': 'its unit is none of pressure',
  'time-unusable': 'its time cannot be used',
  'faulty-form': 'the form in which it was sent cannot be used',
};

function unusableMark(setting: Setting, pressure: UnusablePressure, asOf: number): Mark {
  const at = pressure.at ?? momentUnknown(asOf);
  return mark(setting, at, pressure.sources, {
    kind: 'unusable',
    lane: 'Not usable',
    what: 'blood pressure, not used',
    value: spoken(pressure.asSent),
    short: '',
    note: [
      whyWords[pressure.why],
      ...(pressure.at === undefined ? ['drawn at the moment shown, for want of a time'] : []),
      ...pressure.sources.flatMap(({ reference }) => setting.reasons.get(reference) ?? []),
    ].join('. '),
  });
}

function momentUnknown(asOf: number): Moment {
  const localDay = Math.floor(asOf / 86_400_000);
  return { earliest: asOf, latest: asOf, localDay, precision: 'minute', text: 'time not known' };
}

function laboratoryMarks(setting: Setting, results: Evaluation['timeline']['laboratory']): readonly Mark[] {
  return results.map((result) =>
    mark(setting, result.at, [result.source], {
      kind: 'laboratory',
      lane: `${laneNames[result.analyte] ?? sentence(result.analyte.replaceAll('-', ' '))}${unitsOf(results, result.analyte)}`,
      what: result.analyte.replaceAll('-', ' '),
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

const laneNames: Readonly<Record<string, string>> = { alt: 'ALT', ast: 'AST', ldh: 'LDH', hcg: 'hCG' };
const sentence = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

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
