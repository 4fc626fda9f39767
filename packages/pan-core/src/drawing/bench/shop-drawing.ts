import type { PathBox } from '../../geometry/index.js';
import { pathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Part } from '../../sheet/index.js';
import { processNumbers, SAYINGS, type Seam } from '../../weld/index.js';
import { BAR, fullSizeBars } from '../check-bar.js';
import { type CutPlan, materialCautions, type NamedPart } from '../cut-plan.js';
import { oneLine, wrapLine } from '../one-line.js';
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
import { scaleWords } from '../page/scale.js';
import { type Block, rowsIn, tableBlocks, textBlock } from '../page/table.js';
import { massWords, partWords, trimmed } from '../part-words.js';
import { seamsOf, touches } from './part-seams.js';
import { COLUMN, columnLine, EDGE, GAP, sheetFrame } from './sheet-frame.js';
import { numberedHoles, shopView, viewScale } from './shop-view.js';
import { runWords, SYMBOL_HEIGHT, SYMBOL_WIDTH, weldSymbol } from './weld-symbol.js';

const TITLE_HEIGHT = 47;
/** Of a table in any column, the title's one too. */
const MOST_ROWS = 30;

/** A part's drawing for the bench: view with dimensions, folds, holes, seams, notes and cautions. */
export const shopDrawing = (plan: CutPlan, named: NamedPart, paper: Paper): PageSet => {
  const [height, width] = PAPERS[paper];
  const { part } = named;
  const right = width - EDGE - COLUMN;
  const feet = [false, true].map((full) =>
    textBlock(footSentences(part, full), width - 2 * EDGE - COLUMN - GAP, 2.2),
  );
  const footHeight = Math.max(...feet.map((one) => one.height));
  const wide: PathBox = {
    min: [EDGE + 1, EDGE + footHeight + GAP],
    max: [right - GAP, height - EDGE - (plan.warning === null ? 2 : 8)],
  };
  // A view at full size makes room for the bars that prove it.
  const room: PathBox =
    scaleIn(part, wide) === 1 ? { ...wide, min: [wide.min[0] + BAR, wide.min[1] + BAR] } : wide;
  const scale = scaleIn(part, room);
  const foot = feet[scale === 1 ? 1 : 0] as Block;
  const seams = seamsOf(plan, part);
  const view = shopView(part, seams, room);
  const columnRoom = height - 2 * EDGE - TITLE_HEIGHT - GAP;
  const above = [...foldTable(part), ...seamBlocks(part, seams, view.missing)];
  const left = rowsIn(columnRoom - above.reduce((sum, block) => sum + block.height, 0));
  const blocks = [...above, ...holeTable(part, left)];
  const { first, rest } = fill(blocks, columnRoom);
  const later = pagesOf(rest, width, height);
  const pages = 1 + later.length;
  const sheet: Page = {
    width,
    height,
    items: [
      ...sheetFrame(width, height),
      columnLine(width, height),
      line('frame', [EDGE, EDGE + footHeight + 1], [right - GAP / 2, EDGE + footHeight + 1]),
      ...(scale === 1 ? fullSizeBars(room, right - GAP) : []),
      ...view.items,
      ...foot.draw([EDGE + 2, EDGE + footHeight]),
      ...stack(first, [right, height - EDGE - 1]),
      ...titleBlock(plan, named, [right - GAP / 2, EDGE], scaleWords(scale), 1, pages),
      ...warningItems(plan, [EDGE + 3, height - EDGE - 5.4], right - EDGE - 8),
    ],
  };
  const more = later.map(
    (columns, i): Page => ({
      width,
      height,
      items: [
        ...sheetFrame(width, height),
        ...columns.flatMap((column, c) => stack(column, [EDGE + 4 + c * (COLUMN + 8), height - EDGE - 9])),
        ...titleBlock(plan, named, [right - GAP / 2, EDGE], '–', i + 2, pages),
        ...warningItems(plan, [EDGE + 4, height - EDGE - 5.4], width - 2 * EDGE - 8),
      ],
    }),
  );
  return { title: `${plan.title}: ${oneLine(part.name, 60)}`, pages: [sheet, ...more] };
};

const scaleIn = (part: Part, { min, max }: PathBox): number =>
  viewScale(part, [max[0] - min[0], max[1] - min[1]]);

const warningItems = ({ warning }: CutPlan, at: Vec2, room: number): readonly PageItem[] =>
  warning === null ? [] : [words(at, 3.6, warning, { bold: true, room })];

/** The part's own notes first, then what every drawing says. */
const footSentences = (part: Part, full: boolean): readonly string[] => [
  `${full ? 'Full size where both bars are 100 mm' : 'Not full size: do not measure on the paper'}. Dimensions in mm from the lower left corner of the blank; the DXF rules.`,
  ...part.notes.map((note) => oneLine(note, 400)),
  ...(part.folds.length > 0
    ? ['Fold places are the middle of the bend; bend a test strip of the same sheet first.']
    : []),
  `${SAYINGS.cut}.`,
  ...materialCautions(part.material),
];

const foldTable = (part: Part): readonly Block[] => {
  const [x, y] = pathBox(part.outline).min;
  const at = (p: Vec2): string => `${(p[0] - x).toFixed(1)}, ${(p[1] - y).toFixed(1)}`;
  return tableBlocks(
    'Folds',
    [
      { head: 'No.', width: 7 },
      { head: 'Fold', width: 16 },
      { head: 'Way', width: 9 },
      { head: 'Angle', width: 10, align: 'right' },
      { head: 'R in', width: 8, align: 'right' },
      { head: 'Zone', width: 9, align: 'right' },
      { head: 'Line from, to', width: 23 },
    ],
    part.folds.map((fold, i) => [
      `F${i + 1}`,
      oneLine(fold.name, 30),
      fold.direction,
      `${((fold.angle * 180) / Math.PI).toFixed(1)}°`,
      trimmed(fold.radius, 2),
      fold.allowance.toFixed(2),
      `${at(fold.from)} – ${at(fold.to)}`,
    ]),
    MOST_ROWS,
    MOST_ROWS,
  );
};

/** Begins where `left` rows are still free, unless those are too few to be worth it. */
const holeTable = (part: Part, left: number): readonly Block[] => {
  const [x, y] = pathBox(part.outline).min;
  return tableBlocks(
    'Holes',
    [
      { head: 'No.', width: 8 },
      { head: 'x', width: 14, align: 'right' },
      { head: 'y', width: 14, align: 'right' },
      { head: 'Ø', width: 11, align: 'right' },
      { head: 'What', width: 35 },
    ],
    numberedHoles(part).map((hole, i) => [
      String(i + 1),
      (hole.at[0] - x).toFixed(1),
      (hole.at[1] - y).toFixed(1),
      trimmed(hole.diameter, 2),
      oneLine(i < part.holes.length ? hole.what : `after welding: ${hole.what}`, 40),
    ]),
    left < 3 ? MOST_ROWS : left,
    MOST_ROWS,
  );
};

/** A picture of each joint with its symbol, by the numbers that the view's own symbols carry in their tails. */
const seamBlocks = (part: Part, seams: readonly Seam[], missing: readonly number[]): readonly Block[] => {
  const process = processNumbers(part.material);
  const tail = process === null ? '' : `${process.TIG}/${process.MIG}`;
  const others = seams.map((seam) => seam.between.find((name) => !touches(part, name)) ?? null);
  return seams.map((seam, i): Block => {
    const other = others[i] ?? null;
    // Of several seams to one part, and of a part folded round to itself, only the faces tell which is which.
    const told =
      other !== null && (seam.step !== 'shell' || others.indexOf(other) === others.lastIndexOf(other));
    const head = `S${seam.number} ${told ? `to ${other}` : seam.name}${missing.includes(seam.number) ? ', no arrow' : ''}`;
    const text = [
      `${seam.joint}, ${seam.side}, ${seam.length.toFixed(0)} mm, root gap ${trimmed(seam.prep.gap, 1)}`,
      seam.prep.TIG,
      ...(seam.run === 'stitch' ? [`stitched ${runWords(seam)}`] : []),
      ...(seam.closedBy === null ? [] : [`closed off by ${oneLine(seam.closedBy, 60)}`]),
    ];
    const title = i === 0 ? 4.6 : 0;
    return {
      height: title + Math.max(SYMBOL_HEIGHT + 1, 4 + 2.7 * text.length),
      draw: ([x, y]) => [
        ...(i === 0 ? [words([x, y - 3.2], 3, 'Seams (ISO 2553, system A)', { bold: true })] : []),
        ...weldSymbol(seam, tail, [x, y - title - SYMBOL_HEIGHT]),
        words([x + SYMBOL_WIDTH + 1.5, y - title - 3], 2.6, oneLine(head, 60), {
          bold: true,
          room: COLUMN - SYMBOL_WIDTH - 3,
        }),
        ...text.map((t, k) =>
          words([x + SYMBOL_WIDTH + 1.5, y - title - 5.9 - 2.7 * k], 2.3, t, {
            room: COLUMN - SYMBOL_WIDTH - 3,
          }),
        ),
      ],
    };
  });
};

/** As many blocks as a column holds, and the rest. */
const fill = (
  blocks: readonly Block[],
  room: number,
): { readonly first: readonly Block[]; readonly rest: readonly Block[] } => {
  let used = 0;
  const over = blocks.findIndex((block) => {
    used += block.height;
    return used > room;
  });
  return over < 0 ? { first: blocks, rest: [] } : { first: blocks.slice(0, over), rest: blocks.slice(over) };
};

/** What the first page does not hold, in columns; the last column of a page is shorter by the title. */
const pagesOf = (
  blocks: readonly Block[],
  width: number,
  height: number,
): readonly (readonly (readonly Block[])[])[] => {
  const pages: (readonly Block[])[][] = [];
  const columns = Math.floor((width - 2 * EDGE) / (COLUMN + 8));
  let rest = blocks;
  while (rest.length > 0) {
    const page: (readonly Block[])[] = [];
    for (let c = 0; c < columns && rest.length > 0; c++) {
      const room = height - 2 * EDGE - 12 - (c === columns - 1 ? TITLE_HEIGHT : 0);
      const next = fill(rest, room);
      page.push(next.first);
      rest = next.rest;
    }
    if (page.every((column) => column.length === 0)) break;
    pages.push(page);
  }
  return pages;
};

const stack = (blocks: readonly Block[], [x, top]: Vec2): readonly PageItem[] => {
  let y = top;
  return blocks.flatMap((block) => {
    const items = block.draw([x, y]);
    y -= block.height;
    return items;
  });
};

const titleBlock = (
  plan: CutPlan,
  { part, file }: NamedPart,
  [x, y]: Vec2,
  scale: string,
  page: number,
  pages: number,
): readonly PageItem[] => {
  const width = COLUMN + GAP / 2;
  const top = y + TITLE_HEIGHT;
  const what = wrapLine(oneLine(part.what, 200), Math.floor((width - 4) / (2.4 * LETTER_WIDTH))).slice(0, 2);
  const face = partWords(part)[2] ?? '';
  const cells: readonly (readonly [number, number, string, string])[] = [
    [0, 22, 'Material', part.material],
    [48, 22, 'Thickness', `${trimmed(part.thickness, 2)} mm`],
    [68, 22, 'Quantity', String(part.quantity)],
    [0, 14, 'Blank', `${part.flat[0].toFixed(1)} × ${part.flat[1].toFixed(1)} mm`],
    [34, 14, 'Mass each', massWords(part.mass)],
    [54, 14, 'Scale', scale],
    [68, 14, 'Page', `${page} of ${pages}`],
  ];
  return [
    { kind: 'fill', shade: 'paper', path: boxPath({ min: [x, y], max: [x + width, top] }) },
    stroke('frame', boxPath({ min: [x, y], max: [x + width, top] })),
    words([x + 2, top - 6], 5, oneLine(part.name, 60), { bold: true, room: width - 4 }),
    ...what.map((text, i) => words([x + 2, top - 10 - 3 * i], 2.4, text, { room: width - 4 })),
    ...[30, 22, 14, 6].map((v) => line('thin', [x, y + v], [x + width, y + v])),
    words([x + 2, y + 25], 2.6, face, { room: width - 4 }),
    ...cells.flatMap(([u, v, head, text]): PageItem[] => {
      const next = Math.min(width, ...cells.filter((c) => c[1] === v && c[0] > u).map((c) => c[0]));
      return [
        ...(u === 0 ? [] : [line('thin', [x + u, y + v], [x + u, y + v - 8])]),
        words([x + u + 2, y + v - 2.6], 1.9, head),
        words([x + u + 2, y + v - 6.6], 3, text, { room: next - u - 3 }),
      ];
    }),
    words([x + 2, y + 2], 2.4, `${plan.title}; 2-laser/${file}.dxf`, { room: width - 4 }),
  ];
};
