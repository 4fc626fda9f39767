import type { Design } from '../design/index.js';
import { insetPolygon, type PlaneTable, type Polygon, trapezoids } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { type Piece, prismPiece } from './outside-solid.js';

/** The rail's outline moved out by what the flange stands beyond it; mitred, so never less than the plate. */
export const flangeOutline = (design: Design): Polygon => {
  const { beyond } = design.pan.flange;
  const { outline } = design.engine.rail;
  return beyond === 0 ? outline : (insetPolygon(outline, -beyond) ?? outline);
};

/** A plate on an outline, between two heights, as convex pieces. */
export const platePieces = (
  table: PlaneTable,
  outline: Polygon,
  low: number,
  high: number,
  name: string,
): readonly Piece[] =>
  convexParts(outline).map((part) => {
    const at = (z: number): readonly Vec3[] => part.map(([x, y]): Vec3 => [x, y, z]);
    return prismPiece(table, at(low), at(high), {
      base: `${name} underside`,
      end: `${name} top`,
      side: () => `${name} edge`,
    });
  });

/** A simple counter-clockwise polygon as convex ones: itself when it is convex, else its slices along x. */
export const convexParts = (outline: Polygon): readonly Polygon[] => {
  const convex = outline.every((b, i) => {
    const a = outline[(i + outline.length - 1) % outline.length]!;
    const c = outline[(i + 1) % outline.length]!;
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]) >= 0;
  });
  if (convex) return [outline];
  return trapezoids(outline).map((t): Polygon => {
    const corners: Vec2[] = [
      [t.x0, t.low[0]],
      [t.x1, t.low[1]],
      [t.x1, t.high[1]],
      [t.x0, t.high[0]],
    ];
    return corners.filter((p, i) => {
      const q = corners[(i + 1) % 4]!;
      return p[0] !== q[0] || p[1] !== q[1];
    });
  });
};
