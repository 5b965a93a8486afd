// Nested lists of markdown. Wording only.

/** A line of a nested list. */
export interface ListItem {
  readonly line: string;
  readonly under?: readonly ListItem[];
}

/** A line, with what stands under it. */
export const item = (line: string, under: readonly ListItem[] = []): ListItem =>
  under.length === 0 ? { line } : { line, under };

/** Markdown of a nested list. */
export function listLines(items: readonly ListItem[], depth = 0): readonly string[] {
  return items.flatMap(({ line, under = [] }) => [
    `${'  '.repeat(depth)}- ${line}`,
    ...listLines(under, depth + 1),
  ]);
}
