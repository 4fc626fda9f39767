import type { Oriented } from './body.js';
import { type Measure, measureCells } from './level.js';

/** Reach of a free surface along pan x and y, and its pool's mean depth, volume over surface; mm. */
export interface FreeSurface {
  x: number;
  y: number;
  depth: number;
}

/** The free surface of cells filled to height h, into `out`; all zero where there is none. */
export const freeSurface = (
  o: Oriented,
  cells: ArrayLike<number>,
  h: number,
  measure: Measure,
  out: FreeSurface,
): FreeSurface => {
  const { heights, low, high, body } = o;
  const { points, triangles, firstTriangle } = body;
  let [x0, x1, y0, y1] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k] as number;
    if (h <= (low[cell] as number) || h >= (high[cell] as number)) continue;
    const end = 3 * (firstTriangle[cell + 1] as number);
    for (let t = 3 * (firstTriangle[cell] as number); t < end; t += 3) {
      for (let e = 0; e < 3; e++) {
        const a = triangles[t + e] as number;
        const b = triangles[e === 2 ? t : t + e + 1] as number;
        const [za, zb] = [heights[a] as number, heights[b] as number];
        // Each edge is met from both its triangles; one of them is enough.
        if (!(za < h && zb >= h)) continue;
        const s = (h - za) / (zb - za);
        const x = (points[3 * a] as number) * (1 - s) + (points[3 * b] as number) * s;
        const y = (points[3 * a + 1] as number) * (1 - s) + (points[3 * b + 1] as number) * s;
        if (x < x0) x0 = x;
        if (x > x1) x1 = x;
        if (y < y0) y0 = y;
        if (y > y1) y1 = y;
      }
    }
  }
  measureCells(o, cells, h, measure);
  const open = measure.area > 0 && x1 >= x0;
  out.x = open ? x1 - x0 : 0;
  out.y = open ? y1 - y0 : 0;
  out.depth = open ? measure.volume / measure.area : 0;
  return out;
};
