import type { Vec2 } from '../numeric/index.js';

/** A convex or simple polygon, counter-clockwise, its first point not repeated. */
export type Polygon = readonly Vec2[];

/** Slivers below this are rounding, mm². */
const NO_AREA = 1e-9;

export const polygonArea = (p: Polygon): number => {
  const o = p[0];
  if (o === undefined) return 0;
  let twice = 0;
  for (let i = 1; i + 1 < p.length; i++) {
    const a = p[i] as Vec2;
    const b = p[i + 1] as Vec2;
    twice += (a[0] - o[0]) * (b[1] - o[1]) - (b[0] - o[0]) * (a[1] - o[1]);
  }
  return twice / 2;
};

/** Whether a point lies in a polygon, either way round: even-odd rule, an edge that two share counted once. */
export const holdsPoint = (p: Polygon, [x, y]: Vec2): boolean => {
  let inside = false;
  p.forEach((a, i) => {
    const b = p[(i + 1) % p.length] as Vec2;
    if (a[1] > y !== b[1] > y && x < a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])) inside = !inside;
  });
  return inside;
};

/** Left of a→b is positive; scaled to a distance. */
const leftOf = (a: Vec2, b: Vec2, p: Vec2): number => {
  const d =
    ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / Math.hypot(b[0] - a[0], b[1] - a[1]);
  return Math.abs(d) < 1e-10 ? 0 : d;
};

/** The part of a convex polygon to the left of a→b (`keep` 1) or to the right of it (−1). */
export const clipPolygon = (p: Polygon, a: Vec2, b: Vec2, keep: 1 | -1): Polygon => {
  const out: Vec2[] = [];
  for (let i = 0; i < p.length; i++) {
    const s = p[i] as Vec2;
    const e = p[(i + 1) % p.length] as Vec2;
    const ds = keep * leftOf(a, b, s);
    const de = keep * leftOf(a, b, e);
    if (ds >= 0) out.push(s);
    if ((ds > 0 && de < 0) || (ds < 0 && de > 0)) {
      const t = ds / (ds - de);
      out.push([
        s[0] === e[0] ? s[0] : s[0] + t * (e[0] - s[0]),
        s[1] === e[1] ? s[1] : s[1] + t * (e[1] - s[1]),
      ]);
    }
  }
  return Math.abs(polygonArea(out)) < NO_AREA ? [] : out;
};

/** Common part of two convex polygons; empty when they only touch. */
export const intersectConvexPolygons = (p: Polygon, q: Polygon): Polygon => {
  let rest = p;
  for (let i = 0; i < q.length && rest.length > 0; i++) {
    rest = clipPolygon(rest, q[i] as Vec2, q[(i + 1) % q.length] as Vec2, 1);
  }
  return rest;
};

/** p less q, both convex, as convex pieces that do not overlap. */
export const subtractConvexPolygon = (p: Polygon, q: Polygon): readonly Polygon[] => {
  const pieces: Polygon[] = [];
  let rest = p;
  for (let i = 0; i < q.length && rest.length > 0; i++) {
    const a = q[i] as Vec2;
    const b = q[(i + 1) % q.length] as Vec2;
    const outside = clipPolygon(rest, a, b, -1);
    if (outside.length > 0) pieces.push(outside);
    rest = clipPolygon(rest, a, b, 1);
  }
  return rest.length === 0 ? [p] : pieces;
};

/** Every piece less every hole. */
export const subtractAll = (pieces: readonly Polygon[], holes: readonly Polygon[]): readonly Polygon[] =>
  holes.reduce<readonly Polygon[]>(
    (left, hole) => left.flatMap((piece) => subtractConvexPolygon(piece, hole)),
    pieces,
  );

/** Whether two convex pieces share a stretch of edge longer than a rounding error. */
export const shareEdge = (p: Polygon, q: Polygon): boolean =>
  p.some((a, i) => {
    const b = p[(i + 1) % p.length] as Vec2;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length < 1e-9) return false;
    const along = (v: Vec2): number =>
      ((v[0] - a[0]) * (b[0] - a[0]) + (v[1] - a[1]) * (b[1] - a[1])) / length;
    return q.some((c, j) => {
      const d = q[(j + 1) % q.length] as Vec2;
      if (Math.abs(leftOf(a, b, c)) > 1e-8 || Math.abs(leftOf(a, b, d)) > 1e-8) return false;
      const [s, t] = [along(c), along(d)];
      return Math.min(Math.max(s, t), length) - Math.max(Math.min(s, t), 0) > 1e-8;
    });
  });

/** Groups convex pieces into connected ones. */
export const connectedPieces = (pieces: readonly Polygon[]): readonly (readonly Polygon[])[] => {
  const group = pieces.map((_, i) => i);
  const root = (i: number): number => (group[i] === i ? i : root(group[i] as number));
  for (let i = 0; i < pieces.length; i++)
    for (let j = i + 1; j < pieces.length; j++)
      if (root(i) !== root(j) && shareEdge(pieces[i] as Polygon, pieces[j] as Polygon))
        group[root(j)] = root(i);
  const byRoot = new Map<number, Polygon[]>();
  pieces.forEach((piece, i) => {
    const key = root(i);
    byRoot.set(key, [...(byRoot.get(key) ?? []), piece]);
  });
  return [...byRoot.values()];
};

/** A circle as the regular polygon of equal area, so that flow areas are true. */
export const circlePolygon = (centre: Vec2, diameter: number, sides = 32): Polygon => {
  const radius = (diameter / 2) * Math.sqrt((2 * Math.PI) / (sides * Math.sin((2 * Math.PI) / sides)));
  return Array.from({ length: sides }, (_, i): Vec2 => {
    const t = (2 * Math.PI * i) / sides;
    return [centre[0] + radius * Math.cos(t), centre[1] + radius * Math.sin(t)];
  });
};

export const rectangle = (u0: number, u1: number, v0: number, v1: number): Polygon => [
  [u0, v0],
  [u1, v0],
  [u1, v1],
  [u0, v1],
];
