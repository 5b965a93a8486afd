// Our own markdown as a page for a browser: headings with anchors, tables, links to the other pages about the rules.
import { Marked } from 'marked';
import { headingAnchor, rulePageFiles } from '../presenters/rule-table.ts';

const inPage: ReadonlyMap<string, string> = new Map([
  [rulePageFiles.rules, '/rules'],
  [rulePageFiles.numbers, '/rules?id=numbers'],
  [rulePageFiles.cases, '/rules?id=cases'],
]);

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/**
 * Given    text  one of the pages about the rules, or a section of it
 *          id    what was asked for; a section links back to the whole page
 */
export function markdownPage(text: string, id: string | undefined): string {
  const whole = id === undefined ? '' : '/rules';
  const marked = new Marked({
    renderer: {
      heading({ tokens, depth, text: words }) {
        return `<h${depth} id="${escaped(headingAnchor(words))}">${this.parser.parseInline(tokens)}</h${depth}>\n`;
      },
      link({ href, tokens }) {
        const target = href.startsWith('#') ? `${whole}${href}` : (inPage.get(href) ?? href);
        return `<a href="${escaped(target)}">${this.parser.parseInline(tokens)}</a>`;
      },
      html: ({ text: raw }) => escaped(raw),
    },
  });
  const [heading = ''] = text.split('\n');
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(heading.replace(/^#+ /, ''))}</title>`,
    '<link rel="stylesheet" href="/page.css">',
    '<body class="rules">',
    `<main>${whole === '' ? '' : '<p><a href="/rules">All rules</a></p>'}`,
    `${marked.parse(text, { async: false })}</main>`,
    '</html>\n',
  ].join('\n');
}
