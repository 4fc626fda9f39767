import type { Vec2 } from '../numeric/index.js';
import type { Path, Segment } from './path.js';
import { pathArea } from './path-area.js';
import { SAME_POINT, shareOf } from './path-crossing.js';
import { reversePath } from './path-transform.js';
import { cross2, distance2, dot2, subtract2 } from './path-vector.js';

/** Largest gap between the end of a piece and the start of the next, round to the first; mm. */
export const largestGap = (path: Path): number =>
  path.reduce((worst, s, i) => Math.max(worst, distance2(s.to, path[(i + 1) % path.length]!.from)), 0);

export const isClosed = (path: Path): boolean => path.length > 0 && largestGap(path) < SAME_POINT;

export const counterClockwise = (path: Path): Path => (pathArea(path) < 0 ? reversePath(path) : path);

export const clockwise = (path: Path): Path => (pathArea(path) > 0 ? reversePath(path) : path);

/** Whether a point lies inside a closed path, on its edge, or outside. */
export const pointInPath = (path: Path, p: Vec2): 'inside' | 'edge' | 'outside' => {
  if (path.some((s) => shareOf(s, p) !== null)) return 'edge';
  return Math.abs(path.reduce((turned, s) => turned + angleSeen(s, p), 0)) > Math.PI ? 'inside' : 'outside';
};

/** Angle through which an observer at p turns to follow a piece from end to end. */
const angleSeen = (s: Segment, p: Vec2): number => {
  const u = subtract2(s.from, p);
  const v = subtract2(s.to, p);
  const turned = Math.atan2(cross2(u, v), dot2(u, v));
  if (s.kind === 'line' || distance2(s.centre, p) >= s.radius) return turned;
  const sense = Math.sign(s.sweep);
  const side = cross2(subtract2(s.to, s.from), subtract2(p, s.from)) / distance2(s.from, s.to);
  // On the chord the arc is half a turn; beyond it, on the arc's side, the chord turns the wrong way round.
  if (Math.abs(side) < 1e-12) return sense * Math.PI;
  return sense * side < 0 ? turned + sense * 2 * Math.PI : turned;
};
