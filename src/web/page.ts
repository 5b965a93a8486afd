// The page by itself, with the stories.
import { loadPageSettings } from './page-settings.ts';
import { loadStories, startPage } from './start-page.ts';

async function start(): Promise<void> {
  const [stories] = await Promise.all([loadStories(), loadPageSettings()]);
  startPage(stories);
}

void start();
