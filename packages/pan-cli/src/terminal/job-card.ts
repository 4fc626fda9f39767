import { columns, hang } from './wrap.js';

/** Columns kept free on the left for a block's label, as on a workshop job card. */
export const MARGIN = 10;

const indented = (line: string): string => (line === '' ? '' : `${' '.repeat(MARGIN)}${line}`);

/** A block of lines beside its label; a label too long for the margin stands on a line of its own. */
export const block = (label: string, lines: readonly string[], mark: (text: string) => string): string[] => {
  if (lines.length === 0) return [];
  if (columns(label) >= MARGIN) return ['', mark(label), ...lines.map(indented)];
  const [first = '', ...rest] = lines;
  return ['', `${mark(label)}${' '.repeat(MARGIN - columns(label))}${first}`, ...rest.map(indented)];
};

/** Text wrapped for a block on a screen `width` wide, behind a lead such as "> ". */
export const blockText = (lead: string, text: string, width: number): string[] =>
  hang(lead, text, width - MARGIN);
