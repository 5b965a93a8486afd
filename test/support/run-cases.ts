// Runs the rows of a case file against every guideline they name.
import { describe, expect, it } from 'vitest';
import { caseAsOf, caseBundle } from './case-bundle.ts';
import { evaluateSoundly } from './engine.ts';
import { expectGrounded } from './grounded.ts';
import { ruleOutcome } from './rule-outcome.ts';
import type { CaseFile, CaseRow, Expected } from './case-schema.ts';
import type { Evaluation } from '../../src/evaluation.ts';

/** Guidelines named by any row. */
export function guidelinesOf(file: CaseFile): string[] {
  return [...new Set(file.rows.flatMap((row) => Object.keys(row.expect)))].sort();
}

export function runCases(file: CaseFile): void {
  for (const guideline of guidelinesOf(file)) {
    describe(`${file.title}: ${guideline}`, () => {
      const rows = file.rows.flatMap((row) => {
        const expected = row.expect[guideline];
        return expected === undefined ? [] : [[`${row.id} ${row.name}`, row, expected] as const];
      });
      it.each(rows)('%s', (_title, row, expected) => {
        expectAnswer(answerTo(row, guideline), expected);
      });
    });
  }
}

function answerTo(row: CaseRow, guideline: string): Evaluation {
  return evaluateSoundly(caseBundle(row.given), { asOf: row.asOf ?? caseAsOf(row.given), guideline });
}

/** What a row looks at in an answer. */
export type Answered = Pick<Evaluation, 'guideline' | 'assessment'>;

export function expectAnswer(evaluation: Answered, expected: Expected): void {
  const { classification, urgency } = evaluation.assessment;
  const accepted = [
    ...(expected.classification === undefined ? [] : [expected.classification]),
    ...(expected.anyOf ?? []),
  ];
  const answer = {
    classification: accepted.find((wanted) => satisfies(classification, wanted)) ?? classification,
    urgency,
  };
  expect(answer).toEqual({
    classification: accepted.length === 0 ? classification : oneOf(accepted, answer.classification),
    urgency: expected.urgency,
  });
  if (expected.nothingElse === true) expect([...classification]).toEqual(expected.classification);
  expectRest(evaluation, expected);
  expectGrounded(evaluation.assessment, evaluation.guideline);
  const listed = (expected.excludes ?? []).filter((unwanted) =>
    classification.some((one) => one === unwanted),
  );
  expect(listed).toEqual([]);
  if (expected.finding !== undefined)
    expect(outcomesOf(evaluation, expected.finding.check)).toContain(expected.finding.outcome);
}

/** The answer leads with the first wanted class and lists the others. */
function satisfies(answered: readonly string[], [leading, ...others]: readonly string[]): boolean {
  return answered[0] === leading && others.every((other) => answered.includes(other));
}

/** What to show as expected: the accepted form that was found, else the first. */
function oneOf(accepted: readonly (readonly string[])[], found: readonly string[]): readonly string[] {
  return accepted.find((wanted) => wanted === found) ?? accepted[0] ?? [];
}

function outcomesOf(evaluation: Answered, check: string): string[] {
  const questions = new Set(
    evaluation.guideline.questions.filter((question) => question.check === check).map(({ id }) => id),
  );
  return evaluation.assessment.findings
    .filter(({ question }) => questions.has(question))
    .map(({ outcome }) => outcome);
}

function expectRest(evaluation: Answered, expected: Expected): void {
  const { findings, missing, actions } = evaluation.assessment;
  if (expected.rules !== undefined)
    expect(
      Object.fromEntries(
        Object.keys(expected.rules).map((rule) => [rule, ruleOutcome(evaluation, findings, rule)]),
      ),
    ).toEqual(expected.rules);
  if (expected.missing !== undefined)
    expect(missing.map(({ id }) => id)).toEqual(expect.arrayContaining(expected.missing));
  if (expected.advises !== undefined)
    expect(actions.map(({ id }) => id)).toEqual(expect.arrayContaining(expected.advises));
}
