// Plain tables for the test output.

/** Counts of pairs as lines of text: one row per first, one column per second, in the order met. */
export function crossTable(pairs: readonly (readonly [row: string, column: string])[]): string {
  const rows = [...new Set(pairs.map(([row]) => row))].sort();
  const columns = [...new Set(pairs.map(([, column]) => column))].sort();
  const count = (row: string, column: string): string => {
    const number = pairs.filter(([one, other]) => one === row && other === column).length;
    return number === 0 ? '.' : String(number);
  };
  return table([
    ['', ...columns],
    ...rows.map((row) => [row, ...columns.map((column) => count(row, column))]),
  ]);
}

/** Cells aligned in columns. */
export function table(lines: readonly (readonly string[])[]): string {
  const widths = (lines[0] ?? []).map((_, index) =>
    Math.max(...lines.map((line) => (line[index] ?? '').length)),
  );
  return lines
    .map((line) =>
      line
        .map((cell, index) => cell.padEnd(widths[index] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}
