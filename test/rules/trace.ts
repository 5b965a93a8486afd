// The trace of one question about one woman, as plain words: outcome, reason, facts as sent, limits.
import { evaluate } from '../../src/evaluate.ts';
import * as build from '../support/resources.ts';

export type Given = Parameters<typeof build.bundleOf>[0];
const asOf = '2025-03-10T15:00:00Z';
export const thirtyWeeks = build.gestationalAge('2025-03-10T08:00:00Z', 214);
export const at = (clock: string, day = '10'): string => `2025-03-${day}T${clock}:00Z`;
export const pressure = (clock: string, systolic: number, diastolic: number, day?: string) =>
  build.pressure(at(clock, day), systolic, diastolic);

export interface Trace {
  readonly outcome: string;
  readonly because: string;
  readonly cited?: readonly string[];
  readonly limits?: readonly string[];
}

export function trace(
  question: string,
  given: Given,
  guideline = 'frontline',
  when: Given = [thirtyWeeks],
): Trace {
  const { assessment } = evaluate(build.bundleOf([...when, ...given]), { asOf, guideline });
  const found = assessment.findings.find((one) => one.question === question);
  if (found === undefined) throw new Error(`not asked: ${question}`);
  const { outcome, because, evidence, thresholds } = found;
  return {
    outcome,
    because,
    ...(evidence.length === 0 ? {} : { cited: evidence.map(({ asSent }) => asSent) }),
    ...(thresholds.length === 0
      ? {}
      : { limits: thresholds.map(({ comparator, value }) => `${comparator} ${String(value)}`) }),
  };
}
