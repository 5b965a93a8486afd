// One check asked by itself, with limits of its own: what it must answer does not depend on any publication.
import type {
  Comparator,
  Confirmation,
  PressureLimits,
  QuestionCheck,
  SevereConfirmation,
  Threshold,
} from '../../../src/guidelines/guideline.ts';
import { guidelineOf, timelineValues } from '../../../src/guidelines/registry.ts';
import type { Answer } from '../../../src/rules/answer.ts';
import { answerQuestion } from '../../../src/rules/checks/index.ts';
import { prepareView, type View } from '../../../src/rules/view.ts';
import type { Timeline } from '../../../src/timeline/timeline.ts';
import { timeline } from '../facts.ts';

/** A limit that is named by what it says: ">= 140 mm[Hg]". */
export const limit = (comparator: Comparator, value: number, unit: string): Threshold => ({
  id: `${comparator} ${String(value)} ${unit}`,
  comparator,
  value,
  unit,
  citation: { publication: 'test', section: 'test', year: 2026, known: 'ours' },
});

const pressureLimits = (systolic: number, diastolic: number): PressureLimits => ({
  systolic: limit('>=', systolic, 'mm[Hg]'),
  diastolic: limit('>=', diastolic, 'mm[Hg]'),
});
export const raisedLimits = pressureLimits(140, 90);
export const severeLimits = pressureLimits(160, 110);
export const raisedIds = ['>= 140 mm[Hg]', '>= 90 mm[Hg]'];
export const severeIds = ['>= 160 mm[Hg]', '>= 110 mm[Hg]'];

/** Two contacts at least four hours apart. */
export const fourHours: Confirmation = {
  minimumInterval: limit('>=', 4, 'h'),
  between: 'occasions',
  sameArm: false,
  citation: limit('>=', 4, 'h').citation,
};
export const severeConfirmation: SevereConfirmation = {
  minimumInterval: limit('>=', 15, 'min'),
  closedAfter: limit('>=', 30, 'min'),
  repeatWithin: limit('<=', 60, 'min'),
};

const { visit } = guidelineOf('frontline') ?? {};

/** A view of a woman `days` pregnant on 10 March 2025 at noon; 30+0 weeks when nothing is said. */
export function viewOf(facts: Partial<Timeline>, days?: number): View {
  if (visit === undefined) throw new Error('no frontline');
  return prepareView(timeline(facts, days), timelineValues, visit);
}

export const ask = (question: QuestionCheck, facts: Partial<Timeline>, days?: number): Answer =>
  answerQuestion(viewOf(facts, days), question);

/** An answer as outcome, what it cites as it was sent, and the limits it names. */
export const told = ({ outcome, evidence = [], thresholds = [] }: Answer) => ({
  outcome,
  cited: evidence.map(({ asSent }) => asSent),
  limits: thresholds.map(({ id }) => id),
});
