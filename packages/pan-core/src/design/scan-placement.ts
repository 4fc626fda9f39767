import { NO_ROTATION, type RigidFit, type Rotation, rigidFit, turnsAboutAxes } from '../geometry/index.js';
import { scale3, type Vec3 } from '../numeric/index.js';
import type { Scan, ScanUnit } from './solid-shape.js';

/** One point found in the scan, in its own unit, and measured on the car, mm. */
export interface Match {
  readonly in_scan: Vec3;
  readonly in_chassis: Vec3;
}

interface Placement {
  readonly turn?: Vec3 | undefined;
  readonly origin?: Vec3 | undefined;
  readonly matches?: readonly Match[] | undefined;
}

/** mm to one unit of a scan; the inch is 25.4 mm exactly (international yard and pound agreement, 1959). */
export const unitSize = (unit: ScanUnit): number => {
  switch (unit) {
    case 'mm':
      return 1;
    case 'in':
      return 25.4;
    case 'm':
      return 1000;
  }
};

export const fitOfMatches = (matches: readonly Match[], unit: number): RigidFit | null =>
  rigidFit(matches.map((m) => ({ from: scale3(m.in_scan, unit), to: m.in_chassis })));

/** A scan that is known by name and not read yet. */
export const scanOf = (file: string, unit: ScanUnit, placement: Placement | undefined): Scan => {
  const size = unitSize(unit);
  return { kind: 'scan', file, unit: { name: unit, size }, ...placed(placement ?? {}, size), soup: null };
};

const placed = (
  { turn, origin, matches }: Placement,
  unit: number,
): { readonly rotation: Rotation; readonly origin: Vec3; readonly residuals: readonly number[] | null } => {
  const fit = matches === undefined ? null : fitOfMatches(matches, unit);
  if (fit !== null) return fit;
  const rotation = turn === undefined ? NO_ROTATION : turnsAboutAxes(turn[0], turn[1], turn[2]);
  return { rotation, origin: origin ?? [0, 0, 0], residuals: null };
};
