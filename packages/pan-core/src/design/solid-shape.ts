import type { Vec3 } from '../numeric/index.js';

/** A box by two opposite corners, in mm. */
export interface Box {
  readonly kind: 'box';
  readonly min: Vec3;
  readonly max: Vec3;
}
/** A round bar by its two ends and diameter, in mm. */
export interface Rod {
  readonly kind: 'rod';
  readonly from: Vec3;
  readonly to: Vec3;
  readonly diameter: number;
  /** Displacement either way through which the rod moves (± this vector); zero when it stands still. */
  readonly travel: Vec3;
  /** Further places of its ends through its travel, in order; it goes straight from each to the next. */
  readonly positions?: readonly (readonly [Vec3, Vec3])[];
}
/** A plane by a point in mm and the way its free face looks. */
export interface Plane {
  readonly kind: 'plane';
  readonly at: Vec3;
  /** Unit normal pointing to the free side (where the engine is). */
  readonly normal: Vec3;
}
/** The shape of an obstacle or item. */
export type Shape = Box | Rod | Plane;
