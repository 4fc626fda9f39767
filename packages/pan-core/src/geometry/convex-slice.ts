import { dot3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { ConvexCell } from './convex.js';
import { type CuttingPlane, flatOn, outOfPlane } from './cutting-plane.js';
import type { Polygon } from './polygon.js';

/** A point nearer than this to the plane lies on it, mm. */
const ON_PLANE = 1e-9;

/**
 * Where a plane cuts a convex cell, as a convex polygon in the plane's own axes, counter-clockwise; empty where it
 * only touches. Coordinates are measured from the plane's `at`, mm.
 */
export const sliceCell = (cell: ConvexCell<unknown>, plane: CuttingPlane): Polygon => {
  const normal = outOfPlane(plane);
  const offset = dot3(normal, plane.at);
  const points: Vec2[] = [];
  const height = (p: Vec3): number => {
    const d = dot3(normal, p) - offset;
    return Math.abs(d) < ON_PLANE ? 0 : d;
  };
  for (const { loop } of cell.faces) {
    for (let i = 0; i < loop.length; i++) {
      const [p, q] = [loop[i] as Vec3, loop[(i + 1) % loop.length] as Vec3];
      const [dp, dq] = [height(p), height(q)];
      if (dp === 0) points.push(flatOn(plane, p));
      if ((dp < 0 && dq > 0) || (dp > 0 && dq < 0)) {
        const t = dp / (dp - dq);
        points.push(
          flatOn(plane, [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1]), p[2] + t * (q[2] - p[2])]),
        );
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
