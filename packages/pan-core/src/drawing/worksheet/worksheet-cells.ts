import type { Vec2 } from '../../numeric/index.js';
import { boxPath, LETTER_WIDTH, type PageItem, stroke, words } from '../page/page.js';
import type { WorksheetRow } from './worksheet-key.js';

/** Boxes of one row in little room, under its number and its key. */
export interface BoxCell {
  readonly width: number;
  readonly items: (at: Vec2) => readonly PageItem[];
}

const LABEL = 3;
const TALL = 6.6;
/** Height of a line of such cells. */
export const CELL_HEIGHT = LABEL + TALL + 1.4;
const INDEX = 4;
const LETTERS = 2.3;

const boxWidth = (name: string): number => (name === 'words' ? 46 : name.length > 4 ? 15.5 : 13.4);

const emptyBox = ([x, top]: Vec2, width: number, name: string): readonly PageItem[] => [
  stroke('frame', boxPath({ min: [x, top - TALL], max: [x + width - 1, top] })),
  ...(name === '' || name === 'words' ? [] : [words([x + 0.7, top - 2], 1.9, name, { room: width - 2 })]),
];

const tickBox = ([x, top]: Vec2, name: string): readonly PageItem[] => [
  stroke('frame', boxPath({ min: [x, top - 5.2], max: [x + 3.8, top - 1.4] })),
  words([x + 4.8, top - 4.6], 2.7, name),
];

const tickWidth = (name: string): number => 7 + name.length * 2.7 * LETTER_WIDTH;

const label = (row: WorksheetRow, number: number, list: string): string =>
  `${number}  ${row.key.slice(list.length).replace(/^\./, '').replaceAll('_', ' ').replaceAll('.', ' ')}`;

/** The boxes side by side; a list gets as many entries as the given room takes. */
export const boxCell = (row: WorksheetRow, number: number, list: string, room: number): BoxCell => {
  const name = label(row, number, list);
  const { boxes, tick, columns } = row;
  const entry = columns.reduce((sum, one) => sum + boxWidth(one), INDEX);
  const entries = boxes.length > 0 ? 0 : Math.max(1, Math.floor(room / entry));
  const widths = boxes.map((one) =>
    tick ? tickWidth(one) : boxes.length === 1 ? Math.max(22, boxWidth(one)) : boxWidth(one),
  );
  const inside = boxes.length > 0 ? widths.reduce((sum, one) => sum + one, 0) : entries * entry;
  return {
    width: Math.max(inside, name.length * LETTERS * LETTER_WIDTH) + 2.5,
    items: ([x, top]) => [
      words([x, top - LABEL + 0.8], LETTERS, name),
      ...boxes.flatMap((one, i) => {
        const at: Vec2 = [x + widths.slice(0, i).reduce((sum, w) => sum + w, 0), top - LABEL];
        return tick ? tickBox(at, one) : emptyBox(at, widths[i] ?? 0, one);
      }),
      ...Array.from({ length: entries }, (_, i) =>
        entryItems(columns, String(i + 1), [x + i * entry, top - LABEL]),
      ).flat(),
    ],
  };
};

const entryItems = (columns: readonly string[], index: string, [x, top]: Vec2): readonly PageItem[] => [
  words([x + INDEX - 1, top - 4.6], 2.5, index, { align: 'right', bold: true }),
  ...columns.flatMap((one, i) => {
    const before = columns.slice(0, i).reduce((sum, w) => sum + boxWidth(w), INDEX);
    return emptyBox([x + before, top], boxWidth(one), one);
  }),
];

/** A list of points or of pairs: entries in lines across the sheet, as many lines as there are. */
export const entryTable = (
  row: WorksheetRow,
  number: number,
  [x, top]: Vec2,
  room: number,
  lines: number,
): readonly PageItem[] => {
  const entry = row.columns.reduce((sum, one) => sum + boxWidth(one), INDEX);
  const across = Math.max(1, Math.floor(room / entry));
  return [
    words([x, top - LABEL + 0.8], 2.7, `${number}  ${row.about}`, { bold: true, room }),
    ...Array.from({ length: across * lines }, (_, i) =>
      entryItems(row.columns, String(i + 1), [
        x + (i % across) * entry,
        top - LABEL - 1 - Math.floor(i / across) * (TALL + 1),
      ]),
    ).flat(),
  ];
};

/** How tall a table of so many lines is. */
export const tableHeight = (lines: number): number => LABEL + 2 + lines * (TALL + 1);
