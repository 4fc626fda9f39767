import type { Vec2 } from '../numeric/index.js';
import type { Arc, Line, Path, Segment } from './path.js';
import { cross2, distance2, dot2, left2, length2, subtract2, unit2 } from './path-vector.js';

export const lineSegment = (from: Vec2, to: Vec2): Line => ({ kind: 'line', from, to });

/** An arc by its centre and ends; `sweep` in radians, positive counter-clockwise. */
export const arcSegment = (centre: Vec2, from: Vec2, to: Vec2, sweep: number): Arc => ({
  kind: 'arc',
  from,
  to,
  centre,
  radius: distance2(centre, from),
  sweep,
});

/** The straight path through points; closed paths end where they begin. */
export const polylinePath = (points: readonly Vec2[], closed: boolean): Path => {
  const out: Segment[] = [];
  for (let i = 0; i + 1 < points.length; i++) out.push(lineSegment(points[i]!, points[i + 1]!));
  if (closed && points.length > 2) out.push(lineSegment(points[points.length - 1]!, points[0]!));
  return out;
};

/** A full circle as two half turns, counter-clockwise. */
export const circlePath = (centre: Vec2, radius: number): Path => {
  const a: Vec2 = [centre[0] + radius, centre[1]];
  const b: Vec2 = [centre[0] - radius, centre[1]];
  return [
    { kind: 'arc', from: a, to: b, centre, radius, sweep: Math.PI },
    { kind: 'arc', from: b, to: a, centre, radius, sweep: Math.PI },
  ];
};

/**
 * The arc that leaves `from` along the unit direction `along` and ends at `to`; a line when they are in line.
 * Tangent–chord theorem: the sweep is twice the angle between tangent and chord.
 */
export const tangentArc = (from: Vec2, along: Vec2, to: Vec2): Segment => {
  const chord = subtract2(to, from);
  const half = Math.atan2(cross2(along, chord), dot2(along, chord));
  if (Math.abs(half) < 1e-9) return lineSegment(from, to);
  const radius = length2(chord) / (2 * Math.sin(half));
  const normal = left2(along);
  const centre: Vec2 = [from[0] + normal[0] * radius, from[1] + normal[1] * radius];
  return { kind: 'arc', from, to, centre, radius: Math.abs(radius), sweep: 2 * half };
};

/** The arc from a to b through a point between them; a line when the three are in line. */
export const arcThrough = (a: Vec2, between: Vec2, b: Vec2): Segment => {
  const [u, v] = [subtract2(between, a), subtract2(b, a)];
  const det = 2 * cross2(u, v);
  if (Math.abs(det) < 1e-12 * dot2(v, v)) return lineSegment(a, b);
  const [uu, vv] = [dot2(u, u), dot2(v, v)];
  const centre: Vec2 = [a[0] + (v[1] * uu - u[1] * vv) / det, a[1] + (u[0] * vv - v[0] * uu) / det];
  const [p, q] = [subtract2(a, centre), subtract2(b, centre)];
  const least = Math.atan2(cross2(p, q), dot2(p, q));
  // The point between lies to the right of the chord of a counter-clockwise arc.
  const sense = det < 0 ? -1 : 1;
  const sweep = least * sense >= 0 ? least : least + sense * 2 * Math.PI;
  return { kind: 'arc', from: a, to: b, centre, radius: Math.hypot(p[0], p[1]), sweep };
};

/** One corner of a polygon to be rounded; radius 0 leaves it sharp. */
export interface RoundedCorner {
  readonly at: Vec2;
  readonly radius: number;
}

/**
 * A closed polygon with some corners replaced by true tangent arcs.
 * The caller makes sure that the tangent lengths fit on the edges.
 */
export const roundedPath = (corners: readonly RoundedCorner[]): Path => {
  const n = corners.length;
  const ends = corners.map(({ at, radius }, i) => {
    const u = unit2(subtract2(at, corners[(i + n - 1) % n]!.at));
    const v = unit2(subtract2(corners[(i + 1) % n]!.at, at));
    const turn = Math.atan2(cross2(u, v), dot2(u, v));
    const setback = radius * Math.tan(Math.abs(turn) / 2);
    if (setback < 1e-12) return { from: at, to: at, arc: null };
    const from: Vec2 = [at[0] - u[0] * setback, at[1] - u[1] * setback];
    const to: Vec2 = [at[0] + v[0] * setback, at[1] + v[1] * setback];
    const inward = turn > 0 ? left2(u) : left2([-u[0], -u[1]]);
    const centre: Vec2 = [from[0] + inward[0] * radius, from[1] + inward[1] * radius];
    const arc: Arc = { kind: 'arc', from, to, centre, radius, sweep: turn };
    return { from, to, arc };
  });
  const out: Segment[] = [];
  ends.forEach(({ from, arc }, i) => {
    const before = ends[(i + n - 1) % n]!.to;
    if (distance2(before, from) > 1e-12) out.push(lineSegment(before, from));
    if (arc !== null) out.push(arc);
  });
  // The walk began with the edge into the first corner, so the path is already closed.
  return out;
};
