import type { Vec2 } from '../numeric/index.js';
import type { NurbsCurve } from './curve.js';
import { offChord2 } from './path-vector.js';

type Weighted = readonly [number, number, number];

/** What keeps a spline from being one, in words; null when it is sound. */
export const nurbsFault = ({ degree, knots, points, weights }: NurbsCurve): string | null => {
  if (!Number.isInteger(degree) || degree < 1 || degree > 11) return `degree ${degree}`;
  if (points.length <= degree) return `${points.length} control points for degree ${degree}`;
  if (knots.length !== points.length + degree + 1)
    return `${knots.length} knots for ${points.length} control points of degree ${degree}`;
  if (knots.some((knot, i) => i > 0 && knot < (knots[i - 1] as number))) return 'knots that run backwards';
  if (!((knots[degree] as number) < (knots[points.length] as number))) return 'knots that do not advance';
  if (weights.length !== points.length) return `${weights.length} weights for ${points.length} points`;
  return weights.every((weight) => weight > 0) ? null : 'a weight that is not above 0';
};

/**
 * A point of the spline. C. de Boor, On calculating with B-splines, J. Approximation Theory 6 (1972) 50–62, in
 * homogeneous coordinates for the weights (from memory).
 */
export const nurbsPoint = ({ degree, knots, points, weights }: NurbsCurve, t: number): Vec2 => {
  let span = degree;
  while (span < points.length - 1 && t >= (knots[span + 1] as number)) span++;
  const rows: Weighted[] = [];
  for (let i = span - degree; i <= span; i++) {
    const [x, y] = points[i] as Vec2;
    const w = weights[i] as number;
    rows.push([x * w, y * w, w]);
  }
  for (let round = 1; round <= degree; round++) {
    for (let j = degree; j >= round; j--) {
      const [low, high] = [knots[span - degree + j] as number, knots[span + 1 + j - round] as number];
      const share = high > low ? (t - low) / (high - low) : 0;
      const [p, q] = [rows[j - 1] as Weighted, rows[j] as Weighted];
      rows[j] = [p[0] + share * (q[0] - p[0]), p[1] + share * (q[1] - p[1]), p[2] + share * (q[2] - p[2])];
    }
  }
  const [x, y, w] = rows[degree] as Weighted;
  return [x / w, y / w];
};

const DEEPEST = 12;
/** Where between two points the chord is compared; one place alone can lie on it by chance. */
const PROBES = [0.23, 0.5, 0.77];

/** Points along the spline, every knot among them, so that chords stay within `tolerance` of it. */
export const nurbsChords = (curve: NurbsCurve, tolerance: number): readonly Vec2[] => {
  const { degree, knots, points } = curve;
  const stations = [...new Set(knots.slice(degree, points.length + 1))];
  const out: Vec2[] = [nurbsPoint(curve, stations[0] as number)];
  const follow = (from: number, to: number, a: Vec2, b: Vec2, depth: number): void => {
    const off = Math.max(
      ...PROBES.map((share) => offChord2(nurbsPoint(curve, from + share * (to - from)), a, b)),
    );
    if (depth >= DEEPEST || (depth > 0 && off <= tolerance * 0.8) || degree === 1) {
      out.push(b);
      return;
    }
    const middle = (from + to) / 2;
    const m = nurbsPoint(curve, middle);
    follow(from, middle, a, m, depth + 1);
    follow(middle, to, m, b, depth + 1);
  };
  for (let i = 0; i + 1 < stations.length; i++) {
    const [from, to] = [stations[i] as number, stations[i + 1] as number];
    follow(from, to, out[out.length - 1] as Vec2, nurbsPoint(curve, to), 0);
  }
  return out;
};
