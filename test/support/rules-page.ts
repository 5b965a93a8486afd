// RULES.md as it should be now: the guideline data, the case files and what the engine answers to them.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fingerprint } from '../../src/fingerprint.ts';
import type { Outcome } from '../../src/findings/finding.ts';
import type { Guideline } from '../../src/guidelines/guideline.ts';
import { guidelineIds, guidelineOf, timelineValues } from '../../src/guidelines/registry.ts';
import { measureDefinitions as measures } from '../../src/guidelines/measures.ts';
import { siteQualityRules } from '../../src/guidelines/quality-rules.ts';
import { reviews } from '../../src/guidelines/reviews.ts';
import { riskModels } from '../../src/guidelines/risk-models.ts';
import { applyRules } from '../../src/rules/apply-rules.ts';
import { combine, lookUp } from '../../src/rules/combine.ts';
import { prepare } from '../../src/evaluate.ts';
import type { Timeline } from '../../src/timeline/timeline.ts';
import type { RuleCase } from '../../src/presenters/rule-cases.ts';
import { toRulePages } from '../../src/presenters/rule-table.ts';
import { caseAsOf, caseBundle } from './case-bundle.ts';
import { readCaseFile, type CaseRow } from './case-schema.ts';

export const guidelines: readonly Guideline[] = guidelineIds.flatMap((id) => guidelineOf(id) ?? []);

/** Every case file under a folder, at any depth, in order of path. */
function caseFiles(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
    .sort()
    .map((name) => join(folder, name));
}

/** Check cases first: they are the ones a reader knows. */
export function everyCaseRow(root: string): readonly CaseRow[] {
  const folder = join(root, 'test', 'cases');
  const named = join(folder, 'check-cases.json');
  const others = caseFiles(folder).filter((path) => path !== named);
  return [named, ...others].flatMap((path) => readCaseFile(path).rows);
}

export const caseTimeline = (row: CaseRow): Timeline =>
  prepare(caseBundle(row.given), { asOf: row.asOf ?? caseAsOf(row.given) }).built.timeline;

/** Outcome of every class and urgency rule of a guideline, before one class takes the place of another. */
function outcomesOf(timeline: Timeline, guideline: Guideline): Readonly<Record<string, Outcome>> {
  const { assessment } = applyRules(timeline, guideline, timelineValues);
  const outcomes = new Map(assessment.findings.map(({ question, outcome }) => [question, outcome]));
  const held = new Set(assessment.urgencyBecause.map(({ rule }) => rule));
  for (const rule of guideline.urgencyRules) {
    const key = `urgency:${rule.id}`;
    outcomes.set(key, combine(rule.when, lookUp(outcomes)));
    // After superseding, only what still holds counts as met.
    if (held.has(rule.id)) outcomes.set(key, 'met');
    else if (outcomes.get(key) === 'met') outcomes.set(key, 'not-met');
  }
  return Object.fromEntries(outcomes);
}

export function ruleCases(root: string): readonly RuleCase[] {
  return everyCaseRow(root).map((row) => {
    const timeline = caseTimeline(row);
    const named = guidelines.filter(({ id }) => row.expect[id] !== undefined);
    return {
      id: row.id,
      name: row.name,
      basis: row.basis,
      given: row.given,
      expect: row.expect,
      outcomes: Object.fromEntries(named.map((each) => [each.id, outcomesOf(timeline, each)])),
    };
  });
}

/** The pages, from the files under the root of the project. */
export const rulePages = (root: string): ReturnType<typeof toRulePages> =>
  toRulePages({
    guidelines,
    cases: ruleCases(root),
    reviews,
    fingerprint,
    riskModels,
    measures,
    siteQualityRules,
    otherValues: [
      { name: 'dating and plausibility', data: timelineValues },
      { name: 'measures', data: measures },
      { name: 'site reports', data: siteQualityRules },
      { name: 'risk equations', data: riskModels },
    ],
  });
