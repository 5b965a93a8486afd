// Rows for spreadsheets (RFC 4180, UTF-8).

/** One row with its line end. A text that a spreadsheet would take for a formula gets an apostrophe before it. */
export function csvRow(cells: readonly (string | number)[]): string {
  return `${cells.map(cell).join(',')}\r\n`;
}

function cell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const text = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
