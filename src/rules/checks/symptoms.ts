// Symptoms: present, absent, or never asked.
import type { Evidence } from '../../findings/finding.ts';
import { idWords } from '../../id-words.ts';
import type { Period, QuestionCheck, SymptomId, Threshold } from '../../guidelines/guideline.ts';
import type { Symptom } from '../../timeline/timeline.ts';
import { cannotTell, met, notMet, ofFact, type Answer } from '../answer.ts';
import { milliseconds } from '../compare.ts';
import type { View } from '../view.ts';

type Options = Extract<QuestionCheck, { check: 'symptom-present' }>;

/** The newest statement about each symptom; at the same time "present" wins. */
function newestStatements(view: View): ReadonlyMap<SymptomId, Symptom> {
  const newest = new Map<SymptomId, Symptom>();
  for (const symptom of view.timeline.symptoms) {
    const known = newest.get(symptom.symptom);
    if (known === undefined || isNewer(symptom, known)) newest.set(symptom.symptom, symptom);
  }
  return newest;
}

function isNewer(a: Symptom, b: Symptom): boolean {
  const difference = timeOf(a) - timeOf(b);
  return difference > 0 || (difference === 0 && a.presence === 'present');
}

/** A present symptom without a time counts as current; an absent one without a time says little. */
const timeOf = (symptom: Symptom): number =>
  symptom.at?.latest ??
  (symptom.presence === 'present' ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY);

const counts = (symptom: Symptom): boolean =>
  symptom.presence === 'present' && !symptom.relieved && symptom.severity !== 'mild';

export const ofSymptom = (symptom: Symptom): Evidence =>
  ofFact(`symptom, ${symptom.symptom}`, symptom, symptom.at);

/** Danger symptoms that are present, whatever their age: used beside a pressure reading. */
export function presentSymptoms(
  view: View,
  symptoms: readonly SymptomId[],
  freshWithin?: Threshold,
): readonly Evidence[] {
  const oldest = freshWithin === undefined ? undefined : view.timeline.asOf - milliseconds(freshWithin);
  return [...newestStatements(view).values()]
    .filter((symptom) => symptoms.includes(symptom.symptom) && counts(symptom) && isInScope(view, symptom))
    .filter((symptom) => oldest === undefined || timeOf(symptom) >= oldest)
    .map(ofSymptom);
}

const isInScope = (view: View, symptom: Symptom, periods?: readonly Period[]): boolean => {
  if (symptom.at === undefined) return periods === undefined || periods.includes(view.now.period);
  const place = view.place(symptom.at);
  return place.outside !== 'earlier' && (periods === undefined || periods.includes(place.period));
};

/**
 * Is a symptom present?
 *
 * Given    options.symptoms     which; one is enough
 *          options.freshWithin  older statements say nothing about today
 * Returns  met; not-met when each was asked and is absent; cannot-tell when one was never asked or only long ago
 * Throws   never
 * Notes    1. A symptom called mild, or recorded as relieved, does not count; without a grade it counts.
 * Source   ours, cautious
 */
export function symptomPresent(view: View, options: Options): Answer {
  const oldest = view.timeline.asOf - milliseconds(options.freshWithin);
  const statements = [...newestStatements(view).values()].filter(
    (symptom) =>
      options.symptoms.includes(symptom.symptom) &&
      (timeOf(symptom) >= oldest || timeOf(symptom) === Number.NEGATIVE_INFINITY) &&
      isInScope(view, symptom, options.periods),
  );
  const present = statements.filter(
    (symptom) => counts(symptom) || (options.evenWhenOver === true && symptom.presence === 'present'),
  );
  if (present.length > 0)
    return met(`Present: ${present.map((symptom) => idWords(symptom.symptom)).join(', ')}.`, {
      evidence: present.map(ofSymptom),
    });
  const asked = new Set(statements.map((symptom) => symptom.symptom));
  const unasked = options.symptoms.filter((symptom) => !asked.has(symptom));
  const evidence = statements.map(ofSymptom);
  if (options.whenUnasked === 'not-recorded') return notMet('Not recorded.', { evidence });
  if (unasked.length === 0) return notMet('Asked, and not present.', { evidence });
  return cannotTell(`Not recorded: ${unasked.map(idWords).join(', ')}.`, {
    evidence,
    missing: { what: unasked.map(idWords).join(', ') },
  });
}
