// One measurement rule asked by itself, with limits of its own.
import type { Threshold } from '../../../src/guidelines/guideline.ts';
import type { QualityCheck } from '../../../src/guidelines/quality-rule.ts';
import { judgeQuality } from '../../../src/rules/quality/judge-quality.ts';
import type { QualityNotice } from '../../../src/findings/finding.ts';
import type { Timeline } from '../../../src/timeline/timeline.ts';
import { limit, viewOf } from '../checks/ask.ts';

export const day = limit('<=', 1, 'd');

/** The notice of one rule; undefined when there is no doubt. */
export function noticeOf(
  check: QualityCheck,
  facts: Partial<Timeline>,
  freshWithin: Threshold = day,
  days?: number,
): QualityNotice | undefined {
  const rest = { id: 'rule', number: 'Q0', grade: 'ask', sentence: 'Doubtful.' } as const;
  const [notice] = judgeQuality(viewOf(facts, days), [
    { ...check, ...rest, freshWithin, citation: day.citation },
  ]);
  return notice;
}

/** Its sentence and what it cites; "nothing" when there is no doubt. */
export function said(...given: Parameters<typeof noticeOf>): string {
  const notice = noticeOf(...given);
  if (notice === undefined) return 'nothing';
  return [notice.sentence, ...notice.evidence.map(({ asSent }) => asSent.replace(' mm[Hg]', ''))].join(' | ');
}
