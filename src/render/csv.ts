/**
 * Rows of cells as RFC 4180 has them: CRLF after each row, quotes around a cell with a comma, a quote or a
 * line end, quotes in it doubled. A cell that a spreadsheet would take for a formula (`=`, `+`, `-`, `@`, a
 * tab or a return first) begins with an apostrophe, which makes it text.
 */
export function csv(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
