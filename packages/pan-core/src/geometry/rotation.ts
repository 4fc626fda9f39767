import { dot3, type Vec3 } from '../numeric/index.js';

/** A rotation by its rows: what each new coordinate takes from the old ones. */
export type Rotation = readonly [Vec3, Vec3, Vec3];

export const NO_ROTATION: Rotation = Object.freeze([
  Object.freeze([1, 0, 0] as const),
  Object.freeze([0, 1, 0] as const),
  Object.freeze([0, 0, 1] as const),
] as const);

/**
 * From axes fixed to a tilted body to level axes, x forward, y left, z up: the body leans about its own long
 * axis first (`leanLeft` > 0 puts its top to the left), then its nose goes up (`noseUp` > 0). Radians.
 */
export const tiltedToLevel = (noseUp: number, leanLeft: number): Rotation => {
  const [c, s] = [Math.cos(noseUp), Math.sin(noseUp)];
  const [k, l] = [Math.cos(leanLeft), Math.sin(leanLeft)];
  return [
    [c, s * l, -s * k],
    [0, k, l],
    [s, -c * l, c * k],
  ];
};

/** Turned about x first, then about y, then about z, each right-handed about the fixed axis. Radians. */
export const turnsAboutAxes = (x: number, y: number, z: number): Rotation => {
  const [cx, sx] = [Math.cos(x), Math.sin(x)];
  const [cy, sy] = [Math.cos(y), Math.sin(y)];
  const [cz, sz] = [Math.cos(z), Math.sin(z)];
  return [
    [cz * cy, cz * sy * sx - sz * cx, cz * sy * cx + sz * sx],
    [sz * cy, sz * sy * sx + cz * cx, sz * sy * cx - cz * sx],
    [-sy, cy * sx, cy * cx],
  ];
};

export const rotate3 = (r: Rotation, v: Vec3): Vec3 => [dot3(r[0], v), dot3(r[1], v), dot3(r[2], v)];

/** The other way round. */
export const unrotate3 = (r: Rotation, v: Vec3): Vec3 => [
  r[0][0] * v[0] + r[1][0] * v[1] + r[2][0] * v[2],
  r[0][1] * v[0] + r[1][1] * v[1] + r[2][1] * v[2],
  r[0][2] * v[0] + r[1][2] * v[1] + r[2][2] * v[2],
];

/** One rotation after another: first `inner`, then `outer`. */
export const afterRotation = (outer: Rotation, inner: Rotation): Rotation => {
  const row = (r: Vec3): Vec3 => unrotate3(inner, r);
  return [row(outer[0]), row(outer[1]), row(outer[2])];
};

export const inverseRotation = (r: Rotation): Rotation => [
  [r[0][0], r[1][0], r[2][0]],
  [r[0][1], r[1][1], r[2][1]],
  [r[0][2], r[1][2], r[2][2]],
];

/** Turns a point about the line y = 0, z = `height`; a positive angle carries +y towards +z. Radians. */
export const turnAboutX = (p: Vec3, height: number, angle: number): Vec3 => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const z = p[2] - height;
  return [p[0], c * p[1] - s * z, s * p[1] + c * z + height];
};

/** A turn both ways by up to an angle below a right angle. */
export interface Swing {
  readonly cos: number;
  readonly sin: number;
}

export const swingBy = (half: number): Swing => ({ cos: Math.cos(half), sin: Math.sin(half) });

/** The largest of U·cos t + V·sin t over a swing. */
export const largestSwing = (u: number, v: number, { cos, sin }: Swing): number => {
  const size = Math.abs(v);
  return u > 0 && size * cos <= u * sin ? Math.sqrt(u * u + v * v) : u * cos + size * sin;
};
