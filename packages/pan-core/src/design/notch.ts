import type { Point2, Point3 } from './design.js';

/** A clearance cut-out as a box. */
export interface BoxNotch {
  readonly kind: 'box';
  readonly name: string;
  readonly min: Point3;
  readonly max: Point3;
}

/** A clearance cut-out with a sloping face. */
export interface WedgeNotch {
  readonly kind: 'wedge';
  readonly name: string;
  /** Triangle in the plane across `along`: [x, z] when along y, [y, z] when along x, [x, y] when along z. */
  readonly triangle: readonly [Point2, Point2, Point2];
  readonly along: 'x' | 'y' | 'z';
  readonly from: number;
  readonly to: number;
}

/** A clearance cut-out. */
export type Notch = BoxNotch | WedgeNotch;
