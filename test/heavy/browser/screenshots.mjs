// Writes pictures of every story and view to out/, for people to look at.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { startService } from '../service.mjs';
import { desktop, openBrowser, openPage, phone } from './chromium.mjs';

const root = join(import.meta.dirname, '..', '..', '..');
const out = join(import.meta.dirname, 'out');
mkdirSync(out, { recursive: true });
const wanted = process.argv.slice(2);
const { base, stop } = await startService(join(root, 'dist', 'http', 'main.js'), {});
for (const [name, device] of [
  ['desktop', { ...desktop, colorScheme: 'light' }],
  ['phone', { ...phone, colorScheme: 'light' }],
  ['dark', { ...desktop, colorScheme: 'dark' }],
]) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const context = await openBrowser(device);
  const { page, faults } = await openPage(context, `${base}/`);
  const stories = await page.$$eval('#story option', (options) => options.map(({ value }) => value));
  for (const story of stories) {
    await page.selectOption('#story', story);
    await page.screenshot({ path: join(out, `${name}-${story}.png`), fullPage: true });
  }
  for (const view of await page.$$eval('[role=tab]', (tabs) => tabs.map(({ id }) => id))) {
    await page.click(`#${view}`);
    await page.waitForTimeout(300);
    await page.screenshot({ path: join(out, `${name}-${view}.png`), fullPage: true });
  }
  if (faults.length > 0) console.log(name, faults);
  await context.close();
}
await stop();
