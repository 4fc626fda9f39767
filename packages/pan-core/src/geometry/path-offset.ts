import type { Vec2 } from '../numeric/index.js';
import type { Path, Segment } from './path.js';
import { lineSegment } from './path-build.js';
import { cross2, distance2, dot2, left2, subtract2, unit2 } from './path-vector.js';

/** Corners turning less than this are straight on, radians. */
const STRAIGHT = 1e-9;

/**
 * A counter-clockwise polygon moved outward by `distance` ≥ 0: edges stay parallel, outward corners become
 * arcs about the corner, inward corners are mitred. Repeated points are dropped.
 * The caller checks the result for crossings; a narrow inlet can close up.
 */
export const polygonOffset = (points: readonly Vec2[], distance: number): Path => {
  const corners = points.filter((p, i) => distance2(p, points[(i + 1) % points.length]!) > STRAIGHT);
  const n = corners.length;
  const out: Segment[] = [];
  const ends = corners.map((at, i) => {
    const u = unit2(subtract2(at, corners[(i + n - 1) % n]!));
    const v = unit2(subtract2(corners[(i + 1) % n]!, at));
    const turn = Math.atan2(cross2(u, v), dot2(u, v));
    const shifted = (d: Vec2): Vec2 => [at[0] + d[1] * distance, at[1] - d[0] * distance];
    if (turn > STRAIGHT) return { at, from: shifted(u), to: shifted(v), turn };
    // Bisector of the two shifted edges.
    const k = -distance / Math.cos(turn / 2);
    const b = left2(unit2([u[0] + v[0], u[1] + v[1]]));
    const mitre: Vec2 = [at[0] + b[0] * k, at[1] + b[1] * k];
    return { at, from: mitre, to: mitre, turn: 0 };
  });
  ends.forEach((end, i) => {
    if (end.turn > 0 && distance > 0) {
      out.push({
        kind: 'arc',
        from: end.from,
        to: end.to,
        centre: end.at,
        radius: distance,
        sweep: end.turn,
      });
    }
    const next = ends[(i + 1) % n]!;
    if (distance2(end.to, next.from) > STRAIGHT) out.push(lineSegment(end.to, next.from));
  });
  return out;
};

/**
 * A polygon with each edge moved inward by its own distance (edge i runs from point i to the next), corners
 * mitred; null when an edge disappears or turns round.
 */
export const insetEdges = (points: readonly Vec2[], distances: readonly number[]): readonly Vec2[] | null => {
  const n = points.length;
  const lines = points.map((a, i) => {
    const d = unit2(subtract2(points[(i + 1) % n]!, a));
    const k = distances[i] ?? 0;
    const normal = left2(d);
    return { at: [a[0] + normal[0] * k, a[1] + normal[1] * k] as Vec2, d };
  });
  const moved = lines.map((line, i): Vec2 => {
    const before = lines[(i + n - 1) % n]!;
    const det = cross2(before.d, line.d);
    if (Math.abs(det) < STRAIGHT) return line.at;
    const t = cross2(subtract2(line.at, before.at), line.d) / det;
    return [before.at[0] + before.d[0] * t, before.at[1] + before.d[1] * t];
  });
  const kept = moved.every((p, i) => dot2(subtract2(moved[(i + 1) % n]!, p), lines[i]!.d) > STRAIGHT);
  return kept ? moved : null;
};
