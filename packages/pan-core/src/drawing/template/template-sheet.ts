import { circlePath } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { checkBar } from '../check-bar.js';
import { CHECK_SQUARE } from '../dxf/dxf-part.js';
import { boxPath, line, type Page, type PageItem, stroke, words } from '../page/page.js';
import { EDGE, HEAD, type Window } from './template-tile.js';

/** What the head of a template's page says. */
export interface SheetHead {
  readonly name: string;
  readonly about: string;
  readonly sayings: string;
  readonly warning: string | null;
  readonly page: number;
  readonly pages: number;
}

/** A page with its head, two check bars and a window; the head's right end is left free for a small map. */
export const templateSheet = (
  window: Window,
  head: SheetHead,
  body: readonly PageItem[],
  map: readonly PageItem[] = [],
): Page => {
  const [width, height] = window.page;
  const top = height - EDGE;
  const room = width - 2 * EDGE - MAP_WIDTH - 3;
  return {
    width,
    height,
    items: [
      ...body,
      ...checkBars(window),
      words([EDGE, top - 4.6], 5, head.name, { bold: true, room }),
      words([EDGE, top - 8.8], 3, head.about, { room }),
      words([EDGE, top - 12.2], 2.8, head.sayings, { room }),
      ...(head.warning === null ? [] : [words([EDGE, top - 15.8], 3.2, head.warning, { room, bold: true })]),
      words([width - EDGE - MAP_WIDTH, top - 4.2], 3.2, `page ${head.page} of ${head.pages}`, { bold: true }),
      ...map,
    ],
  };
};

/** Room for a small map at a head's right end, mm. */
export const MAP_WIDTH = 30;
export const MAP_HEIGHT = HEAD - 7;

/** Where a sheet's small map goes: lower left corner. */
export const mapCorner = ({ page }: Window): Vec2 => [
  page[0] - EDGE - MAP_WIDTH,
  page[1] - EDGE - HEAD + 1.5,
];

/** A bar along each axis outside the window, ends as fine cross lines 100 mm apart. */
const checkBars = ({ box, page }: Window): readonly PageItem[] => {
  const [x, y] = [box.min[0], EDGE + 2.5];
  const [u, v] = [EDGE + 2.5, box.min[1]];
  const text = `${CHECK_SQUARE} mm: measure both bars; print at 100 %, no fitting`;
  return [
    ...checkBar([x, y], 'level'),
    words([x + CHECK_SQUARE + 3, y - 1], 2.8, text, { room: page[0] - EDGE - x - CHECK_SQUARE - 4 }),
    ...checkBar([u, v], 'upright'),
    words([u + 1, v + CHECK_SQUARE + 3], 2.8, `${CHECK_SQUARE} mm`, { turned: Math.PI / 2 }),
  ];
};

/** A square of 100 mm to measure, its ends as fine cross lines. */
export const checkSquareItems = ([x, y]: Vec2): readonly PageItem[] => [
  stroke('frame', boxPath({ min: [x, y], max: [x + CHECK_SQUARE, y + CHECK_SQUARE] })),
  words([x + 4, y + 4], 3, `${CHECK_SQUARE} mm check square: measure it both ways`),
];

const CROSS = 4;

/** A join's mark: a ring with cross hairs and the two pages that share it. */
export const crossMark = ([x, y]: Vec2, label: string): readonly PageItem[] => [
  line('thin', [x - CROSS, y], [x + CROSS, y]),
  line('thin', [x, y - CROSS], [x, y + CROSS]),
  stroke('thin', circlePath([x, y], 2)),
  words([x + 1.2, y + 2.2], 2.4, label),
];
