// Pressures that were received and cannot be used: they never classify, and never lower the urgency.
import type { Evidence } from '../../findings/finding.ts';
import type { QuestionCheck } from '../../guidelines/guideline.ts';
import type { PressureReading, UnusablePressure } from '../../timeline/timeline.ts';
import { limitsOf, met, notMet, type Answer } from '../answer.ts';
import { milliseconds, reaches } from '../compare.ts';
import type { View } from '../view.ts';
import type { Pressure } from '../visit-value.ts';

type Options = Extract<QuestionCheck, { check: 'unusable-pressure' }>;

/**
 * Does an unusable pressure ask for action by itself?
 *
 * Given    options.level  which urgency is asked about
 * Returns  met when one does; not-met otherwise
 * Throws   never
 * Notes    1. Diastolic not below systolic: the swapped pair is judged. Below the range: the half that is plausible.
 *          2. A usable reading taken long enough after it answers it.
 *          3. A reading sent as "at least" is used; here it is asked how high it may be: raised, it may be severe.
 *          4. A fault of form asks for nothing once it is too old.
 * Source   decisions 5 and 14; fhir checklist F-V04, F-V09
 */
export function unusablePressure(view: View, options: Options): Answer {
  const thresholds = [...limitsOf(options.limits), ...limitsOf(options.severe)];
  const atLeast = view.everyReading.flatMap(({ reading }) => asLowerBound(reading));
  const found = [...view.timeline.unusablePressures, ...atLeast]
    .filter((item) => !isAnswered(view, item, options))
    .filter((item) => levelOf(item, options) === options.level);
  const newest = found.at(-1);
  if (newest === undefined) return notMet('No unusable blood pressure asks for this.', { thresholds });
  const mend = newest.fault === undefined ? '' : ` ${newest.fault.message}`;
  return met(`${words[newest.why]} (sent: ${newest.asSent}).${mend}`, {
    thresholds,
    evidence: found.flatMap(evidenceOf),
  });
}

/** A pressure that cannot be used, or one of which only a lower bound is known. */
type Doubtful = Omit<UnusablePressure, 'why'> & { readonly why: UnusablePressure['why'] | 'lower-bound' };

function asLowerBound(reading: PressureReading): readonly Doubtful[] {
  const { at, systolicMmHg: systolic, diastolicMmHg: diastolic, asSent, sources, lowerBounds } = reading;
  if (lowerBounds === undefined) return [];
  const halves = {
    ...(systolic === undefined ? {} : { systolic }),
    ...(diastolic === undefined ? {} : { diastolic }),
  };
  return [{ why: 'lower-bound', at, ...halves, asSent, sources }];
}

const words: Readonly<Record<Doubtful['why'], string>> = {
  'diastolic-not-below-systolic': 'A blood pressure was sent with the diastolic not below the systolic',
  'above-plausible-range': 'A blood pressure was sent above the plausible range',
  'below-plausible-range': 'A blood pressure was sent below the plausible range',
  'unit-missing': 'A blood pressure was sent without a unit',
  'unit-unknown': 'A blood pressure was sent in a unit that is none of pressure',
  'time-unusable': 'A blood pressure was sent without a usable time',
  'faulty-form': 'A blood pressure was sent in a form that cannot be used',
  'lower-bound': 'A blood pressure was sent as "at least", and may be higher',
};

/** Nothing speaks against these numbers but what they lack: below the limits they ask for nothing. */
const onlyByNumber: ReadonlySet<Doubtful['why']> = new Set<Doubtful['why']>([
  'unit-missing',
  'time-unusable',
  'faulty-form',
]);

/** Faults of the sender's form, which say nothing of a slip at the bedside. */
const ofForm: ReadonlySet<Doubtful['why']> = new Set<Doubtful['why']>([
  'unit-unknown',
  'faulty-form',
  'lower-bound',
]);

function isAnswered(view: View, item: Doubtful, options: Options): boolean {
  const { at, why } = item;
  if (at === undefined) return false;
  if (ofForm.has(why) && at.latest < view.timeline.asOf - milliseconds(options.freshWithin)) return true;
  if (view.place(at).outside === 'earlier') return true;
  const wait = milliseconds(options.supersededAfter);
  return view.readings.some(({ reading }) => reading.at.earliest - at.latest >= wait);
}

function levelOf(item: Doubtful, options: Options): Options['level'] | undefined {
  const judged = asJudged(item);
  if (item.why === 'lower-bound') return levelOfLowerBound(judged, options);
  if (item.why === 'above-plausible-range' || reaches(judged, options.severe)) return 'emergency';
  if (reaches(judged, options.limits)) return 'same-day';
  return onlyByNumber.has(item.why) ? undefined : 'same-day';
}

/** One that is severe already is judged as the reading it is. */
function levelOfLowerBound(judged: Pressure, options: Options): Options['level'] | undefined {
  if (reaches(judged, options.severe)) return undefined;
  return reaches(judged, options.limits) ? 'emergency' : 'same-day';
}

function asJudged(item: Doubtful): Pressure {
  const { systolic, diastolic } = item;
  if (item.why === 'diastolic-not-below-systolic' && systolic !== undefined && diastolic !== undefined)
    return { systolicMmHg: Math.max(systolic, diastolic), diastolicMmHg: Math.min(systolic, diastolic) };
  return {
    ...(systolic === undefined ? {} : { systolicMmHg: systolic }),
    ...(diastolic === undefined ? {} : { diastolicMmHg: diastolic }),
  };
}

const evidenceOf = (item: Doubtful): readonly Evidence[] =>
  item.sources.map((source) => ({
    reference: source.reference,
    what: item.why === 'lower-bound' ? 'blood pressure' : 'blood pressure that cannot be used',
    ...(item.at === undefined ? {} : { at: item.at.text }),
    asSent: item.asSent,
  }));
