import { cross3, dot3, subtract3, type Vec2, type Vec3 } from '../numeric/index.js';

/** A plane to look at from one side: `right` and `upward` are the drawing's axes, unit vectors in the plane, mm. */
export interface CuttingPlane {
  readonly at: Vec3;
  readonly right: Vec3;
  readonly upward: Vec3;
}

/** The unit vector out of the plane, to whoever looks at it. */
export const outOfPlane = ({ right, upward }: CuttingPlane): Vec3 => cross3(right, upward);

/** A point, seen square to the plane, in the plane's own axes from its `at`. */
export const flatOn = (plane: CuttingPlane, p: Vec3): Vec2 => {
  const d = subtract3(p, plane.at);
  return [dot3(d, plane.right), dot3(d, plane.upward)];
};

/** The place of a point that is given in the plane's own axes. */
export const placeIn = ({ at, right, upward }: CuttingPlane, [u, v]: Vec2): Vec3 => [
  at[0] + u * right[0] + v * upward[0],
  at[1] + u * right[1] + v * upward[1],
  at[2] + u * right[2] + v * upward[2],
];
