import type { Crank } from '../design/index.js';
import type { Vec3 } from '../numeric/index.js';

/** What one big end sweeps: a cylinder about the crank's axis, y = 0, cut square at x0 and x1. */
export interface Sweep {
  readonly x0: number;
  readonly x1: number;
  readonly height: number;
  readonly radius: number;
}

/** One sweep per throw: radius half the stroke plus the big end's reach. null when the throws are not given. */
export const rodSweeps = (crank: Crank): readonly Sweep[] | null =>
  crank.throws === null
    ? null
    : crank.throws.map((x) => ({
        x0: x - crank.throwWidth / 2,
        x1: x + crank.throwWidth / 2,
        height: crank.centreAboveRail,
        radius: crank.stroke / 2 + crank.bigEndReach,
      }));

/** Signed distance from a point to a sweep, negative inside. */
export const distanceToSweep = (sweep: Sweep, p: Vec3): number => {
  const out = Math.hypot(p[1], p[2] - sweep.height) - sweep.radius;
  const beyond = Math.max(sweep.x0 - p[0], p[0] - sweep.x1);
  if (out <= 0 && beyond <= 0) return Math.max(out, beyond);
  return Math.hypot(Math.max(out, 0), Math.max(beyond, 0));
};

/** A distance and the point where it is reached. */
export interface Nearest {
  readonly distance: number;
  readonly at: Vec3;
}

/** Golden section; leaves the place known to about a millionth of the edge and the distance to rounding. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;
const STEPS = 80;

/**
 * Least signed distance along a straight edge. The signed distance of a convex body is convex, so along an
 * edge it has one valley.
 */
export const edgeToSweep = (sweep: Sweep, a: Vec3, b: Vec3): Nearest => {
  const on = (t: number): Vec3 => [
    a[0] + t * (b[0] - a[0]),
    a[1] + t * (b[1] - a[1]),
    a[2] + t * (b[2] - a[2]),
  ];
  const value = (t: number): number => distanceToSweep(sweep, on(t));
  let [low, high] = [0, 1];
  let [p, q] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [vp, vq] = [value(p), value(q)];
  for (let i = 0; i < STEPS; i++) {
    if (vp <= vq) {
      [high, q, vq] = [q, p, vp];
      p = high - GOLDEN * (high - low);
      vp = value(p);
    } else {
      [low, p, vp] = [p, q, vq];
      q = low + GOLDEN * (high - low);
      vq = value(q);
    }
  }
  return nearestOf([0, (low + high) / 2, 1].map((t) => ({ distance: value(t), at: on(t) })));
};

export const nearestOf = (list: readonly Nearest[]): Nearest =>
  list.reduce((best, next) => (next.distance < best.distance ? next : best));
