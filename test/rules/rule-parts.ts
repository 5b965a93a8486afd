// Rules and findings of their own, for tests of how answers are combined and what follows from them.
import type { Finding, Outcome } from '../../src/findings/finding.ts';
import type { Classification, ClassRule, Guideline, Need } from '../../src/guidelines/guideline.ts';
import type { KnownCondition } from '../../src/timeline/timeline.ts';
import { guideline } from '../support/assess.ts';
import { limit, raisedLimits, severeLimits } from './checks/ask.ts';
import { condition } from './facts.ts';

export const threshold = limit('>=', 1, '1');
export const { citation } = threshold;

/** Questions named by their answers. */
export const ids: Readonly<Record<string, Outcome>> = {
  met: 'met',
  not: 'not-met',
  open: 'cannot-tell',
  other: 'not-applicable',
};

export const classRule = (
  id: string,
  classification: Classification,
  when: Need,
  supersedes: readonly Classification[] = [],
): ClassRule => ({
  id,
  classification,
  sentence: `It is ${id}.`,
  appliesTo: 'all',
  when,
  supersedes,
  citation,
});
export const finding = (question: string, more: Partial<Finding> = {}): Finding => ({
  question,
  asks: question,
  outcome: ids[question] ?? 'met',
  because: `because of ${question}`,
  evidence: [{ reference: `Observation/${question}`, what: 'blood pressure', asSent: question }],
  thresholds: [threshold],
  source: citation,
  ...more,
});

/** Each question of `ids`, answered as it is named. */
export const outcomes: ReadonlyMap<string, Outcome> = new Map(Object.entries(ids));
/** The first level with rules of its own. */
export const edition = (more: Partial<Guideline>): Guideline => ({
  ...guideline(),
  chartLimits: { hypertension: raisedLimits, severe: severeLimits },
  ...more,
});
export const over = (name: KnownCondition['condition']): KnownCondition => ({
  ...condition(name),
  state: 'inactive',
});
export const allergy = (to: NonNullable<KnownCondition['allergicTo']>): KnownCondition => ({
  ...condition('medicine-allergy'),
  allergicTo: to,
});
