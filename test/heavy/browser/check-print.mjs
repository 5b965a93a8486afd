// The referral note on paper and as a file, and cautions in print.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { check } from '../service.mjs';
import { desktop, openBrowser, openPage } from './chromium.mjs';
import { pagesIn } from './pages.mjs';
import { whole } from './pregnancy.mjs';
import { stories } from './stories.mjs';

export async function printing(base) {
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
