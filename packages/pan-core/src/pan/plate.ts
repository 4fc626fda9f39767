import type { Baffle } from '../design/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import type { LouvreCut, SlotCut } from './lid-opening.js';

/** A cut-out in a baffle, in the plate's own plane. */
export interface PlateOpening {
  readonly kind: 'door' | 'hole';
  readonly outline: readonly Vec2[];
  /** Diameter when round; the outline is then its equal-area polygon. */
  readonly diameter: number | null;
  /** As cut, where the outline is only what oil meets. */
  readonly cut?: SlotCut | LouvreCut;
}

/**
 * A baffle as a flat plate fitted to the pan's inside: origin + s·u + t·v; its thickness lies along `normal`.
 * A wall's outline stands clear of the floor by its weep.
 */
export interface Plate {
  readonly baffle: Baffle;
  /** Position in the design's list. */
  readonly index: number;
  readonly origin: Vec3;
  readonly u: Vec3;
  readonly v: Vec3;
  readonly normal: Vec3;
  /** One or more simple polygons (a wall may be parted by a notch), counter-clockwise in (u, v), mm. */
  readonly outlines: readonly (readonly Vec2[])[];
  readonly openings: readonly PlateOpening[];
  readonly area: number;
}
