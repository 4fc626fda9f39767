import { normalAbove, type Vec2 } from '../numeric/index.js';
import { flippedOver, ringLayout, scaledLayout } from './hole-layout.js';
import {
  freeHoles,
  type HoleDatum,
  type HoleDistance,
  networkError,
  networkStrength,
  ontoDatum,
  refineNetwork,
} from './hole-network.js';

/** A distance that does not go with the others. */
export interface DistanceSlip {
  /** Position among the distances. */
  readonly distance: number;
  /** By how much too long it was read; negative: too short. */
  readonly by: number;
  /** Its residual over what that residual should spread. */
  readonly standardized: number;
}

export interface HoleFit {
  /** In the datum's axes: the first hole at 0, the second ahead of it on the x axis. */
  readonly points: readonly Vec2[];
  /** Variances of each hole in those axes, mm². */
  readonly variance: readonly (readonly [xx: number, xy: number, yy: number])[];
  /** Measured less laid out, mm, in the order of the distances. */
  readonly residuals: readonly number[];
  readonly redundancy: readonly number[];
  readonly standardized: readonly number[];
  /** Worst first, each found with those before it left out. */
  readonly slips: readonly DistanceSlip[];
  /** Beyond this a standardized residual is no chance. */
  readonly critical: number;
}

export type HoleFitFailure =
  | { readonly kind: 'loose'; readonly holes: readonly number[] }
  | { readonly kind: 'flips'; readonly hole: number };

/** One clean set of distances in a hundred is accused; shared out over all of them (Bonferroni). */
const FALSE_ALARM = 0.01;
const MOST_SLIPS = 4;
/** Below this share a slip hides in the layout and cannot be named. */
const HIDDEN = 0.05;
/** A layout this much worse in sum of squared standardized residuals is ruled out by the distances. */
const RULED_OUT = 30;
/** Layouts nearer than this are one, mm; and steps short enough to tell them apart. */
const TOLD_APART = 1;
const ROUGHLY = 1e-2;

/**
 * Where holes lie from distances between them, with every distance equally well measured (`sigma`, mm).
 * Handedness is not in the distances: the answer runs counter-clockwise in hole order when `turn` is positive.
 */
export const fitHoles = (
  count: number,
  distances: readonly HoleDistance[],
  datum: HoleDatum,
  sigma: number,
  turn: 1 | -1,
  rough: readonly Vec2[] | null = null,
): HoleFit | HoleFitFailure => {
  const loose = freeHoles(count, distances);
  if (loose.length > 0) return { kind: 'loose', holes: loose };
  const starts = [rough, scaledLayout(count, distances), ringLayout(count, distances)];
  let best: readonly Vec2[] | null = null;
  for (const start of starts) {
    if (start === null || (best !== null && fits(best, distances, sigma))) continue;
    const tried = settled(start, distances, datum, sigma);
    if (best === null || networkError(tried, distances) < networkError(best, distances)) best = tried;
  }
  if (best === null) return { kind: 'loose', holes: [] };
  const flips = otherLayout(best, distances, datum, sigma);
  if (flips !== null) return { kind: 'flips', hole: flips };
  const points = turnOf(best) * turn < 0 ? best.map(([x, y]): Vec2 => [x, 0 - y]) : best;
  return adjusted(points, distances, datum, sigma);
};

/** Twice the area of the ring through the holes in order. */
const turnOf = (points: readonly Vec2[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] as Vec2;
    return sum + x * nextY - nextX * y;
  }, 0);

/** As near as chance lets distances be; a slip of the calliper is not, and costs only a longer search. */
const fits = (points: readonly Vec2[], distances: readonly HoleDistance[], sigma: number): boolean =>
  networkError(points, distances) <= 4 * sigma * sigma * distances.length;

/** The best layout that turning single holes over leads to. */
const settled = (
  start: readonly Vec2[],
  distances: readonly HoleDistance[],
  datum: HoleDatum,
  sigma: number,
): readonly Vec2[] => {
  let best = refineNetwork(start, distances, datum, ROUGHLY);
  let error = networkError(best, distances);
  for (let again = !fits(best, distances, sigma); again; ) {
    again = false;
    for (let hole = 0; hole < best.length; hole++) {
      const flipped = ontoDatum(flippedOver(best, hole, distances), datum);
      if (apart(flipped, best) < TOLD_APART) continue;
      const tried = refineNetwork(flipped, distances, datum, ROUGHLY);
      const after = networkError(tried, distances);
      if (after < error * 0.99) [best, error, again] = [tried, after, true];
    }
  }
  return best;
};

const apart = (a: readonly Vec2[], b: readonly Vec2[]): number =>
  a.reduce((most, [x, y], i) => Math.max(most, Math.hypot((b[i] as Vec2)[0] - x, (b[i] as Vec2)[1] - y)), 0);

/** A hole that the distances let lie in another place as well; null when there is none. */
const otherLayout = (
  best: readonly Vec2[],
  distances: readonly HoleDistance[],
  datum: HoleDatum,
  sigma: number,
): number | null => {
  const error = networkError(best, distances);
  const mirrored = best.map(([x, y]): Vec2 => [x, -y]);
  for (let hole = 0; hole < best.length; hole++) {
    const start = ontoDatum(flippedOver(best, hole, distances), datum);
    if (apart(start, best) < TOLD_APART) continue;
    const other = refineNetwork(start, distances, datum, ROUGHLY);
    const worse = (networkError(other, distances) - error) / (sigma * sigma);
    if (worse < RULED_OUT && apart(other, best) > TOLD_APART && apart(other, mirrored) > TOLD_APART)
      return hole;
  }
  return null;
};

const adjusted = (
  points: readonly Vec2[],
  distances: readonly HoleDistance[],
  datum: HoleDatum,
  sigma: number,
): HoleFit | HoleFitFailure => {
  const fitted = refineNetwork(points, distances, datum);
  const strength = networkStrength(
    fitted,
    distances.map(({ holes }) => holes),
    datum,
  );
  if (strength === null) return { kind: 'loose', holes: [] };
  const residuals = residualsOf(fitted, distances);
  const critical = normalAbove(FALSE_ALARM / (2 * distances.length));
  return {
    points: fitted,
    variance: strength.variance.map(([xx, xy, yy]) => [xx * sigma ** 2, xy * sigma ** 2, yy * sigma ** 2]),
    residuals,
    redundancy: strength.redundancy,
    standardized: residuals.map((r, i) => standard(r, strength.redundancy[i] as number, sigma)),
    slips: slipsIn(fitted, distances, datum, sigma, critical),
    critical,
  };
};

const residualsOf = (points: readonly Vec2[], distances: readonly HoleDistance[]): readonly number[] =>
  distances.map(({ holes: [a, b], length }) => {
    const [p, q] = [points[a] as Vec2, points[b] as Vec2];
    return length - Math.hypot(q[0] - p[0], q[1] - p[1]);
  });

const standard = (residual: number, redundancy: number, sigma: number): number =>
  redundancy < HIDDEN ? 0 : residual / (sigma * Math.sqrt(redundancy));

/** Worst residual out, fit again, until none is beyond chance (Baarda's data snooping, one at a time). */
const slipsIn = (
  start: readonly Vec2[],
  distances: readonly HoleDistance[],
  datum: HoleDatum,
  sigma: number,
  critical: number,
): readonly DistanceSlip[] => {
  const slips: DistanceSlip[] = [];
  let kept = distances.map((_, i) => i);
  while (slips.length < MOST_SLIPS) {
    const left = kept.map((i) => distances[i] as HoleDistance);
    const points = refineNetwork(start, left, datum);
    const strength = networkStrength(
      points,
      left.map(({ holes }) => holes),
      datum,
    );
    if (strength === null) break;
    const residuals = residualsOf(points, left);
    const ranked = residuals
      .map((r, i) => ({ i, r, share: strength.redundancy[i] as number }))
      .map((one) => ({ ...one, w: standard(one.r, one.share, sigma) }))
      .sort((a, b) => Math.abs(b.w) - Math.abs(a.w));
    const worst = ranked[0];
    if (worst === undefined || Math.abs(worst.w) <= critical) break;
    slips.push({ distance: kept[worst.i] as number, by: worst.r / worst.share, standardized: worst.w });
    kept = kept.filter((_, i) => i !== worst.i);
  }
  return slips;
};
