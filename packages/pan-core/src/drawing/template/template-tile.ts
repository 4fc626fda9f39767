import { type Path, type PathBox, pathPoints, pointInPath } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { PAPERS, type Paper } from '../page/page.js';
import { cutPaths, type TemplateView } from './template-view.js';

/** Bare edge that printers leave, and bands for words and check bars, mm. */
export const EDGE = 9;
export const HEAD = 17;
export const BAND = 9;
/** Paper laid over paper at each join, mm. */
export const OVERLAP = 12;

/** A page's size and the window of it that a template may use, all mm, page axes. */
export interface Window {
  readonly page: Vec2;
  readonly box: PathBox;
}

export const pageWindow = (paper: Paper, lying: boolean): Window => {
  const [short, long] = PAPERS[paper];
  const page: Vec2 = lying ? [long, short] : [short, long];
  return {
    page,
    box: { min: [EDGE + BAND, EDGE + BAND], max: [page[0] - EDGE, page[1] - EDGE - HEAD] },
  };
};

export const windowSize = ({ box }: Window): Vec2 => [box.max[0] - box.min[0], box.max[1] - box.min[1]];

/** One page's share of a part: `from` is the part's place in the window's lower left corner. */
export interface Tile {
  readonly column: number;
  readonly row: number;
  readonly from: Vec2;
}

export interface Tiling {
  readonly window: Window;
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the top, left to right, those that nothing of the part lies on left out. */
  readonly tiles: readonly Tile[];
}

/** A part's pages, upright or lying, whichever are fewer. */
export const tilePart = (view: TemplateView, paper: Paper): Tiling => {
  const [upright, lying] = [false, true].map((way) => tileWindow(view, pageWindow(paper, way)));
  return lying!.tiles.length < upright!.tiles.length ? lying! : upright!;
};

const tileWindow = (view: TemplateView, window: Window): Tiling => {
  const { size } = view;
  const [w, h] = windowSize(window);
  const columns = sheets(size[0], w);
  const rows = sheets(size[1], h);
  // The part lies in the middle of what its pages cover, so that no edge runs along a window's rim.
  const covered: Vec2 = [w + (columns - 1) * (w - OVERLAP), h + (rows - 1) * (h - OVERLAP)];
  const start: Vec2 = [(size[0] - covered[0]) / 2, (size[1] - covered[1]) / 2];
  const points = cutPaths(view).flatMap((path) => pathPoints(fine(path), 0.01));
  const tiles: Tile[] = [];
  for (let row = rows - 1; row >= 0; row--)
    for (let column = 0; column < columns; column++) {
      const from: Vec2 = [start[0] + column * (w - OVERLAP), start[1] + row * (h - OVERLAP)];
      const to: Vec2 = [from[0] + w, from[1] + h];
      const touched =
        points.some((p) => p[0] >= from[0] && p[0] <= to[0] && p[1] >= from[1] && p[1] <= to[1]) ||
        onMetal(view, [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
      if (touched) tiles.push({ column, row, from });
    }
  return { window, columns, rows, tiles };
};

const onMetal = ({ outline, openings }: TemplateView, p: Vec2): boolean =>
  pointInPath(outline, p) !== 'outside' && openings.every((opening) => pointInPath(opening, p) === 'outside');

const sheets = (length: number, window: number): number =>
  length <= window ? 1 : Math.ceil((length - window) / (window - OVERLAP)) + 1;

/** Straight pieces cut short, so that none crosses a window without a point in it. */
const fine = (path: Path): Path =>
  path.flatMap((piece): Path => {
    if (piece.kind === 'arc') return [piece];
    const n = Math.max(
      1,
      Math.ceil(Math.hypot(piece.to[0] - piece.from[0], piece.to[1] - piece.from[1]) / 2),
    );
    const at = (i: number): Vec2 => [
      piece.from[0] + ((piece.to[0] - piece.from[0]) * i) / n,
      piece.from[1] + ((piece.to[1] - piece.from[1]) * i) / n,
    ];
    return Array.from({ length: n }, (_, i) => ({ kind: 'line', from: at(i), to: at(i + 1) }));
  });
