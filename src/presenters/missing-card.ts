// The card about what to measure or ask now: an open question that cannot wait is never silent.
import type { Missing } from '../findings/finding.ts';
import { fill, translated } from '../messages/say.ts';
import { changeLines } from './assessment-sections.ts';
import type { Telling } from './card-context.ts';
import {
  cardExtension,
  cardSource,
  cardUuid,
  closingLines,
  gapLines,
  indicatorOf,
  missingLine,
  newestLines,
  section,
} from './card-parts.ts';
import type { Card } from './card-types.ts';
import { evidenceMet } from './class-findings.ts';
import { fitSummary } from './markdown.ts';
import { newestPressureWords } from './newest-data.ts';
import { offeredReasons } from './override-reasons.ts';
import { trendLines } from './trend-lines.ts';

/** What has to be known before the next visit; undefined when nothing has. */
export function missingCard(telling: Telling): Card | undefined {
  const { evaluation, messages } = telling;
  const urgent = evaluation.assessment.missing.filter(({ by }) => indicatorOf(by) !== 'info');
  const [first] = urgent;
  if (first === undefined) return undefined;
  const ids = urgent.map((missing) => missing.id);
  return {
    uuid: cardUuid(telling, `missing:${first.id}`, [ids, evidenceMet(evaluation)]),
    summary: summaryOf(telling, first, urgent),
    detail: [
      ...section(
        telling,
        'measure',
        urgent.map((missing) => missingLine(telling, missing)),
      ),
      ...section(telling, 'change', changeLines(telling, urgent)),
      ...section(telling, 'newest', newestLines(telling)),
      ...section(telling, 'trend', trendLines(telling)),
      ...section(telling, 'not-seen', gapLines(telling)),
      ...closingLines(telling),
    ].join('\n'),
    indicator: urgent.some(({ by }) => indicatorOf(by) === 'critical') ? 'critical' : 'warning',
    source: cardSource(telling, 'missing-data'),
    overrideReasons: offeredReasons(messages),
    extension: cardExtension(telling, ids),
  };
}

function summaryOf({ evaluation, messages }: Telling, first: Missing, urgent: readonly Missing[]): string {
  const { phrases, neededByWords } = messages;
  const words = (missing: Missing) => translated(messages, missing.what);
  const list = urgent.slice(1).map(words).join(', ');
  const pressure = newestPressureWords(evaluation, messages);
  return fitSummary([
    fill(phrases.needed, { when: neededByWords[first.by], what: words(first) }),
    pressure === '' ? '' : `${pressure}.`,
    list === '' ? '' : fill(phrases['also-needed'], { list }),
  ]);
}
