// J-10 over the Redis protocol: two processes of the service share one memory of token ids.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { exportJWK, generateKeyPair, SignJWT } from 'jose';
import Redis from 'ioredis';
import { check, startService } from '../service.mjs';
import { redisReplayStore } from './dist/http/trust/redis-replay-store.js';

const folder = mkdtempSync(join(tmpdir(), 'replay-'));
const port = await freePort();
const url = `redis://127.0.0.1:${port}`;
const main = new URL('dist/http/main.js', import.meta.url).pathname;
const { privateKey, publicKey } = await generateKeyPair('ES384', { extractable: true });
const clients = [
  { issuer: 'https://ehr.example', keys: { keys: [{ ...(await exportJWK(publicKey)), kid: 'main' }] } },
];
const clientsFile = join(folder, 'clients.json');
writeFileSync(clientsFile, JSON.stringify({ clients }));
const environment = {
  TRUST: 'jwt',
  PUBLIC_BASE_URL: 'https://cds.example',
  CLIENTS_FILE: clientsFile,
  REPLAY_STORE: url,
};
const running = [];

try {
  const refusal = await startService(main, environment).then(
    ({ stop }) => stop().then(() => 'it started'),
    (error) => error.message,
  );
  check(
    'without its Redis server the service does not start, and says why',
    refusal.includes('REPLAY_STORE: '),
    refusal,
  );

  const redis = await startRedis();
  await checkStore();
  await checkServices(redis);
} finally {
  await Promise.all(running.map((stop) => stop()));
  rmSync(folder, { recursive: true, force: true });
}

async function checkStore() {
  const now = () => Date.now();
  const stores = [await redisReplayStore(url, now), await redisReplayStore(url, now)];
  const until = now() + 60_000;
  const uses = await Promise.all(
    Array.from({ length: 100 }, (_, index) => stores[index % 2].use('https://a.example', 'raced', until)),
  );
  check(
    'of a hundred uses at the same time by two connections one is the first',
    uses.filter((use) => use === 'first').length === 1,
  );
  check(
    'the same id of another issuer is another id',
    (await stores[0].use('https://b.example', 'raced', until)) === 'first',
  );
  await stores[0].use('a', 'short', now() + 200);
  await wait(400);
  check(
    'an id is forgotten when its token is dead',
    (await stores[1].use('a', 'short', now() + 200)) === 'first',
  );
  const reader = new Redis(url);
  const keys = await reader.keys('*');
  check(
    'issuer and token id cannot be read there',
    keys.length >= 2 && !/raced|example|short/.test(keys.join()),
  );
  const lives = await Promise.all(keys.map((key) => reader.pttl(key)));
  check(
    'nothing is kept for ever',
    lives.every((life) => life !== -1),
  );
  reader.disconnect();
  await Promise.all(stores.map((store) => store.close()));
}

async function checkServices(redis) {
  const services = await Promise.all([startService(main, environment), startService(main, environment)]);
  running.push(...services.map(({ stop }) => stop));
  const ask = async ({ base }, token) => {
    const headers = { authorization: `Bearer ${token}` };
    return (await fetch(`${base}/cds-services`, { headers })).status;
  };
  const token = await newToken('a');
  check('a token opens one process', (await ask(services[0], token)) === 200);
  check('and not the other after it', (await ask(services[1], token)) === 401);
  const raced = await newToken('b');
  const statuses = await Promise.all(services.map((service) => ask(service, raced)));
  check(
    'sent to both at once it opens one of them',
    [...statuses].sort().join() === '200,401',
    statuses.join(),
  );
  await redis.stop();
  const started = performance.now();
  check(
    'when the Redis server is lost nobody is let in unseen',
    (await ask(services[0], await newToken('c'))) === 503,
  );
  check('and nobody waits long to hear it', performance.now() - started < 3000);
  const again = await startRedis();
  await wait(2500);
  check('when it is back the service works again', (await ask(services[0], await newToken('d'))) === 200);
  check(
    'no token was printed',
    services.every(({ printed }) => !printed().includes(token.split('.')[2])),
  );
  await again.stop();
}

function newToken(jti) {
  const seconds = Math.floor(Date.now() / 1000);
  return new SignJWT({ jti, iat: seconds, exp: seconds + 300 })
    .setProtectedHeader({ alg: 'ES384', typ: 'JWT', kid: 'main' })
    .setIssuer('https://ehr.example')
    .setAudience('https://cds.example/cds-services')
    .sign(privateKey);
}

async function startRedis() {
  const flags = [
    '--port',
    `${port}`,
    '--bind',
    '127.0.0.1',
    '--save',
    '',
    '--appendonly',
    'no',
    '--dir',
    folder,
  ];
  const server = spawn('redis-server', flags, { stdio: 'ignore' });
  const stop = () =>
    new Promise((resolve) => {
      if (server.exitCode !== null || server.signalCode !== null) return resolve();
      server.once('exit', resolve);
      server.kill('SIGKILL');
    });
  running.push(stop);
  for (let tries = 0; !(await answers()); tries += 1) {
    if (tries > 100) throw new Error('redis-server does not start');
    await wait(50);
  }
  return { stop };
}

function answers() {
  return new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1');
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });
}

function freePort() {
  return new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port: free } = server.address();
      server.close(() => resolve(free));
    });
  });
}
