// Text from a record made safe for a card: markdown without markup, summaries without overflow.

/** Longest summary a card may carry: fewer than 140 characters (CDS Hooks 2.0.1, card attributes). */
export const longestSummary = 139;

/**
 * Text that GitHub Flavored Markdown shows as it stands: no markup, no HTML, no line break, no autolink.
 *
 * Source   CDS Hooks checklist K-03.
 */
export function escapeMarkdown(text: string): string {
  return oneLine(text)
    .replace(/[\\`*_[\]|~]/g, (mark) => `\\${mark}`)
    .replace(/^[-+#]/, (mark) => `\\${mark}`)
    .replace(/^(\d+)\./, '$1\\.')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/:\/\//g, '&#58;//')
    .replace(/\bwww\./gi, (match) => `${match.slice(0, -1)}&#46;`)
    .replace(/@/g, '&#64;');
}

/** One line: control characters, marks that turn the reading direction, line breaks and runs of blanks become one blank. */
export function oneLine(text: string): string {
  return text.replace(/[\s\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]+/gu, ' ').trim();
}

/**
 * As many of the sentences as fit a summary, most important first.
 *
 * Given    sentences   in order of importance; the first is kept, cut if need be
 * Returns  at most 139 UTF-16 units (so at most 139 code points), one line.
 */
export function fitSummary(sentences: readonly string[]): string {
  let summary = '';
  for (const sentence of sentences.map(oneLine).filter((line) => line !== '')) {
    const longer = summary === '' ? sentence : `${summary} ${sentence}`;
    if (longer.length <= longestSummary) summary = longer;
    else if (summary === '') summary = cut(sentence);
  }
  return summary;
}

function cut(sentence: string): string {
  let kept = '';
  for (const character of sentence) {
    if (kept.length + character.length > longestSummary - 1) break;
    kept += character;
  }
  return `${kept.trimEnd()}…`;
}
