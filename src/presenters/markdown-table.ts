// Markdown tables whose cells are plain text.

/** A table; a row shorter than the head is filled with empty cells. No lines when there are no rows. */
export function markdownTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  if (rows.length === 0) return [];
  const line = (cells: readonly string[]): string =>
    `| ${head.map((_, index) => cell(cells[index] ?? '')).join(' | ')} |`;
  return [line(head), `|${' --- |'.repeat(head.length)}`, ...rows.map(line), ''];
}

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
