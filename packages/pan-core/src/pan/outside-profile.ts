import type { Design } from '../design/index.js';
import type { Vec2 } from '../numeric/index.js';
import { stepTop } from './floor-line.js';
import type { Corner, Profile } from './profile.js';

/** The belly from the side, front to rear, as straight edges: its outside or its inside. */
export interface OutsideLine {
  /** [x, z]; x never increases, both ends at the rail plane. */
  readonly points: readonly Vec2[];
  /** What the edge from point i to i + 1 is on the pan. */
  readonly names: readonly string[];
}

/** Largest distance between a bend's outside arc and its chords, mm; the chords stand on the outer side. */
export const OUTSIDE_CHORD = 0.005;

/**
 * The formed inside moved outward by the sheet's thickness: bends with the oil inside get radius R + T as
 * tangent lines around the arc, inward bends radius R as chords across the hollow, welded corners a mitre.
 * So the line never lies inside the metal.
 */
export const outsideLine = (design: Design, profile: Profile): OutsideLine => {
  const { thickness, bendRadius } = design.pan.sheet;
  return movedLine(design, profile, thickness, (turn) => (turn > 0 ? bendRadius + thickness : bendRadius));
};

/** The formed inside itself, with the chords of its bends on the oil's side, so that it never lies in the metal. */
export const insideLine = (design: Design, profile: Profile): OutsideLine =>
  movedLine(design, profile, 0, null);

/** @param outer Radius of the moved line at a bend of a given turn; null for the inside face's own. */
const movedLine = (
  design: Design,
  profile: Profile,
  out: number,
  outer: ((turn: number) => number) | null,
): OutsideLine => {
  const { sharp, corners } = profile;
  const pieceNames = profilePieceNames(design);
  const directions = sharp.slice(1).map((b, i) => unit(sharp[i]!, b));
  const normals = directions.map(([x, z]): Vec2 => [-z, x]);
  const moved = (p: Vec2, n: Vec2): Vec2 => [p[0] + out * n[0], p[1] + out * n[1]];
  const points: Vec2[] = [moved(sharp[0]!, normals[0]!)];
  const names: string[] = [];
  const add = (p: Vec2, name: string): void => {
    const last = points[points.length - 1]!;
    if (Math.hypot(p[0] - last[0], p[1] - last[1]) < 1e-9) return;
    points.push(p);
    names.push(name);
  };
  corners.forEach((corner, i) => {
    const radius = outer === null ? corner.rho : outer(corner.turn);
    const around = outer === null ? corner.turn < 0 : corner.turn > 0;
    const bend = bendPoints(corner, directions[i]!, directions[i + 1]!, { out, radius, around });
    const bendName = `bend from ${pieceNames[i]} to ${pieceNames[i + 1]}`;
    bend.forEach((p, k) => {
      add(p, k === 0 ? pieceNames[i]! : bendName);
    });
  });
  add(moved(sharp[sharp.length - 1]!, normals[normals.length - 1]!), pieceNames[pieceNames.length - 1]!);
  return { points, names };
};

const unit = (a: Vec2, b: Vec2): Vec2 => {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
};

interface BendLine {
  readonly out: number;
  readonly radius: number;
  /** Tangent lines around the arc, or chords across it. */
  readonly around: boolean;
}

/** Points of one corner, in order; u and v are the directions before and after it. */
const bendPoints = (corner: Corner, u: Vec2, v: Vec2, line: BendLine): readonly Vec2[] => {
  const { out, radius, around } = line;
  const outward: Vec2 = [-u[1], u[0]];
  if (!corner.folded) {
    // The mitre: along the first edge's outside by T·tan(turn/2).
    return [along(corner.at, outward, out, u, out * Math.tan(corner.turn / 2))];
  }
  const start = along(corner.at, outward, out, u, -corner.setback);
  if (radius < 1e-9) return [start];
  const size = Math.abs(corner.turn);
  const side = Math.sign(corner.turn);
  // The centre lies on the oil's side of an oil-inside bend, on the other side of an inward one.
  const centre = along(start, outward, -side * radius, u, 0);
  const point = (angle: number, reach: number): Vec2 =>
    along(centre, outward, side * reach * Math.cos(angle), u, reach * Math.sin(angle));
  if (around) {
    const count = Math.max(1, Math.ceil(size / (2 * Math.acos(radius / (radius + OUTSIDE_CHORD)))));
    const share = size / count;
    return range(count).map((k) => point((k + 0.5) * share, radius / Math.cos(share / 2)));
  }
  const count = Math.max(1, Math.ceil(size / (2 * Math.acos(1 - Math.min(OUTSIDE_CHORD / radius, 1)))));
  const inner = range(count - 1).map((k) => point(((k + 1) * size) / count, radius));
  // The last point comes from the edge after the bend, so that it lies on that edge to the last digit.
  const end = along(corner.at, [-v[1], v[0]], out, v, corner.setback);
  return [start, ...inner, end];
};

const along = (p: Vec2, n: Vec2, byN: number, u: Vec2, byU: number): Vec2 => [
  p[0] + n[0] * byN + u[0] * byU,
  p[1] + n[1] * byN + u[1] * byU,
];

const range = (count: number): readonly number[] => Array.from({ length: count }, (_, k) => k);

/** Front wall, floor pieces front to rear, rear wall. */
export const profilePieceNames = (design: Design): readonly string[] => {
  const { floor } = design.pan;
  const from = design.pan.sumpFrom ?? stepTop(floor);
  const pieces = floor.slice(1).map((b, i) => {
    const a = floor[i]!;
    if (b[1] - a[1] > a[0] - b[0]) return 'step';
    if (a[1] - b[1] > a[0] - b[0]) return 'rising step';
    return (a[0] + b[0]) / 2 >= from ? 'shallow floor' : 'sump floor';
  });
  return ['front wall', ...pieces, 'rear wall'];
};
