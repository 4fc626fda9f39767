import type { Design, Plane } from '../design/index.js';
import { dot3, length3, subtract3, type Vec2, type Vec3 } from '../numeric/index.js';
import type { OuterSolid } from '../pan/index.js';
import { type Body, bodyOf } from './body.js';
import { carriedSolids } from './carried.js';
import { formedObstacles } from './chassis.js';
import { chassisAxes, chassisAxesAt } from './chassis-axes.js';
import { movesOf } from './engine-motion.js';
import { roadsOf } from './ground.js';
import { type KnownRoom, knownRoom } from './known-room.js';
import { formOf, type Motion, type ObstacleForm } from './obstacle-form.js';

/** One thing of the engine against one of the car, as the engine is shifted. */
export interface RoomPair {
  /** As the clearances call it. */
  readonly name: string;
  /** The obstacle's own name, or `ground`. */
  readonly obstacle: string;
  /** Wanted clearance and the measurement's plus-or-minus, mm. */
  readonly wants: number;
  /**
   * How much more than wanted is there over the engine's movement, with the engine shifted in the chassis's
   * axes: never more than the true figure, by `FINE` less at most, and never more than `CAP`. Where the two
   * meet it is no less than minus what is wanted. From `enough` on, any figure up to the true one will do.
   */
  readonly spare: (shift: Vec3, enough?: number) => number;
  /** Between which limits `spare` must be, from looks taken before; only where a look is dear. */
  readonly between?: KnownRoom<Vec3>['between'];
}

/** Spare room beyond this is not asked for, mm. */
export const CAP = 40;
/** Spare room is known to this, mm. */
export const FINE = 0.05;

/** A look goes on until what is equal to the least so far is told from what is more, mm. */
const TIED = 1e-9;

/** How much of a clearance is wanted, after the user's own limits. */
export type Wanted = (row: {
  readonly name: string;
  readonly ground: boolean;
  readonly usual: number;
}) => number;

/**
 * Everything that can stop the engine where it is shifted bodily; null where the axes, or the height of the
 * crank that it rocks about, are not known.
 *
 * @param farthest Nothing is shifted farther than this, mm: what is beyond its reach is left out.
 * @param noseUp The engine's nose at another height than the design's, radians.
 */
export const roomPairs = (
  design: Design,
  solids: readonly OuterSolid[],
  wanted: Wanted,
  farthest: number,
  noseUp: number | null = null,
): readonly RoomPair[] | null => {
  const axes = noseUp === null ? chassisAxes(design) : chassisAxesAt(design, noseUp);
  if (!axes.known) return null;
  const motion = movesOf(design, axes.toChassis);
  if (motion === null) return null;
  const pan = bodyOf(solids);
  const carried = carriedSolids(design);
  const engine = carried.length === 0 ? null : bodyOf(carried);
  const { groundPlusMinus } = design.chassis;
  return [
    ...roadsOf(design).flatMap(({ name, usual, planes }): readonly RoomPair[] => {
      if (planes.length === 0) return [];
      const wants = wanted({ name, ground: true, usual }) + groundPlusMinus;
      const spares = planes.map((plane) => planeSpare(plane, pan, motion, wants));
      return [
        { name, obstacle: 'ground', wants, spare: (shift) => Math.min(...spares.map((one) => one(shift))) },
      ];
    }),
    ...formedObstacles(design).flatMap(({ obstacle, form }) => {
      const pairOf = (name: string, body: Body): readonly RoomPair[] => {
        const wants = wanted({ name, ground: false, usual: obstacle.clear }) + obstacle.plusMinus;
        const { shape } = obstacle;
        const reach = wants + farthest + CAP;
        if (shape.kind !== 'plane' && form.gap(body, motion, { enough: reach, slack: 1 }) >= reach) return [];
        const spare =
          shape.kind === 'plane'
            ? planeSpare(shape, body, motion, wants)
            : formSpare(form, body, motion, wants);
        const room = shape.kind === 'scan' ? knownRoom(spare, shiftBetween, FINE) : { spare };
        return [{ name, obstacle: obstacle.name, wants, ...room }];
      };
      return [
        ...pairOf(obstacle.name, pan),
        ...(engine === null ? [] : pairOf(`engine to ${obstacle.name}`, engine)),
      ];
    }),
  ];
};

const shiftBetween = (a: Vec3, b: Vec3): number => length3(subtract3(a, b));

const formSpare =
  (form: ObstacleForm, body: Body, motion: Motion, wants: number): RoomPair['spare'] =>
  (shift, limit = CAP) => {
    const enough = wants + Math.min(CAP, limit);
    return Math.min(CAP, form.gap(body, { ...motion, shift }, { enough, slack: FINE }) - wants);
  };

/** The gap to a plane changes straight with the shift, so one look serves all. */
const planeSpare = (plane: Plane, body: Body, motion: Motion, wants: number): RoomPair['spare'] => {
  let still: number | null = null;
  return (shift) => {
    still ??= formOf(plane).gap(body, motion, { enough: Number.POSITIVE_INFINITY, slack: 0 });
    return Math.min(CAP, still + dot3(plane.normal, shift) - wants);
  };
};

/** Least spare room of all pairs, and whose it is. */
export interface Spare {
  readonly spare: number;
  /** Position in the list of pairs. */
  readonly binds: number;
}

/**
 * The least spare room at a shift fore-aft and in height. Pairs whose looks are dear come last: by then what they
 * are asked is mostly answered by a bound. Of equal ones the hint counts, then the first in the list.
 *
 * @param hint The pair that is looked at first of its kind.
 */
export const leastSpare = (pairs: readonly RoomPair[], [x, z]: Vec2, hint = 0): Spare => {
  const shift: Vec3 = [x, 0, z];
  let found: Spare = { spare: Number.POSITIVE_INFINITY, binds: 0 };
  const look = (binds: number, isDear: boolean): void => {
    const { between, spare } = pairs[binds]!;
    if ((between !== undefined) !== isDear) return;
    if (between !== undefined && between(shift)[0] >= found.spare) return;
    const room = spare(shift, found.spare + TIED);
    const earlier = binds === hint || (found.binds !== hint && binds < found.binds);
    if (room < found.spare || (room === found.spare && earlier)) found = { spare: room, binds };
  };
  for (const isDear of [false, true]) {
    if (hint < pairs.length) look(hint, isDear);
    for (let i = 0; i < pairs.length; i++) if (i !== hint) look(i, isDear);
  }
  return found;
};

/** Whether every pair has room at a shift; asks no further than the first that has not, the dear ones last. */
export const isClear = (pairs: readonly RoomPair[], [x, z]: Vec2): boolean => {
  const shift: Vec3 = [x, 0, z];
  return (
    pairs.every(({ between, spare }) => between !== undefined || spare(shift, 0) >= 0) &&
    pairs.every(({ between, spare }) => {
      if (between === undefined) return true;
      const [from, to] = between(shift);
      return from >= 0 || (to >= 0 && spare(shift, 0) >= 0);
    })
  );
};
