import type { Vec2 } from '../../numeric/index.js';
import { boxPath, type PageItem, stroke, words } from '../page/page.js';
import { note, poly, ring } from './figure.js';

/** Distances to measure between holes that are known roughly, holes from 0. */
export interface DistancePlanPage {
  readonly holes: readonly Vec2[];
  readonly pairs: readonly (readonly [number, number])[];
  readonly least: number;
}

const EDGE = 10;
const COLUMNS = 4;
const CELL = 7.4;
/** As many as the distances between them are solved for. */
const MOST_HOLES = 40;

/** A table of cells for distances, filled with hole numbers where it is known which to take. */
const cells = (
  pairs: readonly (readonly [number, number] | null)[],
  [x0, top]: Vec2,
  width: number,
): readonly PageItem[] =>
  pairs.flatMap((pair, i): readonly PageItem[] => {
    const rows = Math.ceil(pairs.length / COLUMNS);
    const each = width / COLUMNS;
    const [x, y] = [x0 + Math.floor(i / rows) * each, top - ((i % rows) + 1) * CELL];
    const named = pair === null ? '        –' : `${pair[0] + 1} – ${pair[1] + 1}`;
    return [
      stroke('thin', boxPath({ min: [x, y], max: [x + 15, y + CELL - 1] })),
      words([x + 7.5, y + 2], 3.2, named, { align: 'centre', bold: pair !== null }),
      stroke('frame', boxPath({ min: [x + 16, y], max: [x + each - 3, y + CELL - 1] })),
    ];
  });

/** Room on the part's own page for a few, hole numbers left open. */
export const distanceItems = (min: Vec2, max: Vec2): readonly PageItem[] => {
  const rows = Math.floor((max[1] - min[1] - 6) / CELL);
  return [
    words(
      [min[0], max[1] - 3],
      3,
      'hole – hole, and the distance; holes numbered as you look at the rail',
      {},
    ),
    ...cells(
      Array.from({ length: COLUMNS * rows }, () => null),
      [min[0], max[1] - 5],
      max[0] - min[0],
    ),
  ];
};

/** Pages of their own: rough places of the holes, and the distances to take where those are known already. */
export const distancePages = (
  plan: DistancePlanPage | null,
  width: number,
  height: number,
): readonly TitledItems[] => {
  const top = height - EDGE - 14;
  return [roughPage(width, top), ...(plan === null ? [] : [planPage(plan, width, top)])];
};

interface TitledItems {
  readonly title: string;
  readonly items: readonly PageItem[];
}

const planPage = (plan: DistancePlanPage, width: number, top: number): TitledItems => {
  const [xs, ys] = [plan.holes.map(([x]) => x), plan.holes.map(([, y]) => y)];
  const [low, high]: readonly [Vec2, Vec2] = [
    [Math.min(...xs), Math.min(...ys)],
    [Math.max(...xs), Math.max(...ys)],
  ];
  const room = width - 2 * EDGE - 16;
  const scale = Math.min(room / (high[0] - low[0]), 80 / (high[1] - low[1]));
  const tall = (high[1] - low[1]) * scale;
  const at = ([x, y]: Vec2): Vec2 => [
    width / 2 + (x - (low[0] + high[0]) / 2) * scale,
    top - 6 - tall / 2 + (y - (low[1] + high[1]) / 2) * scale,
  ];
  const under = top - tall - 16;
  return {
    title: 'Distances to measure',
    items: [
      ...plan.pairs.map(([a, b]) => poly('faint', [at(plan.holes[a]!), at(plan.holes[b]!)])),
      ...plan.holes.flatMap((hole, i) => {
        const [x, y] = at(hole);
        return [ring('cut', [x, y], 1.4), note([x + 1.8, y + 1.8], String(i + 1))];
      }),
      words(
        [EDGE, under],
        3.2,
        `These ${plan.pairs.length} watch each other: a slip in any shows by at least ${Math.floor(plan.least * 100)} % in its own. Middle to middle; front to the right.`,
        { room: width - 2 * EDGE },
      ),
      ...cells(plan.pairs, [EDGE, under - 4], width - 2 * EDGE),
    ],
  };
};

/** Numbered holes with a place each, to the nearest centimetre. */
const roughPage = (width: number, top: number): TitledItems => {
  const each = (width - 2 * EDGE) / 2;
  const half = MOST_HOLES / 2;
  return {
    title: 'Where the holes are, roughly',
    items: [
      words(
        [EDGE, top - 3],
        3.2,
        'Number the holes round the rail with chalk. To the nearest centimetre: x from the rear face, y from the centre line,',
      ),
      words(
        [EDGE, top - 8],
        3.2,
        'as they lie on the page with the front up it, left positive. Write them under rough; the worksheet then says which distances to take.',
      ),
      ...Array.from({ length: MOST_HOLES }, (_, i): readonly PageItem[] => {
        const [x, y] = [EDGE + Math.floor(i / half) * each, top - 22 - (i % half) * 10.4];
        return [
          words([x + 6, y + 2.4], 3.6, String(i + 1), { align: 'centre', bold: true }),
          ...['x', 'y'].flatMap((name, k): readonly PageItem[] => {
            const at = x + 12 + k * 38;
            return [
              stroke('frame', boxPath({ min: [at, y], max: [at + 34, y + 7.4] })),
              words([at + 0.8, y + 5.2], 2, name),
            ];
          }),
        ];
      }).flat(),
    ],
  };
};
