// The engine as the tests use it, with two checks that hold for every answer.
import { expect } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import type { Evaluation } from '../../src/evaluation.ts';

export interface Summary {
  readonly classification: readonly string[];
  readonly urgency: string;
}

export const toSummary = (evaluation: Evaluation): Summary => ({
  classification: evaluation.assessment.classification,
  urgency: evaluation.assessment.urgency,
});

/** Evaluate, and hold the answer to what every answer must satisfy. */
export function evaluateSoundly(
  input: unknown,
  options: { readonly asOf: string; readonly guideline?: string; readonly subject?: string },
): Evaluation {
  const evaluation = evaluate(input, options);
  expectAccountAddsUp(evaluation);
  expectNothingVoidIsEvidence(evaluation);
  return evaluation;
}

/** used + not needed + set aside = received, and each received resource has one line. */
export function expectAccountAddsUp({ account }: Evaluation): void {
  const counted = { used: 0, 'not-needed': 0, 'set-aside': 0 };
  for (const entry of account.entries) counted[entry.outcome] += 1;
  expect(account.entries.length).toBe(account.received);
  expect([account.used, account.notNeeded, account.setAside]).toEqual([
    counted.used,
    counted['not-needed'],
    counted['set-aside'],
  ]);
  expect(account.used + account.notNeeded + account.setAside).toBe(account.received);
  expect(new Set(account.entries.map((entry) => entry.path)).size).toBe(account.received);
}

/** A resource that was entered in error or cancelled supports no finding. */
export function expectNothingVoidIsEvidence({ account, assessment }: Evaluation): void {
  const standing = new Set(
    account.entries.filter((entry) => entry.outcome !== 'set-aside').map((entry) => entry.reference),
  );
  const voided = account.entries.filter(
    (entry) =>
      entry.outcome === 'set-aside' &&
      (entry.code === 'entered-in-error' || entry.code === 'cancelled') &&
      !standing.has(entry.reference),
  );
  const cited = new Set(
    assessment.findings.flatMap((finding) => finding.evidence.map((item) => item.reference)),
  );
  expect(voided.map((entry) => entry.reference).filter((reference) => cited.has(reference))).toEqual([]);
}
