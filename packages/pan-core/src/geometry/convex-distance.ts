import { dot3, subtract3, type Vec3 } from '../numeric/index.js';
import { nearestInSimplex } from './nearest-simplex.js';

/** How far two convex hulls of points stand apart. */
export interface HullGap {
  /** mm; 0 when the hulls touch or overlap. */
  readonly distance: number;
  readonly onA: Vec3;
  readonly onB: Vec3;
  /** Unit vector from A to B along which they are that far apart; zero when they overlap. */
  readonly toward: Vec3;
}

/** Hulls nearer than this count as touching, mm. */
const TOUCHING = 1e-9;
const MOST_STEPS = 200;

interface Pair {
  readonly a: Vec3;
  readonly b: Vec3;
  readonly gap: Vec3;
}

/**
 * Least distance between the convex hulls of two point sets: the search of Gilbert, Johnson and Keerthi
 * (IEEE Journal of Robotics and Automation 4, 1988, from memory). It ends on the corners of the two nearest
 * features, so that the distance is as exact as the sums behind it. The distance handed back is the one by
 * which the last supporting planes part the hulls, which is never more than the true one.
 */
export const hullGap = (a: readonly Vec3[], b: readonly Vec3[]): HullGap => {
  let simplex: readonly Pair[] = [pairOf(a[0]!, b[0]!)];
  let point = simplex[0]!.gap;
  let weights: readonly number[] = [1];
  let best: { readonly distance: number; readonly toward: Vec3 } = { distance: 0, toward: [0, 0, 0] };
  for (let step = 0; step < MOST_STEPS; step++) {
    const size = Math.hypot(point[0], point[1], point[2]);
    if (size <= TOUCHING) return { distance: 0, toward: [0, 0, 0], ...witness(simplex, weights) };
    const away: Vec3 = [-point[0] / size, -point[1] / size, -point[2] / size];
    const next = pairOf(farthest(a, away), farthest(b, [-away[0], -away[1], -away[2]]));
    const parted = -dot3(away, next.gap);
    if (parted > best.distance) best = { distance: parted, toward: away };
    if (size - parted <= 1e-13 * size || simplex.some((p) => p.a === next.a && p.b === next.b)) break;
    const trial = [...simplex, next];
    const nearest = nearestInSimplex(trial.map((p) => p.gap));
    const shrunk = Math.hypot(nearest.point[0], nearest.point[1], nearest.point[2]);
    if (!(shrunk < size)) break;
    simplex = trial.filter((_, i) => nearest.weights[i]! > 0);
    weights = nearest.weights.filter((w) => w > 0);
    point = nearest.point;
  }
  return { ...best, ...witness(simplex, weights) };
};

const pairOf = (a: Vec3, b: Vec3): Pair => ({ a, b, gap: subtract3(a, b) });

/** The point of a set that lies farthest along a direction. */
export const farthest = (points: readonly Vec3[], along: Vec3): Vec3 => {
  const [x, y, z] = along;
  let best = points[0]!;
  let most = Number.NEGATIVE_INFINITY;
  // Written out, as every search for room spends most of its time here.
  for (const p of points) {
    const reach = p[0] * x + p[1] * y + p[2] * z;
    if (reach > most) {
      most = reach;
      best = p;
    }
  }
  return best;
};

const witness = (simplex: readonly Pair[], weights: readonly number[]): { onA: Vec3; onB: Vec3 } => {
  const sum = (of: (p: Pair) => Vec3): Vec3 => {
    const out: [number, number, number] = [0, 0, 0];
    simplex.forEach((p, i) => {
      for (const k of [0, 1, 2] as const) out[k] += weights[i]! * of(p)[k];
    });
    return out;
  };
  return { onA: sum((p) => p.a), onB: sum((p) => p.b) };
};
