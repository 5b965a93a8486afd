// What one more blood pressure would make of the answer. Pure: the same engine, asked about a reading not yet taken.
import type { Evaluation } from './evaluation.ts';
import type {
  Classification,
  Guideline,
  PressureLimits,
  Threshold,
  Urgency,
} from './guidelines/guideline.ts';
import { opinionOf } from './opinions.ts';
import { milliseconds, reaches } from './rules/compare.ts';
import type { Site } from './rules/site.ts';
import { momentOf } from './rules/view.ts';
import type { PressureReading, Timeline } from './timeline/timeline.ts';

/** One reading that might be taken, and what the guideline would say then. */
export interface NextReading {
  readonly kind: 'below' | 'raised' | 'severe';
  /** The least pressure of its kind, in mm[Hg]; for `below` the greatest. */
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
  /** From when on it would have this effect, milliseconds since 1970-01-01T00:00Z. */
  readonly from: number;
  readonly classification: readonly Classification[];
  readonly urgency: Urgency;
  readonly changesClass: boolean;
  readonly changesUrgency: boolean;
}

/**
 * What one more clinic reading would change.
 *
 * Given    evaluation   the answer now
 *          site         as it was given to `evaluate`
 * Returns  three readings: below the limits, raised, severe; each at the first moment, from now on, at which it
 *          changes the class, or now when it changes it at no such moment
 * Throws   never
 * Notes    1. The moments tried: now, and each raised or severe reading plus the intervals of the guideline.
 *          2. Nothing else is taken to change by then; a later symptom or result may say otherwise.
 *          3. Empty when she has died or her readings end outside this pregnancy.
 */
export function whatNext(evaluation: Evaluation, site?: Site): readonly NextReading[] {
  const { timeline, guideline } = evaluation;
  if (timeline.woman.hasDied === true) return [];
  const { hypertension, severe } = guideline.chartLimits;
  const times = momentsToTry(timeline, guideline);
  return (
    [
      ['below', pressureBelow(hypertension)],
      ['raised', pressureAt(hypertension)],
      ['severe', pressureAt(severe)],
    ] as const
  ).map(([kind, pressure]) => firstEffect(evaluation, site, { kind, ...pressure }, times));
}

type Candidate = Pick<NextReading, 'kind' | 'systolicMmHg' | 'diastolicMmHg'>;

function firstEffect(
  evaluation: Evaluation,
  site: Site | undefined,
  candidate: Candidate,
  times: readonly number[],
): NextReading {
  const effects = times.map((from) => effectAt(evaluation, site, candidate, from));
  const [now] = effects;
  const found = effects.find(({ changesClass }) => changesClass) ?? now;
  return found ?? effectAt(evaluation, site, candidate, evaluation.timeline.asOf);
}

function effectAt(
  evaluation: Evaluation,
  site: Site | undefined,
  candidate: Candidate,
  from: number,
): NextReading {
  const { timeline, guideline, assessment: before } = evaluation;
  const { assessment } = opinionOf(withReading(timeline, candidate, from), guideline, site);
  return {
    ...candidate,
    from,
    classification: assessment.classification,
    urgency: assessment.urgency,
    changesClass: assessment.classification[0] !== before.classification[0],
    changesUrgency: assessment.urgency !== before.urgency,
  };
}

function withReading(timeline: Timeline, candidate: Candidate, at: number): Timeline {
  const { systolicMmHg, diastolicMmHg } = candidate;
  const reading: PressureReading = {
    at: momentOf(at, timeline.pressures.at(-1)?.at),
    systolicMmHg,
    diastolicMmHg,
    asSent: `${systolicMmHg}/${diastolicMmHg} mm[Hg]`,
    sources: [{ reference: 'reading-not-yet-taken', preliminary: false }],
    setting: 'clinic',
    technique: {},
    remarks: [],
  };
  return { ...timeline, asOf: at, pressures: [...timeline.pressures, reading] };
}

/** Now, and every moment from now on at which a repeat of an earlier reading begins to count; earliest first. */
function momentsToTry({ asOf, pressures }: Timeline, guideline: Guideline): readonly number[] {
  const raised = pressures.filter((reading) => reaches(reading, guideline.chartLimits.hypertension));
  const last = raised.slice(-longestLookBack);
  const later = intervalsOf(guideline).flatMap((interval) =>
    last.map(({ at }) => at.latest + milliseconds(interval)),
  );
  return [asOf, ...[...new Set(later)].filter((time) => time > asOf).sort((a, b) => a - b)];
}

/** Earlier raised readings than these were repeated long ago. */
const longestLookBack = 4;

function intervalsOf({ questions }: Guideline): readonly Threshold[] {
  const intervals = questions.flatMap((question) => {
    if (question.check === 'pressure-confirmed') return question.confirmation.minimumInterval ?? [];
    if (question.check === 'severe-pressure-confirmed') return question.severeConfirmation.minimumInterval;
    return [];
  });
  return [...new Map(intervals.map((each) => [each.id, each])).values()];
}

/** The least whole pressure that reaches both limits. */
function pressureAt({ systolic, diastolic }: PressureLimits): Omit<Candidate, 'kind'> {
  return { systolicMmHg: leastReaching(systolic), diastolicMmHg: leastReaching(diastolic) };
}

/** The greatest whole pressure that reaches neither. */
function pressureBelow({ systolic, diastolic }: PressureLimits): Omit<Candidate, 'kind'> {
  return { systolicMmHg: leastReaching(systolic) - 1, diastolicMmHg: leastReaching(diastolic) - 1 };
}

const leastReaching = ({ comparator, value }: Threshold): number =>
  comparator === '>' ? Math.floor(value) + 1 : Math.ceil(value);
