// The card about pressures and urine results that were received and could not be used.
import type { SetAsideCode } from '../errors.ts';
import type { AccountEntry } from '../evaluation.ts';
import { fill } from '../messages/say.ts';
import type { Telling } from './card-context.ts';
import {
  cardExtension,
  cardSource,
  cardUuid,
  closingLines,
  gapLines,
  newestLines,
  section,
} from './card-parts.ts';
import type { Card } from './card-types.ts';
import { escapeMarkdown, fitSummary } from './markdown.ts';

const longestList = 5;

/** Set aside for a reason that a person at the bedside can mend: re-enter it, or say what is missing in it. */
const mendable: readonly SetAsideCode[] = [
  'status-missing',
  'status-not-usable',
  'subject-missing',
  'time-missing',
  'time-invalid',
  'time-in-future',
  'value-missing',
  'value-not-readable',
  'value-type-not-usable',
  'value-ambiguous',
  'value-out-of-range',
  'unit-missing',
  'unit-unknown',
  'diastolic-not-below-systolic',
  'modifier-not-understood',
  'code-missing',
  'code-unknown',
  'reference-unresolved',
  'malformed',
];

type Lost = AccountEntry & { readonly outcome: 'set-aside' };

/**
 * What was lost, and how to mend it; undefined when nothing was.
 *
 * Notes    1. Shown even when all else is well: a reading that could not be read is not a normal reading.
 *          2. Only pressures and urine, and only what can be mended: another woman's entries, withdrawn ones and
 *             copies make no card, nor do data that were never sent. The extension names those of every card.
 */
export function dataQualityCard(telling: Telling): Card | undefined {
  const lost = telling.evaluation.account.entries.filter(isLost);
  if (lost.length === 0) return undefined;
  const ids = lost.map((entry) => `${entry.code} ${entry.reference}`);
  return {
    uuid: cardUuid(telling, 'data-quality', [ids]),
    summary: summaryOf(telling, lost.length),
    detail: [
      ...section(telling, 'not-used', lostLines(telling, lost)),
      ...section(telling, 'not-seen', gapLines(telling)),
      ...section(telling, 'newest-used', newestLines(telling)),
      ...closingLines(telling),
    ].join('\n'),
    indicator: 'info',
    source: cardSource(telling, 'data-quality'),
    extension: cardExtension(telling, ids),
  };
}

function isLost(entry: AccountEntry): entry is Lost {
  return entry.outcome === 'set-aside' && entry.about !== undefined && mendable.includes(entry.code);
}

function summaryOf({ messages }: Telling, count: number): string {
  const { phrases } = messages;
  return fitSummary([
    count === 1 ? phrases['one-lost'] : fill(phrases['many-lost'], { count }),
    phrases.mend,
  ]);
}

function lostLines({ messages }: Telling, lost: readonly Lost[]): readonly string[] {
  const shown = lost
    .slice(0, longestList)
    .map((entry) => escapeMarkdown(`${entry.reference}: ${entry.message}`));
  const more = lost.length - shown.length;
  return more === 0 ? shown : [...shown, fill(messages.phrases.more, { count: more })];
}
