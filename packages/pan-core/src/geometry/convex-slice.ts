import { dot3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { ConvexCell } from './convex.js';
import type { Polygon } from './polygon.js';

/** A plane to look at from one side: `right` and `upward` are the drawing's axes, unit vectors in the plane, mm. */
export interface CuttingPlane {
  readonly at: Vec3;
  readonly right: Vec3;
  readonly upward: Vec3;
}

/** A point nearer than this to the plane lies on it, mm. */
const ON_PLANE = 1e-9;

const outOf = ({ right: r, upward: u }: CuttingPlane): Vec3 => [
  r[1] * u[2] - r[2] * u[1],
  r[2] * u[0] - r[0] * u[2],
  r[0] * u[1] - r[1] * u[0],
];

/**
 * Where a plane cuts a convex cell, as a convex polygon in the plane's own axes, counter-clockwise; empty where it
 * only touches. Coordinates are measured from the plane's `at`, mm.
 */
export const sliceCell = (cell: ConvexCell<unknown>, plane: CuttingPlane): Polygon => {
  const normal = outOf(plane);
  const offset = dot3(normal, plane.at);
  const points: Vec2[] = [];
  const height = (p: Vec3): number => {
    const d = dot3(normal, p) - offset;
    return Math.abs(d) < ON_PLANE ? 0 : d;
  };
  const flat = (p: Vec3): Vec2 => {
    const d: Vec3 = [p[0] - plane.at[0], p[1] - plane.at[1], p[2] - plane.at[2]];
    return [dot3(d, plane.right), dot3(d, plane.upward)];
  };
  for (const { loop } of cell.faces) {
    for (let i = 0; i < loop.length; i++) {
      const [p, q] = [loop[i] as Vec3, loop[(i + 1) % loop.length] as Vec3];
      const [dp, dq] = [height(p), height(q)];
      if (dp === 0) points.push(flat(p));
      if ((dp < 0 && dq > 0) || (dp > 0 && dq < 0)) {
        const t = dp / (dp - dq);
        points.push(flat([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]));
      }
    }
  }
  return convexHull(points);
};

/** The convex hull of a few points, counter-clockwise, without points on its edges; empty when it has no area. */
export const convexHull = (points: readonly Vec2[]): Polygon => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly Vec2[]): Vec2[] => {
    const chain: Vec2[] = [];
    for (const p of list) {
      while (chain.length >= 2) {
        const [a, b] = [chain[chain.length - 2] as Vec2, chain[chain.length - 1] as Vec2];
        const twice = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
        if (twice > ON_PLANE * Math.hypot(p[0] - a[0], p[1] - a[1])) break;
        chain.pop();
      }
      chain.push(p);
    }
    chain.pop();
    return chain;
  };
  const hull = [...half(sorted), ...half(sorted.reverse())];
  return hull.length >= 3 ? hull : [];
};
