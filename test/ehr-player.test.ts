// The example that plays the record system, against our service.
import type { Server } from 'node:http';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { memoryServer } from '../examples/ehr/fhir-store.mjs';
import { play } from '../examples/ehr-player.mjs';
import { createApp } from '../src/http/app.ts';

let server: Server;
let base = '';

beforeAll(async () => {
  const app = createApp({ now: () => Date.now() });
  server = await new Promise<Server>((resolve) => {
    const listening = app.listen(0, '127.0.0.1', () => resolve(listening));
  });
  const address = server.address();
  base = `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}`;
});

afterAll(() => void server.close());

it('shows cards, accepts the suggestion, writes it to the record, and finds the suggestion gone', async () => {
  const said: string[] = [];
  const store = memoryServer();
  const { before, after, created, suggestion } = await play({
    base,
    store,
    say: (line: string) => void said.push(line),
  });
  expect(before[0]?.summary).toContain('pre-eclampsia');
  expect(created.map((name) => name.split('/')[0])).toEqual(['Condition', 'ServiceRequest']);
  const offered = after.flatMap(({ suggestions = [] }) => suggestions).map(({ label }) => label);
  expect(offered).not.toContain(suggestion.label);
  expect(said.at(-1)).toContain('The suggestion is gone.');
});

it('keeps references between what is created together, under the ids the record gives', async () => {
  const store = memoryServer();
  const patientId = await store.save([{ resourceType: 'Patient', id: 'a' }]);
  const [condition = '', order = ''] = await store.transaction([
    { resourceType: 'Condition', id: 'c', subject: { reference: `Patient/${patientId}` } },
    {
      resourceType: 'ServiceRequest',
      id: 's',
      subject: { reference: `Patient/${patientId}` },
      reasonReference: [{ reference: 'Condition/c' }],
    },
  ]);
  expect(condition).not.toBe('Condition/c');
  expect(await store.get(order)).toMatchObject({
    subject: { reference: `Patient/${patientId}` },
    reasonReference: [{ reference: condition }],
  });
});
