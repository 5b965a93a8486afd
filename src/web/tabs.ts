// Views one at a time, chosen by tab, key or address.
import { make } from './dom.ts';

export interface View {
  readonly id: string;
  readonly title: string;
  readonly element: HTMLElement;
  /** Called each time it comes into view. */
  readonly onShow?: () => void;
}

export function createTabs(views: readonly View[]): {
  readonly element: HTMLElement;
  readonly show: (id: string) => void;
} {
  const tabs = views.map(({ id, title }) =>
    make(
      'button',
      {
        type: 'button',
        role: 'tab',
        id: `tab-${id}`,
        'aria-controls': `view-${id}`,
        onclick: () => show(id),
      },
      title,
    ),
  );
  const panels = views.map(({ id, element }) =>
    make('div', { role: 'tabpanel', id: `view-${id}`, 'aria-labelledby': `tab-${id}` }, element),
  );
  const show = (id: string): void => {
    views.forEach((view, at) => {
      const isShown = view.id === id;
      const [tab, panel] = [tabs[at], panels[at]];
      if (tab === undefined || panel === undefined) return;
      tab.setAttribute('aria-selected', String(isShown));
      tab.tabIndex = isShown ? 0 : -1;
      panel.hidden = !isShown;
    });
    document.documentElement.dataset['view'] = id;
    views.find((view) => view.id === id)?.onShow?.();
  };
  const bar = make('div', { role: 'tablist', 'aria-label': 'Views' }, ...tabs);
  bar.addEventListener('keydown', ({ key }) => {
    const step = { ArrowLeft: -1, ArrowRight: 1 }[key];
    const at = tabs.findIndex((tab) => tab === document.activeElement);
    if (step === undefined || at < 0) return;
    const next = (at + step + views.length) % views.length;
    show(views[next]?.id ?? '');
    tabs[next]?.focus();
  });
  show(views[0]?.id ?? '');
  return { element: make('div', { class: 'views' }, bar, ...panels), show };
}
