// What holds for every finding: an answer cites the facts it rests on, each once, and its limits; a "no" as much as a "yes".
import { expect } from 'vitest';
import type { Assessment, Evidence, Finding } from '../../src/findings/finding.ts';
import type { Guideline, Question } from '../../src/guidelines/guideline.ts';

type Check = Question['check'];

/** Checks that compare a measured value with a limit of their own: every yes names it. */
const limited: ReadonlySet<Check> = new Set<Check>([
  'pressure-raised-once',
  'pressure-raised-now',
  'pressure-raised-open',
  'pressure-normal-now',
  'pressure-confirmed',
  'pressure-pair-stale',
  'pressure-settled',
  'pressure-transient',
  'severe-pressure-open',
  'severe-pressure-closed',
  'severe-pressure-confirmed',
  'severe-pressure-current',
  'pressure-control-lost',
  'unusable-pressure',
  'home-pressure',
  'laboratory-reaches',
  'laboratory-fall',
  'laboratory-on-medicine',
  'fetuses-reach',
  'urine-tested',
  'proteinuria',
  'hellp',
]);

/** Of those, the ones in which every no names the limit too. */
const limitedWhenNot: ReadonlySet<Check> = new Set([...limited].filter((check) => check !== 'hellp'));

/** A no of these checks has looked at a fact, and says which. */
const groundedWhenNot: ReadonlySet<Check> = new Set<Check>([
  'pressure-raised-once',
  'pressure-raised-now',
  'pressure-normal-now',
  'pressure-confirmed',
  'pressure-pair-stale',
  'pressure-settled',
  'home-pressure',
  'laboratory-reaches',
  'laboratory-fall',
  'proteinuria',
  'hellp',
]);

/** These cannot tell only because of a fact that is not enough, and say which. */
const groundedWhenOpen: ReadonlySet<Check> = new Set<Check>(['pressure-confirmed', 'hellp']);

const withoutFact: ReadonlySet<string> = new Set(['now-unknown', 'now-before-20-weeks']);

/** A no of these says that nothing is on record. */
const noIsSilence: ReadonlySet<string> = new Set(['home-below-on-record']);

/**
 * Holds the findings of an answer to the promise of a trace.
 *
 * Given    assessment, guideline  of one evaluation
 * Throws   when an answer that rests on a fact cites none, cites one twice, or names no limit where it compares;
 *          when a step or a treatment is shown twice
 */
export function expectGrounded(assessment: Assessment, guideline: Guideline): void {
  const questions = new Map(guideline.questions.map((question) => [question.id, question]));
  expect(
    assessment.findings.flatMap((finding) => {
      const question = questions.get(finding.question);
      return question === undefined
        ? []
        : faultsOf(finding, question.check).map(
            (fault) => `${finding.question}, ${finding.outcome}: ${fault}`,
          );
    }),
  ).toEqual([]);
  for (const shown of [assessment.actions, assessment.treatment]) {
    const ids = shown.map(({ id }) => id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  }
}

function faultsOf(finding: Finding, check: Check): readonly string[] {
  const { evidence, thresholds } = finding;
  return [
    ...(evidence.length === 0 && mustCite(finding, check) ? ['no evidence'] : []),
    ...(thresholds.length === 0 && mustNameLimit(finding, check) ? ['no limit'] : []),
    ...(evidence.every(isWhole) ? [] : ['evidence without reference, name or value']),
    ...(thresholds.every(({ citation }) => (citation as unknown) !== undefined)
      ? []
      : ['a limit without a source']),
    // That the length of the pregnancy is not known is an answer, and the dating is missing all the same.
    ...(finding.missing === undefined ||
    finding.outcome === 'cannot-tell' ||
    finding.question === 'now-unknown'
      ? []
      : ['something missing, though it is answered']),
    ...(new Set(evidence.map(keyOf)).size === evidence.length ? [] : ['a fact cited twice']),
  ];
}

function mustCite({ question, outcome }: Finding, check: Check): boolean {
  switch (outcome) {
    case 'met':
      return !withoutFact.has(question);
    case 'not-met':
      return groundedWhenNot.has(check) && !noIsSilence.has(question);
    case 'cannot-tell':
      return groundedWhenOpen.has(check);
    case 'not-applicable':
      return false;
  }
}

function mustNameLimit({ outcome, evidence }: Finding, check: Check): boolean {
  // Organs: a result that was compared is shown with what it was compared with.
  if (check === 'organ-involvement' && outcome === 'not-met') return evidence.length > 0;
  return (outcome === 'met' && limited.has(check)) || (outcome === 'not-met' && limitedWhenNot.has(check));
}

const isWhole = ({ reference, what, asSent }: Evidence): boolean =>
  [reference, what, asSent].every((text: unknown) => typeof text === 'string' && text !== '');

const keyOf = ({ reference, what, at, asSent, asCompared }: Evidence): string =>
  JSON.stringify([reference, what, at, asSent, asCompared]);
