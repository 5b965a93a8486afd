// all / any / none over four outcomes. The whole logic of rules.
import type { Need } from '../guidelines/guideline.ts';
import type { Outcome } from '../findings/finding.ts';

/**
 * The outcome of a need.
 *
 * Given    need     a question id, or all / any / none of further needs
 *          outcome  what each question id was answered
 * Returns  all   one not-met decides; else one not-applicable; else one cannot-tell keeps it open; else met
 *          any   one met decides; else one cannot-tell; else one not-met; else not-applicable
 *          none  one met makes it not-met; else one cannot-tell keeps it open; else met
 * Throws   when a need names a question that was not asked: a defect of the data
 * Source   ours: three-valued logic with "not applicable" beside it
 */
export function combine(need: Need, outcome: (id: string) => Outcome | undefined): Outcome {
  if (typeof need === 'string') {
    const answer = outcome(need);
    if (answer === undefined) throw new Error(`A rule rests on a question nobody asked: ${need}`);
    return answer;
  }
  if ('all' in need)
    return first(outcomesOf(need.all, outcome), ['not-met', 'not-applicable', 'cannot-tell'], 'met');
  if ('any' in need)
    return first(outcomesOf(need.any, outcome), ['met', 'cannot-tell', 'not-met'], 'not-applicable');
  const outcomes = outcomesOf(need.none, outcome);
  if (outcomes.has('met')) return 'not-met';
  return outcomes.has('cannot-tell') ? 'cannot-tell' : 'met';
}

const outcomesOf = (
  needs: readonly Need[],
  outcome: (id: string) => Outcome | undefined,
): ReadonlySet<Outcome> => new Set(needs.map((need) => combine(need, outcome)));

const first = (outcomes: ReadonlySet<Outcome>, order: readonly Outcome[], otherwise: Outcome): Outcome =>
  order.find((outcome) => outcomes.has(outcome)) ?? otherwise;

const derived = /^(class|urgency|referral|prevention):/;

/** Looks an id up; a class, urgency, referral or prevention rule this guideline does not have is not applicable. */
export const lookUp =
  (outcomes: ReadonlyMap<string, Outcome>) =>
  (id: string): Outcome | undefined =>
    outcomes.get(id) ?? (derived.test(id) ? 'not-applicable' : undefined);

/** Every question id a need rests on, each once, in reading order. */
export function questionsOf(need: Need): readonly string[] {
  if (typeof need === 'string') return [need];
  const parts = 'all' in need ? need.all : 'any' in need ? need.any : need.none;
  return [...new Set(parts.flatMap(questionsOf))];
}

/**
 * The questions that decide a need.
 *
 * Given    need, outcome  as for `combine`
 * Returns  ids of the questions on the branches that give the need its outcome, each once, in reading order; for an
 *          open need those that keep it open
 * Throws   as `combine`
 */
export function decisiveOf(need: Need, outcome: (id: string) => Outcome | undefined): readonly string[] {
  if (typeof need === 'string') return [need];
  const whole = combine(need, outcome);
  const wanted = 'none' in need ? beneathNone[whole] : whole;
  const parts = 'all' in need ? need.all : 'any' in need ? need.any : need.none;
  return [
    ...new Set(
      parts.filter((part) => combine(part, outcome) === wanted).flatMap((part) => decisiveOf(part, outcome)),
    ),
  ];
}

/** What the parts of a `none` were answered when the whole has this outcome. */
const beneathNone: Readonly<Record<Outcome, Outcome>> = {
  met: 'not-met',
  'not-met': 'met',
  'cannot-tell': 'cannot-tell',
  'not-applicable': 'not-applicable',
};
