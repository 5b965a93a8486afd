// Every guideline about the same woman at the same moment, and the readings on which they part.
import type { Comparison } from '../evaluation.ts';
import { limitWords } from '../findings/limit-words.ts';
import { sentenceCase } from '../presenters/words.ts';
import { make } from './dom.ts';
import { classesWords, outcomeSigns, outcomeWords, referralWords, spoken, urgencyWords } from './words.ts';

export function sideBySide({ guidelines, partings }: Comparison, chosen: string): HTMLElement {
  return make(
    'section',
    { 'aria-labelledby': 'guidelines-heading' },
    make('h2', { id: 'guidelines-heading' }, 'Guidelines side by side'),
    table(
      'What each says',
      ['Guideline', 'Class', 'Urgency', 'By itself', 'Refer to'],
      guidelines.map((row) => [
        `${row.stamp.title}${row.stamp.id === chosen ? ' (shown)' : ''}`,
        sentenceCase(classesWords(row.classification)),
        urgencyWords[row.urgency],
        row.ownUrgency === row.urgency ? 'the same' : urgencyWords[row.ownUrgency],
        row.referral === undefined ? '' : referralWords[row.referral.level],
      ]),
    ),
    make('h3', {}, 'Where they part'),
    ...(partings.length === 0
      ? [make('p', {}, 'No question is answered differently by any of them.')]
      : partings.map(parting)),
  );
}

function parting({ asks, answers }: Comparison['partings'][number]): HTMLElement {
  const rows = answers.map(({ guideline, outcome, evidence, thresholds }) => [
    guideline,
    `${outcomeSigns[outcome]} ${outcomeWords[outcome]}`,
    [
      ...new Set(evidence.map(({ what, asCompared, asSent }) => spoken(`${what} ${asCompared ?? asSent}`))),
    ].join(', '),
    thresholds.length === 0 ? 'none of this kind' : thresholds.map((each) => limitWords(each)).join('; '),
  ]);
  return table(spoken(asks), ['Guideline', 'Answer', 'On', 'Limit'], rows);
}

function table(caption: string, heads: readonly string[], rows: readonly (readonly string[])[]): HTMLElement {
  return make(
    'div',
    { class: 'scroll', tabindex: 0, role: 'region', 'aria-label': caption },
    make(
      'table',
      {},
      make('caption', {}, caption),
      make('thead', {}, make('tr', {}, ...heads.map((head) => make('th', { scope: 'col' }, head)))),
      make(
        'tbody',
        {},
        ...rows.map((cells) =>
          make('tr', {}, ...cells.map((text, at) => make('td', { 'data-head': heads[at] }, text))),
        ),
      ),
    ),
  );
}
