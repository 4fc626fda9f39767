import type { Vec2 } from '../../numeric/index.js';
import { wrapLine } from '../one-line.js';
import { LETTER_WIDTH, line, type PageItem, words } from './page.js';

export const ROW = 3.7;
const SIZE = 2.5;

export interface Column {
  readonly head: string;
  readonly width: number;
  readonly align?: 'left' | 'right';
}

/** A piece of a table's column of pages: its height, and itself from an upper left corner. */
export interface Block {
  readonly height: number;
  readonly draw: (corner: Vec2) => readonly PageItem[];
}

/** How many rows a table with its title and heads holds in a height, mm. */
export const rowsIn = (height: number): number => Math.floor((height - 4.6 - 2) / ROW) - 1;

/** A table cut into blocks, `first` rows in the first one and `most` in each later one, heads above each. */
export const tableBlocks = (
  title: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  first: number,
  most: number,
): readonly Block[] => {
  const blocks: Block[] = [];
  for (let i = 0; i < rows.length; ) {
    const part = rows.slice(i, i + (i === 0 ? first : most));
    const head = i === 0 ? title : `${title}, continued`;
    i += part.length;
    blocks.push({
      height: 4.6 + (part.length + 1) * ROW + 2,
      draw: (corner) => tableItems(corner, head, columns, part),
    });
  }
  return blocks;
};

const tableItems = (
  [x, y]: Vec2,
  title: string,
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
): readonly PageItem[] => {
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  const top = y - 4.6;
  const all = [columns.map((column) => column.head), ...rows];
  return [
    words([x, y - 3.2], 3, title, { bold: true, room: width }),
    ...all.flatMap((row, r): PageItem[] => {
      const foot = top - (r + 1) * ROW;
      let left = x;
      return [
        line(r === 0 ? 'frame' : 'faint', [x, foot], [x + width, foot]),
        ...row.map((text, c): PageItem => {
          const column = columns[c] as Column;
          const right = column.align === 'right';
          const at: Vec2 = [right ? left + column.width - 1 : left + 0.6, foot + 1.05];
          left += column.width;
          return words(at, SIZE, text, {
            room: column.width - 1.6,
            ...(right ? { align: 'right' as const } : {}),
            ...(r === 0 ? { bold: true } : {}),
          });
        }),
      ];
    }),
  ];
};

/** Sentences one after another, each wrapped to a width, as one block. */
export const textBlock = (
  sentences: readonly string[],
  width: number,
  size: number,
  title: string | null = null,
): Block => {
  const lines = sentences.flatMap((sentence) =>
    wrapLine(sentence, Math.floor((width - 2) / (size * LETTER_WIDTH))).map((text, i) =>
      i === 0 ? `• ${text}` : `   ${text}`,
    ),
  );
  const step = 1.28 * size;
  const head = title === null ? 0 : 4;
  return {
    height: head + lines.length * step + 1.5,
    draw: ([x, y]) => [
      ...(title === null ? [] : [words([x, y - 3], 3, title, { bold: true, room: width })]),
      ...lines.map((text, i) => words([x, y - head - (i + 0.85) * step], size, text, { room: width })),
    ],
  };
};
