// The answer in a few lines: how urgent, what it is, what to do now, what is missing, what one more reading would change.
import type { Evaluation } from '../evaluation.ts';
import { asOfWords, clinicOffset, spokenTime } from '../presenters/clock.ts';
import { medicineLines, preventionLines, treatmentLines } from '../presenters/care-lines.ts';
import { reasonsOf, stepsOf } from '../presenters/reasons.ts';
import { ageWords, sentenceCase } from '../presenters/words.ts';
import { english } from '../messages/en.ts';
import type { NextReading } from '../what-next.ts';
import { list, listed, make } from './dom.ts';
import {
  classesWords,
  classWords,
  clockWords,
  neededByWords,
  referralWords,
  spoken,
  urgencyWords,
} from './words.ts';

const urgencySigns = {
  emergency: '▲▲',
  'same-day': '▲',
  'within-48-hours': '◆',
  'within-7-days': '◇',
  routine: '○',
} as const;

export function answerPanel(evaluation: Evaluation, next: readonly NextReading[]): HTMLElement {
  const { assessment, timeline, stamp } = evaluation;
  const { referral } = assessment;
  const said = { evaluation, messages: english };
  return make(
    'section',
    {
      class: `answer ${assessment.urgency}`,
      'data-as-of': evaluation.asOf,
      'data-classes': assessment.classification.join(' '),
      'aria-labelledby': 'answer-heading',
    },
    make(
      'h2',
      { id: 'answer-heading' },
      `${urgencySigns[assessment.urgency]} ${sentenceCase(urgencyWords[assessment.urgency])}`,
    ),
    make('p', { class: 'class' }, sentenceCase(classesWords(assessment.classification))),
    make(
      'p',
      { class: 'place' },
      `${sentenceCase(ageWords(evaluation.gestationalAge))}; as of ${asOfWords(timeline)}; ${stamp.title}`,
    ),
    ...(referral === undefined ? [] : [make('p', {}, `Refer to: ${referralWords[referral.level]}.`)]),
    ...stepList('Do now, in this order', stepsOf(evaluation)),
    ...listed(
      'Missing',
      assessment.missing.map(({ what, how, by, at }) =>
        spoken(
          `${sentenceCase(what)} (${at === undefined ? neededByWords[by] : `by ${spokenTime(at)}`}): ${how}`,
        ),
      ),
    ),
    ...nextLines(evaluation, next),
    foldSteps('At the visits that follow', stepsOf(evaluation, english, 'later')),
    foldSteps('Tell her', stepsOf(evaluation, english, 'tell')),
    fold('Why', reasonsOf(evaluation)),
    fold('Medicines in use', medicineLines(said)),
    fold('Drugs the publication names (the prescriber decides)', treatmentLines(said)),
    fold('Prevention', preventionLines(said)),
  );
}

const steps = (lines: readonly string[]): HTMLElement => list('ol', lines, { class: 'steps' });

function stepList(heading: string, lines: readonly string[]): Node[] {
  return lines.length === 0 ? [] : [make('h3', {}, heading), steps(lines)];
}

function foldSteps(heading: string, lines: readonly string[]): HTMLElement | undefined {
  return lines.length === 0 ? undefined : make('details', {}, make('summary', {}, heading), steps(lines));
}

function fold(heading: string, lines: readonly string[]): HTMLElement | undefined {
  if (lines.length === 0) return undefined;
  return make('details', {}, make('summary', {}, heading), list('ul', lines.map(spoken)));
}

function nextLines(evaluation: Evaluation, next: readonly NextReading[]): Node[] {
  const changing = next.filter(({ changesClass, changesUrgency }) => changesClass || changesUrgency);
  const other = next.filter((each) => !changing.includes(each));
  return listed('What one more reading would change', [
    ...changing.map((each) => nextWords(evaluation, each)),
    ...(other.length === 0 ? [] : [unchangedWords(evaluation, other)]),
  ]);
}

/** "A reading of 140/90 or more from 13:10 on would make this gestational hypertension (act today)." */
export function nextWords({ timeline, assessment }: Evaluation, next: NextReading): string {
  const reading = `A reading of ${readingWords(next)}`;
  const from = fromWords(timeline, next);
  const [leading = 'cannot-classify'] = next.classification;
  const urgency = next.changesUrgency
    ? ` (${urgencyWords[next.urgency]})`
    : `, urgency as now (${urgencyWords[assessment.urgency]})`;
  return next.changesClass
    ? `${reading}${from} would make this ${classWords[leading]}${urgency}.`
    : `${reading}${from} would change only the urgency${urgency}.`;
}

/** "A reading of 139/89 or less now, or of 140/90 or more now, would not change the answer." */
function unchangedWords({ timeline }: Evaluation, next: readonly NextReading[]): string {
  const readings = next.map((each) => `of ${readingWords(each)}${fromWords(timeline, each)}`);
  return `A reading ${readings.join(', or ')}, would not change the answer.`;
}

const fromWords = (timeline: Evaluation['timeline'], { from }: NextReading): string =>
  from > timeline.asOf ? ` at or after ${clockWords(from, clinicOffset(timeline))}` : ' now';

function readingWords({ kind, systolicMmHg, diastolicMmHg }: NextReading): string {
  switch (kind) {
    case 'below':
      return `${systolicMmHg}/${diastolicMmHg} or less`;
    case 'raised':
    case 'severe':
      return `${systolicMmHg}/${diastolicMmHg} or more`;
  }
}
