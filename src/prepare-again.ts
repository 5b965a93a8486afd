// The same input at another moment: what was read is kept, only the timeline is built anew. Pure.
import type { EvaluateOptions, Prepared } from './evaluate.ts';
import { timelineValues } from './guidelines/registry.ts';
import { buildTimeline } from './timeline/build-timeline.ts';

/**
 * What `prepare` gives for the same input and options at another moment.
 *
 * Given    prepared  at any moment
 *          asOf      milliseconds since 1970-01-01T00:00Z
 *          options   those it was prepared with; their own moment counts for nothing
 * Throws   never for an input that was prepared before
 */
export function prepareAgain(
  prepared: Prepared,
  asOf: number,
  options: Omit<EvaluateOptions, 'asOf'>,
): Prepared {
  if (prepared.asOf === asOf) return prepared;
  const { asOfIsNow: _, ...rest } = options;
  return {
    ...prepared,
    asOf,
    built: buildTimeline(prepared.bundle, { ...rest, asOf, values: timelineValues }),
  };
}
