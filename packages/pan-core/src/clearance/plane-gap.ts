import type { Moves, Plane } from '../design/index.js';
import { largestSwing, swingBy, unrotate3 } from '../geometry/index.js';
import { dot3, type Vec3 } from '../numeric/index.js';
import { type Body, faceNameAt } from './body.js';
import type { Approach, Motion } from './obstacle-form.js';

interface PlaneReach {
  readonly distance: number;
  readonly at: Vec3;
  readonly solid: number;
}

/**
 * How far a body stays on the free side of a plane: its lowest corner over the whole turn, less how far the
 * engine can move towards the plane. Exact. Negative is how far the corner is past the plane.
 */
export const planeReach = (
  body: Body,
  plane: Plane,
  { toChassis, rock, moves, shift }: Motion,
): PlaneReach => {
  const normal = unrotate3(toChassis, plane.normal);
  const offset = dot3(plane.normal, plane.at) - dot3(plane.normal, shift);
  const towards = moves === null ? 0 : reach(plane.normal, moves);
  const swing = swingBy(rock.angle);
  let found: PlaneReach = { distance: Number.POSITIVE_INFINITY, at: [0, 0, 0], solid: 0 };
  for (const [solid, { vertices }] of body.solids.entries())
    for (const p of vertices) {
      const [y, z] = [p[1], p[2] - rock.height];
      const [across, turning] = [normal[1] * y + normal[2] * z, normal[2] * y - normal[1] * z];
      const reached = largestSwing(-across, -turning, swing);
      const distance = normal[0] * p[0] + normal[2] * rock.height - reached - offset - towards;
      if (distance < found.distance) found = { distance, at: p, solid };
    }
  return found;
};

/** The same as an approach, with the name of the face that comes nearest. */
export const planeGap = (body: Body, plane: Plane, motion: Motion): Approach => {
  const { distance, at, solid } = planeReach(body, plane, motion);
  const normal = unrotate3(motion.toChassis, plane.normal);
  const down: Vec3 = [-normal[0], -normal[1], -normal[2]];
  return { distance, at, feature: faceNameAt(body.solids[solid]!, at, down), angle: motion.rock.angle };
};

/** The most an engine can move against a normal. */
const reach = (normal: Vec3, moves: Moves): number =>
  Math.abs(normal[0]) * moves.foreAft + (normal[2] > 0 ? normal[2] * moves.down : -normal[2] * moves.up);
