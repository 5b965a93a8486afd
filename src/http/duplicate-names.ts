// Names that stand twice in one JSON object: legal JSON, forbidden in FHIR, and lost without a word by every parser.

interface Open {
  /** Undefined for a list. */
  readonly names: Set<string> | undefined;
}

/**
 * Where a name stands for the second time in its object.
 *
 * Given    text   JSON that has been parsed already
 * Returns  position in UTF-16 units of the first such name; undefined when every name is unique
 * Throws   never
 * Notes    1. One pass, no copy of the values. Names are compared after their escapes are read.
 */
export function duplicateName(text: string): number | undefined {
  const open: Open[] = [];
  for (let at = 0; at < text.length; at += 1) {
    const mark = text.charCodeAt(at);
    if (mark === openBrace) open.push({ names: new Set() });
    else if (mark === openBracket) open.push({ names: undefined });
    else if (mark === closeBrace || mark === closeBracket) open.pop();
    else if (mark === quote) {
      const end = endOfString(text, at);
      const names = open.at(-1)?.names;
      if (names !== undefined && isName(text, end)) {
        const name = nameOf(text.slice(at, end + 1));
        if (names.has(name)) return at;
        names.add(name);
      }
      at = end;
    }
  }
  return undefined;
}

const [quote, backslash, colon, openBrace, closeBrace, openBracket, closeBracket] = [
  34, 92, 58, 123, 125, 91, 93,
] as const;

function endOfString(text: string, start: number): number {
  let at = start + 1;
  while (at < text.length && text.charCodeAt(at) !== quote) at += text.charCodeAt(at) === backslash ? 2 : 1;
  return at;
}

function isName(text: string, end: number): boolean {
  let at = end + 1;
  while (text.charCodeAt(at) <= ' '.charCodeAt(0)) at += 1;
  return text.charCodeAt(at) === colon;
}

function nameOf(quoted: string): string {
  return quoted.includes('\\') ? String(JSON.parse(quoted)) : quoted.slice(1, -1);
}
