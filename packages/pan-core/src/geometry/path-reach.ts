import type { Segment } from './path.js';

/** Sides of an upright box that holds a piece: xmin, ymin, xmax, ymax; an arc's is that of its whole circle. */
export type Reach = readonly [number, number, number, number];

export const segmentReach = (s: Segment): Reach =>
  s.kind === 'line'
    ? [
        Math.min(s.from[0], s.to[0]),
        Math.min(s.from[1], s.to[1]),
        Math.max(s.from[0], s.to[0]),
        Math.max(s.from[1], s.to[1]),
      ]
    : [s.centre[0] - s.radius, s.centre[1] - s.radius, s.centre[0] + s.radius, s.centre[1] + s.radius];

/** No two points of the two pieces are nearer than this. */
export const reachGap = (a: Reach, b: Reach): number =>
  Math.hypot(Math.max(0, a[0] - b[2], b[0] - a[2]), Math.max(0, a[1] - b[3], b[1] - a[3]));
