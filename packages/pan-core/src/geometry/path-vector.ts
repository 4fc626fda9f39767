import type { Vec2 } from '../numeric/index.js';

export const add2 = (a: Vec2, b: Vec2): Vec2 => [a[0] + b[0], a[1] + b[1]];
export const subtract2 = (a: Vec2, b: Vec2): Vec2 => [a[0] - b[0], a[1] - b[1]];
export const scale2 = (a: Vec2, s: number): Vec2 => [a[0] * s, a[1] * s];
export const dot2 = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];
/** Positive when b lies counter-clockwise of a. */
export const cross2 = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0];
export const length2 = (a: Vec2): number => Math.hypot(a[0], a[1]);
export const distance2 = (a: Vec2, b: Vec2): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
export const unit2 = (a: Vec2): Vec2 => scale2(a, 1 / length2(a));
/** A quarter turn counter-clockwise. */
export const left2 = (a: Vec2): Vec2 => [-a[1], a[0]];
export const mix2 = (a: Vec2, b: Vec2, t: number): Vec2 => [
  a[0] + t * (b[0] - a[0]),
  a[1] + t * (b[1] - a[1]),
];
/** Distance from p to the straight piece from a to b, which may be a point. */
export const offChord2 = (p: Vec2, a: Vec2, b: Vec2): number => {
  const along = subtract2(b, a);
  const square = dot2(along, along);
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, dot2(subtract2(p, a), along) / square));
  return distance2(p, mix2(a, b, t));
};
