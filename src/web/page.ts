// The page: choices above, one of the views below.
import type { Evaluation } from '../evaluation.ts';
import { defaultGuidelineId, guidelineIds, guidelineOf } from '../guidelines/registry.ts';
import { caseOf, caseOfStory, type Case, type Story } from './case.ts';
import { byId, make } from './dom.ts';
import { openData, wordsOf } from './open-data.ts';
import { loadPageSettings, pageSettings } from './page-settings.ts';
import { createTabs } from './tabs.ts';
import { createTrendView } from './trend-view.ts';

async function start(): Promise<void> {
  const stories = await loadStories();
  await loadPageSettings();
  const fault = make('p', { class: 'fault', role: 'alert' });
  const trend = createTrendView(
    (evaluation) => tell(evaluation),
    (error) => (fault.textContent = `This cannot be answered: ${wordsOf(error)}`),
  );
  const tabs = createTabs([{ id: 'trend', title: 'Trend and reasoning', element: trend.element }]);
  const tell = (evaluation: Evaluation): void => {
    fault.textContent = '';
    void evaluation;
  };
  let shown: Case | undefined;
  const guideline = guidelineChoice(() => reopen());
  const woman = make('select', { id: 'woman' });
  const womanPlace = make('label', { for: 'woman', hidden: true }, 'Woman ', woman);
  const text = make('p', { class: 'story-text' });
  const open = (next: Case): void => {
    shown = next;
    text.textContent = next.text === '' ? next.title : next.text;
    womanPlace.hidden = next.subjects.length < 2;
    woman.replaceChildren(...next.subjects.map((each) => make('option', { selected: each === next.subject }, each)));
    reopen();
  };
  const reopen = (): void => {
    if (shown !== undefined) trend.open(shown, guideline.value);
  };
  woman.addEventListener('change', () => {
    if (shown !== undefined) open({ ...shown, subject: woman.value });
  });
  byId('choices').append(
    storyChoice(stories, (story) => open(caseOfStory(story))),
    make('label', { for: 'guideline' }, 'Guideline ', guideline),
    womanPlace,
    openData((title, data) => open(caseOf(title, data))),
  );
  byId('view').replaceChildren(text, fault, tabs.element);
  const [first] = stories;
  if (first !== undefined) open(caseOfStory(first));
  document.documentElement.dataset['ready'] = 'true';
}

async function loadStories(): Promise<readonly Story[]> {
  const response = await fetch('stories.json');
  const stories: readonly Story[] = await response.json();
  return stories;
}

function guidelineChoice(onChange: () => void): HTMLSelectElement {
  const site = pageSettings().site?.options.guideline ?? defaultGuidelineId;
  const options = guidelineIds.map((id) => make('option', { value: id, selected: id === site }, guidelineOf(id)?.title ?? id));
  return make('select', { id: 'guideline', onchange: onChange }, ...options);
}

function storyChoice(stories: readonly Story[], onChoose: (story: Story) => void): HTMLElement {
  const select = make('select', { id: 'story' }, ...stories.map(({ id, title }) => make('option', { value: id }, title)));
  select.addEventListener('change', () => {
    const story = stories.find(({ id }) => id === select.value);
    if (story !== undefined) onChoose(story);
  });
  return make('label', { for: 'story' }, 'Story ', select);
}

void start();
