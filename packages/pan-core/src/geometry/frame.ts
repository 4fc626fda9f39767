import { add3, scale3, type Vec2, type Vec3 } from '../numeric/index.js';

/** A plane's own axes in space. */
export interface Frame {
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
}

/** The point origin + s·u + t·v. */
export const framePoint = ({ origin, u, v }: Frame, [s, t]: Vec2): Vec3 =>
  add3(origin, add3(scale3(u, s), scale3(v, t)));
