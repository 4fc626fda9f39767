import type { Scan } from '../design/index.js';
import { type Rotation, turnAboutX, unrotate3 } from '../geometry/index.js';
import { add3, scale3, subtract3, type Vec3 } from '../numeric/index.js';
import type { Motion } from './obstacle-form.js';
import { movementCorners } from './obstacle-hull.js';

/** From a scan's own numbers to the pan's axes, mm: matrix, then shift, then any of the slides. */
export interface ScanPlace {
  /** Rows; the scan's unit is in them. */
  readonly matrix: Rotation;
  readonly shift: Vec3;
  /** Where the engine's bodily movement carries the scan as seen from the engine: corners of a box. */
  readonly slides: readonly Vec3[];
  /** Middle of the slides, and half of the box around them. */
  readonly slideMiddle: Vec3;
  readonly slideHalf: Vec3;
}

/** The scan as the engine sees it before it rocks. */
export const placeOfScan = (scan: Scan, { toChassis, shift, moves }: Motion): ScanPlace => {
  const axis = (k: 0 | 1 | 2): Vec3 =>
    unrotate3(
      toChassis,
      scale3([scan.rotation[0][k], scan.rotation[1][k], scan.rotation[2][k]], scan.unit.size),
    );
  const [x, y, z] = [axis(0), axis(1), axis(2)];
  const slides = moves === null ? [[0, 0, 0] as const] : movementCorners(moves);
  return placed(
    [
      [x[0], y[0], z[0]],
      [x[1], y[1], z[1]],
      [x[2], y[2], z[2]],
    ],
    unrotate3(toChassis, subtract3(scan.origin, shift)),
    slides.map((s) => unrotate3(toChassis, s)),
  );
};

const placed = (matrix: Rotation, shift: Vec3, slides: readonly Vec3[]): ScanPlace => {
  const along = (k: 0 | 1 | 2): readonly [number, number] => {
    const values = slides.map((s) => s[k]);
    const [low, high] = [Math.min(...values), Math.max(...values)];
    return [(low + high) / 2, (high - low) / 2];
  };
  const [x, y, z] = [along(0), along(1), along(2)];
  return { matrix, shift, slides, slideMiddle: [x[0], y[0], z[0]], slideHalf: [x[1], y[1], z[1]] };
};

/** The same once the scan has turned about the crank's axis at this height. */
export const turnedPlace = (place: ScanPlace, height: number, angle: number): ScanPlace => {
  if (angle === 0) return place;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [a, b, d] = place.matrix;
  return placed(
    [a, subtract3(scale3(b, c), scale3(d, s)), add3(scale3(b, s), scale3(d, c))],
    turnAboutX(place.shift, height, angle),
    place.slides.map((v) => turnAboutX(v, 0, angle)),
  );
};

/** The corners of a triangle at every corner of the movement. */
export const placedTriangle = (
  { matrix, shift, slides }: ScanPlace,
  corners: Float32Array,
  triangle: number,
): readonly Vec3[] => {
  const points: Vec3[] = [];
  const [a, b, c] = matrix;
  for (let o = 9 * triangle; o < 9 * triangle + 9; o += 3) {
    const [u, v, w] = [corners[o]!, corners[o + 1]!, corners[o + 2]!];
    const x = a[0] * u + a[1] * v + a[2] * w + shift[0];
    const y = b[0] * u + b[1] * v + b[2] * w + shift[1];
    const z = c[0] * u + c[1] * v + c[2] * w + shift[2];
    for (const slide of slides) points.push([x + slide[0], y + slide[1], z + slide[2]]);
  }
  return points;
};

/** From a point in the pan's axes back to the scan's own numbers. */
export const inScan = ({ matrix, shift }: ScanPlace, p: Vec3): Vec3 => {
  const [a, b, c] = matrix;
  const size = a[0] ** 2 + b[0] ** 2 + c[0] ** 2;
  return scale3(unrotate3(matrix, subtract3(p, shift)), 1 / size);
};
