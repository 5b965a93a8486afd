// Every story in every view: what it says, axe, cautions, nothing stored, nothing sent elsewhere.
import { check } from '../service.mjs';
import { axe, violations } from './axe.mjs';
import { openBrowser, openPage } from './chromium.mjs';
import { classOf, stories, views } from './stories.mjs';

export async function eachStory(base, name, device) {
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
        await page.waitForSelector('#view-check table');
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
  await page.selectOption('#card-language', 'es');
  await page.waitForSelector('.cards[lang=es] .card.critical');
  await page.selectOption('#card-language', '');
  await page.waitForSelector('.cards[lang=en] .card.critical');
  return page.locator('.card').count();
}
