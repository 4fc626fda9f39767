import { arcSegment, circlePath, lineSegment, type Path } from 'pan-core/geometry/index.js';
import type { Vec2 } from 'pan-core/numeric/index.js';
import type { ReadEntity } from './dxf-reader.js';

/** A cut loop as the independent reader sees it, its bulges as arcs again: DXF reference, group 42. */
export const loopOf = (entity: ReadEntity): Path => {
  if (entity.type === 'CIRCLE') return circlePath(entity.centre ?? [0, 0], entity.radius ?? 0);
  const points = entity.points ?? [];
  return points.map(([x, y, bulge], i) => {
    const next = points[(i + 1) % points.length] ?? [0, 0, 0];
    const [from, to]: [Vec2, Vec2] = [
      [x, y],
      [next[0], next[1]],
    ];
    if (bulge === 0) return lineSegment(from, to);
    // The centre lies off the chord's middle, to its left for a counter-clockwise arc under a half turn.
    const off = (1 - bulge * bulge) / (4 * bulge);
    const centre: Vec2 = [(x + to[0]) / 2 - (to[1] - y) * off, (y + to[1]) / 2 + (to[0] - x) * off];
    return arcSegment(centre, from, to, 4 * Math.atan(bulge));
  });
};
