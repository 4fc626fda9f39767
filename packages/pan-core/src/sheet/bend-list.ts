import type { Part } from './part.js';

/** A bend as the manifest lists it. */
export interface ListedBend {
  readonly name: string;
  readonly angle_deg: number;
  readonly radius_mm: number;
  readonly direction: 'up' | 'down';
}

/** A part's bends in the order of its folds. */
export const bendsOf = (part: Part): readonly ListedBend[] =>
  part.folds.map((f) => ({
    name: f.name,
    angle_deg: (f.angle * 180) / Math.PI,
    radius_mm: f.radius,
    direction: f.direction,
  }));
