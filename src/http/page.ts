// Replies of the built-in page.
import { defaultGuidelineId, guidelineIds } from '../guidelines/registry.ts';
import { exampleAsOf, exampleBundle } from './example-bundle.ts';
import { pageHtml, pageScript, pageStyle } from './page-text.ts';
import { jsonReply, type Reply } from './reply.ts';

const headers = { 'Cache-Control': 'no-cache' };

export function pageReply(): Reply {
  return { status: 200, type: 'text/html', body: pageHtml(guidelineIds, defaultGuidelineId), headers };
}

export function scriptReply(): Reply {
  return { status: 200, type: 'text/javascript', body: pageScript, headers };
}

export function styleReply(): Reply {
  return { status: 200, type: 'text/css', body: pageStyle, headers };
}

/** The example with the time at which to judge it. */
export function exampleReply(): Reply {
  return jsonReply({ asOf: exampleAsOf, bundle: exampleBundle }, headers);
}
