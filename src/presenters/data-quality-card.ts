// The card about data that were received and could not be used, or could not be had.
import type { SetAsideCode } from '../errors.ts';
import type { AccountEntry, Evaluation } from '../evaluation.ts';
import { cardExtension, cardSource, closingLines, newestLines, section } from './card-parts.ts';
import type { Card, ChartGap } from './card-types.ts';
import { escapeMarkdown, fitSummary } from './markdown.ts';
import { stableUuid } from './stable-uuid.ts';

const longestList = 5;

/** Set aside for a reason that loses nothing: withdrawn by its author, or present in another entry. */
const harmless: readonly SetAsideCode[] = [
  'entered-in-error',
  'cancelled',
  'older-version',
  'duplicate',
  'deleted',
  'previous-pregnancy',
  'not-the-mother',
  'value-absent-with-reason',
];

const gapWords: Readonly<Record<ChartGap['why'], string>> = {
  'not-sent': 'not sent by the record system',
  failed: 'the record system could not read them',
  'first-page-only': 'only the first page was sent; older entries may be missing',
  'not-allowed': 'the FHIR server of the record system is not among those this service may ask',
  'not-permitted': 'the record system does not permit reading them',
  'not-in-scope': 'the access given does not cover them',
  'token-expired': 'the access given had run out',
  'too-slow': 'the record system did not answer in time',
  'server-busy': 'the record system was too busy',
  'server-failed': 'the record system could not give them',
  redirected: 'the record system pointed elsewhere',
  'other-origin': 'the record system pointed elsewhere for the rest',
  'other-patients': 'the record system answered about other patients',
  'too-large': 'there was more than this service reads for one answer',
  'too-many-pages': 'there were more pages than this service reads for one answer',
  endless: 'the pages of the record system went in a circle',
};

function gapText({ what, why, isPartial }: ChartGap): string {
  const rest = isPartial === true ? '; only part was read, older entries may be missing' : '';
  return `${what}: ${gapWords[why]}${rest}`;
}

type Lost = AccountEntry & { readonly outcome: 'set-aside' };

/**
 * What was lost, and how to mend it; undefined when nothing was.
 *
 * Notes    1. Shown even when all else is well: a reading that could not be read is not a normal reading.
 */
export function dataQualityCard(evaluation: Evaluation, gaps: readonly ChartGap[]): Card | undefined {
  const lost = evaluation.account.entries.filter(isLost);
  if (lost.length === 0 && gaps.length === 0) return undefined;
  const ids = [
    ...lost.map((entry) => `${entry.code} ${entry.reference}`),
    ...gaps.map((gap) => `${gap.why} ${gap.key}`),
  ];
  return {
    uuid: stableUuid(['data-quality', ids, evaluation.stamp.fingerprint, evaluation.subject ?? '']),
    summary: summaryOf(lost, gaps),
    detail: [
      ...section('Not used', lostLines(lost)),
      ...section(
        'Not seen',
        gaps.map((gap) => escapeMarkdown(gapText(gap))),
      ),
      ...section('Newest data used', newestLines(evaluation)),
      ...closingLines(evaluation),
    ].join('\n'),
    indicator: 'info',
    source: cardSource(evaluation, 'data-quality'),
    extension: cardExtension(evaluation, ids),
  };
}

function isLost(entry: AccountEntry): entry is Lost {
  return entry.outcome === 'set-aside' && !harmless.includes(entry.code);
}

function summaryOf(lost: readonly Lost[], gaps: readonly ChartGap[]): string {
  const entries = lost.length === 1 ? '1 entry of the record' : `${lost.length} entries of the record`;
  return fitSummary([
    lost.length === 0 ? 'This answer was given without part of her record.' : `${entries} could not be used.`,
    gaps.length === 0 ? '' : `Not seen: ${gaps.map((gap) => gap.what).join(', ')}.`,
    lost.length === 0 ? '' : 'Mend or re-enter: see the details.',
  ]);
}

function lostLines(lost: readonly Lost[]): readonly string[] {
  const shown = lost
    .slice(0, longestList)
    .map((entry) => escapeMarkdown(`${entry.reference}: ${entry.message}`));
  const more = lost.length - shown.length;
  return more === 0 ? shown : [...shown, `and ${more} more`];
}
