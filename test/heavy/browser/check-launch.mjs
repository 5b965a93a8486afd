// The launch from a record system, and who may show the page in a frame.
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { check, startService } from '../service.mjs';
import { desktop, openBrowser } from './chromium.mjs';
import { whole } from './pregnancy.mjs';
import { startRecordSystem } from './record-system.mjs';
import { classOf } from './stories.mjs';

const root = join(import.meta.dirname, '..', '..', '..');

export async function launching(main) {
  const system = await startRecordSystem(whole, 'wren');
  const allowed = await startFrame();
  const other = await startFrame();
  const port = await freePort();
  const host = `http://localhost:${port}`;
  const { stop } = await startService(main, {
    PORT: String(port),
    PUBLIC_BASE_URL: host,
    SMART_CLIENT_ID: 'page-of-the-tests',
    SMART_ORIGINS: system.origin,
    FRAME_ANCESTORS: allowed.origin,
  });
  const context = await openBrowser(desktop);
  const page = await context.newPage();
  const faults = [];
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  const launch = `${host}/launch?iss=${encodeURIComponent(system.issuer)}&launch=${system.launch}`;
  await page.goto(launch);
  await page.waitForSelector('html[data-ready=true]');
  const [authorize] = system.asked;
  check(
    'launch: the code is bound by PKCE',
    authorize.query.code_challenge_method === 'S256' && authorize.query.code_challenge.length > 40,
  );
  check(
    'launch: state, launch and aud are sent',
    authorize.query.state.length > 10 &&
      authorize.query.launch === system.launch &&
      authorize.query.aud === system.issuer,
  );
  check(
    'launch: the verifier fits',
    system.asked.some(({ step, fits }) => step === 'token' && fits),
  );
  check(
    'launch: every read carries the token',
    system.asked.filter(({ step }) => step === 'read').every(({ allowed }) => allowed),
  );
  check('launch: the page shows her', (await classOf(page)).length > 0);
  check(
    'launch: nothing is stored',
    (await page.evaluate(() => localStorage.length + sessionStorage.length)) === 0,
  );
  check('launch: no code stays in the address', !page.url().includes('code='));
  check('launch: the console is quiet', faults.length === 0, faults.join('; '));
  await page.screenshot({ path: join(import.meta.dirname, 'out', 'launched.png') });
  await page.goto(`${host}/launch?code=stolen&state=not-ours`);
  await page.waitForSelector('html[data-said=true]');
  check(
    'launch: a state that is not ours is refused',
    /did not succeed/.test(await page.textContent('#view')),
  );
  await page.goto(`${host}/launch?iss=${encodeURIComponent('http://localhost:9/fhir')}&launch=x`);
  await page.waitForSelector('html[data-said=true]');
  check(
    'launch: a record system that is not configured is refused',
    /not among those/.test(await page.textContent('#view')),
  );
  const answer = await fetch(`${host}/cds-services/pregnancy-hypertension?asOf=2025-03-11T08:10:00Z`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: readFileSync(join(root, 'examples', 'severe-with-headache', 'request.json')),
  });
  const { cards } = await answer.json();
  check(
    'launch: every card links to it',
    cards.every(({ links }) => links?.some(({ url, type }) => type === 'smart' && url === `${host}/launch`)),
  );
  await framed(context, allowed, host, launch);
  await notFramed(context, other, host);
  await context.close();
  await stop();
  system.stop();
  allowed.stop();
  other.stop();
}

/** A port nobody listens on: the address of the service must be known before it starts. */
async function freePort() {
  const { port, stop } = await listening(createServer());
  await stop();
  return port;
}

async function listening(server) {
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  const stop = () => new Promise((resolve) => server.close(resolve));
  return { port: server.address().port, stop };
}

/** An origin that shows in a frame whatever address it is asked for with. */
async function startFrame() {
  const server = createServer((request, response) => {
    const shown = new URL(request.url, 'http://localhost').searchParams.get('shown') ?? '';
    response.writeHead(200, { 'Content-Type': 'text/html' });
    response.end(`<iframe src="${shown.replaceAll('&', '&amp;')}" title="page"></iframe>`);
  });
  const { port, stop } = await listening(server);
  const origin = `http://localhost:${port}`;
  return { origin, around: (address) => `${origin}/?shown=${encodeURIComponent(address)}`, stop };
}

/** The page, and the launch from start to end, in a frame of an allowed origin. */
async function framed(context, { around }, host, launch) {
  const page = await context.newPage();
  for (const [name, address] of [
    ['show the page', `${host}/`],
    ['launch it in a frame', launch],
  ]) {
    await page.goto(around(address));
    const inside = page.frameLocator('iframe');
    await inside.locator('html[data-ready=true]').waitFor();
    const said = await inside.locator('.answer .class').textContent();
    check(`framing: an allowed origin may ${name}`, said.length > 0);
  }
  await page.close();
}

async function notFramed(context, { around }, host) {
  const page = await context.newPage();
  const refused = page.waitForEvent('console', (message) => message.text().includes('frame-ancestors'));
  await page.goto(around(`${host}/`));
  await refused;
  const shown = await page.frameLocator('iframe').locator('#story').count();
  check('framing: another origin may not show the page', shown === 0);
  await page.close();
}
