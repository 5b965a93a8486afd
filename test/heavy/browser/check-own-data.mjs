// A pregnancy of one's own: pasted, chosen by key, replayed beside the live service, dropped, sent with curl.
import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { check } from '../service.mjs';
import { axe, violations } from './axe.mjs';
import { desktop, openBrowser, openPage, phone } from './chromium.mjs';
import { whole } from './pregnancy.mjs';
import { classOf } from './stories.mjs';

export async function ownData(base) {
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

  check(
    'a reading of unknown unit is named in its lane',
    (await page.textContent('.sliding')).includes('no unit'),
  );
  const joins = await page.getAttribute('.join', 'd');
  check('a gap of weeks is a gap in both lines', joins.split('M').length - 1 >= 4, joins);
  const spans = await page.$$eval('.mark.medicine', (paths) =>
    paths.map((each) => each.getAttribute('d')).join(''),
  );
  check('a medicine is a span', Number(/h([\d.]+)/.exec(spans)[1]) > 20, spans);
  const said = await page.textContent('.trend');
  check(
    'the limits are said in words beside the lines',
    said.includes('systolic at least 140 mmHg or diastolic at least 90 mmHg'),
  );
  check('the slider says its moment', /Aug 2025/.test(await page.getAttribute('#moment', 'aria-valuetext')));

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
  const finding = page
    .locator('.trace .group[open] .finding')
    .filter({ has: page.locator('h3:text-is("Evidence") + ul', { hasText: 'Blood pressure 154/96' }) })
    .first();
  await finding.locator('summary').click();
  await finding.locator('h3:text-is("Evidence") + ul button').filter({ hasText: '154/96' }).first().click();
  check('choosing evidence rings its point', (await page.locator('.halo').count()) > 0);
  const marked = await page.textContent('.said');
  check('and says which reading it is', /^Marked: .*blood pressure 154\/96/.test(marked), marked);

  // Zoomed in, a mark chosen by key comes into view.
  await page.focus('.stage');
  for (const key of ['+', '+', '+', 'Home']) await page.keyboard.press(key);
  const ring = await page.locator('.halo.chosen').first().boundingBox();
  const stage = await page.locator('.stage').boundingBox();
  check(
    'a chosen mark is brought into view',
    ring !== null && ring.x > stage.x && ring.x + ring.width < stage.x + stage.width,
  );
  await page.keyboard.press('0');

  // Replay: what the page says at each moment is what the service says then.
  const moments = Number(await page.getAttribute('#moment', 'max'));
  let same = 0;
  for (let at = 0; at <= moments; at += 1) {
    await page.locator('#moment').evaluate((slider, value) => {
      slider.value = String(value);
      slider.dispatchEvent(new Event('input'));
    }, at);
    const moment = await page.getAttribute('.answer', 'data-as-of');
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
export async function dropAndCurl(base) {
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
  await page.selectOption('#door', 'fhir');
  await page.click('#send');
  await page.waitForFunction(() => document.querySelector('#response').value.includes('"GuidanceResponse"'));
  check(
    'the FHIR operation answers the same request',
    JSON.parse(await page.inputValue('#response')).resourceType === 'Bundle',
  );
  await page.selectOption('#door', 'cds');
  await page.click('#send');
  await page.waitForSelector('.card');
  await page.click('#copy-curl');
  await page.waitForFunction(
    () => document.querySelector('#view-requests [role=status]').textContent === 'Copied.',
  );
  const line = await page.evaluate(() => globalThis.navigator.clipboard.readText());
  const answer = JSON.parse(execFileSync('bash', ['-c', line], { encoding: 'utf8', maxBuffer: 1e7 }));
  check('the copied line of curl gives the response shown', JSON.stringify(answer) === JSON.stringify(shown));
  await context.close();
}
