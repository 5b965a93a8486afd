// RULES.md as the package carries it, whole or one rule of it; as markdown, or as a page where a browser asks.
import { readFileSync } from 'node:fs';
import { ruleSection, ruleSectionIds } from '../presenters/rule-table.ts';
import type { Call } from './call.ts';
import type { Reply } from './reply.ts';
import { refused } from './request-issues.ts';

/** The file lies at the same place seen from src/http and from dist/http. */
export const readRulesPage = (): string =>
  readFileSync(new URL('../../src/guidelines/RULES.md', import.meta.url), 'utf8');

/**
 * `GET /rules`, `GET /rules?id=pre-eclampsia`
 *
 * Returns  text/markdown; text/html with the same text where Accept prefers it
 * Throws   RequestError 404: no rule of this id
 */
export function rulesReply(call: Call): Reply {
  const page = readRulesPage();
  const id = call.query('id');
  const text = id === undefined ? page : ruleSection(page, id);
  if (text === undefined) {
    const known = ruleSectionIds(page).join(', ');
    throw refused(
      404,
      'unknown-rule',
      'not-found',
      'http.id',
      `There is no rule of this id. Known: ${known}.`,
    );
  }
  const headers = { 'Cache-Control': 'no-cache' };
  return prefersHtml(call.accept)
    ? { status: 200, type: 'text/html', body: htmlPage(text), headers }
    : { status: 200, type: 'text/markdown', body: text, headers };
}

/** A browser names text/html; a client that names markdown or plain text gets the markdown. */
function prefersHtml(accept: string | undefined): boolean {
  return accept !== undefined && /text\/html/i.test(accept) && !/text\/(markdown|plain)/i.test(accept);
}

function htmlPage(text: string): string {
  const escaped = text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
  return `<!doctype html>\n<html lang="en">\n<meta charset="utf-8">\n<title>The rules</title>\n<pre>${escaped}</pre>\n</html>\n`;
}
