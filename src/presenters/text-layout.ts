// Plain text for a terminal of 80 columns.
import { oneLine } from './markdown.ts';

const width = 78;

/**
 * A paragraph broken at blanks to at most 78 columns.
 *
 * Given    first   what the first line starts with (bullet, number); later lines are set under the text
 * Notes    1. A word longer than the line stands on a line of its own. Control characters are removed.
 */
export function wrapped(text: string, first = ''): readonly string[] {
  const indent = ' '.repeat(first.length);
  const lines: string[] = [];
  let line = first;
  for (const word of oneLine(text).split(' ')) {
    const isStart = line === first || line === indent;
    if (!isStart && line.length + 1 + word.length > width) {
      lines.push(line);
      line = `${indent}${word}`;
    } else line = isStart ? `${line}${word}` : `${line} ${word}`;
  }
  return [...lines, line];
}

/** A heading in capitals with its lines, and a blank line after; nothing when there are no lines. */
export function block(heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : [heading.toUpperCase(), ...lines, ''];
}

export function bullets(items: readonly string[]): readonly string[] {
  return items.flatMap((item) => wrapped(item, '  - '));
}

export function numbered(items: readonly string[]): readonly string[] {
  return items.flatMap((item, index) => wrapped(item, `${`${index + 1}.`.padStart(4)} `));
}
