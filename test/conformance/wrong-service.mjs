// A deliberately wrong service: passes calls on to a right one, and does one thing wrong.
import { Buffer } from 'node:buffer';
import { createServer } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import { faults, tokenFaults } from './faults.mjs';
import { readToken, signToken } from './token.mjs';

export const faultsWithoutTokens = faults;
export const faultsWithTokens = tokenFaults;

/** Rows that must fail with a fault. */
export const brokenBy = (id) => ({ ...faults, ...tokenFaults })[id]?.breaks ?? [id];

const kept = ['content-type', 'allow', 'access-control-allow-headers'];

/**
 * Listens on a free port.
 *
 * Returns  base; `point(target, options)` says where the right service is, with the key to sign with in place of a
 *          caller; `break(id)` chooses the fault of a row, undefined for none; close
 * Notes    1. Without a key, equal questions are asked once: the right service must answer alike each time.
 */
export async function startWrongService() {
  const state = { target: '', key: undefined, fault: {}, answered: new Map() };
  const server = createServer((incoming, outgoing) => {
    void serve(state, incoming, outgoing);
  });
  await new Promise((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  return {
    base: `http://127.0.0.1:${server.address().port}`,
    point: (target, { key } = {}) => Object.assign(state, { target, key, answered: new Map() }),
    break: (id) => Object.assign(state, { fault: { ...faults, ...tokenFaults }[id] ?? {} }),
    close: () =>
      new Promise((resolve) => {
        server.close(resolve);
        server.closeAllConnections();
      }),
  };
}

async function serve(state, incoming, outgoing) {
  const { fault } = state;
  const chunks = [];
  for await (const chunk of incoming) chunks.push(chunk);
  const text = Buffer.concat(chunks).toString();
  const { method, url: path, headers } = incoming;
  const exchange = { request: { method, path, headers, text, json: parsed(text) }, response: undefined };
  fault.before?.(exchange);
  exchange.response = await rightAnswer(state, exchange.request);
  fault.after?.(exchange);
  await wait(fault.delay?.(exchange) ?? 0);
  const { response } = exchange;
  outgoing.writeHead(response.status, response.headers);
  outgoing.end(response.json === undefined ? response.text : JSON.stringify(response.json));
}

async function rightAnswer(state, request) {
  const name = JSON.stringify([request.method, request.path, request.headers['content-type'], request.text]);
  const known = state.key === undefined ? state.answered.get(name) : undefined;
  const answer = known ?? (await passOn(state, request));
  state.answered.set(name, answer);
  return { ...answer, headers: { ...answer.headers }, json: parsed(answer.text) };
}

async function passOn({ target, key, fault }, { method, path, headers, text }) {
  const token = readToken(headers.authorization);
  const isTrusted = fault.trusts?.({ request: { method, path }, token }) === true;
  const authorization = isTrusted ? `Bearer ${signToken(key, `${key.base}${path}`)}` : headers.authorization;
  const type = headers['content-type'];
  const response = await fetch(target + path, {
    method,
    headers: {
      ...(type === undefined ? {} : { 'Content-Type': type }),
      ...(authorization === undefined ? {} : { Authorization: authorization }),
      ...(headers.origin === undefined ? {} : { Origin: headers.origin }),
    },
    ...(text === '' ? {} : { body: Buffer.from(text) }),
  });
  const found = kept.map((name) => [name, response.headers.get(name)]).filter(([, value]) => value !== null);
  return { status: response.status, headers: Object.fromEntries(found), text: await response.text() };
}

function parsed(text) {
  try {
    return text === '' ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}
