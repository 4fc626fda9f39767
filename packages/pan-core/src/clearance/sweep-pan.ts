import type { Design } from '../design/index.js';
import type { Arc } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { halfWidthAt, type Profile, profilePieceNames } from '../pan/index.js';
import { distanceToSweep, edgeToSweep, type Nearest, nearestOf, type Sweep } from './sweep.js';

/** The floor or wall of the pan that comes nearest to a sweep, with its name. */
export interface NearestPart extends Nearest {
  readonly part: string;
}

/**
 * The pan's inside against one sweep. The floor runs straight across, so that its nearest line is the one under
 * the crank; the side walls are nearest at their top edge, as the crank lies above it.
 */
export const panToSweep = (design: Design, profile: Profile, sweep: Sweep): NearestPart => {
  const [floor, walls] = [floorToSweep(design, profile, sweep), wallsToSweep(design, sweep)];
  return walls.distance < floor.distance ? walls : floor;
};

export const floorToSweep = (design: Design, profile: Profile, sweep: Sweep): NearestPart => {
  const floor = nearestOf(
    profile.path.map((s) =>
      s.kind === 'line' ? edgeToSweep(sweep, under(s.from), under(s.to)) : arcToSweep(s, sweep),
    ),
  );
  return { ...floor, part: floorPartAt(design, floor.at) };
};

export const wallsToSweep = (design: Design, sweep: Sweep): NearestPart => {
  const [left, right] = (['left', 'right'] as const).map((side): NearestPart => {
    const top = topEdge(design, side, Math.min(0, sweep.height));
    const near = nearestOf(top.slice(1).map((b, i) => edgeToSweep(sweep, top[i]!, b)));
    return { ...near, part: `${side} side` };
  });
  return right!.distance < left!.distance ? right! : left!;
};

const under = ([x, z]: Vec2): Vec3 => [x, 0, z];

/** The nearest point of a bend: an end, a point straight up or across, or one on a ray to the sweep's corner. */
const arcToSweep = (arc: Arc, sweep: Sweep): Nearest => {
  const start = Math.atan2(arc.from[1] - arc.centre[1], arc.from[0] - arc.centre[0]);
  const corners = [sweep.x0, sweep.x1].flatMap((x) =>
    [-1, 1].map((s): Vec2 => [x, sweep.height + s * sweep.radius]),
  );
  const angles = [
    ...[0, 1, 2, 3].map((k) => (k * Math.PI) / 2),
    ...corners.map((c) => Math.atan2(c[1] - arc.centre[1], c[0] - arc.centre[0])),
  ];
  const within = angles.flatMap((angle) => {
    const turn = Math.sign(arc.sweep) * (angle - start);
    const share = turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI));
    return share <= Math.abs(arc.sweep) ? [angle] : [];
  });
  const points = [
    arc.from,
    arc.to,
    ...within.map(
      (t): Vec2 => [arc.centre[0] + arc.radius * Math.cos(t), arc.centre[1] + arc.radius * Math.sin(t)],
    ),
  ];
  return nearestOf(points.map((p) => ({ distance: distanceToSweep(sweep, under(p)), at: under(p) })));
};

const topEdge = (design: Design, side: 'left' | 'right', z: number): readonly Vec3[] => {
  const rows = design.pan[side];
  const { floor } = design.pan;
  const [front, rear] = [floor[0]![0], floor[floor.length - 1]![0]];
  const xs = [rear, ...rows.map((r) => r[0]).filter((x) => x > rear && x < front), front];
  const sign = side === 'left' ? 1 : -1;
  return xs.map((x): Vec3 => [x, sign * halfWidthAt(rows, x), z]);
};

/** The name of the floor piece, or end wall, at a point of the inside. */
export const floorPartAt = (design: Design, at: Vec3): string => {
  const { floor } = design.pan;
  const names = profilePieceNames(design);
  const i = floor.findIndex((p) => at[0] > p[0]);
  if (at[0] >= floor[0]![0] && at[2] > -floor[0]![1]) return names[0]!;
  return i < 0 ? names[names.length - 1]! : names[Math.max(i, 1)]!;
};
