import type { Vec2 } from '../numeric/index.js';

/** A corner of a polygon by its place in the caller's list. */
interface Corner {
  readonly place: number;
  readonly p: Vec2;
}

/**
 * A polygon with holes as triangles by places among `points`, counter-clockwise, every corner kept, those on
 * straight edges too, so that neighbours that share an edge still pair. Ear clipping; each hole is first joined to the outer loop
 * by a bridge that is run both ways (G. H. Meisters 1975; bridges as in D. Eberly's note, both from memory). For a few hundred corners.
 *
 * @param loops places of the outer loop, counter-clockwise, then of each hole, clockwise; no two loops touch
 */
export const earTriangles = (
  points: readonly Vec2[],
  loops: readonly (readonly number[])[],
): readonly (readonly [number, number, number])[] => {
  const corners = (loop: readonly number[]): Corner[] =>
    loop.map((place) => ({ place, p: points[place] as Vec2 }));
  const [outer, ...holes] = loops.map(corners);
  if (outer === undefined) return [];
  const rightmost = (loop: readonly Corner[]): number => Math.max(...loop.map(({ p }) => p[0]));
  const ring = [...holes]
    .sort((a, b) => rightmost(b) - rightmost(a))
    .reduce((joined, hole) => bridged(joined, hole), outer);
  return clipped(ring);
};

const turn = (a: Vec2, b: Vec2, c: Vec2): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const same = (a: Vec2, b: Vec2): boolean => a[0] === b[0] && a[1] === b[1];

/** Whether two segments meet other than in a common end. */
const crosses = (a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean => {
  if (same(a, c) || same(a, d) || same(b, c) || same(b, d)) return false;
  const [s, t, u, v] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  return s * t <= 0 && u * v <= 0;
};

/** The hole taken into the ring at the nearest pair of corners that see each other. */
const bridged = (ring: readonly Corner[], hole: readonly Corner[]): Corner[] => {
  const pairs = ring
    .flatMap((r, i) =>
      hole.map((h, k) => ({ i, k, r, h, length: Math.hypot(r.p[0] - h.p[0], r.p[1] - h.p[1]) })),
    )
    .sort((a, b) => a.length - b.length);
  const sides = [ring, hole].flatMap((loop) =>
    loop.map((c, i) => [c.p, (loop[(i + 1) % loop.length] as Corner).p] as const),
  );
  const found = pairs.find(
    ({ r, h, i }) => inCorner(ring, i, h.p) && sides.every(([c, d]) => !crosses(r.p, h.p, c, d)),
  );
  if (found === undefined) return [...ring];
  const { i, k } = found;
  const turned = [...hole.slice(k), ...hole.slice(0, k + 1)];
  return [...ring.slice(0, i + 1), ...turned, ...ring.slice(i)];
};

/** Whether a direction from a corner goes into the polygon: a bridge already there may have its corner twice. */
const inCorner = (ring: readonly Corner[], i: number, q: Vec2): boolean => {
  const at = (k: number): Vec2 => (ring[(k + ring.length) % ring.length] as Corner).p;
  const [a, b, c] = [at(i - 1), at(i), at(i + 1)];
  const [left, right] = [turn(b, c, q), turn(a, b, q)];
  return turn(a, b, c) >= 0 ? left > 0 && right > 0 : left > 0 || right > 0;
};

const clipped = (ring: readonly Corner[]): readonly (readonly [number, number, number])[] => {
  const left = [...ring];
  const out: [number, number, number][] = [];
  while (left.length > 3) {
    const ear = bestEar(left) ?? flattest(left);
    const n = left.length;
    const [a, b, c] = [left[(ear + n - 1) % n], left[ear], left[(ear + 1) % n]] as [Corner, Corner, Corner];
    out.push([a.place, b.place, c.place]);
    left.splice(ear, 1);
  }
  const [a, b, c] = left as [Corner, Corner, Corner];
  out.push([a.place, b.place, c.place]);
  return out;
};

/** The corner whose ear is fattest: area for the square of its longest side. */
const bestEar = (ring: readonly Corner[]): number | null => {
  let best: number | null = null;
  let fat = 0;
  const n = ring.length;
  for (let i = 0; i < n; i++) {
    const [a, b, c] = [ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]].map((k) => (k as Corner).p) as [
      Vec2,
      Vec2,
      Vec2,
    ];
    const area = turn(a, b, c);
    if (!(area > 0)) continue;
    const sides = [a, b, c].map((p, k) => {
      const q = [a, b, c][(k + 1) % 3] as Vec2;
      return (q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2;
    });
    const shape = area / Math.max(...sides);
    if (shape <= fat || ring.some(({ p }) => holds(a, b, c, p))) continue;
    [best, fat] = [i, shape];
  }
  return best;
};

/**
 * The corner that turns off least. Where rounding has made a rim run back on itself there is no ear; taking the
 * spike away first keeps every edge in a triangle, one of next to no area.
 */
const flattest = (ring: readonly Corner[]): number => {
  const n = ring.length;
  const areas = ring.map(({ p }, i) =>
    Math.abs(turn((ring[(i + n - 1) % n] as Corner).p, p, (ring[(i + 1) % n] as Corner).p)),
  );
  return areas.indexOf(Math.min(...areas));
};

/** Whether a corner other than the triangle's own lies in it or on its rim. */
const holds = (a: Vec2, b: Vec2, c: Vec2, p: Vec2): boolean => {
  if (same(p, a) || same(p, b) || same(p, c)) return false;
  return turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0;
};
