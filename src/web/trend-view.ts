// The first view: answer, slider, chart, table and reasoning, all of one moment.
import type { Comparison, Evaluation } from '../evaluation.ts';
import { limitWords } from '../findings/limit-words.ts';
import type { Guideline, PressureLimits } from '../guidelines/guideline.ts';
import { clinicOffset } from '../presenters/clock.ts';
import { trendOf } from '../trend.ts';
import { whatNext } from '../what-next.ts';
import { answerPanel } from './answer-panel.ts';
import type { Case } from './case.ts';
import { createChart } from './chart/chart.ts';
import { marksOf } from './chart/marks.ts';
import { markTable } from './chart/table.ts';
import { make } from './dom.ts';
import { answerAt, comparisonAt, momentsIn } from './engine.ts';
import { pageSettings } from './page-settings.ts';
import { createReasoning } from './reasoning.ts';
import { sideBySide } from './side-by-side.ts';
import { createTimeTravel } from './time-travel.ts';

export interface TrendView {
  readonly element: HTMLElement;
  /** Shows a case from its newest moment on. */
  readonly open: (shown: Case, guideline: string) => void;
  /** What is shown now. */
  readonly current: () => Evaluation | undefined;
}

/**
 * Given    onShow    called with every evaluation that is shown
 *          onFault   called when the case cannot be answered
 */
export function createTrendView(
  onShow: (evaluation: Evaluation) => void,
  onFault: (error: unknown) => void,
): TrendView {
  const answer = make('div', { class: 'answer-place' });
  const table = make('details', {}, make('summary', {}, 'The chart as a table'));
  const beside = make('details', { class: 'beside' }, make('summary', {}, 'Guidelines side by side'));
  const limits = make('p', { class: 'legend' });
  const reasoning = createReasoning((reference) => chart.mark([reference], true));
  const chart = createChart((mark) => {
    chart.mark(mark.references, false);
    return reasoning.explain(mark.references, `${mark.what} ${mark.value}`);
  });
  const travel = createTimeTravel((asOf) => attempt(() => show(asOf)));
  let now: { shown: Case; guideline: string; moments: readonly number[]; evaluation: Evaluation } | undefined;

  const attempt = (deed: () => void): void => {
    try {
      deed();
    } catch (error) {
      onFault(error);
    }
  };
  const show = (asOf: number): void => {
    if (now === undefined) return;
    const evaluation = answerAt(now.shown, asOf, now.guideline);
    now.evaluation = evaluation;
    present(evaluation);
  };
  const present = (evaluation: Evaluation): void => {
    const offset = clinicOffset(evaluation.timeline);
    const marks = marksOf(evaluation, trendOf(evaluation));
    answer.replaceChildren(answerPanel(evaluation, whatNext(evaluation, pageSettings().site?.options.site)));
    chart.show({
      marks,
      limits: evaluation.guideline.chartLimits,
      pregnancy: evaluation.timeline.pregnancy,
      now: evaluation.timeline.asOf + offset * 60_000,
    });
    limits.replaceChildren(...limitLines(evaluation.guideline.chartLimits));
    travel.show(now?.moments ?? [], evaluation.timeline.asOf, offset);
    table.replaceChildren(make('summary', {}, 'The chart as a table'), markTable(marks));
    reasoning.show(evaluation);
    showBeside(evaluation);
    onShow(evaluation);
  };
  const showBeside = (evaluation: Evaluation): void => {
    if (now === undefined || !beside.open) return;
    const comparison: Comparison = comparisonAt(now.shown, evaluation.timeline.asOf);
    beside.replaceChildren(
      make('summary', {}, 'Guidelines side by side'),
      sideBySide(comparison, evaluation.stamp.id),
    );
  };
  beside.addEventListener('toggle', () => {
    const evaluation = now?.evaluation;
    if (evaluation !== undefined) attempt(() => showBeside(evaluation));
  });

  return {
    element: make(
      'div',
      { class: 'halves' },
      answer,
      make(
        'section',
        { class: 'trend', 'aria-labelledby': 'chart-heading' },
        make('h2', { id: 'chart-heading' }, 'Trend'),
        travel.element,
        chart.element,
        legend(),
        limits,
        reasoning.used,
        table,
        beside,
      ),
      reasoning.element,
    ),
    open: (shown, guideline) =>
      attempt(() => {
        const evaluation = answerAt(shown, shown.asOf, guideline);
        const isSame = now?.shown === shown;
        const moments = momentsIn(evaluation.timeline);
        const kept = isSame ? now?.evaluation.timeline.asOf : undefined;
        now = { shown, guideline, moments, evaluation };
        if (kept === undefined || kept === shown.asOf) present(evaluation);
        else show(kept);
        if (!isSame) chart.showWhole();
      }),
    current: () => now?.evaluation,
  };
}

/** The limits on the chart in words: who does not see the lines has them here. */
function limitLines({ hypertension, severe }: Guideline['chartLimits']): readonly HTMLElement[] {
  const either = ({ systolic, diastolic }: PressureLimits): string =>
    `systolic ${limitWords(systolic)} or diastolic ${limitWords(diastolic)}`;
  return [
    make('span', {}, make('b', { 'aria-hidden': 'true' }, '– – '), `raised: ${either(hypertension)}`),
    make('span', {}, make('b', { 'aria-hidden': 'true' }, '· · · '), `severe: ${either(severe)}`),
  ];
}

function legend(): HTMLElement {
  const entries = [
    ['∨ ∧', 'one reading: systolic above, diastolic below'],
    ['◆', 'average of a visit'],
    ['○', 'taken at home'],
    ['□', 'average as sent'],
    ['×', 'not usable'],
  ] as const;
  return make(
    'p',
    { class: 'legend' },
    ...entries.map(([sign, words]) => make('span', {}, make('b', {}, sign), ` ${words}`)),
  );
}
