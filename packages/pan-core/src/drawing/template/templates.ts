import type { PathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { SAYINGS } from '../../weld/index.js';
import type { CutPlan } from '../cut-plan.js';
import { oneLine } from '../one-line.js';
import {
  boxPath,
  line,
  type Page,
  type PageItem,
  type PageSet,
  type Paper,
  stroke,
  words,
} from '../page/page.js';
import { trimmed } from '../part-words.js';
import { joins, type MapEntry, mapEntries, mapPicture } from './template-map.js';
import { templateItems } from './template-part.js';
import { CAPTION, type SharedPage, type TemplatePart, type TilePage, templatePlan } from './template-plan.js';
import {
  checkSquareItems,
  crossMark,
  MAP_HEIGHT,
  MAP_WIDTH,
  mapCorner,
  type SheetHead,
  templateSheet,
} from './template-sheet.js';
import { pageWindow, type Window, windowSize } from './template-tile.js';

const MAP_COLUMNS = 3;
const CELL = 46;

/**
 * Every part of a set at full size on pages of paper, seen from outside, with a map of the pages first. Each
 * page carries a 100 mm bar along both axes.
 */
export const templates = (plan: CutPlan, paper: Paper): PageSet => {
  const sheets = templatePlan(plan.parts, paper);
  const upright = pageWindow(paper, false);
  const perMap = mapRooms(upright);
  const maps = Math.max(1, Math.ceil((plan.parts.length - perMap.first) / perMap.later) + 1);
  const entries = mapEntries(sheets, maps + 1);
  const pages = maps + sheets.length;
  const head = (page: number, name: string, about: string): SheetHead => ({
    name,
    about,
    sayings: `${SAYINGS.cut}.`,
    warning: plan.warning,
    page,
    pages,
  });
  const mapPages = Array.from({ length: maps }, (_, i) => {
    const shown =
      i === 0 ? [0, perMap.first] : [perMap.first + (i - 1) * perMap.later, perMap.first + i * perMap.later];
    const about = `${oneLine(plan.title, 100)}. Small pictures, not to scale: which page shows what. Every part is seen from outside, full size on its page.`;
    return mapPage(
      upright,
      entries.slice(shown[0], shown[1]),
      i === 0,
      head(i + 1, 'Templates: page map', about),
    );
  });
  const drawn = sheets.map((sheet, i) =>
    sheet.kind === 'tile'
      ? tilePage(sheet, entries, maps + 1 + i, head)
      : sharedPage(sheet, maps + 1 + i, head),
  );
  return { title: `${plan.title}: templates`, pages: [...mapPages, ...drawn] };
};

type HeadOf = (page: number, name: string, about: string) => SheetHead;

const mapRooms = (window: Window): { readonly first: number; readonly later: number } => {
  const [, h] = windowSize(window);
  return {
    first: MAP_COLUMNS * Math.floor((h - 108) / CELL),
    later: MAP_COLUMNS * Math.floor(h / CELL),
  };
};

const mapPage = (
  window: Window,
  entries: readonly MapEntry[],
  withSquare: boolean,
  head: SheetHead,
): Page => {
  const [w] = windowSize(window);
  const { min, max } = window.box;
  const across = w / MAP_COLUMNS;
  const cells = entries.flatMap((entry, i): PageItem[] => {
    const x = min[0] + (i % MAP_COLUMNS) * across;
    const y = max[1] - (Math.floor(i / MAP_COLUMNS) + 1) * CELL;
    const box: PathBox = { min: [x + 2, y + 10], max: [x + across - 2, y + CELL - 2] };
    return [
      ...mapPicture(entry, box, null),
      words([x + 2, y + 5.5], 3.2, entry.of.part.name, { bold: true, room: across - 4 }),
      words([x + 2, y + 2], 2.8, `${pagesOf(entry)}${handed(entry.of)}, ${entry.of.part.quantity} off`, {
        room: across - 4,
      }),
    ];
  });
  const how = [
    'Print at 100 %, with fitting and centring off.',
    'Measure the square and both bars of a page first:',
    'each must be 100 mm within 0.5 mm.',
    'Pages of one part: cut the page of the lower',
    'number at the broken line, lay it over the next,',
    'crosses on crosses, and tape.',
    'Full line: cut. Long broken blue line: fold.',
    'Short broken green line: mark.',
    'Parts are seen from outside the pan; left and',
    'right hands are the car’s, looking forward.',
    'The drawings for the laser show the oil side:',
    'they are the mirror image of these.',
  ];
  const square: readonly PageItem[] = withSquare
    ? [
        ...checkSquareItems([min[0], min[1] + 2]),
        ...how.map((text, i) => words([min[0] + 106, min[1] + 96 - 5.2 * i], 3.3, text, { room: w - 106 })),
      ]
    : [];
  return templateSheet(window, head, [...cells, ...square]);
};

const handed = ({ view }: TemplatePart): string => (view.hand === null ? '' : `, ${view.hand}`);

const pagesOf = ({ tiles, sharedOn }: MapEntry): string => {
  if (sharedOn !== null) return `page ${sharedOn}`;
  const [first, last] = [tiles[0]?.page ?? 0, tiles[tiles.length - 1]?.page ?? 0];
  return first === last ? `page ${first}` : `pages ${first} to ${last}`;
};

const aboutPart = ({ part }: TemplatePart): string =>
  `${part.quantity} off, ${part.material}, ${trimmed(part.thickness, 2)} mm`;

const tilePage = (
  { of, tiling, tile }: TilePage,
  entries: readonly MapEntry[],
  page: number,
  head: HeadOf,
): Page => {
  const { window } = tiling;
  const { box } = window;
  const shift: Vec2 = [box.min[0] - tile.from[0], box.min[1] - tile.from[1]];
  const entry = entries.find((one) => one.of === of);
  const tiles = entry?.tiles ?? [];
  const shared = joins(tiles, window);
  const crosses = shared
    .filter(({ pages }) => pages.includes(page))
    .flatMap(({ at, pages }) => crossMark([at[0] + shift[0], at[1] + shift[1]], `${pages[0]}/${pages[1]}`));
  const [mx, my] = mapCorner(window);
  const small: PathBox = { min: [mx, my], max: [mx + MAP_WIDTH, my + MAP_HEIGHT - 2] };
  return templateSheet(
    window,
    head(page, `${of.part.name}${handed(of)}`, `${of.view.face} ${aboutPart(of)}`),
    [
      { kind: 'clip', box, items: templateItems(of.view, shift, box) },
      stroke('faint', boxPath(box)),
      ...trimLines(tiles, page, window),
      ...crosses,
    ],
    entry === undefined || tiles.length < 2 ? [] : mapPicture(entry, small, page),
  );
};

/** Broken lines along the middle of each strip that this page shares with a page before it or after it. */
const trimLines = (tiles: MapEntry['tiles'], page: number, window: Window): readonly PageItem[] => {
  const own = tiles.find((one) => one.page === page);
  if (own === undefined) return [];
  const { min, max } = window.box;
  const edges = joins(tiles, window).filter(({ pages }) => pages.includes(page));
  const shift: Vec2 = [min[0] - own.tile.from[0], min[1] - own.tile.from[1]];
  return edges.flatMap(({ at, pages }, i) => {
    if (i > 0 && edges[i - 1]?.pages[0] === pages[0] && edges[i - 1]?.pages[1] === pages[1]) return [];
    const other = tiles.find((one) => one.page === (pages[0] === page ? pages[1] : pages[0]));
    const [x, y] = [at[0] + shift[0], at[1] + shift[1]];
    return other?.tile.row === own.tile.row
      ? [line('trim', [x, min[1]], [x, max[1]])]
      : [line('trim', [min[0], y], [max[0], y])];
  });
};

const sharedPage = ({ window, places }: SharedPage, page: number, head: HeadOf): Page =>
  templateSheet(
    window,
    head(
      page,
      places.length === 1 ? `${places[0]!.of.part.name}${handed(places[0]!.of)}` : 'Small parts',
      'Seen from outside.',
    ),
    [
      stroke('faint', boxPath(window.box)),
      ...places.flatMap(({ of, at }): PageItem[] => {
        const room = Math.max(of.view.size[0], 34);
        return [
          ...templateItems(of.view, at, window.box),
          words([at[0], at[1] - 4], 3, `${of.part.name}${handed(of)}`, { bold: true, room }),
          words([at[0], at[1] - 7.2], 2.5, aboutPart(of), { room }),
          words([at[0], at[1] - CAPTION + 0.6], 2.5, of.view.face, { room }),
        ];
      }),
    ],
  );
