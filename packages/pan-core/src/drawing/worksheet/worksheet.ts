import type { Vec2 } from '../../numeric/index.js';
import { wrapLine } from '../one-line.js';
import {
  boxPath,
  LETTER_WIDTH,
  line,
  PAPERS,
  type Page,
  type PageItem,
  type PageSet,
  type Paper,
  stroke,
  words,
} from '../page/page.js';
import { CANVAS, moved } from './figure.js';
import { entryTable, tableHeight } from './worksheet-cells.js';
import type { DistancePlanPage } from './worksheet-distances.js';
import { distanceItems, distancePages } from './worksheet-distances.js';
import { worksheetFigure } from './worksheet-figures.js';
import { type WorksheetPart, type WorksheetRow, worksheetParts } from './worksheet-key.js';
import { repeatItems } from './worksheet-repeats.js';

const EDGE = 10;
const ROW = 13.6;
const BOX_HEIGHT = 8;

/** How the worksheet is laid out. */
export interface WorksheetOptions {
  readonly paper: Paper;
  readonly units: 'mm' | 'in';
  /** What it is for; empty where nobody said. */
  readonly title: string;
  /** Distances to measure, where the holes are known roughly. */
  readonly plan: DistancePlanPage | null;
}

/** Pages for the garage: what to measure, from where, how well, with a drawing of each and boxes to fill in. */
export const worksheet = ({ paper, units, title, plan }: WorksheetOptions): PageSet => {
  const [width, height] = PAPERS[paper];
  const parts = worksheetParts(units);
  const bodies = parts.flatMap((part): readonly Body[] => {
    const first = partBody(part, width, height);
    if (part.id === 'distances') return [first, ...distancePages(plan, width, height)];
    return part.continued === null
      ? [first]
      : [first, furtherBody(part, part.continued, first, width, height)];
  });
  const pages = bodies.map(
    ({ title: name, items }, i): Page => ({
      width,
      height,
      items: [...items, ...head(name, title, i + 1, bodies.length, width, height)],
    }),
  );
  return { title: title === '' ? 'Worksheet' : `${title}: worksheet`, pages };
};

export interface Body {
  readonly title: string;
  readonly items: readonly PageItem[];
  /** How many further things of each list have boxes on it. */
  readonly drawn?: readonly number[];
}

const head = (
  name: string,
  title: string,
  page: number,
  pages: number,
  width: number,
  height: number,
): readonly PageItem[] => [
  words([EDGE, height - EDGE - 5], 6, name, { bold: true, room: width - 2 * EDGE - 44 }),
  words([width - EDGE, height - EDGE - 3.6], 3, `page ${page} of ${pages}`, { align: 'right' }),
  words([width - EDGE, height - EDGE - 8], 3, title === '' ? 'engine, date:' : title, {
    align: 'right',
    room: 60,
  }),
  line('frame', [EDGE, height - EDGE - 10], [width - EDGE, height - EDGE - 10]),
];

const partBody = (part: WorksheetPart, width: number, height: number): Body => {
  const top = height - EDGE - 14;
  const canvas: Vec2 = [(width - CANVAS[0]) / 2, top - CANVAS[1]];
  const keys = part.rows.map(({ key }) => key);
  const rows = part.rows.flatMap((row, i) => rowItems(row, i + 1, top - CANVAS[1] - 6 - i * ROW, width));
  const under = top - CANVAS[1] - 6 - part.rows.length * ROW;
  const letters = Math.floor((width - 2 * EDGE) / (3.4 * LETTER_WIDTH));
  const notes = part.notes
    .flatMap((text) => wrapLine(text, letters))
    .map((text, i) => words([EDGE, under - 5 - i * 5], 3.4, text));
  const tables = tableItems(part, under - 4 - notes.length * 5, width);
  const repeats = repeatItems(
    part,
    part.repeats.map((one) => ({ ...one, first: 2 })),
    [EDGE, tables.foot],
    width - 2 * EDGE,
    EDGE,
  );
  const left = repeats.foot - 2;
  const sketch =
    part.id === 'distances' || left < EDGE + 24
      ? []
      : [
          stroke('faint', boxPath({ min: [EDGE, EDGE], max: [width - EDGE, left] })),
          words([EDGE + 2, left - 4], 2.7, 'sketches and second tries'),
        ];
  const more = part.id === 'distances' ? distanceItems([EDGE, EDGE], [width - EDGE, under - 4]) : [];
  return {
    title: part.title,
    drawn: repeats.drawn,
    items: [
      ...moved(worksheetFigure(part.id, keys), canvas),
      ...rows,
      ...notes,
      ...tables.items,
      ...repeats.items,
      ...sketch,
      ...more,
    ],
  };
};

/** Lists of numbers, each a table under the rows. */
const tableItems = (
  { id, rows }: WorksheetPart,
  top: number,
  width: number,
): { readonly items: readonly PageItem[]; readonly foot: number } => {
  const items: PageItem[] = [];
  let foot = top;
  for (const [i, row] of rows.entries()) {
    if (row.columns.length === 0 || id === 'distances') continue;
    const lines = id === 'shapes' ? 2 : 1;
    items.push(...entryTable(row, i + 1, [EDGE, foot], width - 2 * EDGE, lines));
    foot -= tableHeight(lines);
  }
  return { items, foot: foot - (items.length > 0 ? 2 : 0) };
};

/** A page of nothing but further things, numbered on from those of the part's own page. */
const furtherBody = (
  part: WorksheetPart,
  title: string,
  first: Body,
  width: number,
  height: number,
): Body => {
  const repeats = part.repeats.map((one, i) => ({ ...one, first: 2 + (first.drawn?.[i] ?? 0) }));
  const top = height - EDGE - 14;
  return { title, items: repeatItems(part, repeats, [EDGE, top], width - 2 * EDGE, EDGE).items };
};

const BOXES_WIDTH = 88;

const rowItems = (row: WorksheetRow, number: number, top: number, width: number): readonly PageItem[] => {
  const left = EDGE + 9;
  const room = width - EDGE - BOXES_WIDTH - left - 4;
  const about = `${row.about.charAt(0).toUpperCase()}${row.about.slice(1)}`;
  const [first = '', ...rest] = wrapLine(about, Math.floor(room / (3.1 * LETTER_WIDTH)));
  const second = rest.join(' ');
  return [
    line('faint', [EDGE, top], [width - EDGE, top]),
    words([EDGE + 3, top - 6.5], 4.4, String(number), { bold: true, align: 'centre' }),
    words([left, top - 4], 3.1, first, { bold: true, room }),
    ...(second === '' ? [] : [words([left, top - 7.2], 3.1, second, { bold: true, room })]),
    words(
      [left, top - (second === '' ? 7.6 : 10.3)],
      2.7,
      /^\d/.test(row.within) ? `${row.from}; within ${row.within}` : row.from,
      { room },
    ),
    words(
      [left, top - (second === '' ? 10.8 : 12.9)],
      2.1,
      `${row.key}${row.required ? '' : leftEmpty(row)}`,
      { room },
    ),
    ...boxItems(row, width - EDGE - BOXES_WIDTH, top - 2.6),
  ];
};

const leftEmpty = ({ assumed, mayBeUnknown }: WorksheetRow): string =>
  assumed !== null ? `   (left empty: ${assumed})` : mayBeUnknown ? '   (left empty: unknown)' : '';

const boxItems = ({ key, boxes, tick }: WorksheetRow, x: number, top: number): readonly PageItem[] => {
  const bottom = top - BOX_HEIGHT;
  if (boxes.length === 0)
    return [
      words(
        [x, bottom + 3],
        2.7,
        key.endsWith('rough') ? 'in the table of the next page' : 'in the table below',
      ),
    ];
  const each = BOXES_WIDTH / boxes.length;
  return boxes.flatMap((name, i): readonly PageItem[] => {
    const at = x + i * each;
    if (tick)
      return [
        stroke('frame', boxPath({ min: [at, bottom + 2], max: [at + 4.5, bottom + 6.5] })),
        words([at + 6, bottom + 3], 3, name, { room: each - 7 }),
      ];
    const wide = boxes.length === 1 && name !== 'words' ? 44 : each - 1.5;
    return [
      stroke('frame', boxPath({ min: [at, bottom], max: [at + wide, top] })),
      ...(name === '' || name === 'words' ? [] : boxName(name, boxes.length === 1, [at, bottom], wide)),
    ];
  });
};

const boxName = (name: string, alone: boolean, [x, y]: Vec2, wide: number): readonly PageItem[] =>
  alone
    ? [words([x + wide + 2, y + 3], 3.2, name)]
    : [words([x + 0.8, y + BOX_HEIGHT - 2.4], 2, name, { room: wide - 1.5 })];
