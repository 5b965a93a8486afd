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
  if ('all' in need) return firstAmong(need.all, outcome, inAll) ?? 'met';
  if ('any' in need) return firstAmong(need.any, outcome, inAny) ?? 'not-applicable';
  const found = firstAmong(need.none, outcome, inNone);
  if (found === undefined) return 'met';
  return found === 'met' ? 'not-met' : 'cannot-tell';
}

/** Outcomes of the parts that decide the whole, the strongest first. */
const inAll: readonly Outcome[] = ['not-met', 'not-applicable', 'cannot-tell'];
const inAny: readonly Outcome[] = ['met', 'cannot-tell', 'not-met'];
const inNone: readonly Outcome[] = ['met', 'cannot-tell'];

/** The first of these outcomes that one of the needs has; every need is looked at, so that a defect never hides. */
function firstAmong(
  needs: readonly Need[],
  outcome: (id: string) => Outcome | undefined,
  order: readonly Outcome[],
): Outcome | undefined {
  let rank = order.length;
  for (const need of needs) {
    const at = order.indexOf(combine(need, outcome));
    if (at >= 0 && at < rank) rank = at;
  }
  return order[rank];
}

const derived = /^(class|urgency|referral|prevention):/;

/** Looks an id up; a class, urgency, referral or prevention rule this guideline does not have is not applicable. */
export const lookUp =
  (outcomes: ReadonlyMap<string, Outcome>) =>
  (id: string): Outcome | undefined =>
    outcomes.get(id) ?? (derived.test(id) ? 'not-applicable' : undefined);

/** Every question id a need rests on, each once, in reading order. */
export function questionsOf(need: Need): readonly string[] {
  if (typeof need === 'string') return [need];
  const known = questionsByNeed.get(need);
  if (known !== undefined) return known;
  const questions = [...new Set(partsOf(need).flatMap(questionsOf))];
  questionsByNeed.set(need, questions);
  return questions;
}

/** Needs are data that never changes: computed once for each. */
const questionsByNeed = new WeakMap<Exclude<Need, string>, readonly string[]>();

const partsOf = (need: Exclude<Need, string>): readonly Need[] =>
  'all' in need ? need.all : 'any' in need ? need.any : need.none;

/**
 * The questions that decide a need.
 *
 * Given    need, outcome  as for `combine`
 * Returns  ids of the questions on the branches that give the need its outcome, each once, in reading order; for an
 *          open need those that keep it open
 * Throws   as `combine`
 */
export function decisiveOf(need: Need, outcome: (id: string) => Outcome | undefined): readonly string[] {
  const found = new Set<string>();
  addDecisive(need, combine(need, outcome), outcome, found);
  return [...found];
}

function addDecisive(
  need: Need,
  whole: Outcome,
  outcome: (id: string) => Outcome | undefined,
  found: Set<string>,
): void {
  if (typeof need === 'string') {
    found.add(need);
    return;
  }
  const wanted = 'none' in need ? beneathNone[whole] : whole;
  for (const part of partsOf(need))
    if (combine(part, outcome) === wanted) addDecisive(part, wanted, outcome, found);
}

/** What the parts of a `none` were answered when the whole has this outcome. */
const beneathNone: Readonly<Record<Outcome, Outcome>> = {
  met: 'not-met',
  'not-met': 'met',
  'cannot-tell': 'cannot-tell',
  'not-applicable': 'not-applicable',
};
