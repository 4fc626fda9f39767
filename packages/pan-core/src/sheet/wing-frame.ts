import type { Design, Wing } from '../design/index.js';
import { type Path, reversePath, type Segment, trimSegment } from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import { halfWidthAt, type Profile, sideSign, wingPlanes } from '../pan/index.js';

/** A wing seen as if it were on the left: y is the distance from the centre plane, `sign` puts it back. */
export interface WingFrame {
  readonly wing: Wing;
  readonly sign: 1 | -1;
  readonly rear: number;
  readonly front: number;
  /** Distance of the pan's wall and of the wing's outer face at x. */
  readonly wall: (x: number) => number;
  readonly outer: (x: number) => number;
  /** z of the top plane. */
  readonly top: (x: number, y: number) => number;
  /** x where the pan's wall turns, between the wing's ends, increasing. */
  readonly stations: readonly number[];
  /** The pan's inside profile between the wing's ends, rear to front, in [x, z]. */
  readonly foot: Path;
  /** Whether the foot is one straight line, so that floor, outer wall and top fold from one strip. */
  readonly oneFloor: boolean;
  readonly endsAtRear: boolean;
  readonly endsAtFront: boolean;
}

export const wingFrame = (design: Design, profile: Profile, wing: Wing): WingFrame => {
  const rows = design.pan[wing.side];
  const planes = wingPlanes(design, wing);
  const foot = footBetween(reversePath(profile.path), wing.rear, wing.front);
  return {
    wing,
    sign: sideSign(wing.side),
    rear: wing.rear,
    front: wing.front,
    wall: (x) => halfWidthAt(rows, x),
    outer: planes.outer,
    top: (x, y) => -planes.top(x, y),
    stations: rows.map((r) => r[0]).filter((x) => x > wing.rear && x < wing.front),
    foot,
    oneFloor: foot.length === 1 && foot[0]!.kind === 'line',
    endsAtRear: wing.rear <= profile.sharp[profile.sharp.length - 1]![0],
    endsAtFront: wing.front >= profile.sharp[0]![0],
  };
};

/** A point of the wing in pan axes from (x, distance from the centre plane, z). */
export const wingPoint = (frame: WingFrame, x: number, y: number, z: number): Vec3 => [x, frame.sign * y, z];

/** z of the foot at a wing's end. */
export const footEnd = (frame: WingFrame, end: 'rear' | 'front'): number =>
  end === 'rear' ? frame.foot[0]!.from[1] : frame.foot[frame.foot.length - 1]!.to[1];

/** The stretch of a rear-to-front profile over [rear, front]; walls that stand at an end are left out. */
const footBetween = (profile: Path, rear: number, front: number): Path => {
  const out: Segment[] = [];
  for (const s of profile) {
    const [a, b] = [s.from[0], s.to[0]];
    if (s.kind === 'line' && Math.abs(a - b) < 1e-9) {
      // An upright piece belongs to the foot only when the wing spans it.
      if (a > rear + 1e-9 && a < front - 1e-9) out.push(s);
      continue;
    }
    const [lo, hi] = [Math.max(rear, Math.min(a, b)), Math.min(front, Math.max(a, b))];
    if (hi - lo < 1e-9) continue;
    const [t0, t1] = [shareAt(s, a < b ? lo : hi), shareAt(s, a < b ? hi : lo)];
    out.push(t0 === 0 && t1 === 1 ? s : trimSegment(s, t0, t1));
  }
  return out;
};

const shareAt = (s: Segment, x: number): number => {
  if (x === s.from[0]) return 0;
  if (x === s.to[0]) return 1;
  if (s.kind === 'line') return (x - s.from[0]) / (s.to[0] - s.from[0]);
  let [lo, hi] = [0, 1];
  const at = (t: number): number => {
    const a = Math.atan2(s.from[1] - s.centre[1], s.from[0] - s.centre[0]) + s.sweep * t;
    return s.centre[0] + s.radius * Math.cos(a);
  };
  const rising = s.to[0] > s.from[0];
  // Floor arcs turn by less than half a turn, so x runs one way along each.
  for (let i = 0; i < 60; i++) {
    const mid = (lo + hi) / 2;
    if (at(mid) < x === rising) lo = mid;
    else hi = mid;
  }
  return (lo + hi) / 2;
};
