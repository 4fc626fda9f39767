import { circlePath, type PathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { boxPath, type PageItem, stroke, words } from '../page/page.js';
import { scaled } from '../page/scale.js';
import type { SharedPage, TemplatePart, TilePage } from './template-plan.js';
import { type Window, windowSize } from './template-tile.js';
import { cutPaths } from './template-view.js';

/** A part on the page map: its pages if it is tiled, or the page it shares. */
export interface MapEntry {
  readonly of: TemplatePart;
  readonly tiles: readonly (TilePage & { readonly page: number })[];
  readonly sharedOn: number | null;
}

/** One entry a part, in the order of its pages. */
export const mapEntries = (pages: readonly (TilePage | SharedPage)[], first: number): readonly MapEntry[] => {
  const entries = new Map<TemplatePart, MapEntry>();
  pages.forEach((sheet, i) => {
    const page = first + i;
    if (sheet.kind === 'shared') {
      for (const { of } of sheet.places) entries.set(of, { of, tiles: [], sharedOn: page });
      return;
    }
    const tiles = entries.get(sheet.of)?.tiles ?? [];
    entries.set(sheet.of, { of: sheet.of, tiles: [...tiles, { ...sheet, page }], sharedOn: null });
  });
  return [...entries.values()];
};

/** A part made small to fit a box, with its pages over it. */
export const mapPicture = (entry: MapEntry, box: PathBox, highlight: number | null): readonly PageItem[] => {
  const { view } = entry.of;
  const boxes = entry.tiles.map(({ tile, tiling, page }) => {
    const [w, h] = windowSize(tiling.window);
    return { page, min: tile.from, max: [tile.from[0] + w, tile.from[1] + h] as Vec2 };
  });
  const low: Vec2 = [Math.min(0, ...boxes.map((b) => b.min[0])), Math.min(0, ...boxes.map((b) => b.min[1]))];
  const high: Vec2 = [
    Math.max(view.size[0], ...boxes.map((b) => b.max[0])),
    Math.max(view.size[1], ...boxes.map((b) => b.max[1])),
  ];
  const room: Vec2 = [box.max[0] - box.min[0], box.max[1] - box.min[1]];
  const scale = Math.min(room[0] / (high[0] - low[0]), room[1] / (high[1] - low[1]));
  const start: Vec2 = [
    box.min[0] + (room[0] - scale * (high[0] - low[0])) / 2,
    box.min[1] + (room[1] - scale * (high[1] - low[1])) / 2,
  ];
  const at = (p: Vec2): Vec2 => [start[0] + scale * (p[0] - low[0]), start[1] + scale * (p[1] - low[1])];
  const middle = (b: PathBox): Vec2 => at([(b.min[0] + b.max[0]) / 2, (b.min[1] + b.max[1]) / 2]);
  const below = ([x, y]: Vec2): Vec2 => [x, y - 1.3];
  const small = highlight !== null;
  return [
    ...boxes
      .filter((b) => b.page === highlight)
      .map(
        (b): PageItem => ({ kind: 'fill', shade: 'pale', path: boxPath({ min: at(b.min), max: at(b.max) }) }),
      ),
    ...cutPaths(view).map((path) => stroke(small ? 'thin' : 'frame', scaled(path, scale, at([0, 0])))),
    ...boxes.flatMap((b): PageItem[] => [
      stroke('faint', boxPath({ min: at(b.min), max: at(b.max) })),
      ...(small
        ? []
        : [
            { kind: 'fill' as const, shade: 'paper' as const, path: circlePath(middle(b), 3.2) },
            words(below(middle(b)), 4, String(b.page), { align: 'centre', bold: true }),
          ]),
    ]),
  ];
};

/** Where tiles side by side share a strip of paper, two marks on its middle line, part axes. */
export const joins = (
  tiles: MapEntry['tiles'],
  window: Window,
): readonly { readonly at: Vec2; readonly pages: readonly [number, number] }[] => {
  const [w, h] = windowSize(window);
  return tiles.flatMap((a) =>
    tiles.flatMap((b) => {
      const across = b.tile.column === a.tile.column + 1 && b.tile.row === a.tile.row;
      const up = b.tile.row === a.tile.row + 1 && b.tile.column === a.tile.column;
      if (!across && !up) return [];
      const pages = [a.page, b.page] as const;
      return [0.2, 0.8].map((share) => ({
        pages,
        at: across
          ? ([(a.tile.from[0] + w + b.tile.from[0]) / 2, a.tile.from[1] + share * h] as const)
          : ([a.tile.from[0] + share * w, (a.tile.from[1] + h + b.tile.from[1]) / 2] as const),
      }));
    }),
  );
};
