import { dot3, type Vec3 } from '../numeric/index.js';
import type { PanModel } from '../pan/index.js';

/**
 * The cells as flat arrays for level work. Points are relative to the first cell's first corner, so that
 * heights keep their digits wherever the pan stands. Lengths in mm.
 */
export interface Body {
  readonly cellCount: number;
  readonly points: Float64Array;
  /** Three point numbers a triangle. */
  readonly triangles: Int32Array;
  /** Outward area vector times the cell's open share, three numbers a triangle, mm². */
  readonly areas: Float64Array;
  /** First triangle and first point of each cell; one more entry than cells. */
  readonly firstTriangle: Int32Array;
  readonly firstPoint: Int32Array;
  /** Oil each cell can hold, mm³. */
  readonly capacity: Float64Array;
  readonly origin: Vec3;
}

/** A body of convex cells, ready to be filled at any attitude. */
export const createBody = (model: Pick<PanModel, 'cells' | 'shares' | 'volumes'>): Body => {
  const origin = (model.cells[0]?.faces[0]?.loop[0] ?? [0, 0, 0]) as Vec3;
  const points: number[] = [];
  const triangles: number[] = [];
  const areas: number[] = [];
  const firstTriangle = [0];
  const firstPoint = [0];
  model.cells.forEach((cell, c) => {
    const share = model.shares[c] as number;
    const known = new Map<string, number>();
    const number = (p: Vec3): number => {
      const key = p.join();
      const had = known.get(key);
      if (had !== undefined) return had;
      points.push(p[0] - origin[0], p[1] - origin[1], p[2] - origin[2]);
      known.set(key, points.length / 3 - 1);
      return points.length / 3 - 1;
    };
    for (const face of cell.faces) {
      for (let i = 1; i + 1 < face.loop.length; i++) {
        const [a, b, d] = [face.loop[0], face.loop[i], face.loop[i + 1]] as [Vec3, Vec3, Vec3];
        const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
        const [vx, vy, vz] = [d[0] - a[0], d[1] - a[1], d[2] - a[2]];
        triangles.push(number(a), number(b), number(d));
        areas.push(
          (share * (uy * vz - uz * vy)) / 2,
          (share * (uz * vx - ux * vz)) / 2,
          (share * (ux * vy - uy * vx)) / 2,
        );
      }
    }
    firstTriangle.push(triangles.length / 3);
    firstPoint.push(points.length / 3);
  });
  return {
    cellCount: model.cells.length,
    points: Float64Array.from(points),
    triangles: Int32Array.from(triangles),
    areas: Float64Array.from(areas),
    firstTriangle: Int32Array.from(firstTriangle),
    firstPoint: Int32Array.from(firstPoint),
    capacity: Float64Array.from(model.volumes, (v, i) => v * (model.shares[i] as number)),
    origin,
  };
};

/** A body seen along one direction of effective gravity: heights along `up`, mm, and projected areas, mm². */
export interface Oriented {
  readonly body: Body;
  /** Unit vector against effective gravity. */
  up: Vec3;
  readonly heights: Float64Array;
  /** Projected area of each triangle, positive where oil stands above it. */
  readonly weights: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** A place to keep the body as it lies along one direction of effective gravity. */
export const createOriented = (body: Body): Oriented => ({
  body,
  up: [0, 0, 1],
  heights: new Float64Array(body.points.length / 3),
  weights: new Float64Array(body.triangles.length / 3),
  low: new Float64Array(body.cellCount),
  high: new Float64Array(body.cellCount),
});

/** Turns an oriented body to a new direction in place; nothing is allocated. */
export const orient = (o: Oriented, up: Vec3): Oriented => {
  const { heights, weights, low, high, body } = o;
  const { points, areas, firstPoint, cellCount } = body;
  const x = up[0];
  const y = up[1];
  const z = up[2];
  o.up = up;
  for (let c = 0, i = 0, k = 0; c < cellCount; c++) {
    const end = firstPoint[c + 1] as number;
    let bottom = Number.POSITIVE_INFINITY;
    let top = Number.NEGATIVE_INFINITY;
    for (; i < end; i++, k += 3) {
      const h = (points[k] as number) * x + (points[k + 1] as number) * y + (points[k + 2] as number) * z;
      heights[i] = h;
      if (h < bottom) bottom = h;
      if (h > top) top = h;
    }
    low[c] = bottom;
    high[c] = top;
  }
  for (let t = 0, k = 0; t < weights.length; t++, k += 3) {
    weights[t] = -((areas[k] as number) * x + (areas[k + 1] as number) * y + (areas[k + 2] as number) * z);
  }
  return o;
};

/** Height of a point in pan axes along the oriented body's up, measured from the body's own origin. */
export const heightOf = (o: Oriented, p: Vec3): number =>
  dot3(o.up, [p[0] - o.body.origin[0], p[1] - o.body.origin[1], p[2] - o.body.origin[2]]);
