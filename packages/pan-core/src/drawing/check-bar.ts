import type { PathBox } from '../geometry/index.js';
import type { Vec2 } from '../numeric/index.js';
import { CHECK_SQUARE } from './dxf/dxf-part.js';
import { line, type PageItem, words } from './page/page.js';

/** Taken from a view at full size on two sides, mm. */
export const BAR = 7;

/** A bar of 100 mm from a point, level or upright, with fine cross lines every 10 mm and at its ends. */
export const checkBar = ([x, y]: Vec2, way: 'level' | 'upright'): readonly PageItem[] => {
  const at = (along: number, off: number): Vec2 =>
    way === 'level' ? [x + along, y + off] : [x + off, y + along];
  const ticks = Array.from({ length: CHECK_SQUARE / 10 + 1 }, (_, i) => 10 * i);
  const tall = (d: number): number => (d % CHECK_SQUARE === 0 ? 2.5 : d % 50 === 0 ? 1.6 : 1);
  return [
    line('frame', at(0, 0), at(CHECK_SQUARE, 0)),
    ...ticks.map((d) => line('thin', at(d, -tall(d)), at(d, tall(d)))),
  ];
};

/** Beside a view at full size: a bar of 100 mm along its foot and one up its left side. */
export const fullSizeBars = ({ min }: PathBox, right: number): readonly PageItem[] => {
  const [x, y] = [min[0] + 2, min[1] + 2];
  const [u, v] = [x - BAR / 2 - 1.5, y - BAR / 2 - 1];
  const after = x + CHECK_SQUARE + 4;
  return [
    ...checkBar([x, v], 'level'),
    words([after, v - 0.8], 2.4, `${CHECK_SQUARE} mm: measure both bars; print at 100 %, no fitting`, {
      room: right - after,
    }),
    ...checkBar([u, y], 'upright'),
    words([u + 0.8, y + CHECK_SQUARE + 4], 2.4, `${CHECK_SQUARE} mm`, { turned: Math.PI / 2 }),
  ];
};
