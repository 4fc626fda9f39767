import type { Vec2 } from '../numeric/index.js';
import { type Polygon, polygonArea } from './polygon.js';

/** Points nearer than this are one point, mm. */
const SAME = 1e-7;

/**
 * The boundary of convex pieces that touch but do not overlap, as loops: outer ones counter-clockwise, holes
 * clockwise, with points that only carry on a straight line left out. Outer loops come first.
 */
export const mergePieces = (pieces: readonly Polygon[]): readonly Polygon[] => {
  const points: Vec2[] = [];
  const buckets = new Map<string, number[]>();
  const numberOf = (p: Vec2): number => {
    const [i, j] = [Math.round(p[0] / SAME), Math.round(p[1] / SAME)];
    for (let a = i - 1; a <= i + 1; a++)
      for (let b = j - 1; b <= j + 1; b++)
        for (const k of buckets.get(`${a},${b}`) ?? []) {
          const q = points[k] as Vec2;
          if (Math.hypot(q[0] - p[0], q[1] - p[1]) <= SAME) return k;
        }
    points.push(p);
    const key = `${i},${j}`;
    buckets.set(key, [...(buckets.get(key) ?? []), points.length - 1]);
    return points.length - 1;
  };
  const loops = pieces.map((piece) =>
    piece.map(numberOf).filter((n, i, all) => n !== all[(i + 1) % all.length]),
  );
  const edges = new Map<string, [number, number]>();
  for (const loop of loops)
    loop.forEach((a, i) => {
      const b = loop[(i + 1) % loop.length] as number;
      const stops = splitEdge(points, a, b);
      for (let k = 0; k + 1 < stops.length; k++) {
        const [s, e] = [stops[k] as number, stops[k + 1] as number];
        if (!edges.delete(`${e}>${s}`)) edges.set(`${s}>${e}`, [s, e]);
      }
    });
  return chain(points, [...edges.values()])
    .map(straightened)
    .filter((loop) => Math.abs(polygonArea(loop)) > 1e-7)
    .sort((a, b) => polygonArea(b) - polygonArea(a));
};

/** The edge's ends and every other point that lies on it, in order. */
const splitEdge = (points: readonly Vec2[], a: number, b: number): readonly number[] => {
  const [p, q] = [points[a] as Vec2, points[b] as Vec2];
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const length = Math.hypot(dx, dy);
  const inner: { at: number; n: number }[] = [];
  points.forEach((r, n) => {
    if (n === a || n === b) return;
    const along = ((r[0] - p[0]) * dx + (r[1] - p[1]) * dy) / length;
    if (along <= SAME || along >= length - SAME) return;
    const off = Math.abs((r[0] - p[0]) * dy - (r[1] - p[1]) * dx) / length;
    if (off <= SAME) inner.push({ at: along, n });
  });
  return [a, ...inner.sort((x, y) => x.at - y.at).map((x) => x.n), b];
};

/** Walks directed edges into loops, turning as sharply left as it can where several leave a point. */
const chain = (points: readonly Vec2[], edges: readonly [number, number][]): readonly Polygon[] => {
  const from = new Map<number, number[]>();
  for (const [s, e] of edges) from.set(s, [...(from.get(s) ?? []), e]);
  const angle = (a: number, b: number): number => {
    const [p, q] = [points[a] as Vec2, points[b] as Vec2];
    return Math.atan2(q[1] - p[1], q[0] - p[0]);
  };
  const loops: Polygon[] = [];
  for (const [s, e] of edges) {
    if (!(from.get(s) ?? []).includes(e)) continue;
    const loop = [s];
    let [a, b] = [s, e];
    for (;;) {
      from.set(
        a,
        (from.get(a) ?? []).filter((n) => n !== b),
      );
      if (b === s) break;
      loop.push(b);
      const choices = from.get(b) ?? [];
      if (choices.length === 0) break;
      const back = angle(b, a);
      const turn = (n: number): number => {
        const t = back - angle(b, n);
        return t <= 0 ? t + 2 * Math.PI : t;
      };
      const next = choices.reduce((m, n) => (turn(n) < turn(m) ? n : m));
      [a, b] = [b, next];
    }
    loops.push(loop.map((n) => points[n] as Vec2));
  }
  return loops;
};

const straightened = (loop: Polygon): Polygon =>
  loop.filter((p, i) => {
    const a = loop[(i + loop.length - 1) % loop.length] as Vec2;
    const b = loop[(i + 1) % loop.length] as Vec2;
    const cross = (p[0] - a[0]) * (b[1] - p[1]) - (p[1] - a[1]) * (b[0] - p[0]);
    return Math.abs(cross) > SAME * Math.hypot(b[0] - a[0], b[1] - a[1]);
  });
