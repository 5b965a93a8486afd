// From answered questions to classes: leading one first, superseded ones folded in.
import type { Finding, Outcome } from '../findings/finding.ts';
import { classifications, type Classification, type ClassRule } from '../guidelines/guideline.ts';
import { combine, decisiveOf, lookUp, questionsOf } from './combine.ts';
import { uniqueEvidence } from './unique-evidence.ts';

export interface Classes {
  readonly classification: readonly Classification[];
  readonly findings: readonly Finding[];
}

/** Id of a class rule where needs refer to it. */
export const classId = (rule: { readonly id: string }): string => `class:${rule.id}`;

/**
 * Decides the classes.
 *
 * Given    rules     in the order of the data; a rule may rest on an earlier one
 *          answers   findings of the questions
 *          outcomes  outcome by question id; the outcome of each class rule is added as `class:<id>`
 * Returns  classes that hold, leading one first; `cannot-classify` when none does; a finding for each rule
 * Throws   when the data names an unknown question
 * Notes    1. After this a rule whose class is superseded counts as not met for urgency and actions.
 */
export function decideClasses(
  rules: readonly ClassRule[],
  answers: readonly Finding[],
  outcomes: Map<string, Outcome>,
): Classes {
  const byId = new Map(answers.map((finding) => [finding.question, finding]));
  const outcomeOf = lookUp(outcomes);
  const findings = rules.map((rule) => {
    const outcome = combine(rule.when, outcomeOf);
    outcomes.set(classId(rule), outcome);
    return asFinding(rule, outcome, byId, outcomeOf);
  });
  const held = rules.filter((rule) => outcomes.get(classId(rule)) === 'met');
  const superseded = new Set(held.flatMap((rule) => rule.supersedes));
  for (const rule of held) if (superseded.has(rule.classification)) outcomes.set(classId(rule), 'not-met');
  const standing = new Set(held.map((rule) => rule.classification).filter((item) => !superseded.has(item)));
  const classification = classifications.filter((item) => standing.has(item));
  return { classification: classification.length > 0 ? classification : ['cannot-classify'], findings };
}

function asFinding(
  rule: ClassRule,
  outcome: Outcome,
  byId: ReadonlyMap<string, Finding>,
  outcomeOf: (id: string) => Outcome | undefined,
): Finding {
  const decisive = decisiveOf(rule.when, outcomeOf).flatMap((id) => byId.get(id) ?? []);
  const isMet = outcome === 'met';
  return {
    question: classId(rule),
    asks: rule.sentence,
    outcome,
    because: eachOnce(decisive.map((part) => part.because)).join(' ') || rule.sentence,
    evidence: isMet ? uniqueEvidence(decisive.flatMap((part) => part.evidence)) : [],
    thresholds: isMet ? [...new Set(decisive.flatMap((part) => part.thresholds))] : [],
    source: rule.citation,
    restsOn: questionsOf(rule.when),
  };
}

/** A sentence that another one holds already is not said again. */
const eachOnce = (sentences: readonly string[]): readonly string[] =>
  [...new Set(sentences)].filter((one, _, all) => !all.some((other) => other !== one && other.includes(one)));
