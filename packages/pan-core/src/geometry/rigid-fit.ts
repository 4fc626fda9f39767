import { dot3, scale3, subtract3, symmetricEigen, type Vec3 } from '../numeric/index.js';
import { type Rotation, rotate3 } from './rotation.js';

export interface PointPair {
  readonly from: Vec3;
  readonly to: Vec3;
}

/** A turn and then a shift: `to` is about rotation·from + origin. */
export interface RigidFit {
  readonly rotation: Rotation;
  readonly origin: Vec3;
  /** How far each point ends from its mate. */
  readonly residuals: readonly number[];
}

/** Points that spread less to the side than this share of their length are as good as in a line. */
const IN_LINE = 0.02;

/**
 * The turn and shift that bring points nearest to their mates by least squares, without stretching or
 * mirroring: the largest eigenvector of the quaternion matrix (Horn, Closed-form solution of absolute
 * orientation using unit quaternions, J. Opt. Soc. Am. A 4 (1987) 629, section 4, from memory).
 *
 * @returns null when either set lies so nearly in a line that the turn about it is chance
 */
export const rigidFit = (pairs: readonly PointPair[]): RigidFit | null => {
  const [from, to] = [pairs.map((p) => p.from), pairs.map((p) => p.to)];
  if (inLine(from) || inLine(to)) return null;
  const [a, b] = [middle(from), middle(to)];
  const m = (i: 0 | 1 | 2, j: 0 | 1 | 2): number =>
    pairs.reduce((sum, p) => sum + (p.from[i] - a[i]) * (p.to[j] - b[j]), 0);
  const [xx, xy, xz] = [m(0, 0), m(0, 1), m(0, 2)];
  const [yx, yy, yz] = [m(1, 0), m(1, 1), m(1, 2)];
  const [zx, zy, zz] = [m(2, 0), m(2, 1), m(2, 2)];
  const [best] = symmetricEigen([
    [xx + yy + zz, yz - zy, zx - xz, xy - yx],
    [yz - zy, xx - yy - zz, xy + yx, zx + xz],
    [zx - xz, xy + yx, yy - xx - zz, yz + zy],
    [xy - yx, zx + xz, yz + zy, zz - xx - yy],
  ]);
  const rotation = ofQuaternion(best!.vector);
  const origin = subtract3(b, rotate3(rotation, a));
  const residuals = pairs.map((p) => {
    const placed = rotate3(rotation, p.from);
    return Math.hypot(...([0, 1, 2] as const).map((k) => placed[k] + origin[k] - p.to[k]));
  });
  return { rotation, origin, residuals };
};

const middle = (points: readonly Vec3[]): Vec3 =>
  scale3(
    points.reduce<Vec3>((s, p) => [s[0] + p[0], s[1] + p[1], s[2] + p[2]], [0, 0, 0]),
    1 / points.length,
  );

const inLine = (points: readonly Vec3[]): boolean => {
  const centre = middle(points);
  const rest = points.map((p) => subtract3(p, centre));
  const scatter = ([0, 1, 2] as const).map((i) =>
    ([0, 1, 2] as const).map((j) => rest.reduce((sum, p) => sum + p[i] * p[j], 0)),
  );
  const [long, wide] = symmetricEigen(scatter);
  return !(wide!.value > IN_LINE ** 2 * long!.value);
};

const ofQuaternion = (q: readonly number[]): Rotation => {
  const [w, x, y, z] = [q[0]!, q[1]!, q[2]!, q[3]!];
  const rows: Rotation = [
    [w * w + x * x - y * y - z * z, 2 * (x * y - w * z), 2 * (x * z + w * y)],
    [2 * (x * y + w * z), w * w - x * x + y * y - z * z, 2 * (y * z - w * x)],
    [2 * (x * z - w * y), 2 * (y * z + w * x), w * w - x * x - y * y + z * z],
  ];
  const size = Math.sqrt(dot3(rows[0], rows[0]));
  return [scale3(rows[0], 1 / size), scale3(rows[1], 1 / size), scale3(rows[2], 1 / size)];
};
