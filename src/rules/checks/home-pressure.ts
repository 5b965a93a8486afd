// Home pressure: the average of a series, or of single home readings.
import type { Evidence } from '../../findings/finding.ts';
import type { QuestionCheck } from '../../guidelines/guideline.ts';
import type { MeanPressure, PressureReading } from '../../timeline/timeline.ts';
import {
  cannotTell,
  limitsOf,
  met,
  notApplicable,
  notMet,
  ofReading,
  pressureText,
  whatIsOpen,
  type Answer,
} from '../answer.ts';
import { isBelow, reaches } from '../compare.ts';
import type { View } from '../view.ts';
import { leftOpenBy, type Pressure } from '../visit-value.ts';

type Options = Extract<QuestionCheck, { check: 'home-pressure' }>;
interface Series {
  readonly value: Pressure;
  readonly evidence: readonly Evidence[];
  readonly latest: number;
}

/**
 * Is the home average raised, or below the limits?
 *
 * Given    options.want  which of the two is asked
 * Returns  met, not-met; cannot-tell when no home series was received, or not-met with `whenNone`
 * Throws   never
 * Notes    1. An average whose setting is not stated is taken as a home series: it can add a class, never lower urgency.
 *          2. Single home readings are averaged when there are at least two.
 */
export function homePressure(view: View, options: Options): Answer {
  const thresholds = limitsOf(options.limits);
  if (options.onlyWithoutClinic === true && view.occasions.length > 0)
    return notApplicable('There are clinic readings.', { thresholds });
  const series = newestSeries(view);
  if (series === undefined)
    return (options.whenNone === 'not-met' ? notMet : cannotTell)('No home readings were received.', {
      thresholds,
    });
  const text = `Home average ${pressureText(series.value)} mm[Hg].`;
  const rest = { thresholds, evidence: series.evidence };
  if (reaches(series.value, options.limits))
    return options.want === 'raised' ? met(text, rest) : notMet(text, rest);
  if (!isBelow(series.value, options.limits))
    return cannotTell(
      `${text} Whether it lies below the limits cannot be told: ${whatIsOpen(series.value)}.`,
      rest,
    );
  return options.want === 'below' ? met(text, rest) : notMet(text, rest);
}

function newestSeries(view: View): Series | undefined {
  const inPregnancy = (at: PressureReading['at']): boolean => view.place(at).outside !== 'earlier';
  const means = view.timeline.meanPressures
    .filter((mean) => mean.setting !== 'clinic' && inPregnancy(mean.to))
    .map(ofMean);
  const singles = view.timeline.homePressures.filter((reading) => inPregnancy(reading.at));
  const averaged = singles.length >= 2 ? [averageOf(singles)] : [];
  return [...means, ...averaged].sort((a, b) => a.latest - b.latest).at(-1);
}

const ofMean = (mean: MeanPressure): Series => ({
  value: mean,
  latest: mean.to.latest,
  evidence: mean.sources.map((source) => ({
    reference: source.reference,
    what:
      mean.setting === 'home' ? 'home blood pressure, average' : 'blood pressure average, setting not stated',
    at: mean.to.text,
    asSent: mean.asSent,
    asCompared: `${pressureText(mean)} mm[Hg]`,
  })),
});

function averageOf(readings: readonly PressureReading[]): Series {
  const half = (pick: (reading: PressureReading) => number | undefined): number | undefined => {
    const values = readings.map(pick).filter((value): value is number => value !== undefined);
    return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
  };
  const systolicMmHg = half((reading) => reading.systolicMmHg);
  const diastolicMmHg = half((reading) => reading.diastolicMmHg);
  return {
    value: {
      ...(systolicMmHg === undefined ? {} : { systolicMmHg }),
      ...(diastolicMmHg === undefined ? {} : { diastolicMmHg }),
      ...leftOpenBy(readings),
    },
    latest: Math.max(...readings.map((reading) => reading.at.latest)),
    evidence: readings.flatMap(ofReading),
  };
}
