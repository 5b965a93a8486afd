// Blood pressures as marks: readings, averages, and numbers that were not used.
import type { Evaluation } from '../../evaluation.ts';
import type { PressureReading, UnusablePressure } from '../../timeline/timeline.ts';
import { spoken } from '../words.ts';
import { drawnAtAsOf, mark, momentUnknown, type Mark, type Setting } from './mark.ts';

/** Single readings, the average of each visit, averages as sent, and what cannot be used. */
export function pressureMarks(setting: Setting, { timeline }: Evaluation): readonly Mark[] {
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
  ];
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
  'faulty-form': 'the form in which it was sent cannot be used',
  'time-unusable': 'its time cannot be used',
};

const whyInShort: Readonly<Record<UnusablePressure['why'], string>> = {
  'diastolic-not-below-systolic': 'diastolic ≥ systolic',
  'above-plausible-range': 'too high',
  'below-plausible-range': 'too low',
  'unit-missing': 'no unit',
  'unit-unknown': 'unit unknown',
  'faulty-form': 'faulty form',
  'time-unusable': 'no time',
};

function unusableMark(setting: Setting, pressure: UnusablePressure, asOf: number): Mark {
  const at = pressure.at ?? momentUnknown(asOf);
  return mark(setting, at, pressure.sources, {
    kind: 'unusable',
    lane: 'Not usable',
    what: 'blood pressure, not used',
    value: spoken(pressure.asSent),
    short: whyInShort[pressure.why],
    note: [
      whyWords[pressure.why],
      ...(pressure.at === undefined ? [drawnAtAsOf] : []),
      ...pressure.sources.flatMap(({ reference }) => setting.reasons.get(reference) ?? []),
    ].join('. '),
  });
}

function halves({ systolicMmHg, diastolicMmHg }: { systolicMmHg?: number; diastolicMmHg?: number }) {
  return {
    ...(systolicMmHg === undefined ? {} : { systolic: systolicMmHg }),
    ...(diastolicMmHg === undefined ? {} : { diastolic: diastolicMmHg }),
  };
}
