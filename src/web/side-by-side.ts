// Every guideline about the same woman at the same moment, and the readings on which they part.
import type { Comparison } from '../evaluation.ts';
import { limitWords } from '../findings/limit-words.ts';
import { sentenceCase } from '../presenters/words.ts';
import { dataTable } from './data-table.ts';
import { make } from './dom.ts';
import { classesWords, outcomeSigns, outcomeWords, referralWords, spoken, urgencyWords } from './words.ts';

export function sideBySide({ guidelines, partings }: Comparison, chosen: string): HTMLElement {
  return make(
    'section',
    { 'aria-label': 'Guidelines side by side' },
    dataTable(
      'What each says',
      ['Guideline', 'Name', 'Class', 'Urgency', 'Urgency by itself', 'Refer to'],
      guidelines.map((row) => [
        `${row.stamp.id}${row.stamp.id === chosen ? ' (shown)' : ''}`,
        row.stamp.title,
        sentenceCase(classesWords(row.classification)),
        urgencyWords[row.urgency],
        row.ownUrgency === row.urgency ? 'the same' : urgencyWords[row.ownUrgency],
        row.referral === undefined ? 'nobody' : referralWords[row.referral.level],
      ]),
    ),
    make('h3', {}, 'Where they part, and on which readings'),
    ...(partings.length === 0
      ? [make('p', {}, 'No question is answered differently by any of them.')]
      : partings.map(parting)),
  );
}

/** One row for each way of answering, with the guidelines that answer so. */
function parting({ asks, answers }: Comparison['partings'][number]): HTMLElement {
  const byAnswer = new Map<string, { readonly cells: readonly string[]; readonly guidelines: string[] }>();
  for (const { guideline, outcome, evidence, thresholds } of answers) {
    const on = evidence.map(({ what, asCompared, asSent }) => spoken(`${what} ${asCompared ?? asSent}`));
    const cells = [
      `${outcomeSigns[outcome]} ${outcomeWords[outcome]}`,
      thresholds.length === 0
        ? 'no limit of this kind'
        : thresholds.map((each) => limitWords(each)).join('; '),
      [...new Set(on)].join(', '),
    ];
    const key = thresholds.length === 0 ? cells.slice(0, 2).join() : cells.join();
    const known = byAnswer.get(key);
    if (known === undefined) byAnswer.set(key, { cells, guidelines: [guideline] });
    else known.guidelines.push(guideline);
  }
  return dataTable(
    spoken(asks),
    ['Answer', 'Limit', 'On', 'Guidelines'],
    [...byAnswer.values()].map(({ cells, guidelines }) => [...cells, guidelines.join(', ')]),
  );
}
