// For developers of record systems: the cards as their users would see them, request and response beside.
import type { Card, CardsResponse } from '../presenters/card-types.ts';
import { isJson, type Case } from './case.ts';
import { cardLanguages, curlOf, headersOf, requestFor, type Asked } from './doors.ts';
import { make } from './dom.ts';
import { markdown } from './markdown.ts';

export interface RequestsView {
  readonly element: HTMLElement;
  /** Fills in the request of what is shown and sends it. */
  readonly show: (shown: Case, asOf: number, guideline: string) => void;
}

export function createRequestsView(): RequestsView {
  const cards = make('div', { class: 'cards', 'aria-live': 'polite' });
  const request = make('textarea', { id: 'request', rows: 24, spellcheck: 'false' });
  const response = make('textarea', { id: 'response', rows: 24, spellcheck: 'false', readonly: true });
  const address = make('input', { id: 'address', size: 60, spellcheck: 'false' });
  const said = make('p', { role: 'status' });
  const door = make(
    'select',
    { id: 'door' },
    make('option', { value: 'cds' }, 'CDS Hooks'),
    make('option', { value: 'fhir' }, 'FHIR operation'),
  );
  let now: { readonly shown: Case; readonly asOf: number; readonly guideline: string } | undefined;
  const language = make(
    'select',
    { id: 'card-language' },
    make('option', { value: '' }, 'as the browser asks'),
    ...Object.entries(cardLanguages).map(([code, name]) => make('option', { value: code, lang: code }, name)),
  );
  const asked = (): Asked => ({
    path: address.value,
    body: JSON.parse(request.value),
    ...(language.value === '' ? {} : { language: language.value }),
  });
  const fill = (): void => {
    if (now === undefined) return;
    const filled = requestFor(now.shown, door.value === 'fhir' ? 'fhir' : 'cds', now.asOf, now.guideline);
    address.value = filled.path;
    request.value = JSON.stringify(filled.body, null, 2);
  };
  let sent = 0;
  const post = async (): Promise<void> => {
    const sending = asked();
    const number = (sent += 1);
    const started = performance.now();
    const answer = await fetch(sending.path, {
      method: 'POST',
      headers: headersOf(sending),
      body: JSON.stringify(sending.body),
    });
    const read: unknown = await answer.json();
    // Another one was sent, or another woman chosen, while this one was under way.
    if (number !== sent) return;
    said.textContent = `${answer.status} in ${Math.round(performance.now() - started)} ms`;
    response.value = JSON.stringify(read, null, 2);
    cards.lang = answer.headers.get('Content-Language') ?? 'en';
    cards.replaceChildren(...cardsOf(read));
  };
  const send = (): void => {
    post().catch((error: unknown) => {
      said.textContent =
        error instanceof SyntaxError
          ? `The request is not JSON: ${error.message}`
          : 'The service cannot be reached.';
    });
  };
  const copy = (): void => {
    const line = curlOf(asked(), new URL('.', location.href).href);
    navigator.clipboard.writeText(line).then(
      () => (said.textContent = 'Copied.'),
      () => (said.textContent = 'The browser did not allow copying.'),
    );
  };
  const resend = (): void => {
    if (now?.shown.isInvented === true) send();
  };
  door.addEventListener('change', () => {
    fill();
    resend();
  });
  // What was written into the body stays.
  language.addEventListener('change', resend);
  return {
    element: make(
      'div',
      {},
      make(
        'p',
        {},
        make('label', { for: 'door' }, 'Ask by '),
        door,
        ' ',
        make('label', { for: 'card-language' }, 'Cards in '),
        language,
        ' ',
        make('button', { type: 'button', id: 'send', onclick: send }, 'Send'),
        ' ',
        make('button', { type: 'button', id: 'copy-curl', onclick: copy }, 'Copy as curl'),
      ),
      make('p', {}, make('label', { for: 'address' }, 'POST '), address),
      said,
      make(
        'div',
        { class: 'request-grid' },
        make(
          'section',
          { 'aria-labelledby': 'cards-heading' },
          make('h2', { id: 'cards-heading' }, 'Cards'),
          cards,
        ),
        make(
          'section',
          { 'aria-labelledby': 'request-heading' },
          make('h2', { id: 'request-heading' }, 'Request'),
          make('label', { for: 'request' }, 'Body'),
          request,
        ),
        make(
          'section',
          { 'aria-labelledby': 'response-heading' },
          make('h2', { id: 'response-heading' }, 'Response'),
          make('label', { for: 'response' }, 'Body as received'),
          response,
        ),
      ),
    ),
    show: (shown, asOf, guideline) => {
      now = { shown, asOf, guideline };
      sent += 1;
      fill();
      cards.replaceChildren();
      response.value = '';
      said.textContent = 'Not sent yet.';
      if (shown.isInvented) send();
    },
  };
}

function cardsOf(answer: unknown): readonly HTMLElement[] {
  if (!isCards(answer))
    return [
      make(
        'p',
        {},
        'This door answers with FHIR resources, or refused the request; see the response. Cards come from CDS Hooks.',
      ),
    ];
  return answer.cards.length === 0
    ? [make('p', {}, 'No card: nothing to say that needs attention. No alert is not proof of health.')]
    : answer.cards.map(cardElement);
}

const isCards = (answer: unknown): answer is CardsResponse =>
  isJson(answer) && Array.isArray(answer['cards']);

const indicatorWords = { critical: '▲▲ critical', warning: '▲ warning', info: '○ info' } as const;

function cardElement({
  summary,
  detail,
  indicator,
  source,
  suggestions,
  overrideReasons,
  links,
}: Card): HTMLElement {
  return make(
    'article',
    { class: `card ${indicator}` },
    make('p', { class: 'indicator' }, indicatorWords[indicator]),
    make('h3', {}, summary),
    ...(suggestions ?? []).map(({ label, actions }) =>
      make(
        'details',
        { class: 'suggestion' },
        make('summary', {}, `Suggestion: ${label}`),
        ...actions.map(({ description, resource }) =>
          make(
            'div',
            {},
            make('p', {}, description),
            make('pre', { tabindex: 0 }, JSON.stringify(resource, null, 2)),
          ),
        ),
      ),
    ),
    make('details', {}, make('summary', {}, 'Details'), ...markdown(detail)),
    ...(overrideReasons === undefined
      ? []
      : [
          make(
            'details',
            {},
            make('summary', {}, 'Reasons to set it aside'),
            make('ul', {}, ...overrideReasons.map(({ display }) => make('li', {}, display))),
          ),
        ]),
    ...(links ?? []).map(({ label, url, type }) => make('p', {}, `Link (${type}): ${label}, ${url}`)),
    make('p', { class: 'source' }, `Source: ${source.label}`),
  );
}
