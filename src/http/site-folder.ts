// A site folder from the disk, and its time zone as offsets: the parts of a site that only a shell may touch.
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { siteOptions } from '../receive.ts';
import { readSite } from '../site/read-site.ts';
import type { SiteSetup } from '../site/site.ts';
import { zoneOffset } from '../site/zone-offset.ts';

export { zoneOffset };

/** A site, with what the flow takes from it. */
export interface ServedSite {
  readonly setup: SiteSetup;
  readonly options: ReturnType<typeof siteOptions>;
}

/**
 * The site of a folder.
 *
 * Given    folder   path; holds site.json and the ConceptMaps it names
 * Throws   SiteError naming every fault with file and line
 */
export function loadSite(folder: string): ServedSite {
  const setup = readSite((file) => textOf(join(folder, basename(file))));
  const offset = setup.timeZone === undefined ? undefined : zoneOffset(setup.timeZone);
  return { setup, options: siteOptions(setup, offset) };
}

function textOf(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}
