import type { Vec2 } from '../numeric/index.js';
import type { Arc, Path, Segment } from './path.js';
import { dot2, left2, mix2, scale2, subtract2, unit2 } from './path-vector.js';

/** Point at share t (0–1) of a piece; the ends are the piece's own, digit for digit. */
export const pointAt = (s: Segment, t: number): Vec2 => {
  if (t <= 0) return s.from;
  if (t >= 1) return s.to;
  if (s.kind === 'line') return mix2(s.from, s.to, t);
  const [x, y] = subtract2(s.from, s.centre);
  const a = s.sweep * t;
  const [c, d] = [Math.cos(a), Math.sin(a)];
  return [s.centre[0] + c * x - d * y, s.centre[1] + d * x + c * y];
};

/** Unit direction of travel at share t of a piece. */
export const directionAt = (s: Segment, t: number): Vec2 => {
  if (s.kind === 'line') return unit2(subtract2(s.to, s.from));
  const radial = unit2(subtract2(pointAt(s, t), s.centre));
  return scale2(left2(radial), Math.sign(s.sweep));
};

/** Share of an arc's sweep at which it passes the direction of `p` from its centre; may lie outside 0–1. */
export const arcShare = (arc: Arc, p: Vec2): number => {
  const a = subtract2(arc.from, arc.centre);
  const b = subtract2(p, arc.centre);
  const turned = Math.atan2(a[0] * b[1] - a[1] * b[0], dot2(a, b));
  const size = Math.abs(arc.sweep);
  let along = turned * Math.sign(arc.sweep);
  // Choose the turn nearest the arc's middle, so that points just before its start come out negative.
  while (along < size / 2 - Math.PI) along += 2 * Math.PI;
  while (along > size / 2 + Math.PI) along -= 2 * Math.PI;
  return along / size;
};

/** The piece between shares a < b. */
export const trimSegment = (s: Segment, a: number, b: number): Segment => {
  const from = pointAt(s, a);
  const to = pointAt(s, b);
  return s.kind === 'line'
    ? { kind: 'line', from, to }
    : { ...s, from, to, sweep: s.sweep * (Math.min(b, 1) - Math.max(a, 0)) };
};

/** Points along a path, arcs as chords that leave the arc by no more than `sagitta` mm. */
export const pathPoints = (path: Path, sagitta: number): readonly Vec2[] => {
  const out: Vec2[] = [];
  for (const s of path) {
    const n = s.kind === 'line' ? 1 : arcChords(s, sagitta);
    for (let i = 0; i < n; i++) out.push(pointAt(s, i / n));
  }
  const last = path[path.length - 1];
  if (last !== undefined) out.push(last.to);
  return out;
};

const arcChords = (arc: Arc, sagitta: number): number => {
  const step = 2 * Math.acos(Math.max(-1, 1 - sagitta / arc.radius));
  return Math.max(1, Math.ceil(Math.abs(arc.sweep) / step));
};
