import type { Box, Moves, Rod } from '../design/index.js';
import { type Rotation, type RoundHull, unrotate3 } from '../geometry/index.js';
import { add3, scale3, type Vec3 } from '../numeric/index.js';

/** A convex piece of an obstacle; its shape is what can be swept more tightly than by its corners. */
export interface ConvexPart {
  readonly shape: Box | Rod | null;
  readonly hull: RoundHull;
}

/**
 * A box or rod as the hull of its corners. A rod is its centre line thickened all round, so that its ends are
 * round: a little more than a rod cut square. Its travel is swept, both ways.
 */
export const hullOfShape = (shape: Box | Rod): RoundHull => {
  if (shape.kind === 'box') {
    const { min, max } = shape;
    const points = [0, 1, 2, 3, 4, 5, 6, 7].map(
      (i): Vec3 => [i & 1 ? max[0] : min[0], i & 2 ? max[1] : min[1], i & 4 ? max[2] : min[2]],
    );
    return { points, radius: 0 };
  }
  const still = shape.travel.every((v) => v === 0);
  const ends = [shape.from, shape.to];
  const points = still
    ? ends
    : ends.flatMap((p) => [add3(p, shape.travel), add3(p, scale3(shape.travel, -1))]);
  return { points, radius: shape.diameter / 2 };
};

/** An obstacle as convex pieces: one, or for a rod with several places one for each stretch of its travel. */
export const convexPartsOf = (shape: Box | Rod): readonly ConvexPart[] => {
  const positions = shape.kind === 'rod' ? (shape.positions ?? []) : [];
  if (shape.kind === 'box' || positions.length === 0) return [{ shape, hull: hullOfShape(shape) }];
  const places = [[shape.from, shape.to] as const, ...positions];
  // Each end goes straight from place to place, and all that the rod passes over lies in the hull of both.
  return positions.map((next, i) => ({
    shape: null,
    hull: { points: [...places[i]!, ...next], radius: shape.diameter / 2 },
  }));
};

/**
 * All the places an obstacle takes as seen from an engine that moves bodily: engine up is obstacle down. A box
 * stays a box; anything else takes each corner of the movement at each of its own.
 */
export const sweptByMoves = (shape: Box | Rod | null, hull: RoundHull, moves: Moves): RoundHull => {
  const [low, high]: readonly [Vec3, Vec3] = [
    [-moves.foreAft, 0, -moves.up],
    [moves.foreAft, 0, moves.down],
  ];
  if (shape?.kind === 'box') {
    return hullOfShape({ kind: 'box', min: add3(shape.min, low), max: add3(shape.max, high) });
  }
  const shifts = movementCorners(moves);
  return { points: hull.points.flatMap((p) => shifts.map((s) => add3(p, s))), radius: hull.radius };
};

/** How far an obstacle is carried, as seen from the engine, at each corner of the engine's bodily movement. */
export const movementCorners = ({ foreAft, up, down }: Moves): readonly Vec3[] => {
  const xs = foreAft === 0 ? [0] : [-foreAft, foreAft];
  const zs = up === 0 && down === 0 ? [0] : [-up, down];
  return xs.flatMap((x) => zs.map((z): Vec3 => [x, 0, z]));
};

export const inPanAxes = (hull: RoundHull, toChassis: Rotation): RoundHull => ({
  points: hull.points.map((p) => unrotate3(toChassis, p)),
  radius: hull.radius,
});
