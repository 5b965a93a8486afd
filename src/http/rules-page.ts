// The pages about the rules as the package carries them, whole or one rule; as markdown, or as a page for a browser.
import { readFileSync } from 'node:fs';
import { pageNamed, ruleSectionIds } from '../presenters/rule-lookup.ts';
import { rulePageFiles, type RulePageName } from '../presenters/rule-table.ts';
import type { Call } from './call.ts';
import { markdownPage } from './markdown-page.ts';
import type { Reply } from './reply.ts';
import { refused } from './request-issues.ts';

/** The files lie at the same place seen from src/http and from dist/http. */
export const readRulePage = (name: RulePageName): string =>
  readFileSync(new URL(`../../src/guidelines/${rulePageFiles[name]}`, import.meta.url), 'utf8');

/** Styles of our own address, nothing else. */
const pagePolicy = {
  'Content-Security-Policy': "default-src 'none'; style-src 'self'; base-uri 'none'; frame-ancestors 'none'",
};

/**
 * `GET /rules`, `GET /rules?id=pre-eclampsia`, `GET /rules?id=numbers`
 *
 * Returns  text/markdown; text/html with the same text where Accept prefers it
 * Throws   RequestError 404: no rule of this id
 */
export function rulesReply(call: Call): Reply {
  const id = call.query('id');
  const text = pageNamed(readRulePage, id);
  if (text === undefined) {
    const known = [...ruleSectionIds(readRulePage('rules')), 'numbers', 'cases'].join(', ');
    throw refused(
      404,
      'unknown-rule',
      'not-found',
      'http.id',
      `There is no rule of this id. Known: ${known}.`,
    );
  }
  const headers = { 'Cache-Control': 'no-cache', Vary: 'Accept' };
  return prefersHtml(call.accept)
    ? { status: 200, type: 'text/html', body: markdownPage(text, id), headers: { ...headers, ...pagePolicy } }
    : { status: 200, type: 'text/markdown', body: text, headers };
}

/** A browser names text/html; a client that names markdown or plain text gets the markdown. */
function prefersHtml(accept: string | undefined): boolean {
  return accept !== undefined && /text\/html/i.test(accept) && !/text\/(markdown|plain)/i.test(accept);
}
