import type { Vec2 } from '../numeric/index.js';

/** A plane affine map: x′ = a·x + c·y + e, y′ = b·x + d·y + f. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** The map that leaves everything where it is. */
export const NO_MAP: Affine = [1, 0, 0, 1, 0, 0];

export const mapPoint = ([a, b, c, d, e, f]: Affine, [x, y]: Vec2): Vec2 => [
  a * x + c * y + e,
  b * x + d * y + f,
];

/** The map's linear part alone, for directions and half diameters. */
export const mapVector = ([a, b, c, d]: Affine, [x, y]: Vec2): Vec2 => [a * x + c * y, b * x + d * y];

/** `second` after `first`. */
export const thenMap = (first: Affine, second: Affine): Affine => {
  const [a, b] = mapVector(second, [first[0], first[1]]);
  const [c, d] = mapVector(second, [first[2], first[3]]);
  const [e, f] = mapPoint(second, [first[4], first[5]]);
  return [a, b, c, d, e, f];
};

/** The map that shifts. */
export const shiftMap = ([x, y]: Vec2): Affine => [1, 0, 0, 1, x, y];
/** The map that stretches x and y about the origin. */
export const scaleMap = (x: number, y: number): Affine => [x, 0, 0, y, 0, 0];
/** Counter-clockwise, radians. */
export const turnMap = (angle: number): Affine => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [c, s, -s, c, 0, 0];
};

/** Negative when the map mirrors; its size is how areas grow. */
export const mapArea = ([a, b, c, d]: Affine): number => a * d - b * c;

/** The most a length grows: the larger singular value of the linear part. */
export const mapGrowth = ([a, b, c, d]: Affine): number => {
  const [p, q] = [Math.hypot(a + d, b - c), Math.hypot(a - d, b + c)];
  return (p + q) / 2;
};
