// The page in real Chromium, check by check; `node check-page.mjs NAME...` runs some of them. Stops at the first that fails.
import { join } from 'node:path';
import { startService } from '../service.mjs';
import { desktop, phone } from './chromium.mjs';
import { launching } from './check-launch.mjs';
import { dropAndCurl, ownData } from './check-own-data.mjs';
import { printing } from './check-print.mjs';
import { reporting } from './check-report.mjs';
import { eachStory } from './check-stories.mjs';

const main = join(import.meta.dirname, '..', '..', '..', 'dist', 'http', 'main.js');

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
  await run('report', () => reporting(base));
  await run('launch', () => launching(main));
} finally {
  await stop();
}
