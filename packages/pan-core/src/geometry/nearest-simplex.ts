import { cross3, dot3, subtract3, type Vec3 } from '../numeric/index.js';

/** The point of a simplex nearest to the origin, and its share of each corner. */
export interface NearestInSimplex {
  readonly point: Vec3;
  readonly weights: readonly [number, number, number, number];
}

/** Sine² of the flattest triangle, and relative volume² of the flattest tetrahedron, still told from a line or a triangle. */
const FLAT = 1e-14;

type Weights = [number, number, number, number];

/**
 * Nearest point to the origin of the hull of one to four points, by trying every corner, edge, triangle and
 * the inside. Trying them all costs a microsecond and has no case that rounding can send the wrong way.
 */
export const nearestInSimplex = (corners: readonly Vec3[]): NearestInSimplex => {
  const n = corners.length;
  let best: NearestInSimplex = { point: corners[0]!, weights: [1, 0, 0, 0] };
  let least = dot3(best.point, best.point);
  const offer = (point: Vec3 | null, weights: () => Weights): void => {
    if (point === null) return;
    const size = dot3(point, point);
    if (size < least) {
      least = size;
      best = { point, weights: weights() };
    }
  };
  for (let i = 1; i < n; i++) offer(corners[i]!, () => share([i], [1]));
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const t = edgeShare(corners[i]!, corners[j]!);
      if (t !== null) offer(mix(corners[i]!, corners[j]!, t), () => share([i, j], [1 - t, t]));
    }
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++)
      for (let k = j + 1; k < n; k++) {
        const found = triangleShare(corners[i]!, corners[j]!, corners[k]!);
        if (found !== null) offer(found.point, () => share([i, j, k], found.weights));
      }
  if (n === 4) {
    const inside = insideShare(corners[0]!, corners[1]!, corners[2]!, corners[3]!);
    if (inside !== null) offer([0, 0, 0], () => inside);
  }
  return best;
};

const share = (at: readonly number[], values: readonly number[]): Weights => {
  const out: Weights = [0, 0, 0, 0];
  at.forEach((corner, i) => {
    out[corner] = values[i]!;
  });
  return out;
};

const mix = (a: Vec3, b: Vec3, t: number): Vec3 => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
  a[2] + t * (b[2] - a[2]),
];

const edgeShare = (a: Vec3, b: Vec3): number | null => {
  const e = subtract3(b, a);
  const t = -dot3(a, e) / dot3(e, e);
  return t > 0 && t < 1 ? t : null;
};

const triangleShare = (
  a: Vec3,
  b: Vec3,
  c: Vec3,
): { readonly point: Vec3; readonly weights: readonly [number, number, number] } | null => {
  const u = subtract3(b, a);
  const v = subtract3(c, a);
  const n = cross3(u, v);
  const area = dot3(n, n);
  if (!(area > FLAT * dot3(u, u) * dot3(v, v))) return null;
  // Shares are the areas that the origin's foot makes with each edge.
  const sb = dot3(cross3(v, a), n) / area;
  const sc = dot3(cross3(a, u), n) / area;
  const sa = 1 - sb - sc;
  if (!(sa > 0 && sb > 0 && sc > 0)) return null;
  const h = dot3(n, a) / area;
  return { point: [n[0] * h, n[1] * h, n[2] * h], weights: [sa, sb, sc] };
};

const insideShare = (a: Vec3, b: Vec3, c: Vec3, d: Vec3): Weights | null => {
  const [u, v, w] = [subtract3(b, a), subtract3(c, a), subtract3(d, a)];
  const volume = dot3(u, cross3(v, w));
  if (!(volume * volume > FLAT * dot3(u, u) * dot3(v, v) * dot3(w, w))) return null;
  const sb = -dot3(a, cross3(v, w)) / volume;
  const sc = -dot3(u, cross3(a, w)) / volume;
  const sd = -dot3(u, cross3(v, a)) / volume;
  const sa = 1 - sb - sc - sd;
  return sa >= 0 && sb >= 0 && sc >= 0 && sd >= 0 ? [sa, sb, sc, sd] : null;
};
