// Pressures that were received and cannot be used: they never classify, and never lower the urgency.
import type { Evidence } from '../../findings/finding.ts';
import type { QuestionCheck } from '../../guidelines/guideline.ts';
import type { UnusablePressure } from '../../timeline/timeline.ts';
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
 * Source   ours, cautious
 */
export function unusablePressure(view: View, options: Options): Answer {
  const thresholds = [...limitsOf(options.limits), ...limitsOf(options.severe)];
  const found = view.timeline.unusablePressures
    .filter((item) => !isAnswered(view, item, options))
    .filter((item) => levelOf(item, options) === options.level);
  const newest = found.at(-1);
  if (newest === undefined) return notMet('No unusable blood pressure asks for this.', { thresholds });
  return met(`${words[newest.why]} (sent: ${newest.asSent}).`, {
    thresholds,
    evidence: found.flatMap(evidenceOf),
  });
}

const words: Readonly<Record<UnusablePressure['why'], string>> = {
  'diastolic-not-below-systolic': 'A blood pressure was sent with the diastolic not below the systolic',
  'above-plausible-range': 'A blood pressure was sent above the plausible range',
  'below-plausible-range': 'A blood pressure was sent below the plausible range',
  'unit-missing': 'A blood pressure was sent without a unit',
  'time-unusable': 'A blood pressure was sent without a usable time',
};

/** Nothing speaks against these numbers but what they lack: below the limits they ask for nothing. */
const onlyByNumber: ReadonlySet<UnusablePressure['why']> = new Set<UnusablePressure['why']>([
  'unit-missing',
  'time-unusable',
]);

function isAnswered(view: View, item: UnusablePressure, options: Options): boolean {
  const { at } = item;
  if (at === undefined) return false;
  if (view.place(at).outside === 'earlier') return true;
  const wait = milliseconds(options.supersededAfter);
  return view.readings.some(({ reading }) => reading.at.earliest - at.latest >= wait);
}

function levelOf(item: UnusablePressure, options: Options): Options['level'] | undefined {
  const judged = asJudged(item);
  if (item.why === 'above-plausible-range' || reaches(judged, options.severe)) return 'emergency';
  if (reaches(judged, options.limits)) return 'same-day';
  return onlyByNumber.has(item.why) ? undefined : 'same-day';
}

function asJudged(item: UnusablePressure): Pressure {
  const { systolic, diastolic } = item;
  if (item.why === 'diastolic-not-below-systolic' && systolic !== undefined && diastolic !== undefined)
    return { systolicMmHg: Math.max(systolic, diastolic), diastolicMmHg: Math.min(systolic, diastolic) };
  return {
    ...(systolic === undefined ? {} : { systolicMmHg: systolic }),
    ...(diastolic === undefined ? {} : { diastolicMmHg: diastolic }),
  };
}

const evidenceOf = (item: UnusablePressure): readonly Evidence[] =>
  item.sources.map((source) => ({
    reference: source.reference,
    what: 'blood pressure that cannot be used',
    ...(item.at === undefined ? {} : { at: item.at.text }),
    asSent: item.asSent,
  }));
