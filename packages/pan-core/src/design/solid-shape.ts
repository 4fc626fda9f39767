import type { Rotation, TriangleSoup } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';

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
/** A flat outline carried straight along an axis. */
export interface Prism {
  readonly kind: 'prism';
  readonly along: 'x' | 'y' | 'z';
  /** Corners in order, in the other two axes, x before y before z; not repeated. */
  readonly profile: readonly Vec2[];
  readonly from: number;
  readonly to: number;
}
/** A measured surface; nothing is asked of it but triangles. */
export interface Scan {
  readonly kind: 'scan';
  readonly file: string;
  /** What one unit of the file is, mm. */
  readonly unit: { readonly name: ScanUnit; readonly size: number };
  /** From the scan’s axes, in mm, to the chassis’s: turned, then moved. */
  readonly rotation: Rotation;
  readonly origin: Vec3;
  /** How far matched points end from one another, mm; null when it was not placed by such. */
  readonly residuals: readonly number[] | null;
  /** In the file’s unit and axes; null: the file has not been read. */
  readonly soup: TriangleSoup | null;
}
/** The units a scan may be in. */
export type ScanUnit = 'mm' | 'in' | 'm';
/** The shape of an obstacle or item. */
export type Shape = Box | Rod | Plane | Prism | Scan;
