import type { Vec2 } from '../../numeric/index.js';
import { line, type PageItem, words } from '../page/page.js';
import { type BoxCell, boxCell, CELL_HEIGHT } from './worksheet-cells.js';
import type { WorksheetPart, WorksheetRepeat } from './worksheet-key.js';

const INDENT = 9;
const GAP = 1.6;

interface Block {
  readonly height: number;
  readonly items: (at: Vec2, count: number) => readonly PageItem[];
}

const FIELD = /^[^[]*$/;

/** Boxes for one more thing of a list, in lines as wide as the sheet takes. */
const blockOf = ({ rows }: WorksheetPart, list: string, width: number): Block => {
  const room = width - INDENT;
  const lines: { cells: BoxCell[]; width: number }[] = [];
  for (const [i, row] of rows.entries()) {
    if (!row.key.startsWith(`${list}.`) || !FIELD.test(row.key.slice(list.length))) continue;
    const last = lines.at(-1);
    const left = room - (last?.width ?? room);
    const cell = boxCell(row, i + 1, list, row.columns.length > 2 ? 0 : room - 4);
    if (last === undefined || cell.width > left) lines.push({ cells: [cell], width: cell.width });
    else {
      last.cells.push(cell);
      last.width += cell.width;
    }
  }
  return {
    height: lines.length * CELL_HEIGHT + GAP,
    items: ([x, top], count) => [
      line('faint', [x, top], [x + width, top]),
      words([x + 3, top - 8], 4, String(count), { bold: true, align: 'centre' }),
      ...lines.flatMap(({ cells }, k) => {
        let at = x + INDENT;
        return cells.flatMap((cell) => {
          const items = cell.items([at, top - GAP - k * CELL_HEIGHT]);
          at += cell.width;
          return items;
        });
      }),
    ],
  };
};

/** Blocks for the second thing of each list and on, from the top down as far as there is room; and where they end. */
export const repeatItems = (
  part: WorksheetPart,
  repeats: readonly (WorksheetRepeat & { readonly first: number })[],
  [x, top]: Vec2,
  width: number,
  foot: number,
): { readonly items: readonly PageItem[]; readonly foot: number; readonly drawn: readonly number[] } => {
  const items: PageItem[] = [];
  const drawn: number[] = [];
  let at = top;
  for (const { head, list, times, first } of repeats) {
    const block = blockOf(part, list, width);
    const fit = Math.floor((at - foot - HEAD) / block.height);
    const count = Math.max(0, Math.min(times, fit));
    drawn.push(count);
    if (count === 0) continue;
    items.push(words([x, at - 3.4], 2.7, `${head}: numbered as in the drawing`, { bold: true }));
    at -= HEAD;
    for (let i = 0; i < count; i++) {
      items.push(...block.items([x, at], first + i));
      at -= block.height;
    }
  }
  return { items, foot: at, drawn };
};

const HEAD = 5;
