// Reported, not asserted: first meaningful view, and panning a chart of 2,000 readings.
import { join } from 'node:path';
import { startService } from '../service.mjs';
import { desktop, openBrowser, openPage, phone } from './chromium.mjs';
import { many, whole } from './pregnancy.mjs';

const root = join(import.meta.dirname, '..', '..', '..');
const { base, stop } = await startService(join(root, 'dist', 'http', 'main.js'), {});
const middle = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];

async function firstView(device, name) {
  const times = [];
  for (let run = 0; run < 5; run += 1) {
    const context = await openBrowser(device);
    const { page } = await openPage(context, `${base}/`);
    times.push(await page.evaluate(() => performance.getEntriesByName('shown')[0].startTime));
    await context.close();
  }
  console.log(
    `first meaningful view, ${name}: ${Math.round(middle(times))} ms (median of ${times.length}; aim 1000)`,
  );
}

/** Drags across the chart as a hand does, with the browser's own trace running. */
async function panning(name, bundle) {
  const context = await openBrowser(desktop);
  const { page } = await openPage(context, `${base}/`);
  await page.evaluate(() => (document.querySelector('.open-data').open = true));
  await page.fill('#paste', JSON.stringify(bundle));
  const started = Date.now();
  await page.click('.open-data button');
  await page.waitForFunction(() => document.querySelector('.story-text').textContent === 'Pasted data');
  console.log(`answer and chart, ${name}: ${Date.now() - started} ms`);
  const box = await page.locator('.stage').boundingBox();
  const session = await context.newCDPSession(page);
  const events = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...value));
  const ended = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['cc', 'benchmark', 'devtools.timeline', 'devtools.timeline.frame'] },
  });
  const [x, y] = [box.x + box.width / 2, box.y + 120];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 0; step < 120; step += 1) {
    await page.mouse.move(x + 180 * Math.sin(step / 12), y);
    await page.waitForTimeout(8);
  }
  await page.mouse.up();
  await session.send('Tracing.end');
  await ended;
  const states = {};
  for (const { name, args, ph } of events) {
    if (name !== 'PipelineReporter' || ph !== 'b') continue;
    const state = (args?.frame_reporter ?? args?.chrome_frame_reporter)?.state ?? 'unknown';
    states[state] = (states[state] ?? 0) + 1;
  }
  console.log(`panning, ${name}: frames by state ${JSON.stringify(states)}`);
  await context.close();
}

await firstView(desktop, 'desktop');
await firstView(phone, 'phone');
// The first is the measure of this machine: the same drag over a chart of twelve readings.
await panning('12 readings', whole);
await panning('2,000 readings', many);
await stop();
