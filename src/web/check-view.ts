// Would these data work? The service counts what it finds, in which shape, and what it cannot use.
import type { Readiness } from '../readiness/readiness.ts';
import { isHook, isJson, type Case } from './case.ts';
import { dataTable } from './data-table.ts';
import { listed, make } from './dom.ts';
import { spoken } from './words.ts';

export interface CheckView {
  readonly element: HTMLElement;
  readonly show: (shown: Case) => void;
}

export function createCheckView(): CheckView {
  const result = make('div', { 'aria-live': 'polite' });
  let now: Case | undefined;
  const check = async (): Promise<void> => {
    const asked = now;
    if (asked === undefined) return;
    const { input, request, asOf } = asked;
    const body = JSON.stringify(isHook(request) ? input : request);
    const query = new URLSearchParams({ asOf: new Date(asOf).toISOString() });
    const answer = await fetch(`check?${query.toString()}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body,
    });
    const read: unknown = await answer.json();
    if (asked !== now) return;
    result.replaceChildren(...(isReadiness(read) ? readinessOf(read) : [make('p', {}, refusalOf(read))]));
  };
  const run = (): void => {
    check().catch(() => result.replaceChildren(make('p', {}, 'The service cannot be reached.')));
  };
  return {
    element: make(
      'div',
      {},
      make('h2', {}, 'Would these data work?'),
      make(
        'p',
        {},
        'The service counts what it finds in the data shown; no value is repeated. Data of your own are sent to it only when you press the button.',
      ),
      make('p', {}, make('button', { type: 'button', id: 'check', onclick: run }, 'Send and check')),
      result,
    ),
    show: (shown) => {
      if (now === shown) return;
      result.replaceChildren();
      now = shown;
      if (shown.isInvented) run();
    },
  };
}

const isReadiness = (read: unknown): read is Readiness =>
  isJson(read) && typeof read['received'] === 'number';

function refusalOf(read: unknown): string {
  const issues: readonly unknown[] = isJson(read) && Array.isArray(read['issue']) ? read['issue'] : [];
  const [first] = issues;
  const details = isJson(first) ? first['details'] : undefined;
  return isJson(details) && typeof details['text'] === 'string'
    ? details['text']
    : 'The service refused the data.';
}

function readinessOf({
  women,
  classified,
  received,
  used,
  notNeeded,
  elements,
  setAside,
  neverAnswered,
  strict,
}: Readiness): Node[] {
  const aside = setAside.reduce((sum, { count }) => sum + count, 0);
  return [
    make(
      'p',
      {},
      `${received} resources about ${women === 1 ? 'one woman' : `${women} women`}: ${used} used, ${aside} set aside, ${notNeeded} not needed. ${classified} of ${women} can be given a class.`,
    ),
    dataTable(
      'Found',
      ['What', 'How many', 'In which shape'],
      elements.map(({ element, facts, shapes }) => [
        `${facts === 0 ? '○' : '●'} ${element}`,
        facts === 0 ? 'none' : String(facts),
        shapes.map(({ name, count }) => `${name}, ${count}`).join('; '),
      ]),
    ),
    ...listed(
      'Set aside',
      setAside.map(
        ({ name, count, message, examples }) =>
          `${count} × ${name}: ${message} For example ${examples.join(', ')}`,
      ),
    ),
    ...listed(
      'Cannot be answered',
      neverAnswered.map(({ asks, missing }) =>
        spoken(`${asks}${missing === undefined ? '' : ` It needs ${missing}.`}`),
      ),
    ),
    ...listed(
      'Breaks or bends FHIR R4',
      strict.map(
        ({ severity, count, message, examples }) =>
          `${severity}, ${count} ×: ${message} For example ${examples.join(', ')}`,
      ),
    ),
  ];
}
