// A small reader for comma-separated values with quotes: rows as records by column name.

export type CsvRow = Readonly<Record<string, string>>;

/** Text with a header line → one record a line; a missing cell is ''. Quoted cells may hold commas and line ends. */
export function readCsv(text: string): CsvRow[] {
  const [header = [], ...lines] = readLines(text);
  return lines.map((cells) => Object.fromEntries(header.map((name, index) => [name, cells[index] ?? ''])));
}

const cell = /(?:"((?:[^"]|"")*)"|([^,\r\n]*))(,|\r?\n|$)/g;

function readLines(text: string): string[][] {
  const lines: string[][] = [];
  let current: string[] = [];
  for (const [whole, quoted, plain, end] of text.matchAll(cell)) {
    if (whole === '' && current.length === 0) break;
    current.push(quoted === undefined ? (plain ?? '') : quoted.replaceAll('""', '"'));
    if (end !== ',') {
      lines.push(current);
      current = [];
    }
  }
  return lines;
}
