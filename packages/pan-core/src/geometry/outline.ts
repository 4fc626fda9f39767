import type { Vec2 } from '../numeric/index.js';
import { type Polygon, polygonArea } from './polygon.js';

/** A piece of plan between two x, bounded left and right by straight lines; `low` and `high` are y at x0, x1. */
export interface Trapezoid {
  readonly x0: number;
  readonly x1: number;
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
}

interface EdgeLine {
  readonly normal: Vec2;
  readonly offset: number;
}

/**
 * A simple polygon moved inward by `inset` with mitred corners; edges that shrink to nothing on the way are left
 * out, the first to vanish first. null when it closes up or crosses itself.
 */
export const insetPolygon = (polygon: Polygon, inset: number): Polygon | null => {
  let lines: readonly EdgeLine[] = polygon.map((a, i) => {
    const b = polygon[(i + 1) % polygon.length] as Vec2;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const normal: Vec2 = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
    return { normal, offset: normal[0] * a[0] + normal[1] * a[1] };
  });
  lines = lines.filter(
    (line, i) => !isOneLine(line, lines[(i + lines.length - 1) % lines.length] as EdgeLine),
  );
  for (;;) {
    const [before, after] = [cornersAt(lines, 0), cornersAt(lines, inset)];
    if (before === null || after === null) return null;
    const gone = firstToVanish(lines, before, after);
    if (gone === null) return polygonArea(after) > 0 && isSimple(after) ? after : null;
    lines = lines.filter((_, i) => i !== gone);
    if (lines.length < 3) return null;
  }
};

/** A corner on a straight edge parts it into two pieces of one line. */
const isOneLine = (a: EdgeLine, b: EdgeLine): boolean =>
  Math.abs(a.normal[0] * b.normal[1] - a.normal[1] * b.normal[0]) < 1e-9 &&
  a.normal[0] * b.normal[0] + a.normal[1] * b.normal[1] > 0 &&
  Math.abs(a.offset - b.offset) < 1e-6;

/** Where each line meets the one before it, all moved inward; null where neighbours run side by side. */
const cornersAt = (lines: readonly EdgeLine[], inset: number): Polygon | null => {
  const corners: Vec2[] = [];
  for (const [i, { normal, offset }] of lines.entries()) {
    const previous = lines[(i + lines.length - 1) % lines.length] as EdgeLine;
    const det = previous.normal[0] * normal[1] - previous.normal[1] * normal[0];
    if (Math.abs(det) < 1e-9) return null;
    const [p, q] = [previous.offset + inset, offset + inset];
    corners.push([
      (p * normal[1] - q * previous.normal[1]) / det,
      (previous.normal[0] * q - normal[0] * p) / det,
    ]);
  }
  return corners;
};

/** An edge's length shrinks in step with the inset as long as its neighbours stay. */
const firstToVanish = (lines: readonly EdgeLine[], before: Polygon, after: Polygon): number | null => {
  let [first, at] = [2, -1];
  lines.forEach(({ normal }, i) => {
    const next = (i + 1) % lines.length;
    const along = (points: Polygon): number => {
      const [a, b] = [points[i] as Vec2, points[next] as Vec2];
      return (b[0] - a[0]) * normal[1] - (b[1] - a[1]) * normal[0];
    };
    const [full, left] = [along(before), along(after)];
    if (left > 0) return;
    const share = full <= 0 ? 0 : full / (full - left);
    if (share < first) [first, at] = [share, i];
  });
  return at < 0 ? null : at;
};

const side = (a: Vec2, b: Vec2, p: Vec2): number =>
  Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));

/** Whether no two edges of a polygon cross. */
export const isSimple = (polygon: Polygon): boolean => {
  const n = polygon.length;
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const [a, b] = [polygon[i] as Vec2, polygon[i + 1] as Vec2];
      const [c, d] = [polygon[j] as Vec2, polygon[(j + 1) % n] as Vec2];
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return false;
    }
  return true;
};

/** A simple polygon cut at every corner's x into trapezoids; together they are the polygon. */
export const trapezoids = (polygon: Polygon): readonly Trapezoid[] => {
  const stations = [...new Set(polygon.map((p) => p[0]))].sort((a, b) => a - b);
  const out: Trapezoid[] = [];
  for (let i = 0; i + 1 < stations.length; i++) {
    const x0 = stations[i] as number;
    const x1 = stations[i + 1] as number;
    const edges = polygon
      .map((a, k): readonly [Vec2, Vec2] => [a, polygon[(k + 1) % polygon.length] as Vec2])
      .filter(([a, b]) => Math.min(a[0], b[0]) <= x0 && Math.max(a[0], b[0]) >= x1 && a[0] !== b[0])
      .map(([a, b]): readonly [number, number] => [yOn(a, b, x0), yOn(a, b, x1)])
      .sort((p, q) => p[0] + p[1] - q[0] - q[1]);
    for (let k = 0; k + 1 < edges.length; k += 2) {
      out.push({
        x0,
        x1,
        low: edges[k] as readonly [number, number],
        high: edges[k + 1] as readonly [number, number],
      });
    }
  }
  return out;
};

const yOn = (a: Vec2, b: Vec2, x: number): number =>
  x === a[0] ? a[1] : x === b[0] ? b[1] : a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
