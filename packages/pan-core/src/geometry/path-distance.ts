import type { Vec2 } from '../numeric/index.js';
import type { Arc, Path, Segment } from './path.js';
import { segmentMeetings } from './path-crossing.js';
import { arcShare } from './path-point.js';
import { reachGap, segmentReach } from './path-reach.js';
import { add2, distance2, dot2, scale2, subtract2 } from './path-vector.js';

/** The point of a piece nearest to p. */
export const nearestOnSegment = (s: Segment, p: Vec2): Vec2 => {
  if (s.kind === 'line') {
    const d = subtract2(s.to, s.from);
    const t = dot2(subtract2(p, s.from), d) / dot2(d, d);
    return t <= 0 ? s.from : t >= 1 ? s.to : add2(s.from, scale2(d, t));
  }
  const away = distance2(p, s.centre);
  const share = away === 0 ? 0 : arcShare(s, p);
  if (share >= 0 && share <= 1 && away > 0) return towards(s, p, away);
  return distance2(p, s.from) <= distance2(p, s.to) ? s.from : s.to;
};

const towards = (s: Arc, p: Vec2, away: number): Vec2 =>
  add2(s.centre, scale2(subtract2(p, s.centre), s.radius / away));

/** Least distance from a point to a path, mm. */
export const pathDistance = (path: Path, p: Vec2): number =>
  path.reduce((least, s) => Math.min(least, distance2(p, nearestOnSegment(s, p))), Number.POSITIVE_INFINITY);

/**
 * Least distance between two pieces, mm; 0 where they meet. Else it lies at an end of one of them, or on the
 * line from an arc's centre square to the other piece.
 */
export const segmentDistance = (p: Segment, q: Segment): number => {
  if (segmentMeetings(p, q).length > 0) return 0;
  const tries: Vec2[] = [p.from, p.to, ...squareFrom(q, p)];
  const back: Vec2[] = [q.from, q.to, ...squareFrom(p, q)];
  return Math.min(
    ...tries.map((x) => distance2(x, nearestOnSegment(q, x))),
    ...back.map((x) => distance2(x, nearestOnSegment(p, x))),
  );
};

/** Points of `on` that are nearest to, or in line with, the centre of an arc. */
const squareFrom = (arc: Segment, on: Segment): readonly Vec2[] =>
  arc.kind === 'arc' ? [nearestOnSegment(on, arc.centre)] : [];

/** Least distance between two paths, mm. */
export const pathGap = (p: Path, q: Path): number => {
  let least = Number.POSITIVE_INFINITY;
  const reaches = q.map(segmentReach);
  for (const s of p) {
    const reach = segmentReach(s);
    q.forEach((t, i) => {
      if (reachGap(reach, reaches[i]!) < least) least = Math.min(least, segmentDistance(s, t));
    });
  }
  return least;
};
