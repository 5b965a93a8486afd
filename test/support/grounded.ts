// What holds for every finding: a question that is answered yes cites what it rests on, and its limits.
import { expect } from 'vitest';
import type { Assessment } from '../../src/findings/finding.ts';
import type { Guideline, Question } from '../../src/guidelines/guideline.ts';

/** Checks that compare a measured value with a limit of their own. */
const limited: ReadonlySet<Question['check']> = new Set<Question['check']>([
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

const withoutFact: ReadonlySet<string> = new Set(['now-unknown', 'now-before-20-weeks']);

/**
 * Holds the findings of an answer to the promise of a trace.
 *
 * Given    assessment, guideline  of one evaluation
 * Throws   when a question that holds cites nothing, cites a fact twice, or names no limit where it compares
 */
export function expectGrounded(assessment: Assessment, guideline: Guideline): void {
  const questions = new Map(guideline.questions.map((question) => [question.id, question]));
  const bare: string[] = [];
  for (const finding of assessment.findings) {
    const question = questions.get(finding.question);
    if (question === undefined || finding.outcome !== 'met') continue;
    if (finding.evidence.length === 0 && !withoutFact.has(finding.question))
      bare.push(`${finding.question}: no evidence`);
    if (limited.has(question.check) && finding.thresholds.length === 0)
      bare.push(`${finding.question}: no limit`);
    if (finding.evidence.some(({ reference, asSent }) => reference === '' || asSent === ''))
      bare.push(`${finding.question}: evidence without reference or value`);
  }
  expect(bare).toEqual([]);
}
