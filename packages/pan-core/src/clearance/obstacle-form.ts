import type { Moves, Shape } from '../design/index.js';
import { boundsOf, type Rotation, rotate3, turnAboutX } from '../geometry/index.js';
import { add3, scale3, subtract3, type Vec3 } from '../numeric/index.js';
import { type Body, faceNameAt } from './body.js';
import { deepestTurn } from './deepest-turn.js';
import { type LeastGap, leastGap, type Rock } from './least-gap.js';
import { type ConvexPart, convexPartsOf, inPanAxes, sweptByMoves } from './obstacle-hull.js';
import { boxPart } from './obstacle-part.js';
import { prismParts } from './obstacle-prism.js';
import { partingShift } from './parting-shift.js';
import { planeGap, planeReach } from './plane-gap.js';
import { scanForm } from './scan-form.js';
import { surfaceName } from './surface-name.js';

/** Where the engine stands and how it moves while a distance is taken. */
export interface Motion {
  readonly toChassis: Rotation;
  readonly rock: Rock;
  /** Bodily movement on the mountings; null: none. */
  readonly moves: Moves | null;
  /** Where the engine stands, from where the design has it, in the chassis’s axes, mm. */
  readonly shift: Vec3;
}

/** One place of closest approach, signed. */
export interface Approach {
  readonly distance: number;
  readonly at: Vec3;
  readonly feature: string;
  readonly angle: number;
  /** Where on a scan, in its own unit and axes; only for an engine at rest. */
  readonly onObstacle?: Vec3 | null;
  /** The face, edge or corner of a box that is nearest; of other shapes nothing is told. */
  readonly part?: string | null;
}

/** When a gap need not be known better, mm. */
export interface GapSearch {
  /** At least this is as good as any more. */
  readonly enough: number;
  /** How much less than the true least gap the answer may be. */
  readonly slack: number;
}

/** An obstacle to the search for distances: every kind of shape answers these two questions and no other. */
export interface ObstacleForm {
  /** The closest approach over the motion, deepest when they meet; its distance is never more than the true one. */
  readonly approach: (body: Body, motion: Motion) => Approach;
  /**
   * The least gap over the motion, never more than the true one; 0 or less where they meet. Where the true gap
   * is `enough` or more, any number from `enough` up to it.
   */
  readonly gap: (body: Body, motion: Motion, search: GapSearch) => number;
}

export const formOf = (shape: Shape): ObstacleForm => {
  if (shape.kind === 'plane') {
    return {
      approach: (body, motion) => planeGap(body, shape, motion),
      gap: (body, motion) => planeReach(body, shape, motion).distance,
    };
  }
  if (shape.kind === 'scan') return scanForm(shape);
  return hullForm(shape.kind === 'prism' ? prismParts(shape) : convexPartsOf(shape));
};

/** A shape that is a union of convex ones, each perhaps thickened all round. */
export const hullForm = (parts: readonly ConvexPart[]): ObstacleForm => ({
  approach: (body, motion) =>
    parts.map((part) => hullApproach(body, part, motion)).reduce((a, b) => (b.distance < a.distance ? b : a)),
  gap: (body, motion, search) =>
    Math.min(...parts.map((part) => leastGap(body, placed(part, motion), motion.rock, search).distance)),
});

/** An obstacle at every place it takes as seen from the engine. */
const placed = ({ shape, hull }: ConvexPart, { moves, shift, toChassis }: Motion) => {
  const swept = moves === null ? hull : sweptByMoves(shape, hull, moves);
  const still = shift.every((v) => v === 0);
  const points = still ? swept.points : swept.points.map((p) => subtract3(p, shift));
  return inPanAxes({ points, radius: swept.radius }, toChassis);
};

const hullApproach = (body: Body, part: ConvexPart, motion: Motion): Approach => {
  const hull = placed(part, motion);
  const gap = leastGap(body, hull, motion.rock);
  if (!gap.meets) {
    const feature = faceNameAt(body.solids[gap.solid]!, gap.onBody, gap.toward);
    const nearest = partOf(part, motion, gap);
    return { distance: gap.distance, at: gap.onBody, feature, angle: gap.angle, part: nearest };
  }
  if (body.measure === 'shift') {
    const shift = partingShift(body, hull, motion.rock);
    return { distance: -shift, at: gap.onBody, feature: body.solids[gap.solid]!.name, angle: gap.angle };
  }
  const deep = deepestTurn(body, hull, motion.rock);
  const feature = surfaceName(body, deep) ?? body.solids[gap.solid]!.name;
  return { distance: -deep.depth, at: deep.at, feature, angle: deep.angle };
};

/** Where the nearest point lies on a box, in the car's directions. */
const partOf = (
  { shape, hull }: ConvexPart,
  { toChassis, rock, moves, shift }: Motion,
  { onBody, toward, distance, angle }: LeastGap,
): string | null => {
  if (shape?.kind !== 'box') return null;
  const { points } = moves === null ? hull : sweptByMoves(shape, hull, moves);
  const { low: min, high: max } = boundsOf(points);
  // The search turned the box by less the angle; back to where it stands.
  const there = turnAboutX(add3(onBody, scale3(toward, distance)), rock.height, angle);
  return boxPart({ min, max }, add3(rotate3(toChassis, there), shift));
};
