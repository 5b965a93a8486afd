// What the page asks the service for: its set-up, and the example.
import type { SiteSetup } from '../site/site.ts';
import type { Call } from './call.ts';
import { exampleAsOf, exampleBundle } from './example-bundle.ts';
import { jsonReply, type Reply } from './reply.ts';

const headers = { 'Cache-Control': 'no-cache' };

/** `GET /page-settings.json`: what the engine in the browser must know of the site, and the SMART client. */
export function pageSettingsReply({ site, smart }: Pick<Call, 'site' | 'smart'>): Reply {
  return jsonReply(
    {
      ...(site === undefined ? {} : { site: siteData(site.setup) }),
      ...(smart === undefined ? {} : { smart: { clientId: smart.clientId, origins: smart.origins } }),
    },
    headers,
  );
}

/** The site with its maps as lists of pairs. */
function siteData(setup: SiteSetup) {
  const { performers, codes, units, stripTexts, ...plain } = setup;
  return {
    ...plain,
    performers: [...performers],
    codes: [...codes],
    units: [...units],
    stripTexts: [...stripTexts],
  };
}

/** The example with the time at which to judge it. */
export function exampleReply(): Reply {
  return jsonReply({ asOf: exampleAsOf, bundle: exampleBundle }, headers);
}
