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
  let point = corners[0]!;
  let weights: Weights = [1, 0, 0, 0];
  let least = dot3(point, point);
  for (let i = 1; i < n; i++) {
    const size = dot3(corners[i]!, corners[i]!);
    if (size < least) [least, point, weights] = [size, corners[i]!, cornerWeights(i)];
  }
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      const [a, b] = [corners[i]!, corners[j]!];
      const t = edgeShare(a, b);
      if (t === null) continue;
      const p: Vec3 = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
      const size = dot3(p, p);
      if (size >= least) continue;
      [least, point, weights] = [size, p, [0, 0, 0, 0]];
      weights[i] = 1 - t;
      weights[j] = t;
    }
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++)
      for (let k = j + 1; k < n; k++) {
        const found = triangleShare(corners[i]!, corners[j]!, corners[k]!);
        if (found === null || found.size >= least) continue;
        [least, point, weights] = [found.size, found.point, [0, 0, 0, 0]];
        weights[i] = found.weights[0];
        weights[j] = found.weights[1];
        weights[k] = found.weights[2];
      }
  if (n === 4) {
    const inside = insideShare(corners[0]!, corners[1]!, corners[2]!, corners[3]!);
    if (inside !== null) return { point: [0, 0, 0], weights: inside };
  }
  return { point, weights };
};

const cornerWeights = (i: number): Weights => [
  i === 0 ? 1 : 0,
  i === 1 ? 1 : 0,
  i === 2 ? 1 : 0,
  i === 3 ? 1 : 0,
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
): { readonly size: number; readonly point: Vec3; readonly weights: Vec3 } | null => {
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
  return { size: h * h * area, point: [n[0] * h, n[1] * h, n[2] * h], weights: [sa, sb, sc] };
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
