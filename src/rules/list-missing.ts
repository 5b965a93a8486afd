// What is missing, and which answer it could change.
import type { Finding, Missing, Outcome } from '../findings/finding.ts';
import { urgencies, type Classification, type Guideline, type Urgency } from '../guidelines/guideline.ts';
import { decisiveOf, lookUp } from './combine.ts';
import { classId } from './decide-classes.ts';

/** Classes whose being open is no reason to hurry when nothing else is found. */
const quietClasses: ReadonlySet<Classification> = new Set<Classification>([
  'isolated-proteinuria',
  'white-coat-hypertension',
  'masked-hypertension',
]);

/**
 * What to measure or ask.
 *
 * Given    answers   findings of the questions; those that cannot tell carry what is missing
 *          outcomes  of the class rules: only an open class makes a gap worth naming, or one that holds although something is
 *                    missing all the same: the dating of the pregnancy
 * Returns  one entry for each gap, most urgent first, with the classes it could change
 * Throws   never
 */
export function listMissing(
  guideline: Guideline,
  answers: readonly Finding[],
  outcomes: ReadonlyMap<string, Outcome>,
  urgency: Urgency,
): readonly Missing[] {
  const open = guideline.classRules.flatMap((rule) => {
    const outcome = outcomes.get(classId(rule));
    if (outcome !== 'cannot-tell' && outcome !== 'met') return [];
    const { classification } = rule;
    return [{ classification, outcome, decidedBy: new Set(decisiveOf(rule.when, lookUp(outcomes))) }];
  });
  const gaps = new Map<string, Missing>();
  for (const finding of answers) {
    if (finding.missing === undefined) continue;
    // What can wait for the next visit is not asked for in an emergency.
    if (urgency === 'emergency' && finding.missing.by === 'routine') continue;
    const couldChange = open
      .filter(
        (rule) =>
          rule.outcome === finding.outcome &&
          (finding.outcome === 'met' || rule.decidedBy.has(finding.question)),
      )
      .map((rule) => rule.classification);
    if (couldChange.length === 0) continue;
    const known = gaps.get(finding.missing.id);
    const classes = [...new Set([...(known?.couldChange ?? []), ...couldChange])];
    const isQuiet =
      urgency === 'routine' &&
      (finding.outcome === 'met' || couldChange.every((item) => quietClasses.has(item)));
    gaps.set(finding.missing.id, {
      ...(known ?? { ...finding.missing, by: isQuiet ? 'routine' : finding.missing.by }),
      couldChange: classes,
    });
  }
  return [...gaps.values()].sort((a, b) => urgencies.indexOf(a.by) - urgencies.indexOf(b.by));
}
