// The committed replay report, opened as a file: the look of the page, light and dark, both sizes, on paper.
import { join } from 'node:path';
import { check } from '../service.mjs';
import { axe, violations } from './axe.mjs';
import { desktop, openBrowser, phone } from './chromium.mjs';
import { pagesIn } from './pages.mjs';

const report = join(import.meta.dirname, '../../../examples/replay-day-assessment/report.html');

/** What both must have alike. */
const lookOf = (page) =>
  page.evaluate(() => {
    const { fontFamily, fontSize, color, backgroundColor } = globalThis.getComputedStyle(
      document.documentElement,
    );
    const caution = globalThis.getComputedStyle(document.getElementById('caution'));
    return [fontFamily, fontSize, color, backgroundColor, caution.borderLeft, caution.backgroundColor].join();
  });

export async function reporting(base) {
  for (const [name, device] of [
    ['desktop', { ...desktop, colorScheme: 'light' }],
    ['phone', { ...phone, colorScheme: 'light' }],
    ['dark', { ...desktop, colorScheme: 'dark' }],
  ]) {
    const context = await openBrowser(device);
    await context.addInitScript(axe);
    const page = await context.newPage();
    await page.goto(`${base}/`);
    const look = await lookOf(page);
    await page.goto(`file://${report}`);
    check(`report, ${name}: the look of the page`, (await lookOf(page)) === look);
    const found = await violations(page);
    check(`report, ${name}: nothing for axe to complain about`, found.length === 0, found.join('; '));
    check(`report, ${name}: the caution is in view`, await page.isVisible('#caution li >> nth=2'));
    const wide = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    check(`report, ${name}: nothing runs out at the side`, wide <= 0, String(wide));
    await page.screenshot({ path: join(import.meta.dirname, 'out', `report-${name}.png`), fullPage: true });
    if (name === 'desktop') await printed(page);
    await context.close();
  }
}

async function printed(page) {
  const path = join(import.meta.dirname, 'out', 'report.pdf');
  const pages = pagesIn(await page.pdf({ path, preferCSSPageSize: true }));
  check('the report prints', pages > 0 && pages < 10, String(pages));
  await page.emulateMedia({ media: 'print' });
  check('cautions are printed with the report', await page.isVisible('#caution li >> nth=0'));
  await page.emulateMedia({ media: 'screen' });
}
