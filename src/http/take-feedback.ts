// Feedback taken in: each item once, counted for the rule its card names, and told to those who asked.
import { readMark } from '../presenters/card-uuid.ts';
import { overrideReasons } from '../presenters/override-reasons.ts';
import type { Metrics } from './metrics.ts';
import type { FeedbackItem } from './read-feedback.ts';

/** One item as it is logged and forwarded. Holds no comment and nothing about the woman. */
export interface FeedbackEvent {
  readonly event: 'feedback';
  readonly card: string;
  readonly rule: string;
  readonly guideline: string;
  /** First digits of the fingerprint of the guideline data. */
  readonly version: string;
  readonly outcome: FeedbackItem['outcome'];
  /** A code that was offered with the card, `other`, or `none`. */
  readonly reason: string;
  readonly acceptedSuggestions: number;
  readonly hasComment: boolean;
  readonly at: string;
}

export interface FeedbackListeners {
  readonly metrics: Metrics;
  readonly log?: ((line: string) => void) | undefined;
  /** Where a site wants to have each item; a failure there is not the client's. */
  readonly forward?: ((event: FeedbackEvent) => void) | undefined;
}

/** Items remembered; beyond, the oldest is forgotten and could be counted again. */
const mostRemembered = 100_000;

/**
 * A taker of feedback that counts each item once.
 *
 * Returns  a function that takes items; duplicates (card, outcome, instant) are ignored, in any order
 * Notes    1. What was seen is remembered in this process only and up to a bound: several processes, or a restart,
 *             may count a repeated item again.
 *          2. A card that is not ours is counted as `unknown`, never refused (B-11). Nothing is taken as acceptance
 *             that was not reported (B-09).
 */
export function feedbackTaker(listeners: FeedbackListeners): (items: readonly FeedbackItem[]) => void {
  const seen = new Set<string>();
  return (items) => {
    for (const item of items) {
      const key = `${item.card} ${item.outcome} ${item.at}`;
      if (seen.has(key)) listeners.metrics.count('pregnancy_htn_feedback_duplicates_total');
      else {
        remember(seen, key);
        tell(item, listeners);
      }
    }
  };
}

function remember(seen: Set<string>, key: string): void {
  seen.add(key);
  const [oldest] = seen;
  if (seen.size > mostRemembered && oldest !== undefined) seen.delete(oldest);
}

function tell(item: FeedbackItem, { metrics, log, forward }: FeedbackListeners): void {
  const event = toEvent(item);
  const { rule, guideline, outcome, reason } = event;
  metrics.count('pregnancy_htn_feedback_total', { rule, guideline, outcome, reason });
  for (const id of item.acceptedSuggestions) {
    const mark = readMark(id);
    metrics.count('pregnancy_htn_accepted_suggestions_total', { rule: mark?.rule ?? 'unknown' });
  }
  log?.(JSON.stringify(event));
  forward?.(event);
}

function toEvent(item: FeedbackItem): FeedbackEvent {
  const mark = readMark(item.card);
  return {
    event: 'feedback',
    card: mark === undefined ? 'unknown' : item.card,
    rule: mark?.rule ?? 'unknown',
    guideline: mark?.guideline ?? 'unknown',
    version: mark?.version ?? 'unknown',
    outcome: item.outcome,
    reason: reasonOf(item),
    acceptedSuggestions: item.acceptedSuggestions.length,
    hasComment: item.hasComment,
    at: item.at,
  };
}

function reasonOf({ reason }: FeedbackItem): string {
  if (reason === undefined) return 'none';
  const offered = overrideReasons.some(
    ({ system, code }) => system === reason.system && code === reason.code,
  );
  return offered ? reason.code : 'other';
}
