import type { Vec2 } from '../../numeric/index.js';
import type { NamedPart } from '../cut-plan.js';
import type { Paper } from '../page/page.js';
import { pageWindow, type Tile, type Tiling, tilePart, type Window, windowSize } from './template-tile.js';
import { type TemplateView, templateView } from './template-view.js';

/** A part to be drawn, with its view from outside. */
export interface TemplatePart extends NamedPart {
  readonly view: TemplateView;
}

/** A page that shows one tile of a large part. */
export interface TilePage {
  readonly kind: 'tile';
  readonly of: TemplatePart;
  readonly tiling: Tiling;
  readonly tile: Tile;
}

/** A page that shows several small parts whole, each with its lower left corner in the window. */
export interface SharedPage {
  readonly kind: 'shared';
  readonly window: Window;
  readonly places: readonly { readonly of: TemplatePart; readonly at: Vec2 }[];
}

/** Room under each small part for its words, and between two, mm. */
export const CAPTION = 11;
const GAP = 6;

/** Which part goes on which page: large ones tiled in the parts' order, then the small ones together. */
export const templatePlan = (
  parts: readonly NamedPart[],
  paper: Paper,
): readonly (TilePage | SharedPage)[] => {
  const all = parts.map((named): TemplatePart => ({ ...named, view: templateView(named.part) }));
  const upright = pageWindow(paper, false);
  const [w, h] = windowSize(upright);
  const small = (one: TemplatePart): boolean =>
    one.view.size[0] <= w - 2 * GAP && one.view.size[1] <= 0.45 * h - CAPTION - GAP;
  const tiled = all
    .filter((one) => !small(one))
    .flatMap((of): TilePage[] => {
      const tiling = tilePart(of.view, paper);
      return tiling.tiles.map((tile) => ({ kind: 'tile', of, tiling, tile }));
    });
  return [...tiled, ...shelves(all.filter(small), upright)];
};

/** Rows from the top, tallest parts first, each row as high as its first part. */
const shelves = (parts: readonly TemplatePart[], window: Window): readonly SharedPage[] => {
  const [w, h] = windowSize(window);
  const { min, max } = window.box;
  const pages: { of: TemplatePart; at: Vec2 }[][] = [];
  let [x, top, row] = [0, 0, 0];
  for (const of of [...parts].sort((a, b) => b.view.size[1] - a.view.size[1])) {
    const across = Math.max(of.view.size[0], 34) + GAP;
    const down = of.view.size[1] + CAPTION + GAP;
    if (pages.length === 0 || x + across > w) {
      [x, top, row] = [0, top + row, down];
      if (pages.length === 0 || top + down > h) {
        pages.push([]);
        top = 0;
      }
    }
    const at: Vec2 = [min[0] + x + GAP / 2, max[1] - top - GAP / 2 - of.view.size[1]];
    pages[pages.length - 1]!.push({ of, at });
    x += across;
  }
  return pages.map((places) => ({ kind: 'shared', window, places }));
};
