import { columns, wrap } from './wrap.js';

export interface Cell {
  readonly text: string;
  /** Applied after the cell is padded, so that colour never moves a column. */
  readonly tone?: (text: string) => string;
}

export interface Column {
  readonly width: number;
  readonly right?: boolean;
}

const GAP = 2;

const padded = (text: string, { width, right }: Column): string => {
  const space = ' '.repeat(Math.max(0, width - columns(text)));
  return right === true ? space + text : text + space;
};

/** The width columns take with the gaps between them. */
export const tableWidth = (shape: readonly Column[]): number =>
  shape.reduce((sum, { width }) => sum + width, GAP * (shape.length - 1));

/** One row without boxes: each cell wraps inside its own column. */
export const row = (cells: readonly Cell[], shape: readonly Column[]): string[] => {
  const wrapped = cells.map((cell, i) => wrap(cell.text, shape[i]?.width ?? 1));
  const height = Math.max(1, ...wrapped.map((lines) => lines.length));
  return Array.from({ length: height }, (_, y) =>
    cells
      .map((cell, i) => {
        const text = padded(wrapped[i]?.[y] ?? '', shape[i] ?? { width: 1 });
        return cell.tone === undefined ? text : cell.tone(text);
      })
      .join(' '.repeat(GAP))
      .trimEnd(),
  );
};
