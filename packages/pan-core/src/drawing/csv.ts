/**
 * Rows as comma-separated text (RFC 4180). Words that a spreadsheet would take for a formula are kept
 * words by a leading apostrophe; numbers are written as they are.
 */
export const csv = (rows: readonly (readonly (string | number)[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');

const cell = (value: string | number): string => {
  if (typeof value === 'number') return String(value);
  const word = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(word) ? `"${word.replaceAll('"', '""')}"` : word;
};
