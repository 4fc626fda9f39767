import type { Vec2 } from '../numeric/index.js';
import type { Arc, Line, Path, Segment } from './path.js';
import { arcShare } from './path-point.js';
import { reachGap, segmentReach } from './path-reach.js';
import { cross2, distance2, dot2, left2, subtract2, unit2 } from './path-vector.js';

/** Points nearer than this are one point, mm: far below a cut's width, far above rounding. */
export const SAME_POINT = 1e-7;

/** A meeting of two pieces at shares `a` and `b` of each; a shared stretch gives its two ends. */
export interface Meeting {
  readonly a: number;
  readonly b: number;
}

/** Where two pieces meet, ends included; at most four meetings. */
export const segmentMeetings = (p: Segment, q: Segment): readonly Meeting[] => {
  if (reachGap(segmentReach(p), segmentReach(q)) > WIDE) return [];
  const points = [...meetingPoints(p, q), ...endsOn(p, q), ...endsOn(q, p)];
  const out: Meeting[] = [];
  for (const x of points) {
    const [a, b] = [shareOf(p, x), shareOf(q, x)];
    if (a === null || b === null) continue;
    if (!out.some((m) => sameShare(p, m.a, a) && sameShare(q, m.b, b))) out.push({ a, b });
  }
  return out;
};

/** Far more than rounding and a meeting's tolerance together, mm. */
const WIDE = 1e-3;

const size = (s: Segment): number =>
  s.kind === 'line' ? distance2(s.from, s.to) : s.radius * Math.abs(s.sweep);

const sameShare = (s: Segment, a: number, b: number): boolean => Math.abs(a - b) * size(s) < 2 * SAME_POINT;

/** Share of a piece at which it passes p, ends snapped; null when p is not on it. */
export const shareOf = (s: Segment, p: Vec2): number | null => {
  if (distance2(p, s.from) < SAME_POINT) return 0;
  if (distance2(p, s.to) < SAME_POINT) return 1;
  if (s.kind === 'line') {
    const d = subtract2(s.to, s.from);
    const length = Math.hypot(d[0], d[1]);
    const r = subtract2(p, s.from);
    if (Math.abs(cross2(d, r)) / length > SAME_POINT) return null;
    const t = dot2(d, r) / (length * length);
    return t > 0 && t < 1 ? t : null;
  }
  if (Math.abs(distance2(p, s.centre) - s.radius) > SAME_POINT) return null;
  const t = arcShare(s, p);
  return t > 0 && t < 1 ? t : null;
};

const endsOn = (p: Segment, q: Segment): readonly Vec2[] =>
  [p.from, p.to].filter((x) => shareOf(q, x) !== null);

const meetingPoints = (p: Segment, q: Segment): readonly Vec2[] => {
  if (p.kind === 'line') return q.kind === 'line' ? lineLine(p, q) : lineArc(p, q);
  return q.kind === 'line' ? lineArc(q, p) : arcArc(p, q);
};

const lineLine = (p: Line, q: Line): readonly Vec2[] => {
  const d = subtract2(p.to, p.from);
  const e = subtract2(q.to, q.from);
  const det = cross2(d, e);
  // Parallel lines meet, if at all, at their ends, and those are tried apart.
  if (Math.abs(det) < 1e-14 * Math.hypot(...d) * Math.hypot(...e)) return [];
  const t = cross2(subtract2(q.from, p.from), e) / det;
  return [[p.from[0] + t * d[0], p.from[1] + t * d[1]]];
};

const lineArc = (p: Line, q: Arc): readonly Vec2[] => {
  const u = unit2(subtract2(p.to, p.from));
  const r = subtract2(q.centre, p.from);
  const along = dot2(r, u);
  const away = cross2(u, r);
  const under = q.radius * q.radius - away * away;
  if (under < -2 * q.radius * SAME_POINT) return [];
  const half = Math.sqrt(Math.max(0, under));
  return [along - half, along + half].map((t): Vec2 => [p.from[0] + t * u[0], p.from[1] + t * u[1]]);
};

const arcArc = (p: Arc, q: Arc): readonly Vec2[] => {
  const d = distance2(p.centre, q.centre);
  if (d < SAME_POINT) return [];
  const along = (d * d + p.radius * p.radius - q.radius * q.radius) / (2 * d);
  const under = p.radius * p.radius - along * along;
  if (under < -2 * p.radius * SAME_POINT) return [];
  const half = Math.sqrt(Math.max(0, under));
  const u = unit2(subtract2(q.centre, p.centre));
  const n = left2(u);
  return [half, -half].map(
    (h): Vec2 => [p.centre[0] + along * u[0] + h * n[0], p.centre[1] + along * u[1] + h * n[1]],
  );
};

/** Pieces of one or two paths that meet elsewhere than at the joints of a path. */
export interface Crossing {
  readonly first: number;
  readonly second: number;
  readonly share: Meeting;
}

/** Where a path meets itself other than end to end with its neighbours. */
export const selfCrossings = (path: Path): readonly Crossing[] => {
  const out: Crossing[] = [];
  const n = path.length;
  const reaches = path.map(segmentReach);
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      if (reachGap(reaches[i]!, reaches[j]!) > SAME_POINT) continue;
      for (const share of segmentMeetings(path[i]!, path[j]!)) {
        const follows = j === i + 1 && share.a === 1 && share.b === 0;
        const closes = i === 0 && j === n - 1 && share.a === 0 && share.b === 1;
        if (!follows && !closes) out.push({ first: i, second: j, share });
      }
    }
  return out;
};

/** Where two paths touch or cross. */
export const pathCrossings = (p: Path, q: Path): readonly Crossing[] => {
  const reaches = q.map(segmentReach);
  return p.flatMap((s, first) => {
    const reach = segmentReach(s);
    return q.flatMap((t, second) =>
      reachGap(reach, reaches[second]!) > SAME_POINT
        ? []
        : segmentMeetings(s, t).map((share): Crossing => ({ first, second, share })),
    );
  });
};
