// The page: choices above, one of the views below.
import type { Evaluation } from '../evaluation.ts';
import { defaultGuidelineId, guidelineIds, guidelineOf } from '../guidelines/registry.ts';
import { caseOf, caseOfStory, isJson, type Case, type Story } from './case.ts';
import { createCheckView } from './check-view.ts';
import { byId, make } from './dom.ts';
import { openData, wordsOf } from './open-data.ts';
import { pageSettings } from './page-settings.ts';
import { referralView } from './referral-view.ts';
import { createRequestsView } from './requests-view.ts';
import { createTabs } from './tabs.ts';
import { createTrendView } from './trend-view.ts';

/**
 * Shows the page.
 *
 * Given    stories   invented women to choose from
 *          opened    what to show first; absent: the first story
 */
export function startPage(stories: readonly Story[], opened?: Case): void {
  const fault = make('p', { class: 'fault', role: 'alert' });
  const note = make('div');
  const requests = createRequestsView();
  const check = createCheckView();
  let shown: Case | undefined;
  let answered: Evaluation | undefined;
  let view = 'trend';

  const refresh = (): void => {
    if (shown === undefined || answered === undefined) return;
    if (view === 'note') note.replaceChildren(referralView(answered, shown));
    if (view === 'requests') requests.show(shown, answered.timeline.asOf, guideline.value);
    if (view === 'check') check.show(shown);
  };
  const look = (id: string) => (): void => {
    view = id;
    refresh();
  };
  const trend = createTrendView(
    (evaluation) => {
      fault.textContent = '';
      answered = evaluation;
      refresh();
    },
    (error) => (fault.textContent = `This cannot be answered: ${wordsOf(error)}`),
  );
  const guideline = guidelineChoice(() => reopen());
  const tabs = createTabs([
    { id: 'trend', title: 'Trend and reasoning', element: trend.element, onShow: look('trend') },
    { id: 'note', title: 'Referral note', element: note, onShow: look('note') },
    { id: 'requests', title: 'Cards and requests', element: requests.element, onShow: look('requests') },
    { id: 'check', title: 'Check data', element: check.element, onShow: look('check') },
  ]);
  const woman = make('select', { id: 'woman' });
  const womanPlace = make('label', { for: 'woman', hidden: true }, 'Woman ', woman);
  const text = make('p', { class: 'story-text' });
  const open = (next: Case): void => {
    shown = next;
    text.textContent = next.text === '' ? next.title : next.text;
    womanPlace.hidden = next.subjects.length < 2;
    woman.replaceChildren(
      ...next.subjects.map((each) => make('option', { selected: each === next.subject }, each)),
    );
    reopen();
  };
  const reopen = (): void => {
    if (shown !== undefined) trend.open(shown, guideline.value);
  };
  woman.addEventListener('change', () => {
    if (shown !== undefined) open({ ...shown, subject: woman.value });
  });
  byId('choices').replaceChildren(
    ...(opened === undefined ? [storyChoice(stories, (story) => open(caseOfStory(story)))] : []),
    make('label', { for: 'guideline' }, 'Guideline ', guideline),
    womanPlace,
    ...(opened === undefined ? [openData((title, data) => open(caseOf(title, data)))] : []),
  );
  byId('view').replaceChildren(text, fault, tabs.element);
  const [first] = stories;
  if (opened !== undefined) open(opened);
  else if (first !== undefined) open(caseOfStory(first));
  performance.mark('shown');
  document.documentElement.dataset['ready'] = 'true';
}

export async function loadStories(): Promise<readonly Story[]> {
  const response = await fetch('stories.json');
  const stories: unknown = await response.json();
  return Array.isArray(stories) ? stories.filter(isStory) : [];
}

const isStory = (each: unknown): each is Story =>
  isJson(each) && typeof each['id'] === 'string' && typeof each['path'] === 'string';

function guidelineChoice(onChange: () => void): HTMLSelectElement {
  const site = pageSettings().site?.options.guideline ?? defaultGuidelineId;
  const options = guidelineIds.map((id) =>
    make('option', { value: id, selected: id === site }, guidelineOf(id)?.title ?? id),
  );
  return make('select', { id: 'guideline', onchange: onChange }, ...options);
}

function storyChoice(stories: readonly Story[], onChoose: (story: Story) => void): HTMLElement {
  const select = make(
    'select',
    { id: 'story' },
    ...stories.map(({ id, title }) => make('option', { value: id }, title)),
  );
  select.addEventListener('change', () => {
    const story = stories.find(({ id }) => id === select.value);
    if (story !== undefined) onChoose(story);
  });
  return make('label', { for: 'story' }, 'Story ', select);
}
