// The conformance check over HTTP: our service passes, and each row is proved able to fail.
import { exportJWK } from 'jose';
import { spawn } from 'node:child_process';
import type { Server } from 'node:http';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp, type AppOptions } from '../src/http/app.ts';
import { openSettings } from '../src/http/settings.ts';
import { checkService, rows, type ClientKey, type Result } from './conformance/check-service.mjs';
import {
  brokenBy,
  faultsWithTokens,
  faultsWithoutTokens,
  startWrongService,
} from './conformance/wrong-service.mjs';
import { issuer, jwtSettings, mainKey } from './http/trust-support.ts';

const servers: Server[] = [];
const wrong = await startWrongService();
const wrongWithTokens = await startWrongService();
const now = Date.now();
const key: ClientKey = { iss: issuer, kid: 'main', alg: 'ES384', jwk: await exportJWK(mainKey.privateKey) };
const unlimited = { ...openSettings, requestsPerMinute: 0 };
let base = '';

async function started(options: Partial<AppOptions>): Promise<string> {
  const app = createApp({ now: () => now, settings: unlimited, ...options });
  const server = await new Promise<Server>((resolve) => {
    const listening = app.listen(0, '127.0.0.1', () => resolve(listening));
  });
  servers.push(server);
  const address = server.address();
  return `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}`;
}

beforeAll(async () => {
  base = await started({});
  wrong.point(base);
  const publicBaseUrl = wrongWithTokens.base;
  // Tokens are signed by the clock of this machine; so are they judged.
  const settings = jwtSettings({ publicBaseUrl, requestsPerMinute: 0 });
  const guarded = await started({ settings, now: () => Date.now() });
  wrongWithTokens.point(guarded, { key: { ...key, base: publicBaseUrl } });
});

afterAll(async () => {
  await wrong.close();
  await wrongWithTokens.close();
  for (const server of servers) server.close();
});

const failing = (results: readonly Result[]) =>
  results.filter(({ state }) => state === 'fail').map(({ id, reason }) => `${id}: ${reason ?? ''}`);
/** Rows that fail with the fault and not without it: what our own service fails is told above, once. */
const newly = (results: readonly Result[], usual: readonly Result[]) =>
  ids(results, 'fail').filter((id) => !ids(usual, 'fail').includes(id));
const ids = (results: readonly Result[], state: Result['state']) =>
  results.filter((result) => result.state === state).map(({ id }) => id);

let usualResults: Promise<readonly Result[]> | undefined;
/** What the check says of our own service. */
const usual = () => (usualResults ??= checkService({ base, now }));

/** Run, as a program, with its closing line and exit code. */
async function program(...options: readonly string[]) {
  const run = spawn(process.execPath, ['test/conformance/run.mjs', ...options]);
  const said: string[] = [];
  run.stdout.on('data', (chunk) => said.push(String(chunk)));
  const code = await new Promise<number | null>((resolve) => run.on('close', resolve));
  return { code, text: said.join('') };
}

describe('the conformance check', () => {
  it('finds no row that our service fails', async () => {
    const results = await usual();
    expect(failing(results)).toEqual([]);
    // Without a key nothing can be said of tokens; on this machine nothing of TLS; and services are hosted.
    const ofTokens = [...Object.keys(faultsWithTokens), 'D-03', 'J-01'];
    expect([...ids(results, 'not-testable')].sort()).toEqual(ofTokens.sort());
  });

  it('finds no row that our service fails when it asks for tokens', async () => {
    wrongWithTokens.break(undefined);
    const results = await checkService({ base: wrongWithTokens.base, now, key });
    expect(failing(results)).toEqual([]);
    expect(ids(results, 'not-testable')).toEqual(['D-03', 'J-01']);
  });

  it('prints every row and ends with 0 for our service, with 1 when a SHALL fails', async () => {
    const good = await program(base);
    expect(good.code).toBe(0);
    for (const { id } of rows) expect(good.text).toContain(` ${id} `);
    expect(good.text).toMatch(/\d+ pass, 0 fail, \d+ not testable from here\n$/);
    wrong.break('K-04');
    const bad = await program(wrong.base, '--json');
    expect(bad.code).toBe(1);
    const results = JSON.parse(bad.text) as readonly Result[];
    expect(newly(results, await usual())).toEqual(['K-04']);
    expect((await program()).code).toBe(2);
  });

  it('fails nothing of the wrong service before it does something wrong', async () => {
    wrong.break(undefined);
    const results = await checkService({ base: wrong.base, now, isCounted: true });
    expect(newly(results, await usual())).toEqual([]);
  });

  it.each(Object.keys(faultsWithoutTokens))(
    'a service wrong in %s fails the rows it breaks and no other',
    async (id) => {
      wrong.break(id);
      const results = await checkService({ base: wrong.base, now, isCounted: true });
      expect(newly(results, await usual()).sort()).toEqual([...brokenBy(id)].sort());
    },
  );

  it.each(Object.keys(faultsWithTokens))(
    'a service wrong about tokens in %s fails that row and no other',
    async (id) => {
      wrongWithTokens.break(id);
      const only = [...Object.keys(faultsWithTokens), 'J-13'];
      const results = await checkService({ base: wrongWithTokens.base, now, key, only });
      expect([id, ...ids(results, 'not-testable')]).toEqual([id]);
      expect(ids(results, 'fail')).toEqual(brokenBy(id));
    },
  );

  it('J-01 can fail: an address in the open without https', async () => {
    const results = await checkService({ base: 'http://cds.invalid', now, only: ['J-01'] });
    expect(ids(results, 'fail')).toEqual(['J-01']);
  });

  it('leaves one row without proof: D-03 is only about a service that hosts nothing', () => {
    const proved = [...Object.keys(faultsWithoutTokens), ...Object.keys(faultsWithTokens), 'J-01'];
    expect(rows.map(({ id }) => id).filter((id) => !proved.includes(id))).toEqual(['D-03']);
  });
});
