// The page in real Chromium: every story, both sizes, light and dark, keyboard, print, own data, the launch.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { check, startService } from '../service.mjs';
import { desktop, openBrowser, openPage, phone } from './chromium.mjs';
import { pagesIn } from './pages.mjs';
import { whole } from './pregnancy.mjs';
import { startRecordSystem } from './record-system.mjs';

const root = join(import.meta.dirname, '..', '..', '..');
const main = join(root, 'dist', 'http', 'main.js');
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What each story ends in: its own story.md says it. */
const stories = {
  'first-raised-reading': 'Raised pressure, not yet confirmed',
  'lisinopril-at-fourteen-weeks': 'Chronic hypertension',
  'protein-and-pressure': 'Pre-eclampsia',
  'severe-with-headache': 'Imminent eclampsia',
  'six-days-after-birth': 'Hypertension after birth',
};
const views = ['trend', 'note', 'requests', 'check'];

async function violations(page) {
  const found = await page.evaluate(async () => {
    const { violations: all } = await globalThis.axe.run(document, { resultTypes: ['violations'] });
    return all.map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .map(({ target }) => target.join(' '))
          .slice(0, 3)
          .join(', ')}`,
    );
  });
  return found;
}

async function classOf(page) {
  return page.textContent('.answer .class');
}

async function eachStory(base, name, device) {
  const context = await openBrowser(device);
  await context.addInitScript(axe);
  const { page, faults } = await openPage(context, `${base}/`);
  const foreign = [];
  page.on('request', (request) => {
    if (!request.url().startsWith(base) && !request.url().startsWith('blob:')) foreign.push(request.url());
  });
  for (const [story, expected] of Object.entries(stories)) {
    await page.selectOption('#story', story);
    const said = await classOf(page);
    check(`${name}: ${story} is ${expected}`, said.startsWith(expected), said);
    for (const view of views) {
      await page.click(`#tab-${view}`);
      if (view === 'requests')
        await page.waitForFunction(() =>
          /^200 /.test(document.querySelector('#view-requests [role=status]').textContent),
        );
      if (view === 'check') {
        await page.click('#check');
        await page.waitForSelector('#view-check h3');
      }
      const found = await violations(page);
      check(
        `${name}: ${story}, ${view}: nothing for axe to complain about`,
        found.length === 0,
        found.join('; '),
      );
      check(
        `${name}: ${story}, ${view}: the caution is in view`,
        await page.isVisible('#caution li >> nth=2'),
      );
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      check(`${name}: ${story}, ${view}: nothing runs out at the side`, wide <= 0, String(wide));
    }
    await page.click('#tab-trend');
  }
  check(`${name}: cards are the cards of the service`, (await cardsShown(page)) > 0);
  const stored = await page.evaluate(() => localStorage.length + sessionStorage.length);
  check(`${name}: nothing is stored`, stored === 0);
  check(`${name}: nothing goes elsewhere`, foreign.length === 0, foreign.join());
  check(`${name}: the console is quiet`, faults.length === 0, faults.join('; '));
  await context.close();
}

async function cardsShown(page) {
  await page.selectOption('#story', 'severe-with-headache');
  await page.click('#tab-requests');
  await page.waitForSelector('.card.critical');
  return page.locator('.card').count();
}

async function ownData(base) {
  const context = await openBrowser({ ...desktop, colorScheme: 'light' });
  await context.addInitScript(axe);
  const { page, faults } = await openPage(context, `${base}/`);
  await page.click('.open-data summary');
  await page.fill('#paste', JSON.stringify(whole));
  await page.click('.open-data button');
  await page.waitForFunction(() => document.querySelector('.story-text').textContent === 'Pasted data');
  await page.screenshot({ path: join(import.meta.dirname, 'out', 'whole-desktop.png'), fullPage: true });
  const table = await page.textContent('table');
  check(
    'a reading that cannot be is shown with its reason',
    table.includes('the diastolic is not below the systolic'),
  );
  check(
    'the average of a visit is told from its readings',
    table.includes('average of this visit, 2 readings'),
  );

  // Keyboard: to the newest mark, then back, each read out.
  await page.focus('.stage');
  await page.keyboard.press('End');
  const last = await page.textContent('.said');
  await page.keyboard.press('ArrowLeft');
  const before = await page.textContent('.said');
  check(
    'keys go from mark to mark and each is said',
    last !== before && /\d{4}/.test(before),
    `${last} / ${before}`,
  );
  check('choosing a mark lists the questions that used it', await page.isVisible('.used-by h3'));

  // Evidence marks its point.
  const evidence = page.locator('.trace .group[open] .finding').filter({ hasText: 'Evidence' }).first();
  await evidence.locator('summary').click();
  await evidence.locator('button.link').last().click();
  check('choosing evidence rings its point', (await page.locator('.halo').count()) > 0);

  // Replay: what the page says at each moment is what the service says then.
  const moments = Number(await page.getAttribute('#moment', 'max'));
  let same = 0;
  for (let at = 0; at <= moments; at += 1) {
    await page.locator('#moment').evaluate((slider, value) => {
      slider.value = String(value);
      slider.dispatchEvent(new Event('input'));
    }, at);
    const moment = await page.inputValue('#moment-field');
    const [, urgency] = (await page.getAttribute('.answer', 'class')).split(' ');
    const classes = await page.getAttribute('.answer', 'data-classes');
    const steps = await page.locator('.answer .steps > li').count();
    const answer = await fetch(`${base}/fhir/$assess-hypertension?asOf=${encodeURIComponent(moment)}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/fhir+json' },
      body: JSON.stringify(whole),
    });
    const result = await answer.json();
    const output = result.entry[0].resource.contained[0].parameter;
    const codes = (name) => output.flatMap((each) => (each.name === name ? [each.valueCode] : [])).join(' ');
    const sentences = new Set(
      output
        .filter(({ name }) => name === 'actions' || name === 'referral')
        .map(({ part }) => part.find(({ name }) => name === 'sentence').valueString),
    );
    const agrees =
      urgency === codes('urgency') && classes === codes('classification') && steps === sentences.size;
    if (agrees) same += 1;
    else
      console.log(
        'differs',
        moment,
        urgency,
        codes('urgency'),
        classes,
        codes('classification'),
        steps,
        sentences.size,
      );
  }
  check(`at each of ${moments + 1} moments the page says what the service says`, same === moments + 1);

  await page.click('.beside > summary');
  await page.waitForSelector('.beside table');
  const found = await violations(page);
  check(
    'own data, guidelines side by side: nothing for axe to complain about',
    found.length === 0,
    found.join('; '),
  );
  await page.locator('.beside').screenshot({ path: join(import.meta.dirname, 'out', 'side-by-side.png') });
  check('own data: the console is quiet', faults.length === 0, faults.join('; '));
  await page.setViewportSize(phone.viewport);
  await page.screenshot({ path: join(import.meta.dirname, 'out', 'whole-phone.png'), fullPage: true });
  await context.close();
}

/** A file dropped on the page, and the line of curl, run as pasted. */
async function dropAndCurl(base) {
  const context = await openBrowser({ ...desktop, permissions: ['clipboard-read', 'clipboard-write'] });
  const { page } = await openPage(context, `${base}/`);
  const transfer = await page.evaluateHandle((text) => {
    const data = new globalThis.DataTransfer();
    data.items.add(new globalThis.File([text], 'wren.json', { type: 'application/json' }));
    return data;
  }, JSON.stringify(whole));
  await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
  await page.waitForFunction(() => document.querySelector('.story-text').textContent === 'wren.json');
  check('a dropped file is opened', (await classOf(page)).startsWith('Pre-eclampsia'));
  await page.click('#tab-requests');
  check(
    'own data are not sent before Send is pressed',
    (await page.textContent('#view-requests [role=status]')) === 'Not sent yet.',
  );
  await page.click('#send');
  await page.waitForSelector('.card');
  const shown = JSON.parse(await page.inputValue('#response'));
  await page.click('#copy-curl');
  await page.waitForFunction(
    () => document.querySelector('#view-requests [role=status]').textContent === 'Copied.',
  );
  const line = await page.evaluate(() => globalThis.navigator.clipboard.readText());
  const answer = JSON.parse(execFileSync('bash', ['-c', line], { encoding: 'utf8', maxBuffer: 1e7 }));
  check('the copied line of curl gives the response shown', JSON.stringify(answer) === JSON.stringify(shown));
  await context.close();
}

async function printing(base) {
  const context = await openBrowser({ ...desktop, acceptDownloads: true });
  const { page } = await openPage(context, `${base}/`);
  for (const story of [...Object.keys(stories), 'whole']) {
    if (story === 'whole') {
      await page.click('.open-data summary');
      await page.fill('#paste', JSON.stringify(whole));
      await page.click('.open-data button');
    } else await page.selectOption('#story', story);
    await page.click('#tab-note');
    const path = join(import.meta.dirname, 'out', `note-${story}.pdf`);
    const pages = pagesIn(await page.pdf({ path, preferCSSPageSize: true, printBackground: true }));
    check(`the referral note of ${story} fits one A4 page`, pages === 1, String(pages));
  }
  await page.emulateMedia({ media: 'print' });
  check('cautions are printed with the note', await page.isVisible('.note-cautions'));
  await page.emulateMedia({ media: 'screen' });
  const [download] = await Promise.all([page.waitForEvent('download'), page.click('#save-note')]);
  const document = JSON.parse(readFileSync(await download.path(), 'utf8'));
  check(
    'the note is offered as a FHIR document',
    document.type === 'document' && document.entry[0].resource.resourceType === 'Composition',
  );
  await page.click('#tab-trend');
  await page.emulateMedia({ media: 'print' });
  check('cautions are printed with the trend', await page.isVisible('#caution li >> nth=0'));
  await context.close();
}

async function launching() {
  const system = await startRecordSystem(whole, 'wren');
  const port = 18_000 + (process.pid % 1000);
  const host = `http://localhost:${port}`;
  const { base, stop } = await startService(main, {
    PORT: String(port),
    PUBLIC_BASE_URL: host,
    SMART_CLIENT_ID: 'page-of-the-tests',
    SMART_ORIGINS: system.origin,
    FRAME_ANCESTORS: 'http://localhost:19999',
  });
  const context = await openBrowser(desktop);
  const page = await context.newPage();
  const faults = [];
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()));
  await page.goto(`${host}/launch?iss=${encodeURIComponent(system.issuer)}&launch=${system.launch}`);
  await page.waitForSelector('html[data-ready=true]', { timeout: 20_000 });
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
  await framing(context, host, 19_999, true);
  await framing(context, host, 19_998, false);
  await context.close();
  await stop();
  system.stop();
  void base;
}

/** A page of an origin that is, or is not, allowed to show ours in a frame. */
async function framing(context, host, port, isAllowed) {
  const around = createServer((_request, response) => {
    response.writeHead(200, { 'Content-Type': 'text/html' });
    response.end(`<iframe src="${host}/" title="page"></iframe>`);
  });
  await new Promise((resolve) => around.listen(port, '127.0.0.1', resolve));
  const page = await context.newPage();
  await page.goto(`http://localhost:${port}/`);
  await page.waitForTimeout(1500);
  const shown = await page
    .frames()[1]
    ?.locator('#story')
    .count()
    .catch(() => 0);
  check(
    `framing: ${isAllowed ? 'an allowed' : 'another'} origin ${isAllowed ? 'may' : 'may not'} show the page`,
    (shown ?? 0) > 0 === isAllowed,
  );
  await page.close();
  around.close();
}

const { base, stop } = await startService(main, {});
try {
  const wanted = process.argv.slice(2);
  const run = async (name, deed) => {
    if (wanted.length === 0 || wanted.includes(name)) await deed();
  };
  await run('desktop', () => eachStory(base, 'desktop', { ...desktop, colorScheme: 'light' }));
  await run('phone', () => eachStory(base, 'phone', { ...phone, colorScheme: 'light' }));
  await run('dark', () => eachStory(base, 'dark', { ...desktop, colorScheme: 'dark' }));
  await run('own', () => ownData(base));
  await run('drop', () => dropAndCurl(base));
  await run('print', () => printing(base));
  await run('launch', launching);
} finally {
  await stop();
}
