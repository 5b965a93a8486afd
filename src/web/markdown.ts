// The markdown of a card as elements: headings in bold, lists, paragraphs; nothing else is read.
import { list, make } from './dom.ts';

export function markdown(text: string): HTMLElement[] {
  const blocks: HTMLElement[] = [];
  let items: { readonly tag: 'ul' | 'ol'; readonly lines: string[] } | undefined;
  const close = (): void => {
    if (items !== undefined) blocks.push(list(items.tag, items.lines.map(inline)));
    items = undefined;
  };
  for (const line of text.split('\n')) {
    const [, mark, content] = /^(-|\d+\.) (.*)$/.exec(line) ?? [];
    if (mark === undefined || content === undefined) {
      close();
      if (line.trim() !== '') blocks.push(make('p', {}, inline(line)));
      continue;
    }
    const tag = mark === '-' ? 'ul' : 'ol';
    if (items?.tag !== tag) close();
    items ??= { tag, lines: [] };
    items.lines.push(content);
  }
  close();
  return blocks;
}

function inline(text: string): HTMLElement {
  const parts = text
    .split(/\*\*/)
    .map((part, at) => (at % 2 === 1 ? make('b', {}, plain(part)) : plain(part)));
  return make('span', {}, ...parts);
}

const entities: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  '#58': ':',
  '#46': '.',
  '#64': '@',
};

const plain = (text: string): string =>
  text
    .replace(/\\([\\`*_[\]|~#+.-])/g, '$1')
    .replace(/&(amp|lt|gt|#58|#46|#64);/g, (all, name: string) => entities[name] ?? all);
