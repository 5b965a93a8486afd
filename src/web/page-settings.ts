// How the service behind this page is set up: what the engine must know of the site, and the SMART client.
import type { EvaluateOptions } from '../evaluate.ts';
import type { SiteSetup } from '../site/site.ts';
import { readPageSettings } from './read-page-settings.ts';

export interface PageSettings {
  readonly site?: { readonly setup: SiteSetup; readonly options: Partial<EvaluateOptions> };
  /** Absent: launch from a record system is not set up. */
  readonly smart?: { readonly clientId: string; readonly origins: readonly string[] };
}

let current: PageSettings = {};

export const pageSettings = (): PageSettings => current;

export async function loadPageSettings(): Promise<void> {
  const response = await fetch('page-settings.json');
  if (response.ok) current = readPageSettings(await response.json());
}
