import type { Vec2 } from '../numeric/index.js';
import type { Profile } from './profile.js';

/** The floor as straight pieces, rear to front: x increasing, `down` positive; equal x makes a shoulder. */
export interface FloorPiece {
  readonly x0: number;
  readonly x1: number;
  readonly down0: number;
  readonly down1: number;
}

/** Largest distance between an arc of a bend and its chords, mm. */
const CHORD_ERROR = 0.05;

/** The formed floor with each bend as chords that touch the arc at their ends; shoulders carry no piece. */
export const formedFloor = (profile: Profile): readonly FloorPiece[] => {
  const points: Vec2[] = [];
  for (const s of profile.path) {
    if (points.length === 0) points.push(s.from);
    if (s.kind === 'arc') {
      const most = 2 * Math.acos(1 - Math.min(CHORD_ERROR / s.radius, 1));
      const count = Math.max(1, Math.ceil(Math.abs(s.sweep) / most));
      const start = Math.atan2(s.from[1] - s.centre[1], s.from[0] - s.centre[0]);
      for (let i = 1; i < count; i++) {
        const t = start + (s.sweep * i) / count;
        points.push([s.centre[0] + s.radius * Math.cos(t), s.centre[1] + s.radius * Math.sin(t)]);
      }
    }
    points.push(s.to);
  }
  return floorPieces(points);
};

/** The floor as drawn, every corner sharp. */
export const sharpFloor = (profile: Profile): readonly FloorPiece[] => floorPieces(profile.sharp);

const floorPieces = (frontToRear: readonly Vec2[]): readonly FloorPiece[] => {
  const pieces: FloorPiece[] = [];
  for (let i = frontToRear.length - 1; i > 0; i--) {
    const [x0, z0] = frontToRear[i] as Vec2;
    const [x1, z1] = frontToRear[i - 1] as Vec2;
    if (x1 > x0) pieces.push({ x0, x1, down0: -z0, down1: -z1 });
  }
  return pieces;
};

/** Depth at x; at a shoulder the shallower of the two sides, where oil can pass. null outside the pan. */
export const depthAt = (floor: readonly FloorPiece[], x: number): number | null => {
  let depth: number | null = null;
  for (const p of floor) {
    if (x < p.x0 || x > p.x1) continue;
    const here =
      x === p.x0
        ? p.down0
        : x === p.x1
          ? p.down1
          : p.down0 + ((p.down1 - p.down0) * (x - p.x0)) / (p.x1 - p.x0);
    depth = depth === null ? here : Math.min(depth, here);
  }
  return depth;
};

/** The floor cut so that every given station is an end of a piece. */
export const cutFloor = (floor: readonly FloorPiece[], stations: readonly number[]): readonly FloorPiece[] =>
  floor.flatMap((p) => {
    const cuts = [...new Set(stations.filter((x) => x > p.x0 && x < p.x1))].sort((a, b) => a - b);
    const ends = [p.x0, ...cuts, p.x1];
    const down = (x: number): number =>
      x === p.x0
        ? p.down0
        : x === p.x1
          ? p.down1
          : p.down0 + ((p.down1 - p.down0) * (x - p.x0)) / (p.x1 - p.x0);
    return ends.slice(1).map((x1, i): FloorPiece => {
      const x0 = ends[i] as number;
      return { x0, x1, down0: down(x0), down1: down(x1) };
    });
  });

/** x at the top of the steepest piece of the floor line as drawn: where the shallow ends and the sump begins. */
export const stepTop = (floor: readonly Vec2[]): number => {
  let best = { slope: -1, x: floor[0]?.[0] ?? 0 };
  for (let i = 0; i + 1 < floor.length; i++) {
    const [xa, da] = floor[i] as Vec2;
    const [xb, db] = floor[i + 1] as Vec2;
    if (db <= da) continue;
    const slope = Math.atan2(db - da, xa - xb);
    if (slope > best.slope) best = { slope, x: xa };
  }
  return best.x;
};
