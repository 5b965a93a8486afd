// Aspirin and calcium: indicated or not, by which factors, and what was never asked. Nothing clinical inside.
import type { Evidence, Outcome, PreventionAdvice } from '../findings/finding.ts';
import type { Guideline, PreventionRule, Threshold } from '../guidelines/guideline.ts';
import { ofFact } from './answer.ts';
import { ofMedicine } from './checks/pressure-drugs.ts';
import { combine, lookUp } from './combine.ts';
import { satisfies } from './compare.ts';
import { judgeFactor, type JudgedFactor } from './prevention-factors.ts';
import type { View } from './view.ts';

/**
 * Who is offered aspirin or calcium.
 *
 * Given    guideline  its prevention rules
 *          outcomes   of questions and classes; `prevention:<id>` and `prevention:<id>-due` are added
 * Returns  one advice for each rule:
 *          met             enough factors were found and nothing speaks against it; `dose` inside the window or before it
 *          not-met         too few factors whatever is answered, not advised by the publication, or something speaks
 *                          against it
 *          cannot-tell     factors never asked could still be enough
 *          not-applicable  not pregnant, or the disease is already there
 * Throws   when the data names an unknown question
 * Notes    1. Due: met, the window open, and none on record as taken or ordered. Only that is pressing.
 *          2. A medicine on record as stopped is not taken.
 * Source   the factors, counts, doses and windows come from the guideline data; decision 8
 */
export function advisePrevention(
  view: View,
  guideline: Guideline,
  outcomes: Map<string, Outcome>,
): readonly PreventionAdvice[] {
  return (guideline.preventionRules ?? []).map((rule) => {
    const factors = rule.factors.map((factor) => judgeFactor(view, factor, outcomes));
    const state = stateOf(view, rule, factors, outcomes);
    outcomes.set(`prevention:${rule.id}`, state.outcome);
    outcomes.set(`prevention:${rule.id}-due`, dueOutcome(state));
    return asAdvice(rule, factors, state);
  });
}

interface State {
  readonly outcome: Outcome;
  readonly because: string;
  readonly window: 'open' | 'not-yet' | 'over' | 'past-stop' | 'unknown' | 'none';
  readonly taken: readonly Evidence[];
  readonly against: readonly Evidence[];
}

function stateOf(
  view: View,
  rule: PreventionRule,
  factors: readonly JudgedFactor[],
  outcomes: ReadonlyMap<string, Outcome>,
): State {
  const against = view.timeline.conditions
    .filter((item) => item.state === 'active' && rule.contraindications.includes(item.condition))
    .map((item) => ofFact(`condition, ${item.condition}`, item, item.onset ?? item.recorded));
  const taken = view.timeline.medicines
    .filter((item) => rule.medicines.includes(item.medicine))
    .filter((item) => item.status === 'active' || item.status === 'ordered')
    .map(ofMedicine);
  return { ...decide(view, rule, factors, against, outcomes), window: windowOf(view, rule), taken, against };
}

function decide(
  view: View,
  rule: PreventionRule,
  factors: readonly JudgedFactor[],
  against: readonly Evidence[],
  outcomes: ReadonlyMap<string, Outcome>,
): Pick<State, 'outcome' | 'because'> {
  if (view.now.period === 'after-birth' || view.now.outside !== undefined)
    return { outcome: 'not-applicable', because: 'It is given in pregnancy.' };
  if (combine(rule.tooLateWhen, lookUp(outcomes)) === 'met')
    return {
      outcome: 'not-applicable',
      because: 'Pre-eclampsia is already there: it no longer prevents it.',
    };
  if (rule.notAdvised !== undefined) return { outcome: 'not-met', because: rule.notAdvised };
  if (rule.advice !== undefined) return { outcome: 'cannot-tell', because: rule.advice };
  const outcome = countOutcome(rule, factors);
  if (outcome === 'met' && against.length > 0)
    return { outcome: 'not-met', because: 'The factors are there, and the record speaks against it.' };
  return { outcome, because: countText[outcome] };
}

const countText: Readonly<Record<Outcome, string>> = {
  met: 'Indicated by the factors found.',
  'not-met': 'Not indicated by the factors asked.',
  'cannot-tell': 'Not indicated by what is on record; factors never asked could change that.',
  'not-applicable': '',
};

/** Enough now; or still possible with what was never asked; or not. */
function countOutcome({ enough, toAsk = [] }: PreventionRule, factors: readonly JudgedFactor[]): Outcome {
  const levels = ['high', 'moderate'] as const;
  const reaches = (withUnknown: boolean): boolean =>
    levels.some((level) => {
      const needed = enough[level];
      if (needed === undefined) return false;
      const count = factors.filter(
        (item) =>
          item.factor.level === level &&
          (item.verdict === 'found' || (withUnknown && item.verdict === 'never-asked')),
      ).length;
      const extra = withUnknown && level === 'moderate' ? toAsk.length : 0;
      return isEnough(count + extra, needed);
    });
  if (reaches(false)) return 'met';
  return reaches(true) ? 'cannot-tell' : 'not-met';
}

const isEnough = (value: number, needed: Threshold): boolean => satisfies({ value }, needed) === true;

function windowOf(view: View, { window }: PreventionRule): State['window'] {
  const value = view.now.gestationalAgeDays;
  if (window === undefined) return 'none';
  if (value === undefined) return 'unknown';
  if (satisfies({ value }, window.from) !== true) return 'not-yet';
  if (window.stop !== undefined && satisfies({ value }, window.stop) === true) return 'past-stop';
  return satisfies({ value }, window.until) === true ? 'open' : 'over';
}

function dueOutcome({ outcome, window, taken }: State): Outcome {
  if (outcome !== 'met') return outcome;
  if (taken.length > 0) return 'not-met';
  if (window === 'unknown') return 'cannot-tell';
  return window === 'open' ? 'met' : 'not-met';
}

function asAdvice(rule: PreventionRule, factors: readonly JudgedFactor[], state: State): PreventionAdvice {
  if (state.outcome === 'not-applicable')
    return {
      ...silence,
      id: rule.id,
      outcome: state.outcome,
      sentence: state.because,
      source: rule.citation,
    };
  const of = (verdict: JudgedFactor['verdict']) => factors.filter((item) => item.verdict === verdict);
  const isGiven = state.outcome === 'met' && state.window !== 'over' && state.window !== 'past-stop';
  const elsewhere = factors.flatMap((item) => item.elsewhere ?? []);
  return {
    id: rule.id,
    outcome: state.outcome,
    sentence: [state.because, ...stateText(rule, state), ...elsewhere]
      .filter((part) => part !== '')
      .join(' '),
    found: of('found').map(({ factor, evidence }) => ({
      factor: factor.factor,
      level: factor.level,
      evidence,
    })),
    absent: of('absent').map(({ factor }) => factor.factor),
    neverAsked: [...of('never-asked').map(({ factor }) => factor.factor), ...(rule.toAsk ?? [])],
    ...(isGiven ? { dose: rule.dose } : {}),
    ...(rule.window === undefined ? {} : { window: rule.window.sentence }),
    source: rule.citation,
  };
}

const silence = { found: [], absent: [], neverAsked: [] } as const;

function stateText(rule: PreventionRule, { outcome, window, taken, against }: State): readonly string[] {
  const parts = [
    ...(taken.length > 0 ? [`On record as taken or ordered: ${listed(taken)}.`] : []),
    ...(against.length > 0 ? [`On record: ${listed(against)}.`] : []),
  ];
  if (outcome !== 'met') return parts;
  return [...parts, (taken.length > 0 ? takenText : windowText)[window]];
}

const windowText: Readonly<Record<State['window'], string>> = {
  open: 'Its window is open.',
  'not-yet': 'Its window has not opened yet.',
  over: 'Its window to begin is over: ask a specialist.',
  'past-stop': 'Its window to begin is over: ask a specialist.',
  unknown: 'Whether its window is open is not known: the pregnancy is not dated.',
  none: '',
};

/** For her who takes it. */
const takenText: Readonly<Record<State['window'], string>> = {
  ...windowText,
  open: 'Go on as printed.',
  over: 'Go on as printed: the window is for beginning.',
  'past-stop': 'This publication stops it at this week: ask whether she is to stop.',
};

const listed = (evidence: readonly Evidence[]): string =>
  [...new Set(evidence.map((item) => item.asSent))].join(', ');
