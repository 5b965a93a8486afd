// One reason for prevention judged by itself, and women with births of their own.
import type { Outcome } from '../../src/findings/finding.ts';
import type { PreventionFactor } from '../../src/guidelines/guideline.ts';
import { judgeFactor } from '../../src/rules/prevention-factors.ts';
import type { Timeline, Woman } from '../../src/timeline/timeline.ts';
import { viewOf } from './checks/ask.ts';
import { moment } from './facts.ts';

export const source = { reference: 'Observation/one', preliminary: false };
export const judged = (
  factor: Partial<PreventionFactor>,
  facts: Partial<Timeline> = {},
  outcomes: Readonly<Record<string, Outcome>> = {},
  days?: number,
) =>
  judgeFactor(
    viewOf(facts, days),
    { id: 'factor', factor: 'factor', level: 'high', ...factor },
    new Map(Object.entries(outcomes)),
  );
/** "found: as sent, as sent". */
export function said(...given: Parameters<typeof judged>): string {
  const { verdict, evidence } = judged(...given);
  return [verdict, ...(evidence.length === 0 ? [] : [evidence.map(({ asSent }) => asSent).join(', ')])].join(
    ': ',
  );
}
export const woman = (more: Partial<Woman>): Partial<Timeline> => ({
  woman: { previousBirths: [], ...more },
});
export const count = (number: number) => ({ count: number, source });
export const births = (...days: readonly string[]) => ({
  previousBirths: days.map((day) => ({ at: moment(day), source })),
});
export const undated = { pregnancy: { remarks: [] } };
