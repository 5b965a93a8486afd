// Fetuses, births and pregnancies as counted. Hands on the count that holds at the time of the evaluation.
import type { Received } from '../bundle/read-bundle-types.ts';
import type { CountCode } from '../terminology/pregnancy-codes.ts';
import { countCodes } from '../terminology/pregnancy-codes.ts';
import { indexCodes, rowsFor } from './code-index.ts';
import { readValue } from './coded-value.ts';
import type { TimelineContext, Unusable } from './context.ts';
import { effectiveMoment } from './effective-moment.ts';
import { codingsOf, fieldsOf } from './fields.ts';
import { compareIntervals } from './moment.ts';
import { readQuantity } from './quantity.ts';
import { sourceOf } from './source.ts';
import type { Moment, Source } from './timeline.ts';
import { isUnusable, unusable } from './unusable.ts';

const codeIndex = indexCodes(countCodes);

export interface Count {
  readonly counts: CountCode['counts'];
  readonly count: number;
  readonly at: Moment;
  readonly source: Source;
  readonly received: Received;
}

/**
 * What does this observation count?
 *
 * Given    received  an observation that counts fetuses, births or pregnancies
 * Returns  the count with its time; or why it cannot be used
 * Throws   never
 * Notes    1. Accepted as an integer, or as a quantity without a unit or in `1`, `{#}` and the like.
 * Source   terminology.md section 3.
 */
export function readCount(received: Received, context: TimelineContext): Count | Unusable {
  const fields = fieldsOf(received.resource);
  const at = effectiveMoment(received, context);
  if (isUnusable(at)) return at;
  const sole = readValue(fields);
  if (isUnusable(sole)) return sole;
  if (sole.name !== 'valueInteger' && sole.name !== 'valueQuantity')
    return unusable('value-type-not-usable', sole.name, 'A count is a whole number: send valueInteger.');
  const sent = sole.name === 'valueInteger' ? { value: sole.value } : sole.value;
  const read = readQuantity(sent, 'count', sole.name);
  if (isUnusable(read)) return read;
  const { value, comparator } = read.measured;
  if (!Number.isInteger(value) || comparator !== undefined)
    return unusable('value-not-readable', sole.name, 'A count is a whole number.');
  const counts = rowsFor(codingsOf(fields['code']), codeIndex)[0]?.counts ?? 'parity';
  return { counts, count: value, at, source: sourceOf(received), received };
}

/**
 * The newest count of a kind.
 *
 * Given    counts   usable counts of all kinds, in any order
 *          kind     which of them
 *          context  where to say that older ones are not needed
 * Returns  the newest; of two at the same time the higher; undefined when there is none
 * Throws   never
 */
export function newestCount(
  counts: readonly Count[],
  kind: CountCode['counts'],
  context: TimelineContext,
): Count | undefined {
  const sorted = counts.filter((count) => count.counts === kind).sort(compareCounts);
  const newest = sorted.at(-1);
  for (const count of sorted)
    if (count !== newest) context.notNeeded(count.received, 'a newer count was used');
  return newest;
}

function compareCounts(one: Count, other: Count): number {
  const byTime = compareIntervals(one.at, other.at);
  if (byTime !== 0 || one.count !== other.count) return byTime || one.count - other.count;
  return one.source.reference < other.source.reference ? -1 : 1;
}
