// The service under test, by HTTP only: what it was asked and what it answered.
import { Buffer } from 'node:buffer';
import { contextFor, callIds } from './hooks.mjs';
import { prefetchFor } from './prefetch.mjs';
import { signToken } from './token.mjs';
import { isObject, isText, NotTestable } from './verdict.mjs';
import { stories } from './women.mjs';

const urlSafe = /^[A-Za-z0-9._~-]+$/;

function once(make) {
  let kept;
  return () => (kept ??= make());
}

/**
 * The service at an address.
 *
 * Given    base       its base URL
 *          now        milliseconds since 1970; the women are dated back from it
 *          key        for a service that asks for tokens (`token.mjs`)
 *          isCounted  call ids are counted, not random
 */
export function serviceAt({ base, now, key, isCounted = false }) {
  const root = base.replace(/\/+$/, '');
  const newId = callIds(isCounted);

  async function send(method, path, { body, headers = {}, type = 'application/json', token } = {}) {
    const authorization = token === undefined && key !== undefined ? signToken(key, root + path) : token;
    const started = performance.now();
    const response = await fetch(root + path, {
      method,
      redirect: 'manual',
      headers: {
        ...(body === undefined || type === null ? {} : { 'Content-Type': type }),
        ...(isText(authorization) ? { Authorization: `Bearer ${authorization}` } : {}),
        ...headers,
      },
      // Bytes: for text `fetch` would name a type of its own.
      ...(body === undefined
        ? {}
        : { body: Buffer.from(typeof body === 'string' ? body : JSON.stringify(body)) }),
    });
    const text = await response.text();
    const ms = performance.now() - started;
    return { status: response.status, headers: response.headers, text, json: parsed(text), ms };
  }

  const discovered = once(() => send('GET', '/cds-services'));

  /** Entries of discovery; without them nothing else can be asked. */
  async function entries() {
    const { status, json } = await discovered();
    if (status !== 200 || !isObject(json) || !Array.isArray(json.services)) {
      throw new NotTestable('discovery does not list the services');
    }
    return json.services.filter(isObject);
  }

  const isPlayed = ({ id, hook }) =>
    isText(id) && urlSafe.test(id) && contextFor(hook, 'x', now) !== undefined;

  /** The entries this check can call. */
  const played = async () => (await entries()).filter(isPlayed);

  /** The entry most rows are asked of. */
  async function main() {
    const list = await played();
    const entry = list.find(({ hook }) => hook === 'patient-view') ?? list[0];
    if (entry === undefined) throw new NotTestable('no hook of the public library is served');
    return entry;
  }

  function requestFor(entry, story, patientId, extra = []) {
    const context = contextFor(entry.hook, patientId, now);
    const prefetch = prefetchFor(entry, [...stories[story](patientId, now), ...extra], context);
    return {
      hook: entry.hook,
      hookInstance: newId(),
      context,
      ...(Object.keys(prefetch).length === 0 ? {} : { prefetch }),
    };
  }

  const post = (entry, body, options = {}) => send('POST', `/cds-services/${entry.id}`, { body, ...options });

  /** One call to the main entry for a woman of a story; `change` gets the good request and gives the one to send. */
  async function ask(
    patientId,
    { story = 'raised', change = (request) => request, extra = [], ...options } = {},
  ) {
    const entry = await main();
    return post(entry, change(requestFor(entry, story, patientId, extra)), options);
  }

  /** Every entry asked for every story, once. */
  const answers = once(async () => {
    const found = [];
    for (const entry of await played()) {
      for (const story of Object.keys(stories)) {
        const request = requestFor(entry, story, `conf-${story}`);
        found.push({ entry, story, request, response: await post(entry, request) });
      }
    }
    return found;
  });

  /** The cards of all those answers, each with the request it answers. */
  async function cards() {
    const list = (await answers()).flatMap(({ entry, story, request, response }) =>
      cardsOf(response).map((card) => ({ entry, story, request, response, card })),
    );
    if (list.length === 0) throw new NotTestable('no card was shown to any of the invented women');
    return list;
  }

  async function suggestions() {
    return (await cards()).flatMap((shown) =>
      listOf(shown.card.suggestions).map((suggestion) => ({ ...shown, suggestion })),
    );
  }

  async function actions() {
    return (await suggestions()).flatMap((shown) =>
      listOf(shown.suggestion.actions).map((action) => ({ ...shown, action })),
    );
  }

  const feedback = async (body, options = {}) =>
    send('POST', `/cds-services/${(await main()).id}/feedback`, { body, ...options });

  return {
    root,
    now,
    key,
    send,
    discovered,
    entries,
    played,
    main,
    requestFor,
    post,
    ask,
    answers,
    cards,
    suggestions,
    actions,
    feedback,
  };
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const listOf = (value) => (Array.isArray(value) ? value.filter(isObject) : []);

/** Cards of an answer; none when it is no answer. */
export const cardsOf = ({ status, json }) => (status === 200 && isObject(json) ? listOf(json.cards) : []);

/** Is the answer a cards object? */
export const isAnswer = ({ status, json }) => status === 200 && isObject(json) && Array.isArray(json.cards);
